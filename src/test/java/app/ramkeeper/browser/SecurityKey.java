package app.ramkeeper.browser;

import com.google.gson.JsonObject;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Page;

/** A virtual device that keeps passkeys, plugged into one page's browser (DevTools protocol, domain WebAuthn). */
final class SecurityKey {

    private final CDPSession browser;
    private final String id;

    SecurityKey(Page page, boolean verifiesUser) {
        browser = page.context().newCDPSession(page);
        browser.send("WebAuthn.enable");
        JsonObject options = new JsonObject();
        options.addProperty("protocol", "ctap2");
        options.addProperty("transport", "usb");
        options.addProperty("hasResidentKey", true);
        options.addProperty("hasUserVerification", verifiesUser);
        options.addProperty("isUserVerified", verifiesUser);
        options.addProperty("automaticPresenceSimulation", true);
        JsonObject wanted = new JsonObject();
        wanted.add("options", options);
        id = browser.send("WebAuthn.addVirtualAuthenticator", wanted)
                .get("authenticatorId")
                .getAsString();
    }

    /** Whether somebody touches it when it asks. */
    void touched(boolean touched) {
        set("WebAuthn.setAutomaticPresenceSimulation", "enabled", touched);
    }

    /** Whether finger, face or PIN are the owner's. */
    void verified(boolean verified) {
        set("WebAuthn.setUserVerified", "isUserVerified", verified);
    }

    private void set(String command, String what, boolean to) {
        JsonObject wanted = new JsonObject();
        wanted.addProperty("authenticatorId", id);
        wanted.addProperty(what, to);
        browser.send(command, wanted);
    }
}

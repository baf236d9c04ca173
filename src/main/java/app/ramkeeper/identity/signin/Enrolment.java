package app.ramkeeper.identity.signin;

import jakarta.servlet.http.HttpSession;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;

/** Setting up codes: the secret waits in the session until a code proves that the device has it. */
@Component
public class Enrolment {

    private static final String PENDING = "pendingSecret";

    private final SecondFactor factors;

    Enrolment(SecondFactor factors) {
        this.factors = factors;
    }

    /** Shows the secret, as a picture, as a link for the same device and to type. */
    public void show(HttpSession session, String login, Model model) {
        String secret = Totp.base32(pending(session));
        String label =
                URLEncoder.encode("Ramkeeper:" + login, StandardCharsets.UTF_8).replace("+", "%20");
        String address = "otpauth://totp/" + label + "?secret=" + secret + "&issuer=Ramkeeper";
        model.addAttribute("secret", secret.replaceAll("(.{4})(?!$)", "$1 "));
        model.addAttribute("address", address);
        model.addAttribute("picture", QrPicture.of(address));
    }

    /** Takes the secret over if the code is right, and returns the recovery codes; empty if it is wrong. */
    public List<String> confirm(HttpSession session, UUID account, String code) {
        List<String> recovery = factors.enrol(account, pending(session), code);
        if (!recovery.isEmpty()) {
            session.removeAttribute(PENDING);
        }
        return recovery;
    }

    private static byte[] pending(HttpSession session) {
        byte[] secret = (byte[]) session.getAttribute(PENDING);
        if (secret == null) {
            secret = Tokens.bytes(20);
            session.setAttribute(PENDING, secret);
        }
        return secret;
    }
}

package app.ramkeeper.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.identity.Role;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.options.AriaRole;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** What is typed on the phone stays as it was typed, whatever is drawn anew about it. */
class FieldTypingBrowserTests extends FieldRun {

    private static final String NOTE = "textarea[data-q=note]";

    @Test
    void nobodyIsSaidToBeMissingBeforeTheServerWasAsked() {
        Page page = phone();
        signIn(page, "Ines Dale", Role.TECHNICIAN);
        page.addInitScript(
                "window.said = 0; new MutationObserver(() => { if (document.querySelector('main')?.textContent.includes('Nobody has signed in')) { window.said++; } })"
                        + ".observe(document, { childList: true, subtree: true });");
        toField(page);
        assertThat(page.evaluate("() => window.said")).isEqualTo(0);
        Page stranger = phone();
        stranger.navigate("/field");
        assertThat(stranger.locator("main")).containsText("Nobody has signed in");
    }

    @Test
    void typingGoesOnWhileThePageIsDrawnAnew() {
        Page page = phone();
        technician(page, "Jory Pike");
        openVisit(page);
        page.locator(NOTE).focus();
        page.evaluate("""
                async () => { for (let i = 0; i < 300; i++) { const t = document.querySelector('textarea[data-q=note]');
                    t.value += i % 10; t.dispatchEvent(new Event('input'));
                    if (i % 15 === 0) { [...document.querySelectorAll('button')].find((b) => b.textContent.startsWith('Arrived')).click(); }
                    await new Promise((r) => setTimeout(r, 1)); } }""");
        page.waitForTimeout(500);
        String all = "0123456789".repeat(30);
        assertThat(page.locator(NOTE)).hasValue(all);
        assertThat(page.locator(NOTE)).isFocused();
        page.reload();
        assertThat(page.locator(NOTE)).hasValue(all);
    }

    @Test
    void whatIsTypedInTheSearchStaysWhenNewsArrive() {
        Page page = phone();
        technician(page, "Kees Lund");
        AtomicReference<Route> held = new AtomicReference<>();
        page.route("**/field/bundle", held::set);
        page.navigate("/field#/sites");
        page.reload();
        Locator search = page.locator("input[type=search]");
        search.pressSequentially("Tussock");
        page.waitForCondition(() -> held.get() != null);
        held.get().resume();
        ready(page);
        assertThat(search).hasValue("Tussock");
        assertThat(search).isFocused();
        page.unroute("**/field/bundle");
    }

    @Test
    void whatIsTypedOverTheWatchsMeanStaysUntilTheNextRun() {
        Page page = phone();
        technician(page, "Stig Weir");
        openVisit(page);
        Locator watch = page.locator("details")
                .filter(new Locator.FilterOptions().setHasText("Bucket and watch"))
                .first();
        Locator run = watch.locator("button.primary");
        Locator flow = page.locator("input[data-q=DELIVERED_FLOW]");
        watch.locator("summary").click();
        run.click();
        page.waitForTimeout(300);
        run.click();
        assertThat(flow).not().hasValue("");
        String mean = flow.inputValue();
        page.getByLabel("Bucket, litres").first().fill("20");
        assertThat(flow).not().hasValue(mean);
        flow.fill("4,7");
        button(page, "Set out").click();
        button(page, "Add a part").click();
        page.getByLabel("How many").waitFor();
        assertThat(watch).containsText("1 run: ");
        assertThat(flow).hasValue("4,7");
        page.getByLabel("Bucket, litres").first().fill("10");
        assertThat(flow).hasValue("4,7");
        page.reload();
        assertThat(flow).hasValue("4,7");
        watch.locator("summary").click();
        assertThat(watch).containsText("1 run: ");
        assertThat(flow).hasValue("4,7");
        run.click();
        page.waitForTimeout(300);
        run.click();
        assertThat(watch).containsText("2 runs: ");
        assertThat(flow).not().hasValue("4,7");
    }

    @Test
    void tappingAnotherCauseLeavesWhatWasTyped() {
        Page page = phone();
        technician(page, "Tove Carr");
        openVisit(page);
        button(page, "Add a finding").click();
        page.getByLabel("What is wrong").selectOption("STOPPED_SHUT");
        Locator causes = page.getByRole(AriaRole.GROUP)
                .filter(new Locator.FilterOptions().setHasText("Likely causes"))
                .locator("button");
        Locator cause = page.getByLabel("Cause", new Page.GetByLabelOptions().setExact(true));
        Locator done = page.getByLabel("What was done");
        causes.nth(0).click();
        assertThat(done).not().hasValue("");
        String first = done.inputValue();
        causes.nth(1).click();
        assertThat(cause).hasValue(causes.nth(1).textContent());
        assertThat(done).not().hasValue(first);
        done.fill("Filed the seat flat by hand");
        causes.nth(0).click();
        assertThat(cause).hasValue(causes.nth(0).textContent());
        assertThat(done).hasValue("Filed the seat flat by hand");
        cause.fill("A nail across the seat");
        causes.nth(1).click();
        page.getByLabel("What is wrong").selectOption("SOURCE_DRY");
        assertThat(causes.filter(new Locator.FilterOptions().setHasText("Water ran out")))
                .hasCount(0);
        assertThat(cause).hasValue("A nail across the seat");
        assertThat(done).hasValue("Filed the seat flat by hand");
    }

    @Test
    void impossibleReadingIsMarkedBesideItsFieldAtOnce() {
        Page page = phone();
        technician(page, "Wynn Sark");
        openVisit(page);
        Locator flow = page.locator("input[data-q=DELIVERED_FLOW]");
        Locator mark = page.locator(".field")
                .filter(new Locator.FilterOptions().setHas(flow))
                .locator(".wrong");
        flow.fill("4,");
        assertThat(mark).hasText("");
        flow.fill("-5");
        assertThat(mark).hasText("“-5” is below zero.");
        isAccessible(page);
        flow.fill("five");
        assertThat(mark).hasText("“five” is no number.");
        assertThat(flow).hasAttribute("aria-invalid", "true");
        flow.fill("-5");
        button(page, "Nobody there").click();
        assertThat(mark).hasText("“-5” is below zero.");
        page.locator("#finish").click();
        assertThat(page.locator("[role=alert]")).containsText("Delivered flow: “-5” is below zero.");
        flow.fill("4,5");
        assertThat(mark).hasText("");
        page.locator("#finish").click();
        assertThat(page.locator(".state.sent")).hasCount(1);
        assertThat(reports()).isEqualTo(1);
    }

    @Test
    @DisplayName(
            "SYN-19 a full phone: the words are kept, the photo's loss is said, a refused promise is shown, the visit can be saved as a file")
    void fullPhone() {
        Page page = phone();
        page.addInitScript(
                "navigator.storage.persist = async () => { window.askedToKeep = true; return false; }; navigator.storage.persisted = async () => false;"
                        + " const put = IDBObjectStore.prototype.put; IDBObjectStore.prototype.put = function (...a) {"
                        + " if (this.name === 'photos') { throw new DOMException('full', 'QuotaExceededError'); } return put.apply(this, a); };");
        technician(page, "Runa Slip");
        assertThat(page.evaluate("() => window.askedToKeep")).isEqualTo(true);
        openVisit(page);
        page.locator(NOTE).fill("Hole in the tank");
        String pixel =
                "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==";
        page.locator("input[type=file]")
                .setInputFiles(new com.microsoft.playwright.options.FilePayload(
                        "p.png", "image/png", java.util.Base64.getDecoder().decode(pixel)));
        assertThat(page.locator("main")).containsText("The phone is full: this photo is not kept. The words are.");
        page.reload();
        assertThat(page.locator(NOTE)).hasValue("Hole in the tank");
        line.cut(true);
        button(page, "Nobody there").click();
        page.locator("#finish").click();
        var file = page.waitForDownload(() -> button(page, "Save as a file").click());
        assertThat(file.path()).content().contains("Hole in the tank");
        page.evaluate("() => { location.hash = '#/phone'; }");
        assertThat(page.locator("main")).containsText("the phone may clear it when it is full");
        page.evaluate("""
                async () => { const store = await import(document.querySelector('script[type=module]').src.replace('app.js', 'store.js'));
                  const [e] = await store.all('outbox'); await store.put('outbox', { ...e, at: Date.now() - 90000000 }); location.hash = '#/'; }""");
        assertThat(page.locator("main")).containsText("1 unsent for over a day");
        line.cut(false);
        page.evaluate("() => dispatchEvent(new Event('online'))");
        page.waitForCondition(() -> reports() == 1);
    }
}

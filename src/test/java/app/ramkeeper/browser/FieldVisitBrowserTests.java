package app.ramkeeper.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.identity.Role;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** A visit begins and ends once, under its writer, and one begun by mistake can be thrown away. */
class FieldVisitBrowserTests extends FieldRun {

    private static final String NOTE = "textarea[data-q=note]";

    @Test
    @DisplayName("SYN-23 finish tapped twice at once makes one visit")
    void finishTwice() {
        Page page = phone();
        technician(page, "Lowen Ash");
        openVisit(page);
        button(page, "Nobody there").click();
        page.evaluate("() => { const f = document.getElementById('finish'); f.click(); f.click(); }");
        assertThat(page.locator(".state.sent")).hasCount(1);
        page.waitForTimeout(300);
        assertThat(page.locator("li[data-id]")).hasCount(1);
        assertThat(reports()).isEqualTo(1);
    }

    @Test
    @DisplayName("SYN-14 what another person began on this phone is said to be theirs, and stays")
    void anothersDraftIsTheirs() {
        Page page = phone();
        technician(page, "Ebba Rill");
        openVisit(page);
        page.locator(NOTE).fill("Half a note");
        String draft = page.url();
        signIn(page, "Finn Holm", Role.TECHNICIAN);
        toField(page);
        assertThat(page.locator("main")).containsText("begun by Ebba Rill on this phone");
        page.navigate(draft);
        assertThat(page.locator(NOTE)).hasValue("Half a note");
        assertThat(page.locator(".caution").first()).containsText("Begun by Ebba Rill on this phone");
        openVisit(page);
        assertThat(page.locator(NOTE)).hasValue("");
        assertThat(page.locator("main")).not().containsText("Begun by");
    }

    @Test
    void finishedPlannedVisitIsNotOfferedAgain() {
        Page page = phone();
        planned(technician(page, "Uma Pool"));
        toField(page);
        line.cut(true);
        button(page, "Open the visit").click();
        button(page, "Nobody there").click();
        page.locator("#finish").click();
        assertThat(page.locator("main")).containsText("waits to be sent");
        page.evaluate("() => { location.hash = '#/'; }");
        assertThat(page.locator(".state")).hasText("finished, not yet sent");
        assertThat(button(page, "Open the visit")).hasCount(0);
        isAccessible(page);
        page.evaluate("id => { location.hash = '#/site/' + id; }", site.toString());
        assertThat(page.locator(".state")).hasText("finished, not yet sent");
        assertThat(button(page, "Visit of")).hasCount(0);
        page.evaluate("() => { location.hash = '#/'; }");
        line.cut(false);
        page.evaluate("() => dispatchEvent(new Event('online'))");
        // a first attempt on the cut line may fail; the phone then waits half a minute
        assertThat(page.locator(".state.sent"))
                .hasText("sent", new LocatorAssertions.HasTextOptions().setTimeout(60_000));
        assertThat(button(page, "Open the visit")).hasCount(0);
        page.evaluate("() => { location.hash = '#/out'; }");
        button(page, "Clear").click();
        assertThat(page.locator("main")).containsText("Nothing waits.");
        page.evaluate("() => { location.hash = '#/'; }");
        assertThat(page.locator(".state.sent")).hasText("sent");
        assertThat(button(page, "Open the visit")).hasCount(0);
        assertThat(reports()).isEqualTo(1);
    }

    private static void answering(Page page, boolean yes, List<String> asked) {
        page.onceDialog(dialog -> {
            asked.add(dialog.message());
            if (yes) {
                dialog.accept();
            } else {
                dialog.dismiss();
            }
        });
    }

    @Test
    void mistakenVisitIsThrownAwayAndAnEmptyOneIsNotSentUnasked() {
        Page page = phone();
        technician(page, "Vigo Lamb");
        List<String> asked = new ArrayList<>();
        openVisit(page);
        answering(page, false, asked);
        page.locator("#finish").click();
        page.waitForCondition(() -> !asked.isEmpty());
        assertThat(asked).singleElement().asString().startsWith("Nothing is written down");
        assertThat(page.locator("#finish")).isVisible();
        button(page, "Throw this visit away").click();
        assertThat(page.locator("h1")).hasText("Your visits");
        assertThat(page.locator("main")).containsText("None.");

        openVisit(page);
        String visit = page.url();
        page.locator(NOTE).fill("Half a note");
        page.locator("input[data-q=BEAT_RATE]").fill("62");
        asked.clear();
        answering(page, false, asked);
        button(page, "Throw this visit away").click();
        assertThat(asked).containsExactly("Throw this visit away? This is lost for good: 1 reading, the note.");
        assertThat(page.locator(NOTE)).hasValue("Half a note");
        answering(page, true, asked);
        button(page, "Throw this visit away").click();
        assertThat(page.locator("h1")).hasText("Your visits");
        page.navigate(visit);
        assertThat(page.locator("main")).containsText("finished or thrown away");
        assertThat(reports()).isZero();
    }
}

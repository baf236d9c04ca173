package app.ramkeeper.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** The installed application and a tab, both open on one visit. */
class FieldWindowsBrowserTests extends FieldRun {

    private static final String NOTE = "textarea[data-q=note]";
    private static final String BEAT = "input[data-q=BEAT_RATE]";

    /** Another window on the visit that is open. */
    private Page second(Page page) {
        Page other = page.context().newPage();
        other.navigate(page.url());
        other.locator("#finish").waitFor();
        ready(other);
        return other;
    }

    private static Locator cause(Page page) {
        return page.getByLabel("Cause", new Page.GetByLabelOptions().setExact(true));
    }

    private static void deaf(Page page) {
        page.context().addInitScript("BroadcastChannel.prototype.postMessage = () => {};");
    }

    @Test
    @DisplayName("SYN-11 SYN-18 what one window writes stands in the other at once; both finish one visit")
    void eachTakesOnTheOthersWords() {
        Page page = phone();
        technician(page, "Bram Holt");
        openVisit(page);
        Page other = second(page);
        page.locator(NOTE).pressSequentially("Wasps under the lid");
        assertThat(other.locator(NOTE)).hasValue("Wasps under the lid");
        other.locator(BEAT).pressSequentially("62");
        button(other, "Add a finding").click();
        other.getByLabel("What is wrong").selectOption("STOPPED_SHUT");
        cause(other).fill("A nail across the seat");
        assertThat(page.locator(BEAT)).hasValue("62");
        assertThat(cause(page)).hasValue("A nail across the seat");
        page.locator(NOTE).pressSequentially(", two stings");
        button(page, "Nobody there").click();
        page.locator("#finish").click();
        assertThat(page.locator(".state.sent")).hasCount(1);
        assertThat(other.locator("main")).containsText("finished or thrown away");
        assertThat(report()).containsEntry("note", "Wasps under the lid, two stings");
        assertThat(jdbc.sql(
                                "select cause from findings f join visit_reports r on r.id = f.report_id where r.site_id = ?")
                        .param(site)
                        .query(String.class)
                        .list())
                .containsExactly("A nail across the seat");
        assertThat(reports()).isEqualTo(1);
    }

    @Test
    @DisplayName("SYN-11 windows that do not hear of each other overwrite nothing; two texts in one field both arrive")
    void nothingIsOverwrittenUnheard() {
        Page page = phone();
        deaf(page);
        technician(page, "Cora Lisle");
        openVisit(page);
        button(page, "Something left to do").click();
        page.getByLabel("Left to do").fill("Bring a rubber");
        Page other = second(page);
        assertThat(other.getByLabel("Left to do")).hasValue("Bring a rubber");
        page.locator(NOTE).fill("Alpha");
        page.locator(BEAT).fill("62");
        page.getByLabel("Left to do").fill("Bring two rubbers");
        button(page, "Something left to do").click();
        assertThat(page.getByLabel("Left to do")).hasCount(2);
        page.getByLabel("Left to do").last().fill("Ring the owner");
        assertThat(other.locator(BEAT)).hasValue("");
        other.locator(NOTE).fill("Gorse");
        button(other, "Something left to do").click();
        Locator left = other.getByLabel("Left to do");
        assertThat(left).hasCount(3);
        left.last().fill("Oil the gate");
        other.locator("input[data-q=DRIVE_FLOW]").fill("55");

        assertThat(other.locator(BEAT)).hasValue("62");
        assertThat(other.locator(NOTE)).hasValue("Gorse");
        assertThat(other.locator("main")).containsText("Typed in another window as wellAlpha");
        isAccessible(other);
        page.close();
        other.reload();
        assertThat(other.locator("input[data-q=DRIVE_FLOW]")).hasValue("55");
        button(other, "Nobody there").click();
        other.locator("#finish").click();
        assertThat(other.locator(".state.sent")).hasCount(1);
        assertThat(report()).containsEntry("note", "Gorse\nTyped in another window: Alpha");
        assertThat(leftToDo()).containsExactly("Bring two rubbers", "Oil the gate", "Ring the owner");
    }

    @Test
    @DisplayName("SYN-11 what is typed after another window has finished the visit begins a visit of its own")
    void lateWordsAreKept() {
        Page page = phone();
        deaf(page);
        technician(page, "Dov Keld");
        openVisit(page);
        Page other = second(page);
        page.locator(NOTE).fill("Alpha");
        button(page, "Nobody there").click();
        page.locator("#finish").click();
        assertThat(page.locator(".state.sent")).hasCount(1);
        String finished = other.url();
        other.locator(NOTE).fill("The gate is broken");
        other.waitForURL(address -> !address.equals(finished));
        assertThat(other.locator(NOTE)).hasValue("The gate is broken");
        other.reload();
        assertThat(other.locator(NOTE)).hasValue("The gate is broken");
        button(other, "Nobody there").click();
        other.locator("#finish").click();
        assertThat(other.locator(".state.sent")).hasCount(2);
        assertThat(reports()).isEqualTo(2);
    }

    private static final String KEPT = """
            async () => {
              const db = await new Promise((r) => { const o = indexedDB.open('ramkeeper-field'); o.onsuccess = () => r(o.result); });
              const all = {};
              for (const name of [...db.objectStoreNames].filter((n) => n !== 'kv')) {
                all[name] = await new Promise((r) => { const g = db.transaction(name).objectStore(name).getAll(); g.onsuccess = () => r(g.result); });
              }
              db.close();
              return JSON.stringify(all);
            }""";

    @Test
    @DisplayName("SEC-34 messages nobody of the application sent change neither the draft nor the outbox")
    void sec34ForeignMessagesAreIgnored() {
        Page page = phone();
        technician(page, "Edda Clough");
        queue(page, 1, 0);
        openVisit(page);
        page.locator(NOTE).fill("Float valve stuck");
        page.waitForFunction("async () => (await (" + KEPT + ")()).includes('Float valve stuck')");
        String before = (String) page.evaluate(KEPT);
        assertThat(before).contains("gorse on the track", "Float valve stuck");

        page.evaluate("""
                async () => {
                  const channel = new BroadcastChannel('ramkeeper-visits');
                  const hostile = [null, 17, [], {}, { id: 'x', note: 'forged' }, 'no such visit', 'x'.repeat(100000),
                    { type: 'SKIP_WAITING' }, { type: 'delete', store: 'outbox' }, { data: { __proto__: { id: 1 } } }];
                  for (const message of hostile) {
                    channel.postMessage(message);
                    window.postMessage(message, '*');
                    navigator.serviceWorker.controller.postMessage(message);
                    dispatchEvent(new MessageEvent('message', { data: message, origin: 'https://foreign.example' }));
                  }
                  await new Promise((done) => setTimeout(done, 1000));
                  channel.close();
                }""");

        assertThat(page.evaluate(KEPT)).isEqualTo(before);
        assertThat(page.locator(NOTE)).hasValue("Float valve stuck");
    }
}

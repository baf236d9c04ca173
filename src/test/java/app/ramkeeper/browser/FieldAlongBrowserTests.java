package app.ramkeeper.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.identity.Role;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.options.FilePayload;
import java.util.Base64;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** Photos and drawings on the phone: taken along, shown without a line, dropped when they no longer go along. */
class FieldAlongBrowserTests extends FieldRun {

    private static final byte[] PIXEL = Base64.getDecoder()
            .decode("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==");

    private static final String KEPT = """
            async () => { const base = document.querySelector('script[type=module]').src.replace('app.js', '');
              return (await (await import(base + 'pictures.js')).keysHere()).length; }""";

    /** A visit with a photo of the gate and one of work done. */
    private void photographed(Page page) {
        openVisit(page);
        page.locator("input[type=file]").setInputFiles(new FilePayload[] {
            new FilePayload("gate.png", "image/png", PIXEL), new FilePayload("work.png", "image/png", PIXEL)
        });
        assertThat(page.locator("img.thumb")).hasCount(2);
        page.getByLabel("Says").first().fill("Blue gate by the woolshed");
        page.getByLabel("Says").last().fill("Strainer clean");
        button(page, "Shows the gate").first().click();
        assertThat(page.locator("button[aria-pressed=true]", new Page.LocatorOptions().setHasText("Shows the gate")))
                .hasCount(1);
        button(page, "Nobody there").click();
        page.locator("#finish").click();
        assertThat(page.locator(".state.sent")).hasCount(1);
        // what a phone draws is the same picture twice: the second is another one
        jdbc.sql(
                        "insert into files (sha256, media_type, size, content, created_at) values (sha256(:content), 'image/png', octet_length(:content), :content, now()) on conflict do nothing")
                .param("content", PIXEL)
                .update();
        transaction.executeWithoutResult(status ->
                jdbc.sql("""
                        insert into photos (id, report_id, sha256, caption)
                        select gen_random_uuid(), id, sha256(:content), 'Vessel gauge' from visit_reports where site_id = :site""").param("content", PIXEL).param("site", site).update());
    }

    private void openSite(Page page) {
        page.evaluate("id => { location.hash = '#/site/' + id; }", site.toString());
        page.locator("h1", new Page.LocatorOptions().setHasText("Tussock")).waitFor();
    }

    private void phonePage(Page page, String says) {
        page.evaluate("() => { location.hash = '#/'; }");
        page.evaluate("() => { location.hash = '#/phone'; }");
        assertThat(page.locator("main")).containsText(says);
    }

    private void again(Page page) {
        page.reload();
        ready(page);
    }

    @Test
    @DisplayName("SEC-75 photos of a pinned site show without a line, the gate first; unpinned, or another's, they go")
    void pinnedPhotosComeAlong() {
        Page page = phone();
        technician(page, "Ash Byre");
        photographed(page);
        openSite(page);
        assertThat(page.locator("figure")).hasCount(0);
        button(page, "Pin: its photos come along").click();
        assertThat(page.locator("figure")).hasCount(2);
        assertThat(page.locator("figcaption").first()).containsText("Gate, way in: Blue gate by the woolshed");

        line.cut(true);
        page.reload();
        openSite(page);
        assertThat(page.locator("figure")).hasCount(2);
        assertThat(page.locator("h2").first()).hasText("Way in");
        assertThat(page.locator("h2:has-text('Way in') + .album img"))
                .hasAttribute("alt", "Gate, way in: Blue gate by the woolshed");
        page.waitForFunction("() => [...document.querySelectorAll('figure img')].every((i) => i.naturalWidth === 1)");
        isAccessible(page);
        button(page, "Unpin: its photos stay behind").click();
        assertThat(page.locator("main")).containsText("No signal: pin it where there is one.");
        phonePage(page, "2 of 2, of your next 7 days and 1 pinned site");

        line.cut(false);
        again(page);
        openSite(page);
        button(page, "Unpin: its photos stay behind").click();
        assertThat(button(page, "Pin: its photos come along")).isVisible();
        assertThat(page.locator("figure")).hasCount(0);
        page.waitForCondition(() -> page.evaluate(KEPT).equals(0));
        phonePage(page, "none asked for");

        openSite(page);
        button(page, "Pin: its photos come along").click();
        page.waitForCondition(() -> page.evaluate(KEPT).equals(2));
        page.context().clearCookies();
        page.reload();
        openSite(page);
        assertThat(page.locator("figure")).hasCount(2);
        signIn(page, "Bryn Cote", Role.TECHNICIAN);
        toField(page);
        page.waitForCondition(() -> page.evaluate(KEPT).equals(0));
        openSite(page);
        assertThat(page.locator("figure")).hasCount(0);
    }

    @Test
    @DisplayName("SYN-13 SYN-19 a portal's page is no photo; a full phone leaves photos behind and says so")
    void onlyWholeOnesAndOnlyIfThereIsRoom() {
        Page page = phone();
        page.addInitScript(
                "navigator.storage.estimate = async () => ({ usage: 1e9 - (localStorage.room === 'little' ? 1e6 : 5e8), quota: 1e9 });");
        technician(page, "Cade Wold");
        photographed(page);
        page.route(
                "**/field/pictures/*",
                route -> route.fulfill(new Route.FulfillOptions()
                        .setStatus(200)
                        .setContentType("text/html")
                        .setBody("<html>Please pay first.</html>")));
        openSite(page);
        button(page, "Pin: its photos come along").click();
        assertThat(page.locator("main")).containsText("1 of 1 is not on the phone yet.");
        assertThat(page.evaluate(KEPT)).isEqualTo(0);
        page.unroute("**/field/pictures/*");

        page.evaluate("() => { localStorage.room = 'little'; }");
        again(page);
        phonePage(page, "The phone is full: 2 of 2 photos stay behind.");
        assertThat(page.evaluate(KEPT)).isEqualTo(0);
        isAccessible(page);

        page.evaluate("() => { localStorage.room = 'enough'; }");
        again(page);
        page.waitForCondition(() -> page.evaluate(KEPT).equals(2));
        phonePage(page, "2 of 2, of your next 7 days");
        button(page, "Remove the sites").click();
        page.waitForCondition(() -> page.evaluate(KEPT).equals(0));
    }

    @Test
    @DisplayName("SYN-19 a phone without room gives up photos it took along before a word or photo of today")
    void todayHasRoomFirst() {
        Page page = phone();
        page.addInitScript(
                "window.gaveUp = false; const put = IDBObjectStore.prototype.put; const clear = IDBObjectStore.prototype.clear;"
                        + " IDBObjectStore.prototype.clear = function () { window.gaveUp = true; return clear.call(this); };"
                        + " IDBObjectStore.prototype.put = function (...a) { if (!window.gaveUp && ['photos', 'drafts'].includes(this.name) && window.full) {"
                        + " throw new DOMException('full', 'QuotaExceededError'); } return put.apply(this, a); };");
        technician(page, "Dara Fold");
        photographed(page);
        openSite(page);
        button(page, "Pin: its photos come along").click();
        page.waitForCondition(() -> page.evaluate(KEPT).equals(2));
        openVisit(page);
        page.evaluate("() => { window.full = true; }");
        page.locator("input[type=file]").setInputFiles(new FilePayload("p.png", "image/png", PIXEL));
        assertThat(page.locator("img.thumb")).hasCount(1);
        assertThat(page.locator("main")).not().containsText("The phone is full");
        assertThat(page.evaluate(KEPT)).isEqualTo(0);
    }
}

package app.ramkeeper.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import com.microsoft.playwright.Page;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** The field pages on a phone whose line is cut, flaps, loses answers or is answered by somebody else. */
class FieldBrowserTests extends FieldRun {

    private static final String PORTAL =
            "HTTP/1.1 200 OK\r\nContent-Type: text/html\r\nContent-Length: 31\r\nConnection: close\r\n\r\n"
                    + "<html>Please pay first.</html>\n";
    private static final String BUSY =
            "HTTP/1.1 503 Service Unavailable\r\nRetry-After: 30\r\nContent-Length: 0\r\nConnection: close\r\n\r\n";

    @Test
    @DisplayName("SYN-13 SYN-17 a day without a line: opens, keeps each letter, sends by itself when the line is back")
    void worksWithoutLine() {
        Page page = phone();
        technician(page, "Wirihana Copse");
        page.context().pages().get(0).evaluate("() => { delete window.SyncManager; }");
        line.cut(true);

        page.reload();
        assertThat(page.locator("h1")).hasText("Your visits");
        long start = ((Number)
                        page.evaluate(
                                "() => performance.getEntriesByType('paint').find((p) => p.name === 'first-contentful-paint').startTime | 0"))
                .longValue();
        assertThat(start).as("ms until it shows").isLessThan(1000);
        page.evaluate("id => { location.hash = '#/site/' + id; }", site.toString());
        assertThat(page.locator("main")).containsText("By the old sheep dip");
        assertThat(page.content()).doesNotContain("owes us money");
        isAccessible(page);
        openVisit(page);
        page.locator("textarea[data-q=note]").pressSequentially("Wasps under the li");
        page.waitForFunction("() => document.getElementById('kept').textContent.startsWith('Kept')");

        String address = page.url();
        Page again = page.context().newPage();
        page.close();
        again.navigate(address);
        assertThat(again.locator("textarea[data-q=note]")).hasValue("Wasps under the li");
        again.locator("textarea[data-q=note]").pressSequentially("d");
        again.locator("input[data-q=DELIVERED_FLOW]").fill("4,5");
        again.locator("input[data-q=BEAT_RATE]").fill("62");
        button(again, "Nobody there").click();
        isAccessible(again);
        again.locator("#finish").click();
        assertThat(again.locator("main")).containsText("waits to be sent");
        org.assertj.core.api.Assertions.assertThat(reports()).isZero();

        line.cut(false);
        again.evaluate("() => dispatchEvent(new Event('online'))");
        assertThat(again.locator(".state.sent")).hasCount(1);
        Map<String, Object> row = jdbc.sql("select note, source, nobody_there from visit_reports where site_id = :site")
                .param("site", site)
                .query()
                .singleRow();
        assertThat(row).containsEntry("note", "Wasps under the lid").containsEntry("source", "PHONE");
        assertThat(jdbc.sql("select value from readings where install_id = :i and quantity = 'DELIVERED_FLOW'")
                        .param("i", install)
                        .query(Double.class)
                        .single())
                .isEqualTo(4.5);
    }

    @Test
    @DisplayName(
            "SYN-13 FLT-04 an answer that is lost, a portal's page with 200: nothing leaves the phone, one visit at the end")
    void survivesLostAnswers() {
        Page page = phone();
        technician(page, "Ngaire Flint");
        queue(page, 1, 0);
        // a browser itself tries again once on a fresh connection
        line.losesAnswers.set(1000);
        page.evaluate("() => { location.hash = '#/out'; }");
        button(page, "Send now").click();
        assertThat(button(page, "Send now")).isEnabled();
        assertThat(page.locator("main")).containsText("waits to be sent");
        page.waitForCondition(() -> reports() == 1);
        page.waitForCondition(() -> button(page, "Send now").isEnabled());
        assertThat(page.locator("main")).containsText("waits to be sent");

        line.losesAnswers.set(0);
        line.answers(PORTAL);
        button(page, "Send now").click();
        assertThat(button(page, "Send now")).isEnabled();
        assertThat(page.locator("main")).containsText("waits to be sent");

        line.answers("");
        sent(page, 1);
        org.assertj.core.api.Assertions.assertThat(reports()).isEqualTo(1);
    }

    @Test
    @DisplayName("SYN-16 a busy server with Retry-After 30 is left alone for 30 seconds")
    void waitsAsAsked() {
        Page page = phone();
        technician(page, "Tama Reed");
        queue(page, 1, 0);
        page.route(
                "**/field/entries",
                route -> route.fulfill(new com.microsoft.playwright.Route.FulfillOptions()
                        .setStatus(503)
                        .setHeaders(Map.of("Retry-After", "30"))));
        page.evaluate("() => { location.hash = '#/out'; }");
        button(page, "Send now").click();
        assertThat(button(page, "Send now")).isEnabled();
        String left = """
                async () => { const base = document.querySelector('script[type=module]').src.replace('app.js', '');
                  const [entry] = await (await import(base + 'store.js')).all('outbox');
                  return entry.tries > 0 ? entry.next - Date.now() : 0; }""";
        page.waitForCondition(() -> ((Number) page.evaluate(left)).longValue() > 0);
        Number wait = (Number) page.evaluate(left);
        assertThat(wait.longValue()).isBetween(25_000L, 31_000L);
        page.unroute("**/field/entries");
        sent(page, 1);
    }

    @Test
    @DisplayName("SYN-14 session over, another person signs in on the phone: sent under its writer, nothing lost")
    void anotherPersonCarriesIt() {
        Page page = phone();
        PersonId writer = technician(page, "Aroha Scree");
        queue(page, 2, 1);
        page.context().clearCookies();
        page.evaluate("() => { location.hash = '#/out'; }");
        button(page, "Send now").click();
        assertThat(page.locator("main")).containsText("Nothing is lost");
        assertThat(page.locator("li[data-id]")).hasCount(2);

        PersonId carrier = signIn(page, "Bevan Mire", Role.TECHNICIAN);
        toField(page);
        page.evaluate("() => { location.hash = '#/out'; }");
        assertThat(page.locator(".state.sent")).hasCount(2);
        assertThat(jdbc.sql(
                                "select count(*) from field_entries e join visit_reports r on r.id = e.id where e.person_id = :writer and e.carried_by = :carrier and r.recorded_by = :writer and e.result = 'APPLIED'")
                        .param("writer", writer.value())
                        .param("carrier", carrier.value())
                        .query(Long.class)
                        .single())
                .isEqualTo(2);
        assertThat(photos()).isEqualTo(2);
    }

    @Test
    @DisplayName("SYN-15 one bad visit is parked with the reason and mended; the others arrive")
    void parksTheBadOne() {
        Page page = phone();
        technician(page, "Cato Birch");
        openVisit(page);
        page.locator("textarea[data-q=note]").fill("x".repeat(10_001));
        page.locator("#finish").click();
        assertThat(page.locator("main")).containsText("to be mended");
        queue(page, 4, 0);
        sent(page, 4);
        assertThat(page.locator("main")).containsText("too long");

        button(page, "Mend").click();
        page.locator("textarea[data-q=note]").fill("short");
        page.locator("#finish").click();
        assertThat(page.locator(".state.sent")).hasCount(5);
        org.assertj.core.api.Assertions.assertThat(reports()).isEqualTo(5);
    }

    @Test
    @DisplayName("SYN-18 two tabs with ten visits send each once")
    void twoTabs() {
        Page page = phone();
        technician(page, "Dell Carr");
        Page other = page.context().newPage();
        toField(other);
        queue(page, 10, 0);
        int before = line.posts.get();
        page.evaluate("() => dispatchEvent(new Event('online'))");
        other.evaluate("() => dispatchEvent(new Event('online'))");
        page.evaluate("() => { location.hash = '#/out'; }");
        assertThat(page.locator(".state.sent")).hasCount(10);
        assertThat(line.posts.get() - before).isEqualTo(10);
        org.assertj.core.api.Assertions.assertThat(reports()).isEqualTo(10);
    }

    @Test
    @DisplayName("SYN-20 a line that flaps: 60 visits of two phones with photos, none twice, none lost")
    void flapping() throws InterruptedException {
        Page one = phone();
        technician(one, "Edda Vale");
        Page two = phone();
        technician(two, "Fitz Moor");
        queue(one, 30, 1);
        queue(two, 30, 1);
        line.losesAnswers.set(7);
        for (int i = 0; i < 6; i++) {
            one.evaluate("() => dispatchEvent(new Event('online'))");
            two.evaluate("() => dispatchEvent(new Event('online'))");
            Thread.sleep(400);
            line.cut(true);
            Thread.sleep(150);
            line.cut(false);
        }
        for (Page page : List.of(one, two)) {
            page.evaluate("() => { location.hash = '#/out'; }");
            page.waitForCondition(
                    () -> {
                        if (page.locator(".state.sent").count() < 30) {
                            page.evaluate("() => dispatchEvent(new Event('online'))");
                            page.waitForTimeout(300);
                        }
                        return page.locator(".state.sent").count() == 30;
                    },
                    new Page.WaitForConditionOptions().setTimeout(90_000));
        }
        org.assertj.core.api.Assertions.assertThat(reports()).isEqualTo(60);
        assertThat(photos()).isEqualTo(60);
        assertThat(jdbc.sql("select count(distinct note) from visit_reports where site_id = :site")
                        .param("site", site)
                        .query(Long.class)
                        .single())
                .isEqualTo(30);
    }

    @Test
    @DisplayName("all script stays under 60 KB, the first load under 300 KB, targets are 48 px high")
    void staysSmall() throws java.io.IOException {
        Page page = phone();
        technician(page, "Gwen Holt");
        page.reload();
        Number script = (Number) page.evaluate("""
                async () => { let sum = 0;
                  for (const key of await (await caches.open((await caches.keys()).find((k) => k.startsWith('field-')))).keys()) {
                    const body = await (await fetch(key.url, { cache: 'reload' })).blob();
                    if (key.url.endsWith('.js')) {
                      const packed = new Response(body.stream().pipeThrough(new CompressionStream('gzip')));
                      sum += (await packed.blob()).size;
                    }
                  } return sum; }""");
        assertThat(script.longValue()).isBetween(5_000L, 60_000L);
        Number all = (Number) page.evaluate("""
                async () => { let sum = 0;
                  for (const key of await (await caches.open((await caches.keys()).find((k) => k.startsWith('field-')))).keys()) {
                    sum += (await (await fetch(key.url)).blob()).size;
                  } return sum; }""");
        assertThat(all.longValue()).isLessThan(300_000L);
        line.cut(true);
        page.reload();
        assertThat(page.locator("h1")).hasText("Your visits");
        Number shown = (Number)
                page.evaluate(
                        "() => performance.getEntriesByType('paint').find((p) => p.name === 'first-contentful-paint').startTime");
        assertThat(shown.longValue()).as("ms until it shows without a line").isLessThan(1000);
        line.cut(false);
        java.nio.file.Files.writeString(
                Path.of("target", "field-facts.txt"),
                "script, gzip: %d bytes%nfirst load, not compressed: %d bytes%nshown without a line: %d ms%n"
                        .formatted(script.longValue(), all.longValue(), shown.longValue()));
        openVisit(page);
        page.locator("summary", new Page.LocatorOptions().setHasText("Something else"))
                .click();
        button(page, "Pump swapped").click();
        page.locator("summary", new Page.LocatorOptions().setHasText("Water sample"))
                .click();
        page.getByLabel("What for").selectOption("COMMISSIONING");
        button(page, "Next setting").click();
        Object small = page.evaluate("""
                () => [...document.querySelectorAll('main button, main select, main textarea, main input:not([type=checkbox]), nav a, main summary')]
                  .filter((e) => e.getClientRects().length && e.getBoundingClientRect().height < 48).map((e) => e.outerHTML.slice(0, 90))""");
        assertThat((List<?>) small).isEmpty();
        picture(page, "visit");
        page.evaluate("id => { location.hash = '#/site/' + id; }", site.toString());
        page.locator("h2").first().waitFor();
        picture(page, "site");
        for (String name : List.of("", "sites", "out", "phone")) {
            page.evaluate("name => { location.hash = '#/' + name; }", name);
            page.waitForTimeout(300);
            picture(page, name.isEmpty() ? "today" : name);
        }
    }

    private void picture(Page page, String name) {
        for (var scheme : List.of(
                com.microsoft.playwright.options.ColorScheme.LIGHT,
                com.microsoft.playwright.options.ColorScheme.DARK)) {
            page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
            isAccessible(page);
            page.screenshot(new Page.ScreenshotOptions()
                    .setFullPage(true)
                    .setPath(Path.of("target", "field-" + name + "-" + scheme + ".png")));
        }
    }

    @Test
    @DisplayName("SYN-21 a phone three days ahead: the visit is kept as told, the offset noted and shown")
    void wrongClock() {
        Page page = phone();
        technician(page, "Hugo Tarn");
        page.addInitScript(
                "{ const real = Date.now; const ahead = 259200000; const Real = Date; Date.now = () => real() + ahead;"
                        + " window.Date = class extends Real { constructor(...a) { if (a.length) { super(...a); } else { super(real() + ahead); } } static now() { return real() + ahead; } }; }");
        toField(page);
        page.evaluate("() => { location.hash = '#/phone'; }");
        assertThat(page.locator("main")).containsText("ahead of the office");
        LocalDate today = LocalDate.now(clock);
        page.evaluate("""
                async ([site, on]) => { const base = document.querySelector('script[type=module]').src.replace('app.js', '');
                  const store = await import(base + 'store.js'); const send = await import(base + 'send.js'); const who = await store.get('kv', 'who');
                  await store.finish(await send.seal({ v: 1, id: crypto.randomUUID(), site, kind: 'SERVICE', on, outcome: 'DONE', nobodyThere: true, photos: 0 }, who.person, [])); }""", List.of(site.toString(), today.toString()));
        sent(page, 1);
        assertThat(jdbc.sql(
                                "select e.clock_ahead_s from field_entries e join visit_reports r on r.id = e.id where r.site_id = :site")
                        .param("site", site)
                        .query(Long.class)
                        .single())
                .isBetween(259_100L, 259_300L);
    }
}

package app.ramkeeper.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import java.io.IOException;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.springframework.context.ConfigurableApplicationContext;

/** Long days at the end of a bad line: a week's work at once, a slow line, a server that is restarted. */
class FieldLineDrillTests extends FieldRun {

    private static final int BYTES_OF_50_KBIT = 50_000 / 8;

    private void equal(int count) {
        assertThat(reports()).isEqualTo(count);
        assertThat(jdbc.sql("select count(distinct note) from visit_reports where site_id = :site")
                        .param("site", site)
                        .query(Long.class)
                        .single())
                .isEqualTo(count);
        assertThat(photos()).isEqualTo(count);
        assertThat(jdbc.sql("""
                        select count(*) from field_entries e join visit_reports r on r.id = e.id
                        where r.site_id = :site and encode(e.content_hash, 'hex') = encode(sha256(convert_to(e.text, 'UTF8')), 'hex')""").param("site", site).query(Long.class).single()).isEqualTo(count);
        assertThat(jdbc.sql("""
                        select count(*) from photos p join visit_reports r on r.id = p.report_id join field_photos f on f.id = p.id and f.entry_id = r.id
                        where r.site_id = :site and f.caption = 'n' || substring(r.note from '[0-9]+$')""").param("site", site).query(Long.class).single()).isEqualTo(count);
    }

    private void sendAll(Page page, int count) {
        page.evaluate("() => { location.hash = '#/out'; }");
        button(page, "Send now").click();
        until(page, () -> page.locator(".state.sent").count() == count, 85);
    }

    private static void until(Page page, BooleanSupplier done, int seconds) {
        page.waitForCondition(done, new Page.WaitForConditionOptions().setTimeout(seconds * 1000.0));
    }

    @Test
    @DisplayName("SYN-13 SYN-16 200 visits with a photo each at full speed: all there, none twice")
    void aWeekAtOnce() {
        Page page = phone();
        technician(page, "Rata Sedge");
        line.cut(true);
        queue(page, 200, 1);
        line.cut(false);
        sendAll(page, 200);
        equal(200);
    }

    @Test
    @DisplayName("SYN-20 three visits with photos at 50 kbit/s: words before photos, all there")
    void slowLine() {
        Page page = phone();
        technician(page, "Seth Burn");
        queue(page, 3, 1, 300);
        line.slow(BYTES_OF_50_KBIT);
        page.evaluate("() => { location.hash = '#/out'; }");
        button(page, "Send now").click();
        until(page, () -> reports() == 3, 60);
        assertThat(photos()).as("photos when the words were there").isLessThan(3);
        until(page, () -> page.locator(".state.sent").count() == 3, 85);
        equal(3);
    }

    @Test
    @DisplayName("SYN-20 the line is cut at half of the second photo: one of three is there, then all, each whole")
    void cutAtHalfAPhoto() {
        Page page = phone();
        technician(page, "Uma Fell");
        line.cut(true);
        queue(page, 1, 3, 300);
        Object kept = page.evaluate("""
                async () => { const base = document.querySelector('script[type=module]').src.replace('app.js', '');
                  const store = await import(base + 'store.js'); const send = await import(base + 'send.js');
                  return Promise.all((await store.all('photos')).map(async (p) => send.sha256(await p.blob.arrayBuffer()))); }""");
        line.cutsPhoto.set(2);
        page.evaluate("() => { location.hash = '#/out'; }");
        line.cut(false);
        button(page, "Send now").click();
        until(page, () -> line.cutsPhoto.get() <= 0 && button(page, "Send now").isEnabled(), 30);
        assertThat(page.locator("main")).containsText("words sent, photos waiting");
        assertThat(reports()).isEqualTo(1);
        assertThat(photos()).as("whole photos; the half one shows nowhere").isEqualTo(1);
        line.cut(false);
        page.evaluate("() => dispatchEvent(new Event('online'))");
        until(page, () -> page.locator(".state.sent").count() == 1, 60);
        assertThat(photos()).isEqualTo(3);
        assertThat(jdbc.sql("""
                        select encode(f.sent_sha256, 'hex') from field_photos f join visit_reports r on r.id = f.entry_id
                        where r.site_id = :site""").param("site", site).query(String.class).list())
                .containsExactlyInAnyOrderElementsOf(
                        ((java.util.List<?>) kept).stream().map(String::valueOf).toList());
    }

    @Test
    @DisplayName("SYN-13 the server is restarted while a phone sends: signed in still, all there, seen at once")
    void serverRestarted() throws IOException {
        Page page = phone();
        technician(page, "Tove Glen");
        queue(page, 40, 1);
        page.evaluate("() => { location.hash = '#/out'; }");
        button(page, "Send now").click();
        until(page, () -> reports() >= 3, 60);
        line.cut(true);
        long before = reports();
        try (ConfigurableApplicationContext next = another()) {
            line.leadsTo(Integer.parseInt(String.valueOf(next.getEnvironment().getProperty("local.server.port"))));
            line.cut(false);
            page.evaluate("() => dispatchEvent(new Event('online'))");
            until(page, () -> page.locator(".state.sent").count() == 40, 80);
            assertThat(before).isBetween(3L, 39L);
            equal(40);
            // what the new one confirmed is on the old one at once
            line.leadsTo(port);
            page.navigate("/sites");
            assertThat(page.locator("main")).containsText("Tussock " + site);
        } finally {
            line.leadsTo(port);
        }
    }
}

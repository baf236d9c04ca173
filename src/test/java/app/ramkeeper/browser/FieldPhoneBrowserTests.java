package app.ramkeeper.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** What the phone shows before a visit begins, without a line and after signing out. */
class FieldPhoneBrowserTests extends FieldRun {

    private static final String BUNDLE = """
            async () => { const base = document.querySelector('script[type=module]').src.replace('app.js', '');
              const store = await import(base + 'store.js'); const pictures = await import(base + 'pictures.js');
              return [await store.get('kv', 'bundle') ? 1 : 0, (await pictures.keysHere()).length, (await store.all('outbox')).length, (await store.all('drafts')).length]; }""";

    @Test
    @DisplayName(
            "SEC-75 SYN-14 after signing out no site is shown; what waits is counted, kept, and sent after signing in")
    void signedOut() {
        Page page = phone();
        technician(page, "Orla Fenn");
        openVisit(page);
        page.locator("textarea[data-q=note]").fill("Half a note");
        line.cut(true);
        queue(page, 2, 0);
        line.cut(false);
        Page desk = page.context().newPage();
        desk.route("**/field/entries", com.microsoft.playwright.Route::abort);
        page.close();
        desk.navigate("/my-day");
        button(desk, "Sign out").click();
        desk.waitForURL("**/sign-in?out");
        desk.waitForTimeout(500);
        for (String at : List.of("/field", "/field#/sites", "/field#/site/" + site, "/field#/out")) {
            desk.navigate("about:blank");
            desk.navigate(at);
            assertThat(desk.locator("h1")).hasText("Signed out");
            assertThat(desk.locator("main"))
                    .containsText("Sign in to read.2 visits wait to be sent1 visit is not finished");
            assertThat(desk.locator("body")).not().containsText("Tussock");
        }
        assertThat(desk.evaluate(BUNDLE)).isEqualTo(List.of(0, 0, 2, 1));
        isAccessible(desk);
        desk.unroute("**/field/entries");
        signIn(desk, "Rhea Moss", Role.TECHNICIAN);
        toField(desk);
        desk.evaluate("() => { location.hash = '#/out'; }");
        assertThat(desk.locator(".state.sent")).hasCount(2);
        assertThat(reports()).isEqualTo(2);
        desk.evaluate("() => { location.hash = '#/'; }");
        desk.locator("a[href^='#/visit/']").click();
        assertThat(desk.locator("textarea[data-q=note]")).hasValue("Half a note");
    }

    @Test
    void withoutALineTheAddressPeopleTypeLeadsToThePhonesPages() {
        Page page = phone();
        technician(page, "Pia Lode");
        line.cut(true);
        page.navigate("/");
        assertThat(page.locator("h1")).hasText("Your visits");
        page.navigate("/my-day");
        assertThat(page.locator("h1")).hasText("No signal");
        isAccessible(page);
        page.getByText("Open the phone’s pages").click();
        assertThat(page.locator("h1")).hasText("Your visits");
        line.cut(false);
        page.navigate("/my-day");
        assertThat(page.locator("h1")).not().hasText("No signal");
    }

    @Test
    void pageOfAnOlderEditionSaysSoAndLosesNothingWhenItIsLoadedAnew() {
        Page page = phone();
        technician(page, "Sunniva Gill");
        openVisit(page);
        assertThat(page.locator("#bar")).not().containsText("A newer form");
        page.evaluate("""
                async () => { const name = (await caches.keys()).find((k) => k.startsWith('field-'));
                  const cache = await caches.open(name);
                  const text = await (await cache.match('/field')).text();
                  await cache.put('/field', new Response(text.replaceAll(name.slice(6), 'f'.repeat(32)), { headers: { 'Content-Type': 'text/html' } }));
                  navigator.serviceWorker.dispatchEvent(new Event('controllerchange')); }""");
        assertThat(page.locator("#bar")).containsText("A newer form is on the phone.");
        isAccessible(page);
        page.locator("textarea[data-q=note]").pressSequentially("The weir is half gone");
        button(page, "Reload").click();
        page.waitForFunction("() => document.querySelector('script[type=module]').src.includes('f'.repeat(32))");
        assertThat(page.locator("textarea[data-q=note]")).hasValue("The weir is half gone");
        ready(page);
        assertThat(page.locator("#bar")).not().containsText("A newer form");
    }

    @Test
    void iconsAreAsLargeAsTheManifestSays() {
        Page page = phone();
        page.navigate("/field");
        assertThat(page.evaluate("""
                async () => { const { icons } = await (await fetch('/manifest.webmanifest')).json();
                  const list = [];
                  for (const i of icons.filter((x) => x.type === 'image/png')) {
                    const img = await createImageBitmap(await (await fetch(i.src)).blob());
                    const canvas = new OffscreenCanvas(img.width, img.height); const pen = canvas.getContext('2d'); pen.drawImage(img, 0, 0);
                    list.push(`${i.sizes} ${img.width}x${img.height} ${i.purpose || 'any'} ${pen.getImageData(0, 0, 1, 1).data[3]}`);
                  } return list; }"""))
                .isEqualTo(List.of("192x192 192x192 any 0", "512x512 512x512 any 0", "512x512 512x512 maskable 255"));
    }

    @Test
    void lateTaskSaysHowLateAndTodaysCardWhatIsAsked() {
        Page page = phone();
        PersonId person = signIn(page, "Quill Nash", Role.TECHNICIAN);
        LocalDate today = LocalDate.now(clock);
        UUID late = task("CLEAN_STRAINER", today.minusDays(8), today.minusDays(1));
        task("CHECK_PRECHARGE", today.minusDays(3), today.plusDays(4));
        UUID visit = planned(person);
        jdbc.sql(
                        "insert into visit_tasks (visit_id, task_id, install_id, task_kind_id) select :visit, id, install_id, task_kind_id from service_tasks where id = :task")
                .param("visit", visit)
                .param("task", late)
                .update();
        promisedBefore(person, "Bring the seal set");
        toField(page);
        Locator card = page.locator("main li").filter(new Locator.FilterOptions().setHasText("Tussock"));
        assertThat(card).containsText("Asked: " + name("CLEAN_STRAINER"));
        assertThat(card).not().containsText(name("CHECK_PRECHARGE"));
        assertThat(card).containsText("Promised: Bring the seal set");
        page.evaluate("id => { location.hash = '#/site/' + id; }", site.toString());
        assertThat(page.locator(".state.late")).hasText("overdue, 8 days late");
        assertThat(page.locator("main")).containsText("3 days late, fine until");
        isAccessible(page);

        button(page, "Visit of").click();
        page.getByLabel("What the next one should know").fill("Forgot the strainer");
        page.locator("#finish").click();
        assertThat(page.locator("[role=alert]"))
                .containsText("Asked for and not answered: " + name("CLEAN_STRAINER") + ". It stays due.");
        button(page, "Finish all the same").click();
        assertThat(page.locator(".state.sent")).hasCount(1);
        assertThat(report())
                .containsEntry(
                        "note", "Forgot the strainer\nAsked for and not answered: " + name("CLEAN_STRAINER") + ".");
    }

    private void promisedBefore(PersonId person, String text) {
        UUID merged = UUID.randomUUID();
        UUID report = UUID.randomUUID();
        transaction.executeWithoutResult(status -> {
            jdbc.sql("insert into sites (id, name, merged_into) values (?, 'Merged since', ?)")
                    .params(merged, site)
                    .update();
            jdbc.sql("""
                            insert into visit_reports (id, site_id, kind, attended_on, recorded_at, recorded_by, outcome, content_hash, source)
                            values (?, ?, 'SERVICE', '2026-01-05', now(), ?, 'DONE', decode(repeat('ab', 32), 'hex'), 'FORM')""").params(report, merged, person.value()).update();
            jdbc.sql("insert into follow_ups (id, report_id, site_id, text, promised) values (?, ?, ?, ?, true)")
                    .params(UUID.randomUUID(), report, site, text)
                    .update();
        });
    }

    @Test
    void withoutASignalItSaysSoAndWhatWaitsCanBeRead() {
        Page page = phone();
        technician(page, "Una Brook");
        UUID owner = UUID.randomUUID();
        transaction.executeWithoutResult(status -> {
            jdbc.sql("insert into customers (id, name) values (?, ?)")
                    .params(owner, "Jessop " + owner)
                    .update();
            jdbc.sql("insert into site_parties (id, site_id, part, customer_id) values (?, ?, 'OWNER', ?)")
                    .params(UUID.randomUUID(), site, owner)
                    .update();
        });
        toField(page);
        page.evaluate("() => { location.hash = '#/sites'; }");
        page.locator("input[type=search]").fill("jessop " + owner);
        assertThat(page.locator("main li")).hasCount(1);
        assertThat(page.locator("main li")).containsText("Tussock " + site);
        page.locator("input[type=search]").fill("nobody of that name");
        assertThat(page.locator("main li")).containsText("No site on this phone has that");

        openVisit(page);
        line.cut(true);
        page.getByLabel("What the next one should know").fill("Heron on the weir");
        page.locator("input[data-q=DELIVERED_FLOW]").fill("4.5");
        page.locator("#finish").click();
        assertThat(page.locator("#bar")).containsText("No signal: what you write is kept on this phone.");
        button(page, "Send now").click();
        assertThat(page.locator("main")).containsText("No answer from the office");
        unfold(page, "Read it");
        assertThat(page.locator("main details")).containsText("delivered flow: 4.5 l/min");
        assertThat(page.locator("main details")).containsText("Heron on the weir");
        isAccessible(page);
        line.cut(false);
        page.evaluate("() => dispatchEvent(new Event('online'))");
        assertThat(page.locator(".state.sent")).hasCount(1);
        assertThat(page.locator("#bar")).not().containsText("No signal");
    }

    @Test
    void whoeverIsSentToACallReadsWhatTheyRangAbout() {
        Page page = phone();
        PersonId person = signIn(page, "Vesper Rill", Role.TECHNICIAN);
        planned(person);
        jdbc.sql("""
                        insert into calls (id, received_at, taken_by, site_id, install_id, symptom, water_hours_left, stock_dry, advice, promised_by)
                        values (:id, :at, :by, :site, :install, 'LESS_WATER', 6, true, 'Open the scour valve once', :by_when)""")
                .param("id", UUID.randomUUID())
                .param("at", java.time.OffsetDateTime.now(clock))
                .param("by_when", java.time.OffsetDateTime.now(clock).plusHours(5))
                .param("by", person.value())
                .param("site", site)
                .param("install", install)
                .update();
        toField(page);
        for (Locator where : List.of(
                page.locator("main li").filter(new Locator.FilterOptions().setHasText("Tussock")),
                page.locator("main"))) {
            assertThat(where).containsText("Somebody rang: Less water than usual, Top ram");
            assertThat(where).containsText("Stock without water. Water lasts until");
            assertThat(where).containsText("Promised by");
            assertThat(where).containsText("Told them: Open the scour valve once");
            page.evaluate("id => { location.hash = '#/site/' + id; }", site.toString());
        }
        isAccessible(page);
    }

    private UUID task(String kind, LocalDate due, LocalDate until) {
        UUID id = UUID.randomUUID();
        jdbc.sql(
                        "insert into service_tasks (id, install_id, task_kind_id, due_on, window_from, window_until) select :id, :install, id, :due, :due, :until from task_kinds where code = :kind")
                .param("id", id)
                .param("install", install)
                .param("kind", kind)
                .param("due", due)
                .param("until", until)
                .update();
        return id;
    }

    private String name(String kind) {
        return jdbc.sql("select name from task_kinds where code = :kind")
                .param("kind", kind)
                .query(String.class)
                .single();
    }
}

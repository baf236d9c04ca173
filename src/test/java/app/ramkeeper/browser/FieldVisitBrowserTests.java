package app.ramkeeper.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.assertions.LocatorAssertions;
import com.microsoft.playwright.options.AriaRole;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** The visit's page: what is typed stays, one tap writes down what follows, a list stays the one that was begun. */
class FieldVisitBrowserTests extends FieldRun {

    private static final String NOTE = "textarea[data-q=note]";

    private static void unfold(Page page, String summary) {
        page.locator("summary", new Page.LocatorOptions().setHasText(summary)).click();
    }

    private Map<String, Object> report() {
        return jdbc.sql("select * from visit_reports where site_id = :site")
                .param("site", site)
                .query()
                .singleRow();
    }

    private List<String> leftToDo() {
        return jdbc.sql("select text from follow_ups where site_id = :site order by text")
                .param("site", site)
                .query(String.class)
                .list();
    }

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
    void lockedGateIsOneTapAndCanBeTakenBack() {
        jdbc.sql(
                        "insert into service_tasks (id, install_id, task_kind_id, due_on, window_from, window_until)"
                                + " select gen_random_uuid(), :install, id, current_date - 30, current_date - 40, current_date - 20 from task_kinds order by id limit 1")
                .param("install", install)
                .update();
        Page page = phone();
        technician(page, "Mira Fell");
        openVisit(page);
        unfold(page, "Something else came up");
        button(page, "Gate locked").click();
        assertThat(page.locator("main")).containsText("visit in vain");
        button(page, "Gate locked").click();
        assertThat(page.locator("main")).not().containsText("visit in vain");
        button(page, "Gate locked").click();
        button(page, "All as usual").click();
        button(page, "Gate locked").click();
        button(page, "All as usual").click();
        button(page, "Gate locked").click();
        isAccessible(page);
        button(page, "Nobody there").click();
        page.locator("#finish").click();
        assertThat(page.locator(".state.sent")).hasCount(1);
        assertThat(report()).containsEntry("outcome", "COULD_NOT").containsEntry("reason", "LOCKED_GATE");
        assertThat(jdbc.sql(
                                "select distinct w.outcome from report_works w join visit_reports r on r.id = w.report_id where r.site_id = ?")
                        .param(site)
                        .query(String.class)
                        .list())
                .as("nothing was done behind a locked gate")
                .containsExactly("COULD_NOT");
        assertThat(leftToDo()).containsExactly("Ring for the key and plan again: the gate was locked");
    }

    @Test
    void drySourceIsKeptAsEvidence() {
        Page page = phone();
        technician(page, "Nels Moss");
        openVisit(page);
        unfold(page, "Something else came up");
        button(page, "Source dry").click();
        button(page, "Nobody there").click();
        page.locator("#finish").click();
        assertThat(page.locator(".state.sent")).hasCount(1);
        assertThat(report()).containsEntry("reason", "NO_WATER");
        assertThat(jdbc.sql("select value from readings where install_id = :i and quantity = 'SOURCE_FLOW'")
                        .param("i", install)
                        .query(Double.class)
                        .single())
                .isZero();
        assertThat(jdbc.sql(
                                "select f.symptom from findings f join visit_reports r on r.id = f.report_id where r.site_id = :s")
                        .param("s", site)
                        .query(String.class)
                        .list())
                .containsExactly("SOURCE_DRY");
    }

    @Test
    void swappedLoanedAndMovedPumpsGoToTheRegisterAndAreNotCompared() {
        Page page = phone();
        technician(page, "Orla Thorn");
        openVisit(page);
        unfold(page, "Something else came up");
        button(page, "Pump swapped").click();
        page.getByLabel("Serial taken out").fill("A-17");
        button(page, "Pump on loan").click();
        page.getByLabel("Serial of the loan pump").fill("L-2");
        page.getByLabel("Back by").fill("2027-02-01");
        button(page, "Pump moved").click();
        page.getByLabel("Where it stands now").fill("60 m down, by the willow");
        assertThat(page.getByLabel("Serial taken out")).hasValue("A-17");
        button(page, "Strainer stolen").click();
        button(page, "Flood went over it").click();
        page.locator("input[data-q=DELIVERED_FLOW]").fill("4,5");
        button(page, "Nobody there").click();
        page.locator("#finish").click();
        assertThat(page.locator(".state.sent")).hasCount(1);
        assertThat(leftToDo())
                .hasSize(7)
                .contains(
                        "Register: pump swapped. Serial out: A-17; serial in: not known; the old pump is now: not known",
                        "Register: loan pump fitted. Serial: L-2",
                        "Fetch the loan pump back. Serial: L-2",
                        "Register: pump moved. New place: 60 m down, by the willow. New configuration; the old baseline ends",
                        "Look early at the valve rubbers: the pump may have run without a strainer");
        assertThat(jdbc.sql("select comparable from readings where install_id = :i")
                        .param("i", install)
                        .query(Boolean.class)
                        .list())
                .containsExactly(false);
    }

    @Test
    void sampleDisinfectionAndCleaningAreRecordedWithoutLine() {
        Page page = phone();
        technician(page, "Pim Heath");
        line.cut(true);
        openVisit(page);
        unfold(page, "Water sample");
        page.getByLabel("Sample taken: number").fill("S-204");
        page.getByLabel("Taken where, for what").fill("kitchen tap, E. coli");
        page.getByLabel("Taken at").fill("10:40");
        page.getByLabel("Laboratory").fill("Valley laboratory");
        page.getByLabel("Results").fill("E. coli; < 1; per 100 ml\npH");
        page.getByLabel("Next sample on").fill("2027-05-03");
        page.getByLabel("Product").fill("sodium hypochlorite");
        page.getByLabel("Strength").fill("50 mg/l");
        page.getByLabel("Contact time").fill("an hour");
        page.getByLabel("Flushed where").fill("to the paddock");
        page.getByLabel("Boots and tools").fill("5 % detergent");
        button(page, "Nobody there").click();
        page.locator("#finish").click();
        assertThat(page.locator("[role=alert]"))
                .containsText("Disinfect only downstream of the isolated pump: tick that it was isolated.");
        assertThat(page.locator("[role=alert]")).containsText("“an hour” is no number of minutes");
        assertThat(page.locator("[role=alert]")).containsText("“pH” lacks one");
        page.getByLabel("Results").fill("E. coli; < 1; per 100 ml\npH; 7.4");
        assertThat(page.locator("[role=alert]")).containsText("Read the caution about drinking water.");
        button(page, "I have read this").click();
        page.getByLabel("Pump isolated").check();
        page.getByLabel("Contact time").fill("60");
        page.locator("#finish").click();
        assertThat(page.locator("main")).containsText("waits to be sent");
        line.cut(false);
        page.evaluate("() => dispatchEvent(new Event('online'))");
        // a first attempt on the cut line may fail; the phone then waits half a minute
        assertThat(page.locator(".state.sent")).hasCount(1, new LocatorAssertions.HasCountOptions().setTimeout(60_000));
        assertThat(report().get("note")).isNull();
        assertThat(jdbc.sql("""
                        select s.reference || '|' || s.place || '|' || s.taken_time || '|' || coalesce(s.taken_by, '-') || '|' || s.laboratory || '|' || s.next_on || '|'
                          || (select string_agg(w.parameter || '=' || w.value || coalesce(' ' || w.unit, ''), ',' order by w.seq) from water_results w where w.sample_id = s.id)
                          || '|' || h.product || '|' || h.strength || '|' || h.contact_minutes || '|' || h.flushed || '|' || h.cleaned
                        from water_samples s join visit_reports r on r.id = s.report_id join hygiene_records h on h.report_id = r.id where r.site_id = :site""").param("site", site).query(String.class).single())
                .isEqualTo(
                        "S-204|kitchen tap, E. coli|10:40:00|-|Valley laboratory|2027-05-03|E. coli=< 1 per 100 ml,pH=7.4"
                                + "|sodium hypochlorite|50 mg/l|60|to the paddock|5 % detergent");
        assertThat(jdbc.sql(
                                "select due_on::text from follow_ups where site_id = :site and text = 'Take the next water sample'")
                        .param("site", site)
                        .query(String.class)
                        .list())
                .containsExactly("2027-05-03");
        page.reload();
        ready(page);
        page.evaluate("id => { location.hash = '#/site/' + id; }", site.toString());
        assertThat(page.locator("main")).containsText("E. coli: < 1 per 100 ml");
        assertThat(page.locator("main")).containsText("Next sample Mon 3 May 2027");
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
    void commissioningKeepsItsListAndFindsTheDryMonthsSetting() {
        Page page = phone();
        technician(page, "Quin Brake");
        openVisit(page);
        page.getByLabel("What for").selectOption("COMMISSIONING");
        assertThat(page.locator("main")).containsText("hold point");
        line.cut(true);
        page.evaluate("""
                async () => { const store = await import(document.querySelector('script[type=module]').src.replace('app.js', 'store.js'));
                  const kept = await store.get('kv', 'bundle');
                  kept.data.checklists = [{ id: crypto.randomUUID(), model: null, edition: 999, items: [{ code: 'X', text: 'Wave at the sheep', hold: true }] }];
                  await store.put('kv', kept, 'bundle'); }""");
        page.reload();
        page.locator("#finish").waitFor();
        assertThat(page.locator("main")).not().containsText("Wave at the sheep");
        assertThat(page.locator("main")).containsText("150 mm");

        String[][] steps = {{"1 turn", "30", "2.4"}, {"2 turns", "50", "3.9"}, {"3 turns", "70", "4.6"}};
        for (int i = 0; i < steps.length; i++) {
            button(page, "Next setting").click();
            Locator row = page.locator(".row.three[role=group]").nth(i);
            row.getByLabel("Setting", new Locator.GetByLabelOptions().setExact(true))
                    .fill(steps[i][0]);
            row.getByLabel("Drive, l/min").fill(steps[i][1]);
            row.getByLabel("Delivered, l/min").fill(steps[i][2]);
        }
        page.getByLabel("Dry-month flow").fill("20");
        assertThat(page.locator("main")).containsText("The dry month feeds none");
        page.getByLabel("Dry-month flow").fill("55");
        assertThat(page.locator("main")).containsText("Best for the dry month: setting 2 turns, 3.9 l/min");
        assertThat(page.locator("main")).containsText("While there is more water: setting 3 turns, 4.6 l/min");
        assertThat(page.locator("svg.plot circle.ring")).hasCount(1);
        assertThat(page.locator("svg.plot circle")).hasCount(4);
        isAccessible(page);
        page.locator("#finish").click();
        assertThat(page.locator("[role=alert]")).containsText("Tick or explain: Delivery open.");
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

    /** A visit planned for today, for the person signed in on this phone. */
    private void planned(PersonId person) {
        transaction.executeWithoutResult(status -> {
            UUID visit = UUID.randomUUID();
            jdbc.sql(
                            "insert into visits (id, site_id, kind, planned_on, minutes) values (:id, :site, 'SERVICE', :on, 60)")
                    .param("id", visit)
                    .param("site", site)
                    .param("on", LocalDate.now(clock))
                    .update();
            jdbc.sql("insert into visit_people (visit_id, person_id, lead) values (:visit, :person, true)")
                    .param("visit", visit)
                    .param("person", person.value())
                    .update();
        });
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
}

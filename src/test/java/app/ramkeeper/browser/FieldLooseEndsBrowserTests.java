package app.ramkeeper.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.identity.Role;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** What cannot be read, is hardly possible or was not acknowledged: said at once, never a wall, never dropped. */
class FieldLooseEndsBrowserTests extends FieldRun {

    private static Locator mark(Page page, Locator input) {
        return page.locator(".field")
                .filter(new Locator.FilterOptions().setHas(input))
                .locator(".wrong");
    }

    private static Locator alert(Page page) {
        return page.locator("[role=alert]");
    }

    /** Taps finish, then finish all the same. */
    private void finishAllTheSame(Page page) {
        page.locator("#finish").click();
        button(page, "Finish all the same").click();
        assertThat(page.locator(".state.sent")).hasCount(1);
    }

    private List<Map<String, Object>> all(String sql) {
        return jdbc.sql(sql).param("site", site).query().listOfRows();
    }

    @Test
    void whatCannotBeReadIsMarkedAtOnceAndGoesToTheOfficeInWords() {
        Page page = phone();
        technician(page, "Effie Rand");
        openVisit(page);
        button(page, "Add a part").click();
        page.getByLabel("Which part").fill("Waste rubber");
        page.getByLabel("How many").fill("a few");
        assertThat(mark(page, page.getByLabel("How many"))).hasText("“a few” is no number.");
        page.getByLabel("How many").fill(",5");
        assertThat(mark(page, page.getByLabel("How many"))).isHidden();
        page.getByLabel("How many").fill("a few");
        button(page, "Add a finding").click();
        page.getByLabel("What is wrong").selectOption("STOPPED_SHUT");
        Locator cause = page.getByLabel("Cause", new Page.GetByLabelOptions().setExact(true));
        cause.fill("A nail across the seat");
        page.getByLabel("What is wrong").selectOption("");
        assertThat(cause).hasValue("A nail across the seat");
        Locator flow = page.locator("input[data-q=DRIVE_FLOW]");
        flow.fill("200000");
        assertThat(mark(page, flow)).containsText("is more than can be: 100,000 l/min");
        flow.fill("fifty");
        page.getByLabel("What for").selectOption("COMMISSIONING");
        button(page, "Next setting").click();
        page.getByLabel("Delivered, l/min").fill("three");
        assertThat(mark(page, page.getByLabel("Delivered, l/min"))).hasText("“three” is no number.");
        page.getByLabel("Dry-month flow").fill("low");
        assertThat(mark(page, page.getByLabel("Dry-month flow"))).hasText("“low” is no number.");
        page.getByLabel("Setting", new Page.GetByLabelOptions().setExact(true)).fill("2 turns");
        page.getByLabel("Left and locked").fill("abc");
        assertThat(mark(page, page.getByLabel("Left and locked"))).containsText("None of the settings tried");
        isAccessible(page);
        page.getByLabel("Visit", new Page.GetByLabelOptions().setExact(true)).selectOption("PARTLY");
        page.locator("#finish").click();
        assertThat(alert(page)).containsText("A part needs its name and how many.");
        assertThat(alert(page)).containsText("choose what is wrong with “A nail across the seat”");
        isAccessible(page);
        finishAllTheSame(page);
        assertThat(String.valueOf(report().get("note")))
                .contains("Part as typed: a few Waste rubber")
                .contains("Finding as typed: A nail across the seat")
                .contains("Drive flow as typed: fifty l/min")
                .contains("Delivered flow at setting 2 turns as typed: three")
                .contains("Dry-month flow as typed: low");
        assertThat(leftToDo()).singleElement().asString().startsWith("Settle what was typed");
        assertThat(all("select 1 from readings g join visit_reports r on r.id = g.report_id where r.site_id = :site"))
                .isEmpty();
        assertThat(jdbc.sql("select text from field_entries where id = :id")
                        .param("id", report().get("id"))
                        .query(String.class)
                        .single())
                .contains("\"steps\":[{\"setting\":\"2 turns\",\"drive\":null,\"delivered\":null}],\"dryFlow\":null");
    }

    @Test
    void hardlyPossibleReadingIsAskedAboutAndTheAnswerGoesAlong() {
        Page page = phone();
        technician(page, "Gwil Toft");
        openVisit(page);
        button(page, "More readings").click();
        Locator charge = page.locator("input[data-q=PRE_CHARGE]");
        Locator asked = page.locator(".note").filter(new Locator.FilterOptions().setHasText("keeps water out"));
        charge.fill("2,3");
        assertThat(asked).hasCount(0);
        charge.fill("9");
        assertThat(asked).containsText("The delivery stands at about 2.9 bar");
        isAccessible(page);
        page.locator("input[data-q=BEAT_RATE]").fill("190");
        button(page, "Beats: it is as read").click();
        page.locator("#finish").click();
        assertThat(alert(page)).containsText("Pre-charge 9 bar: The delivery stands at about 2.9 bar");
        assertThat(alert(page)).not().containsText("Beats");
        finishAllTheSame(page);
        assertThat(String.valueOf(report().get("note")))
                .contains("Beats 190 /min is as read. Asked: A ram beats")
                .contains("Pre-charge 9 bar, asked about and not confirmed: ");
        assertThat(
                        all(
                                "select quantity, as_read, comparable from readings g join visit_reports r on r.id = g.report_id where r.site_id = :site order by 1"))
                .containsExactly(
                        Map.of("quantity", "BEAT_RATE", "as_read", true, "comparable", true),
                        Map.of("quantity", "PRE_CHARGE", "as_read", false, "comparable", false));
    }

    @Test
    void nothingIsWorkedOutWithAValueThatIsAskedAboutAndAsUsualIsHeldAgainstWhatIsRead() {
        jdbc.sql(
                        "insert into baselines (id, configuration_id, taken_on, drive_flow_si, delivered_flow_si, beat_rate_si)"
                                + " select gen_random_uuid(), id, '2019-05-01', 0.001, 0.00008, 62 / 60.0 from configurations where install_id = :i")
                .param("i", install)
                .update();
        jdbc.sql(
                        "insert into service_tasks (id, install_id, task_kind_id, due_on, window_from, window_until) select gen_random_uuid(), :i, id, current_date, current_date, current_date + 30 from task_kinds where code = 'CLEAN_STRAINER'")
                .param("i", install)
                .update();
        Page page = phone();
        technician(page, "Mabel Cross");
        openVisit(page);
        button(page, "All as usual").click();
        assertThat(page.locator("main")).not().containsText("is tapped, but");
        page.locator("input[data-q=DELIVERED_FLOW]").fill("48");
        assertThat(page.locator("main")).containsText("is far from the baseline");
        assertThat(page.locator("main")).not().containsText("% above the baseline");
        assertThat(page.locator("main"))
                .containsText("Left out until it is mended or said to be as read: Delivered flow.");
        assertThat(page.locator("main"))
                .containsText("“All as usual” is tapped, but a reading is not as usual (delivered flow).");
        isAccessible(page);
        button(page, "Delivered flow: it is as read").click();
        assertThat(page.locator("main")).containsText("900 % above the baseline");
        page.locator("input[data-q=DELIVERED_FLOW]").fill("4.8");
        assertThat(page.locator("main")).containsText("as the baseline");
        assertThat(page.locator("main")).not().containsText("is tapped, but");
        button(page, "Add a finding").click();
        page.getByLabel("What is wrong").selectOption("LEAK_PIPE");
        assertThat(page.locator("main")).containsText("“All as usual” is tapped, but a finding is written down");
        page.locator("#finish").click();
        assertThat(page.locator(".state.sent")).hasCount(1);
    }

    @Test
    @DisplayName("a caution that is not acknowledged, a pump that could not be isolated: recorded, no wall")
    void cautionsAreNoWall() {
        jdbc.sql("insert into site_hazards (id, site_id, kind) values (gen_random_uuid(), :site, 'CONFINED_SPACE')")
                .param("site", site)
                .update();
        Page page = phone();
        technician(page, "Hild Marr");
        openVisit(page);
        button(page, "Arrived").click();
        unfold(page, "Water sample");
        page.getByLabel("Product").fill("hypochlorite");
        page.getByLabel("Or why it was not isolated").fill("the gate valve is seized");
        page.getByLabel("Sample taken: number").fill("S-1");
        button(page, "Another sample").click();
        assertThat(page.getByLabel("Sample taken: number")).hasCount(2);
        page.getByLabel("Sample taken: number").last().fill("S-2");
        page.getByLabel("Next sample on")
                .last()
                .fill(LocalDate.now(clock).plusDays(30).toString());
        page.locator("#finish").click();
        assertThat(alert(page)).containsText("Read the caution about the confined chamber.");
        assertThat(alert(page)).containsText("Read the caution about drinking water.");
        button(page, "I have read this").first().click();
        finishAllTheSame(page);
        assertThat(report()).containsEntry("note", "The caution about drinking water was not acknowledged.");
        assertThat(
                        all(
                                "select product, isolated, not_isolated from hygiene_records h join visit_reports r on r.id = h.report_id where r.site_id = :site"))
                .containsExactly(Map.of(
                        "product", "hypochlorite", "isolated", false, "not_isolated", "the gate valve is seized"));
        assertThat(
                        all(
                                "select reference from water_samples s join visit_reports r on r.id = s.report_id where r.site_id = :site order by 1"))
                .containsExactly(Map.of("reference", "S-1"), Map.of("reference", "S-2"));
        assertThat(leftToDo()).containsExactly("Take the next water sample");
        page.navigate("/visits/reports/" + report().get("id"));
        assertThat(page.locator("main")).containsText("Disinfected, pump not isolated:");
        assertThat(page.locator("main")).containsText("not isolated because: the gate valve is seized");
    }

    @Test
    void preChargeAidTakesNoTemperatureThatCannotBe() {
        Page page = phone();
        technician(page, "Jude Hext");
        line.cut(true);
        page.evaluate("""
                async (id) => { const store = await import(document.querySelector('script[type=module]').src.replace('app.js', 'store.js'));
                  const kept = await store.get('kv', 'bundle');
                  kept.data.installs.find((i) => i.id === id).pumps = [{ id, vessel: 'BLADDER' }];
                  await store.put('kv', kept, 'bundle'); }""", install.toString());
        page.reload();
        openVisit(page);
        unfold(page, "What pre-charge?");
        Locator gas = page.getByLabel("Vessel and gas, °C");
        assertThat(page.locator("main")).containsText("bar on a vessel at 10 °C");
        gas.fill("-300");
        assertThat(mark(page, gas)).containsText("“-300” is less than can be: -40 °C");
        assertThat(page.locator("main")).not().containsText("bar on a vessel at");
        gas.fill("-5");
        assertThat(mark(page, gas)).hasText("");
        assertThat(page.locator("main")).containsText("bar on a vessel at -5 °C");
    }

    @Test
    void watchGoesOnAfterThePageWasClosedAndUnreadableLitresHideNoRun() {
        Page page = phone();
        signIn(page, "Ivo Stead", Role.TECHNICIAN);
        toField(page);
        openVisit(page);
        Locator watch = page.locator("details")
                .filter(new Locator.FilterOptions().setHasText("Bucket and watch"))
                .first();
        Locator run = watch.locator("button.primary");
        watch.locator("summary").click();
        run.click();
        page.waitForFunction("() => document.getElementById('kept').textContent.startsWith('Kept')");
        page.waitForTimeout(1200);
        page.reload();
        assertThat(run).hasText("Full");
        page.waitForFunction("() => parseFloat(document.querySelector('.watch').textContent) > 1.2");
        run.click();
        assertThat(watch).containsText("1 run: ");
        page.getByLabel("Bucket, litres").first().fill("ten");
        assertThat(mark(page, page.getByLabel("Bucket, litres").first())).hasText("“ten” is no number.");
        assertThat(watch).containsText("Give the litres, and they become a flow.");
        assertThat(watch).containsText("1 run: ");
    }

    @Test
    void commissioningWithoutFlowsIsAskedAboutAndDaysAreLookedAt() {
        Page page = phone();
        technician(page, "Kit Orrin");
        openVisit(page);
        page.getByLabel("What for").selectOption("COMMISSIONING");
        Locator holds = page.locator("label.tick").filter(new Locator.FilterOptions().setHasText("(hold point)"));
        assertThat(holds.first()).isVisible();
        for (int i = 0, all = holds.count(); i < all; i++) {
            holds.nth(i).locator("input").check();
            assertThat(holds.nth(i).locator("input")).isChecked();
        }
        Locator unread = page.locator("button:visible", new Page.LocatorOptions().setHasText("I have read this"));
        for (int left = unread.count(); left > 0; left--) {
            assertThat(unread).hasCount(left);
            unread.first().click();
        }
        button(page, "Next setting").click();
        button(page, "Next setting").click();
        for (int i = 0; i < 2; i++) {
            page.getByLabel("Drive, l/min").nth(i).fill(i == 0 ? "40" : "60");
            page.getByLabel("Delivered, l/min").nth(i).fill(i == 0 ? "3" : "4");
        }
        page.getByLabel("Dry-month flow").fill("45");
        page.getByLabel("Dry setting from").fill("2027-03-01");
        page.getByLabel("Dry setting until").fill("2026-12-01");
        page.locator("input[data-q=DRIVE_FLOW]").fill("60");
        button(page, "Something left to do").click();
        page.getByLabel("Left to do").fill("Fence the intake");
        page.getByLabel("By", new Page.GetByLabelOptions().setExact(true)).fill("2020-01-01");
        page.locator("#finish").click();
        assertThat(alert(page)).containsText("Delivered flow of Top ram: not read under Readings");
        assertThat(alert(page)).not().containsText("Drive flow");
        assertThat(alert(page)).not().containsText("Tick or explain");
        assertThat(alert(page)).containsText("The dry setting ends before it begins");
        assertThat(alert(page)).containsText("“Fence the intake”: Wed 1 Jan 2020 is past.");
        isAccessible(page);
        finishAllTheSame(page);
        assertThat(String.valueOf(report().get("note")))
                .contains("Put to work without a reading for the baseline: Delivered flow.")
                .contains("Dry setting as typed: from Mon 1 Mar 2027 until Tue 1 Dec 2026")
                .contains("“Fence the intake” was asked for by Wed 1 Jan 2020, a day past at the visit.");
        assertThat(jdbc.sql("select text from field_entries where id = :id")
                        .param("id", report().get("id"))
                        .query(String.class)
                        .single())
                .contains("\"dryFrom\":null,\"dryUntil\":null,\"leftSetting\"");
    }
}

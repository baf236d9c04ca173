package app.ramkeeper.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.SelectOption;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A site with two installs: the phone asks which one is meant, and what it sends says so. */
class FieldInstallsBrowserTests extends FieldRun {

    private UUID lower;

    @BeforeEach
    void addInstall() {
        lower = UUID.randomUUID();
        transaction.executeWithoutResult(status -> {
            jdbc.sql(
                            "insert into installs (id, site_id, name, commissioned_on) values (?, ?, 'Lower ram', '2020-05-01')")
                    .params(lower, site)
                    .update();
            jdbc.sql("insert into configurations (id, install_id, fall_m, lift_m) values (?, ?, 5, 25)")
                    .params(UUID.randomUUID(), lower)
                    .update();
        });
    }

    @Test
    void findingsAndPartsNameTheirInstall() {
        Page page = phone();
        technician(page, "Odo Fen");
        openVisit(page);
        finding(page, "Washer split");
        button(page, "Add a part").click();
        page.getByLabel("Which part").fill("Hemp washer");
        button(page, "Nobody there").click();
        page.locator("#finish").click();
        assertThat(page.locator("[role=alert]"))
                .containsText("Say where each finding was: at which install, or the whole site.");
        assertThat(page.locator("[role=alert]")).containsText("Say in which install each part was fitted.");
        isAccessible(page);

        choose(where(page), "Lower ram");
        choose(page.getByLabel("Fitted in"), "Lower ram");
        finding(page, "Ford washed out");
        choose(where(page).last(), "The whole site");
        page.locator("#finish").click();
        assertThat(page.locator(".state.sent")).hasCount(1);

        assertThat(jdbc.sql("""
                        select f.cause || ': ' || coalesce(i.name, 'site') from findings f join visit_reports r on r.id = f.report_id
                          left join installs i on i.id = f.install_id where r.site_id = ? order by 1""").param(site).query(String.class).list())
                .containsExactly("Ford washed out: site", "Washer split: Lower ram");
        assertThat(jdbc.sql(
                                "select u.install_id from parts_used u join visit_reports r on r.id = u.report_id where r.site_id = ?")
                        .param(site)
                        .query(UUID.class)
                        .list())
                .containsExactly(lower);
    }

    @Test
    void commissioningAsksWhichInstallAndOnlyThatGetsTheBaseline() {
        Page page = phone();
        technician(page, "Pia Dell");
        openVisit(page);
        page.getByLabel("What for").selectOption("COMMISSIONING");
        Locator buckets = page.locator("summary", new Page.LocatorOptions().setHasText("Bucket and watch"));
        buckets.last().click();
        button(page, "Set out").click();
        assertThat(button(page, "Set out")).hasAttribute("aria-pressed", "true");
        assertThat(page.locator("details[open]:has(summary:text('Bucket and watch'))"))
                .hasCount(1);
        flow(page, "Top ram").fill("4.2");
        flow(page, "Lower ram").fill("3.1");
        page.getByLabel("Left and locked at setting").waitFor();
        Locator unread = page.locator("button:visible", new Page.LocatorOptions().setHasText("I have read this"));
        int cautions = unread.count();
        for (int left = cautions; left > 0; left--) {
            assertThat(unread).hasCount(left);
            unread.first().click();
        }
        assertThat(unread).hasCount(0);
        int steps = page.locator("label.tick").count();
        for (int i = 0; i < steps; i++) {
            Locator step = page.locator("label.tick").nth(i);
            if (step.innerText().contains("hold point")) {
                step.locator("input").check();
            }
        }
        page.getByLabel("Left and locked at setting").fill("2 turns");
        button(page, "Nobody there").click();
        page.locator("#finish").click();
        assertThat(page.locator("[role=alert] li")).hasCount(1);
        assertThat(page.locator("[role=alert]")).containsText("Say which install was put to work");

        choose(page.getByLabel("Install that is put to work"), "Lower ram");
        page.locator("#finish").click();
        assertThat(page.locator("[role=alert]")).containsText("Drive flow of Lower ram: not read");
        button(page, "Finish all the same").click();
        assertThat(page.locator(".state.sent")).hasCount(1);

        assertThat(jdbc.sql("""
                        select i.name || ' ' || round((b.delivered_flow_si * 60000)::numeric, 1) || ' ' || c.valve_setting
                        from baselines b join configurations c on c.id = b.configuration_id join installs i on i.id = c.install_id
                        where i.site_id = ?""").param(site).query(String.class).list()).containsExactly("Lower ram 3.1 2 turns");
    }

    @Test
    void commissioningBeginsWithTheOneThatWaitsAndAsksForItsPump() {
        UUID waiting = UUID.randomUUID();
        transaction.executeWithoutResult(status -> {
            jdbc.sql("insert into installs (id, site_id, name, commissioning_known) values (?, ?, 'New ram', true)")
                    .params(waiting, site)
                    .update();
            jdbc.sql(
                            "insert into configurations (id, install_id, fall_m, lift_m, vessel_precharge_bar) values (?, ?, 3, 28, 2.24)")
                    .params(UUID.randomUUID(), waiting)
                    .update();
        });
        Page page = phone();
        technician(page, "Ludo Hay");
        openVisit(page);
        page.getByLabel("What for").selectOption("COMMISSIONING");
        assertThat(page.getByLabel("Install that is put to work").locator("option:checked"))
                .hasText("New ram");
        Locator readings = page.locator("h2").filter(new Locator.FilterOptions().setHasText("Readings"));
        assertThat(readings).hasText(new String[] {"Readings, New ram"});
        unfold(page, "What pre-charge?");
        // by hand: 999.7 kg/m3 x 9.80665 x 28 m = 2.745 bar, less half a bar
        assertThat(page.locator("main")).containsText("Set 2.2 bar on a vessel at 10 °C (lift 28 m");
        assertThat(page.locator("main")).containsText("The design says 2.24 bar.");
        button(page, "Next setting").click();
        page.getByLabel("Dry-month flow").fill("25");
        assertThat(page.locator("main")).containsText("Give drive and delivered flow of each setting");
        assertThat(page.locator("main")).not().containsText("feeds none");
        isAccessible(page);
        button(page, "More readings").click();
        button(page, "Readings of the other installs too").click();
        assertThat(readings).hasCount(3);
        assertThat(page.locator("input[data-q=FALL]")).hasCount(1);
        Locator holds = page.locator("label.tick").filter(new Locator.FilterOptions().setHasText("(hold point)"));
        for (int i = 0, all = holds.count(); i < all; i++) {
            holds.nth(i).locator("input").check();
            assertThat(holds.nth(i).locator("input")).isChecked();
        }
        flow(page, "New ram").fill("1.35");
        button(page, "Nobody there").click();
        page.locator("#finish").click();
        assertThat(page.locator("[role=alert]")).containsText("No pump stands in New ram in the register");
        page.getByLabel("Pump serial").fill("LW1113");
        page.locator("#finish").click();
        assertThat(page.locator("[role=alert]")).not().containsText("No pump stands");
        button(page, "Finish all the same").click();
        assertThat(page.locator(".state.sent")).hasCount(1);
        assertThat(leftToDo())
                .contains("Register: no pump stands in New ram; fit the one that was put to work: serial LW1113");
    }

    @Test
    void movedPumpIsThatOfOneInstallAndTheOtherIsStillCompared() {
        Page page = phone();
        technician(page, "Rhun Mossop");
        openVisit(page);
        unfold(page, "Something else came up");
        button(page, "Pump moved").click();
        page.getByLabel("Where it stands now").fill("by the willow");
        flow(page, "Top ram").fill("4.2");
        flow(page, "Lower ram").fill("3.1");
        page.locator("#finish").click();
        assertThat(page.locator("[role=alert]")).containsText("Pump moved: say at which install.");
        choose(page.getByLabel("At which install"), "Lower ram");
        assertThat(page.getByLabel("Where it stands now")).hasValue("by the willow");
        isAccessible(page);
        page.locator("#finish").click();
        assertThat(page.locator(".state.sent")).hasCount(1);
        assertThat(leftToDo()).singleElement().asString().startsWith("Register, Lower ram: pump moved. New place:");
        assertThat(jdbc.sql("""
                        select i.name || ' ' || g.comparable from readings g join installs i on i.id = g.install_id
                        where i.site_id = ? order by 1""").param(site).query(String.class).list())
                .containsExactly("Lower ram false", "Top ram true");
    }

    /** Installs come in the order of their ids, which are made anew for each run. */
    private static Locator flow(Page page, String install) {
        return page.locator("h2:has-text('Readings, " + install + "') ~ .field input[data-q=DELIVERED_FLOW]")
                .first();
    }

    private static Locator where(Page page) {
        return page.getByLabel("Where", new Page.GetByLabelOptions().setExact(true));
    }

    private static void finding(Page page, String cause) {
        int before = where(page).count();
        button(page, "Add a finding").click();
        assertThat(where(page)).hasCount(before + 1);
        page.getByLabel("What is wrong").last().selectOption("OTHER");
        Locator causes = page.getByLabel("Cause", new Page.GetByLabelOptions().setExact(true));
        assertThat(causes).hasCount(before + 1);
        causes.last().fill(cause);
    }

    /** Where the choice, once drawn anew, stands. */
    private static void choose(Locator where, String name) {
        where.selectOption(new SelectOption().setLabel(name));
        assertThat(where.locator("option:checked")).hasText(name);
    }
}

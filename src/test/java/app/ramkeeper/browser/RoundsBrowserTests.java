package app.ramkeeper.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import app.ramkeeper.fleet.Customers;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.Installs;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.Sites;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.shared.Uuids;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import com.microsoft.playwright.options.AriaRole;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.TestPropertySource;

/** A week from the first plan to the technician's phone: plan, drag, lock, replan, publish. */
@Import({Customers.class, Sites.class, Installs.class})
@TestPropertySource(properties = "test.database=alone")
class RoundsBrowserTests extends BrowserRun {

    @Autowired
    Sites sites;

    @Autowired
    Installs installs;

    @Autowired
    JdbcClient jdbc;

    @Test
    void plansDragsLocksReplansPublishesAndReachesThePhone() {
        LocalDate monday = LocalDate.now(clock)
                .with(TemporalAdjusters.next(DayOfWeek.MONDAY))
                .plusWeeks(13);
        LocalDate tuesday = monday.plusDays(1);
        Page phone = phone();
        PersonId tui = signIn(phone, "Tui Harding", Role.TECHNICIAN);
        UUID depot = Uuids.next();
        jdbc.sql("insert into depots (id, name, latitude, longitude) values (?, ?, -45.02, 168.70)")
                .params(depot, "Depot " + depot)
                .update();
        jdbc.sql("update people set depot_id = ? where id = ?")
                .params(depot, tui.value())
                .update();
        String name = "Sluice " + depot.toString().substring(30);
        due(sites.named(name), monday);
        String week = "/rounds/" + monday;
        Page office = desk();
        signIn(office, "Marama Teal", Role.OFFICE);

        open(office, week);
        office.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Make the plan"))
                .click();
        Locator waiting = office.locator("tr[data-stop]", new Page.LocatorOptions().setHasText(name));
        assertThat(waiting).containsText("pressing");
        isAccessible(office);

        Locator day = office.locator("ol[data-to='" + tui.value() + "/" + tuesday + "']");
        waiting.dragTo(day);
        Locator stop = day.locator("li[data-stop]", new Locator.LocatorOptions().setHasText(name));
        assertThat(stop).containsText("drive");

        stop.getByRole(AriaRole.LINK).click();
        isAccessible(office);
        office.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Lock to this day"))
                .click();
        assertThat(stop).containsText("locked");

        office.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Replan lightly"))
                .click();
        assertThat(office.locator(".run-end"))
                .containsText("Replanned lightly", new LocatorAssertions.ContainsTextOptions().setTimeout(120_000));
        office.navigate(week);
        assertThat(stop).containsText("locked");

        office.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Publish"))
                .click();
        assertThat(office.locator("main")).containsText("Published");
        List.of(
                        "/customers",
                        "/compare",
                        "/parts",
                        "/sheets/" + tui.value() + "/" + tuesday,
                        "/rounds/" + tui.value() + "/" + tuesday)
                .forEach(page -> open(office, week + page));
        List.of("/rounds/ahead", "/rounds/places", "/rounds/calendars", "/rounds/hours")
                .forEach(page -> open(office, page));

        open(phone, "/my-day?day=" + tuesday);
        assertThat(phone.locator("main")).containsText(name);
        open(phone, "/my-day/calendar");
    }

    private void due(SiteId site, LocalDate monday) {
        InstallId install = installs.commissioned(site, monday.minusYears(3));
        jdbc.sql("""
                        update service_tasks set due_on = d.due, window_from = d.due - 30, window_until = d.due + 20, asleep_since = null, wakes_on = null
                        from (select k.id, case when k.code = 'CLEAN_STRAINER' then :due::date else :due::date + 900 end as due from task_kinds k) d
                        where install_id = :install and task_kind_id = d.id""")
                .param("due", monday.minusDays(30))
                .param("install", install.value())
                .update();
    }
}

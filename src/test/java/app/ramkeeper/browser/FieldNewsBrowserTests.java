package app.ramkeeper.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Uuids;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** What changed in the plan since it was last seen on this phone, also without a line. */
class FieldNewsBrowserTests extends FieldRun {

    @Test
    void saysWhatIsNewChangedAndTakenOffUntilItIsSeen() {
        Page page = phone();
        PersonId ada = technician(page, "Ada Lode");
        UUID moves = planned(ada);
        UUID goes = planned(ada);
        again(page);
        assertThat(page.locator("main li:has(button)")).hasCount(2);
        Locator news = page.locator("#news");
        assertThat(news).containsText("2 changes since you last looked");
        button(page, "Seen").click();
        assertThat(news).hasCount(0);

        PersonId ben = transaction.execute(status -> accounts.addPerson("Ben Adit"));
        LocalDate tomorrow = LocalDate.now(clock).plusDays(1);
        change("update visits set planned_on = ?, planned_from = '10:30' where id = ?", tomorrow, moves);
        change("update visits set planned_on = ?, planned_from = '13:00' where id = ?", tomorrow, goes);
        change("update visit_people set person_id = ? where visit_id = ?", ben.value(), goes);
        change("update visits set changed_at = now() where id = ?", goes);
        UUID comes = planned(ada);
        again(page);
        line.cut(true);
        page.reload();
        ready(page);

        assertThat(news).containsText("3 changes since you last looked");
        assertThat(news).containsText("13:00, Ben Adit");
        assertThat(news).containsText("10:30: Changed, was ");
        assertThat(page.locator("main li .state.late").filter(has("Changed, was ")))
                .hasCount(1);
        assertThat(page.locator("main li .state.late").filter(has("New"))).hasCount(1);
        isAccessible(page);

        button(page, "Seen").click();
        assertThat(news).hasCount(0);
        assertThat(page.locator("main li .state.late")).hasCount(0);
        page.reload();
        ready(page);
        assertThat(page.locator("main li:has(button)")).hasCount(2);
        assertThat(news).hasCount(0);

        line.cut(false);
        change("update visits set state = 'DONE' where id = ?", comes);
        change("update visits set minutes = 90 where id = ?", moves);
        reported(comes, ada);
        again(page);
        assertThat(news).containsText("1 change since you last looked");
        assertThat(page.locator("main li .state.late")).containsText("Changed, was 10:30, 60 min");
    }

    private void change(String sql, Object... values) {
        transaction.executeWithoutResult(
                status -> jdbc.sql(sql).params(Arrays.asList(values)).update());
    }

    private void reported(UUID visit, PersonId by) {
        change("""
                insert into visit_reports (id, visit_id, site_id, kind, attended_on, recorded_at, recorded_by, outcome, content_hash, source)
                values (?, ?, ?, 'SERVICE', ?, now(), ?, 'DONE', ?, 'FORM')""", Uuids.next(), visit, site, LocalDate.now(clock), by.value(), new byte[32]);
    }

    private static Locator.FilterOptions has(String text) {
        return new Locator.FilterOptions().setHasText(text);
    }

    private void again(Page page) {
        page.reload();
        ready(page);
    }
}

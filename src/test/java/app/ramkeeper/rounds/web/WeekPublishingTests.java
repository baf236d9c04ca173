package app.ramkeeper.rounds.web;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.rounds.week.Stop;
import app.ramkeeper.shared.Uuids;
import java.time.LocalDate;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.test.web.servlet.assertj.MvcTestResult;

/** What publishing a week tells, and what stops it. */
class WeekPublishingTests extends PlannedWeek {

    @Test
    void publishesOnceAndTellsOnlyWhatChanged() throws Exception {
        post("/rounds/" + monday + "/prepare").exchange();
        Stop stop = stopAt(near);
        move(stop, ana, monday.plusDays(1), version()).exchange();

        assertThat(publish(version())).hasStatus3xxRedirection();
        Stop told = stopAt(near);
        assertThat(told.publishedOn()).isEqualTo(monday.plusDays(1));
        assertThat(jdbc.sql("select planned_on from visits where id = ? and state = 'PLANNED'")
                        .param(told.visitId())
                        .query(LocalDate.class)
                        .single())
                .isEqualTo(monday.plusDays(1));
        assertThat(jdbc.sql("select count(*) from visit_tasks where visit_id = ?")
                        .param(told.visitId())
                        .query(Long.class)
                        .single())
                .isPositive();
        publish(version());
        assertThat(visitsAt(near)).isOne();

        move(stop, ben, monday.plusDays(2), version()).exchange();
        publish(version());
        assertThat(stopAt(near).publishedTo()).isEqualTo(ben.value());
        assertThat(stopAt(near).changedAt()).isNotNull();
        assertThat(visitsAt(near)).isOne();
        assertThat(jdbc.sql("select person_id from visit_people where visit_id = ?")
                        .param(told.visitId())
                        .query(UUID.class)
                        .list())
                .containsExactly(ben.value());

        UUID owner = Uuids.next();
        jdbc.sql("insert into customers (id, name, phone) values (?, 'Owner Weir', '00 555 7788')")
                .param(owner)
                .update();
        jdbc.sql("insert into site_parties (id, site_id, part, customer_id, until_date) values (?, ?, 'OWNER', ?, ?)")
                .params(Uuids.next(), near.value(), owner, monday.plusDays(4))
                .update();
        String sheet = "/rounds/" + monday + "/sheets/" + ben.value() + "/" + monday.plusDays(2);
        assertThat(get(sheet))
                .hasStatusOk()
                .bodyText()
                .contains("Run sheet: Ben Sluice", stop.site(), "Owner Weir (owner), 00 555 7788", "prove zero");
        assertThat(get(sheet + "/round.gpx")).hasStatusOk().bodyText().contains("<gpx", stop.site());
        byte[] paper = get(sheet + "/sheet.pdf").exchange().getResponse().getContentAsByteArray();
        assertThat(new String(paper, 0, 5, java.nio.charset.StandardCharsets.US_ASCII))
                .isEqualTo("%PDF-");
        assertThat(get("/rounds/" + monday + "/parts")).hasStatusOk();
    }

    @Test
    void publishesNothingThatBreaksARuleUnexplained() {
        post("/rounds/" + monday + "/prepare").exchange();
        Stop stop = stopAt(near);
        jdbc.sql("insert into person_leave (id, person_id, from_date, until_date) values (?, ?, ?, ?)")
                .params(Uuids.next(), ana.value(), monday, monday.plusDays(6))
                .update();
        move(stop, ana, monday, version()).exchange();
        assertThat(publish(version())).hasStatus(409).bodyText().contains("Not published", stop.site());
        assertThat(post("/rounds/" + monday + "/publish")
                        .param("version", "" + version())
                        .header("Referer", "http://localhost/rounds/" + monday))
                .hasStatus(409)
                .bodyText()
                .contains("href=\"/rounds/" + monday + "\"");
        assertThat(visitsAt(near)).isZero();
    }

    private MvcTestResult publish(int version) {
        return post("/rounds/" + monday + "/publish")
                .param("version", "" + version)
                .exchange();
    }

    private long visitsAt(SiteId site) {
        return jdbc.sql("select count(*) from visits where site_id = ?")
                .param(site.value())
                .query(Long.class)
                .single();
    }
}

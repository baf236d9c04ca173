package app.ramkeeper.rounds.web;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.rounds.week.WorkingHours;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.springframework.test.web.servlet.assertj.MockMvcTester.MockMvcRequestBuilder;
import org.springframework.test.web.servlet.assertj.MvcTestResult;

/** Working hours, holidays, starts and ends of rounds, and roads. */
class WeekSettingsTests extends PlannedWeek {

    @Test
    void keepsStartsEndsAndRoads() {
        assertThat(post("/rounds/places/people/" + ana.value())
                        .param("starts", "true")
                        .param("place", "over there"))
                .hasStatus(422)
                .bodyText()
                .contains("over there");
        assertThat(post("/rounds/places/people/" + ana.value())
                        .param("starts", "true")
                        .param("place", "-45.10, 168.80"))
                .hasStatus3xxRedirection();
        post("/rounds/" + monday + "/prepare").exchange();
        var round = weeks.load(monday).round(ana.value(), monday).orElseThrow();
        assertThat(round.start().latitude()).isEqualTo(-45.10);
        assertThat(round.end().latitude()).isEqualTo(-45.02);
        assertThat(post("/rounds/places/people/" + ana.value()).param("version", "0"))
                .hasStatus3xxRedirection();
        assertThat(weeks.load(monday)
                        .round(ana.value(), monday)
                        .orElseThrow()
                        .start()
                        .latitude())
                .isEqualTo(-45.02);

        assertThat(post("/rounds/places/areas").param("name", "Gorge").param("factor", "9"))
                .hasStatus(422)
                .bodyText()
                .contains("Gorge", "Road factor: give a number from 1 to 5", "Give a position");
        assertThat(post("/rounds/places/areas")
                        .param("name", "Gorge")
                        .param("corner", "-45.5, 168.2")
                        .param("opposite", "-44.5, 169.2")
                        .param("factor", "3")
                        .param("speed", "20"))
                .hasStatus3xxRedirection();
        move(stopAt(near), ana, monday, version()).exchange();
        double slow = weeks.load(monday).totals().driveMinutes();
        UUID area = jdbc.sql("select id from travel_areas where name = 'Gorge'")
                .query(UUID.class)
                .single();
        assertThat(get("/rounds/places?area=" + area))
                .hasStatusOk()
                .bodyText()
                .contains("Change the area", "-45.5, 168.2");
        assertThat(post("/rounds/places/areas/" + area + "/remove").param("version", "0"))
                .hasStatus3xxRedirection();
        assertThat(weeks.load(monday).totals().driveMinutes()).isLessThan(slow / 1.5);
    }

    @Test
    void keepsWorkingHoursAndHolidays() {
        String seen = WorkingHours.edition(hours.usual());
        assertThat(get("/rounds/hours")).hasStatusOk().bodyText().contains("Monday", "07:30", seen);
        assertThat(post("/rounds/hours").param("from1", "08:00").param("until1", "07:00"))
                .hasStatus(422)
                .bodyText()
                .contains("Monday: the shift ends at 07:00, before it starts at 08:00", "08:00");
        assertThat(post("/rounds/hours")
                        .param("from1", "07:30")
                        .param("until1", "17:00")
                        .param("longest1", "99999"))
                .hasStatus(422)
                .bodyText()
                .contains("Monday: a day has 1440 minutes")
                .doesNotContain("whole minutes");
        MockMvcRequestBuilder all = post("/rounds/hours").param("seen", seen);
        for (int weekday = 1; weekday <= 6; weekday++) {
            all.param("from" + weekday, "07:30")
                    .param("until" + weekday, "17:00")
                    .param("longest" + weekday, "540")
                    .param("break" + weekday, "30");
        }
        assertThat(all).hasStatus3xxRedirection();
        assertThat(jdbc.sql("select count(*) from shifts where person_id is null")
                        .query(Long.class)
                        .single())
                .isEqualTo(6);
        assertThat(post("/rounds/holidays").param("day", "soon").param("name", "Feast"))
                .hasStatus(422)
                .bodyText()
                .contains("Feast", "soon");
        assertThat(post("/rounds/holidays")
                        .param("day", monday.plusDays(1).toString())
                        .param("name", "Feast"))
                .hasStatus3xxRedirection();
        assertThat(post("/rounds/holidays")
                        .param("day", monday.plusDays(1).toString())
                        .param("name", "Fair"))
                .as("somebody else put it down under another name")
                .hasStatus(422)
                .bodyText()
                .contains("This day is Feast already", "value=\"Fair\"");
        post("/rounds/" + monday + "/prepare").exchange();
        assertThat(get("/rounds/" + monday)).hasStatusOk().bodyText().contains("Feast");
    }

    @Test
    void placesAndRoadsAreNotSavedOverWhatSomebodyElseSavedMeanwhile() {
        String place = "/rounds/places/people/" + ana.value();
        assertThat(post(place).param("starts", "true").param("place", "-45.1, 168.8"))
                .hasStatus3xxRedirection();
        assertThat(get("/rounds/places")).bodyText().contains("-45.1, 168.8");
        assertThat(post(place).param("ends", "true").param("place", "-45.2, 168.9"))
                .as("both saw that there was none")
                .hasStatus(409)
                .bodyText()
                .contains("Somebody else saved this meanwhile", "-45.1, 168.8", "value=\"-45.2, 168.9\"");
        assertThat(post(place)).as("nor does it forget it").hasStatus(409);
        assertThat(post(place).param("version", "0").param("ends", "true").param("place", "-45.2, 168.9"))
                .hasStatus3xxRedirection();
        assertThat(post(place).param("version", "0")).hasStatus(409).bodyText().contains("-45.2, 168.9");

        assertThat(area(null, null, "3")).hasStatus3xxRedirection();
        UUID id = jdbc.sql("select id from travel_areas where name = 'Gorge'")
                .query(UUID.class)
                .single();
        assertThat(area(id, "0", "2")).hasStatus3xxRedirection();
        assertThat(area(id, "0", "4"))
                .hasStatus(409)
                .bodyText()
                .contains("Somebody else saved this meanwhile", "value=\"4\"", "name=\"version\" value=\"1\"");
        assertThat(jdbc.sql("select road_factor from travel_areas where id = ?")
                        .param(id)
                        .query(Double.class)
                        .single())
                .isEqualTo(2);
        assertThat(area(id, "1", "4")).hasStatus3xxRedirection();
        assertThat(post("/rounds/places/areas/" + id + "/remove").param("version", "1"))
                .hasStatus(409)
                .bodyText()
                .contains("Gorge", "was not removed");
    }

    private MvcTestResult area(@Nullable UUID id, @Nullable String version, String factor) {
        MockMvcRequestBuilder request = post("/rounds/places/areas")
                .param("name", "Gorge")
                .param("corner", "-45.5, 168.2")
                .param("opposite", "-44.5, 169.2")
                .param("factor", factor)
                .param("speed", "20");
        if (id != null) {
            request.param("id", id.toString()).param("version", version);
        }
        return request.exchange();
    }
}

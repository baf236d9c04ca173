package app.ramkeeper.rounds.web;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.identity.PersonId;
import app.ramkeeper.rounds.week.Comparison;
import app.ramkeeper.rounds.week.Stop;
import app.ramkeeper.rounds.week.Times;
import app.ramkeeper.rounds.week.Week;
import org.junit.jupiter.api.Test;

/** What a week is made of, and two plans of it beside each other. */
class WeekPagesTests extends PlannedWeek {

    @Test
    void whoHasNowhereToStartFromStandsInNoWayOfTheOthers() {
        String past = "Old Hand " + near.value().toString().substring(30);
        PersonId hand = people.named(past);
        post("/rounds/" + monday + "/prepare").exchange();

        Week week = weeks.load(weeks.plan(monday).orElseThrow());
        assertThat(week.rounds()).noneMatch(r -> r.personId().equals(hand.value()));
        assertThat(week.nowhere()).contains(past);
        assertThat(get("/rounds/" + monday)).hasStatusOk().bodyText().contains("Without rounds", past);
    }

    @Test
    void whatOneMayDoNeedNotWaitForTwo() {
        jdbc.sql("""
                        update service_tasks set due_on = :due, window_from = :due - 30, window_until = :due + 20
                        where install_id in (select id from installs where site_id = :site)
                          and task_kind_id = (select id from task_kinds where code = 'OVERHAUL')""")
                .param("due", monday.minusDays(60))
                .param("site", near.value())
                .update();
        post("/rounds/" + monday + "/prepare").exchange();
        assertThat(stopsAt(near)).extracting(Stop::crew).containsExactlyInAnyOrder(1, 2);
        Stop alone =
                stopsAt(near).stream().filter(s -> s.crew() == 1).findFirst().orElseThrow();
        assertThat(alone.tasks()).contains("Clean strainer").doesNotContain("Overhaul");
        assertThat(move(alone, ana, monday, version())).hasStatus3xxRedirection();

        post("/rounds/" + monday + "/prepare").exchange();
        assertThat(stopsAt(near)).hasSize(2);
        assertThat(stopsAt(near))
                .filteredOn(s -> s.id().equals(alone.id()))
                .singleElement()
                .matches(s -> ana.value().equals(s.personId()));

        assertThat(post("/rounds/" + monday + "/rounds/" + ben.value() + "/" + monday + "/pair")
                        .param("version", "" + version())
                        .param("mate", ana.value().toString()))
                .hasStatus3xxRedirection();
        post("/rounds/" + monday + "/prepare").exchange();
        assertThat(stopsAt(near)).singleElement().matches(s -> s.crew() == 2);
    }

    @Test
    void comparesTwoPlansOfTheWeek() {
        post("/rounds/" + monday + "/prepare").exchange();
        Stop stop = stopAt(near);
        String compare = "/rounds/" + monday + "/compare";
        assertThat(get(compare))
                .hasStatusOk()
                .bodyText()
                .contains("only one plan of this week")
                .doesNotContain("<select");
        move(stop, ana, monday, version()).exchange();
        int first = version();
        assertThat(get(compare)).hasStatusOk().bodyText().contains("What moved (1)", "in no round");
        move(stop, ben, monday.plusDays(2), first).exchange();
        assertThat(post("/rounds/" + monday + "/stops/" + stop.id() + "/lock")
                        .param("version", "" + version())
                        .param("locked", "true"))
                .hasStatus3xxRedirection();
        assertThat(get(compare))
                .as("locked, it stands where it stood: the last other plan is the one before the move")
                .hasStatusOk()
                .bodyText()
                .contains("What moved (1)", "Ana Weir, " + Times.day(monday));

        assertThat(get("/rounds/" + monday + "/compare?one=" + first + "&other=" + version()))
                .hasStatusOk()
                .bodyText()
                .contains(
                        "What moved (1)",
                        "Ana Weir, " + Times.day(monday),
                        "Ben Sluice, " + Times.day(monday.plusDays(2)));
        Comparison comparison = Comparison.of(
                weeks.loadAs(weeks.plan(monday).orElseThrow(), 1),
                weeks.loadAs(weeks.plan(monday).orElseThrow(), first));
        assertThat(comparison.driving()).as("from nothing to one round").isPositive();
        assertThat(comparison.before().lateDays())
                .as("a week out is later than its Monday")
                .isEqualTo(comparison.after().lateDays() + 7);
        assertThat(get("/rounds/" + monday + "/compare?one=99")).hasStatus(404);
    }
}

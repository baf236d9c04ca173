package app.ramkeeper.rounds.web;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.rounds.week.Openings;
import app.ramkeeper.rounds.week.RoundKey;
import app.ramkeeper.rounds.week.Stop;
import app.ramkeeper.rounds.week.Times;
import app.ramkeeper.rounds.week.Week;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.test.web.servlet.assertj.MvcTestResult;

/** What the office moves by hand, step by step, alone or two at once. */
class WeekMovesTests extends PlannedWeek {

    @Test
    void makesAPlanAndMovesAVisit() {
        assertThat(get("/rounds/" + monday)).hasStatusOk().bodyText().contains("no plan yet");
        assertThat(post("/rounds/" + monday + "/prepare")).hasStatus3xxRedirection();

        Stop stop = stopAt(near);
        assertThat(stop.must()).isTrue();
        assertThat(get("/rounds/" + monday)).hasStatusOk().bodyText().contains("Ana Weir", "Ben Sluice", stop.site());
        assertThat(get("/rounds/" + monday + "/stops/" + stop.id()))
                .hasStatusOk()
                .bodyText()
                .contains("driving, starts");

        assertThat(move(stop, ana, monday.plusDays(1), version())).hasStatus3xxRedirection();
        assertThat(stopAt(near).personId()).isEqualTo(ana.value());
        assertThat(get("/rounds/" + monday)).hasStatusOk().bodyText().contains("sets out", "Moved " + stop.site());
        assertThat(get("/rounds/" + monday + "/rounds/" + ana.value() + "/" + monday.plusDays(1)))
                .hasStatusOk()
                .bodyText()
                .contains("In order", stop.site(), "polyline");
        assertThat(get("/rounds/" + monday + "/add?site=" + near.value()))
                .hasStatusOk()
                .bodyText()
                .contains("already");
    }

    @Test
    void aMoveByHandGivesWhatThePageSaidOfTheRound() {
        SiteId other = sites.named("Weir flat " + near.value().toString().substring(30));
        due(other);
        post("/rounds/" + monday + "/prepare").exchange();
        assertThat(move(stopAt(near), ana, monday, version())).hasStatus3xxRedirection();
        Week before = weeks.load(weeks.plan(monday).orElseThrow());
        Openings.Opening said = Objects.requireNonNull(new Openings(before, monday)
                .in(before.round(ana.value(), monday).orElseThrow(), stopAt(other)));

        assertThat(move(stopAt(other), ana, monday, version())).hasStatus3xxRedirection();

        Week after = weeks.load(weeks.plan(monday).orElseThrow());
        List<UUID> order = after.stopsOf(new RoundKey(ana.value(), monday)).stream()
                .map(Stop::siteId)
                .toList();
        assertThat(order).hasSize(2);
        assertThat(order.indexOf(other.value())).isEqualTo(said.before() == null ? 1 : 0);
        assertThat(after.times(new RoundKey(ana.value(), monday)).back()).isEqualTo(said.back());
    }

    @Test
    void losesNothingWhenTwoPlanAtOnce() {
        post("/rounds/" + monday + "/prepare").exchange();
        Stop stop = stopAt(near);
        int seen = version();
        assertThat(move(stop, ana, monday, seen)).hasStatus3xxRedirection();

        assertThat(move(stop, ben, monday.plusDays(2), seen))
                .hasStatus(409)
                .bodyText()
                .contains(
                        "changed meanwhile",
                        "Moved " + stop.site(),
                        ben.value() + "/" + monday.plusDays(2),
                        "Ben Sluice, " + Times.day(monday.plusDays(2)));
        assertThat(stopAt(near).personId()).isEqualTo(ana.value());
    }

    @Test
    void undoesStepByStep() {
        post("/rounds/" + monday + "/prepare").exchange();
        Stop stop = stopAt(near);
        assertThat(move(stop, ana, monday, version())).hasStatus3xxRedirection();
        assertThat(move(stop, ben, monday, version())).hasStatus3xxRedirection();

        undo();
        assertThat(stopAt(near).personId()).isEqualTo(ana.value());
        undo();
        assertThat(stopAt(near).placed()).isFalse();
        assertThat(undo()).hasStatus(409).bodyText().contains("nothing left to undo");
    }

    @Test
    void refusesWhatCannotBeReadBesideTheField() {
        post("/rounds/" + monday + "/prepare").exchange();
        Stop stop = stopAt(near);
        String base = "/rounds/" + monday + "/stops/" + stop.id();
        assertThat(post(base + "/move").param("version", "" + version()).param("to", "nowhere"))
                .hasStatus(422)
                .bodyText()
                .contains("Choose whose round");
        assertThat(post(base + "/set-aside").param("version", "" + version()).param("reason", " "))
                .hasStatus(422)
                .bodyText()
                .contains("Say why");
        assertThat(post("/rounds/" + monday + "/add")
                        .param("version", "" + version())
                        .param("site", near.value().toString())
                        .param("minutes", "soon"))
                .hasStatus(422)
                .bodyText()
                .contains("Say what the visit is for", "Give a number", "soon");
    }

    private MvcTestResult undo() {
        return post("/rounds/" + monday + "/undo")
                .param("version", "" + version())
                .exchange();
    }
}

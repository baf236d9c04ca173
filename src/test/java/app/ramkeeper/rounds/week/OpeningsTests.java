package app.ramkeeper.rounds.week;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.rounds.week.Openings.Opening;
import app.ramkeeper.rounds.week.WeekStore.Placing;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OpeningsTests {

    private final InventedWeek invented = new InventedWeek(7, 80);
    private final Week empty = invented.week();
    private final TechDay round = empty.rounds().stream()
            .filter(r -> r.works() && r.crew() == 1 && r.lateAt() == null)
            .findFirst()
            .orElseThrow();
    private final List<Stop> stops = empty.stops().stream()
            .filter(s -> s.where() != null && s.fixedOn() == null && !s.over())
            .limit(3)
            .toList();
    private final Stop calls = stops.get(2);
    private final Week week = empty.with(List.of(placing(stops.get(0), 1), placing(stops.get(1), 2)));

    private Placing placing(Stop stop, int position) {
        return new Placing(stop.id(), round.personId(), round.day(), position);
    }

    @ParameterizedTest
    @ValueSource(ints = {8 * 60, 11 * 60, 14 * 60, 18 * 60 + 40})
    void offersNothingThatWouldHaveToBeginBeforeNow(int now) {
        Opening opening = opening(now);

        assertThat(opening.starts()).isGreaterThanOrEqualTo(now);
        if (opening.before() != null) {
            double planned = Objects.requireNonNull(
                            week.times(round.key()).lineOf(opening.before().id()))
                    .starts();
            assertThat(planned).isGreaterThanOrEqualTo(now);
        }
    }

    @Test
    void anEveningCallBreaksTheDayAndSaysSo() {
        Opening opening = opening(18 * 60 + 40);

        assertThat(opening.before()).isNull();
        assertThat(opening.breaks()).anyMatch(words -> words.contains("the day ends at"));
        assertThat(new Openings(week, round.day(), 18 * 60 + 40).best(calls, 3))
                .isNotEmpty()
                .noneMatch(
                        o -> o.round().day().equals(round.day()) && o.breaks().isEmpty());
    }

    @Test
    void somebodyWithoutWaterIsOfferedAnEarlyPlaceBeforeAShortDrive() {
        Week called = invented.withCallOut(week);
        Stop dry = called.stops().get(called.stops().size() - 1);
        Openings openings = new Openings(called, round.day(), 5 * 60);

        List<Opening> best = openings.best(dry, 3);

        assertThat(best).allMatch(o -> o.breaks().isEmpty());
        assertThat(best.get(0).round().day()).isEqualTo(round.day());
        assertThat(best.get(0).costs() - best.get(0).adds())
                .as("by the hour until work starts")
                .isEqualTo(dry.worthADay() * (best.get(0).starts() - 5 * 60) / (24 * 60));
        assertThat(best).extracting(Opening::costs).isSorted();
        for (Opening other : openings.best(dry, 100)) {
            if (other.breaks().isEmpty() && other.starts() < best.get(0).starts()) {
                assertThat(other.adds()).isGreaterThan(best.get(0).adds());
            }
        }
    }

    private Opening opening(int now) {
        return Objects.requireNonNull(new Openings(week, round.day(), now).in(round, calls));
    }
}

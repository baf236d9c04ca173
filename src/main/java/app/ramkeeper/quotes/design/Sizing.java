package app.ramkeeper.quotes.design;

import app.ramkeeper.quotes.survey.Survey;
import app.ramkeeper.quotes.survey.Thinning;
import app.ramkeeper.sizing.design.Design;
import app.ramkeeper.sizing.design.DesignFront;
import app.ramkeeper.sizing.design.DesignSearch;
import app.ramkeeper.sizing.design.DesignTask;
import app.ramkeeper.sizing.design.Rejection;
import app.ramkeeper.sizing.line.GroundProfile;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Length;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.springframework.stereotype.Component;

/** From a survey to the designs worth looking at. */
@Component
class Sizing {

    /** More points than this make the search slow and say nothing more about the choice of pipes. */
    private static final int MOST_POINTS = 60;

    private static final int MOST_DESIGNS = 5;

    /** Trials for a first look; the design that is chosen gets the usual number. */
    private static final int LOOK = 2_000;

    private final Supplies supplies;
    private final Clock clock;

    Sizing(Supplies supplies, Clock clock) {
        this.supplies = supplies;
        this.clock = clock;
    }

    Supply supply() {
        return supplies.on(LocalDate.now(clock));
    }

    Options options(Survey survey) {
        Supply supply = supply();
        if (!supply.isEnough()) {
            List<String> missing = new ArrayList<>(supply.leftOut());
            missing.add(
                    0,
                    "The price list holds no pump with all its limits, or no drive pipe, or no delivery pipe for today.");
            return new Options(survey, List.of(), List.of(), missing, List.of());
        }
        if (survey.usable().flow().cubicMetresPerSecond() <= 0) {
            return new Options(survey, List.of(), List.of(), WhyNot.dry(survey), List.of());
        }
        DesignFront front = DesignSearch.front(task(survey), supply.catalogue());
        if (front.designs().isEmpty()) {
            return new Options(
                    survey,
                    List.of(),
                    front.rejected(),
                    WhyNot.reasons(survey, front.rejected()),
                    WhyNot.wouldDo(survey, front.rejected()));
        }
        List<Worked> worked = front.designs().stream()
                .map(design -> Workout.of(survey, supply, selection(design, supply), LOOK))
                .toList();
        return new Options(survey, few(survey, worked), others(front.rejected()), List.of(), List.of());
    }

    private static DesignTask task(Survey survey) {
        return new DesignTask(
                new GroundProfile(Thinning.to(survey.ground().points(), MOST_POINTS)),
                survey.tankLevelM(),
                new Head(survey.fall().value()),
                survey.usable().flow(),
                survey.demand(),
                Length.ofMetres(survey.driveLengthM()),
                Workout.limits(survey),
                survey.ambient());
    }

    private static Selection selection(Design design, Supply supply) {
        return new Selection(
                supply.idOf(design.pump()),
                design.number(),
                supply.driveId(design.drivePipe()),
                design.stretches().stream().map(supply::part).toList());
    }

    /** The cheapest, the cheapest that promises enough, the one that gives most, and some between. */
    private static List<Worked> few(Survey survey, List<Worked> all) {
        if (all.size() <= MOST_DESIGNS) {
            return all;
        }
        TreeSet<Integer> chosen = new TreeSet<>(List.of(0, all.size() - 1));
        IntStream.range(0, all.size())
                .filter(i -> all.get(i).p10() >= survey.demand().litresPerDay())
                .findFirst()
                .ifPresent(chosen::add);
        while (chosen.size() < MOST_DESIGNS) {
            int next = IntStream.range(0, all.size())
                    .filter(i -> !chosen.contains(i))
                    .boxed()
                    .max(Comparator.comparingInt(i ->
                            chosen.stream().mapToInt(c -> Math.abs(c - i)).min().orElse(0)))
                    .orElseThrow();
            chosen.add(next);
        }
        return chosen.stream().map(all::get).toList();
    }

    private static List<Rejection> others(List<Rejection> rejected) {
        return rejected.stream()
                .filter(one -> one.reason() != Rejection.Reason.COST)
                .toList();
    }
}

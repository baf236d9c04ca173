package app.ramkeeper.quotes.design;

import app.ramkeeper.quotes.survey.Survey;
import app.ramkeeper.sizing.design.Rejection;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Says in plain words why a ram pump cannot do what a survey asks, and what would change that. */
final class WhyNot {

    /** What good pumps make of the water's energy; common practice, no source. Only for rough words. */
    private static final double USUAL_EFFICIENCY = 0.6;

    /** More fall than a ram is used with; common practice, no source. */
    private static final double MOST_FALL_M = 15;

    private WhyNot() {}

    static List<String> dry(Survey survey) {
        return List.of(
                "In the dry month nothing is left to take: the source gave %s l/min on the day, %s %% of it runs then, and %s l/min must stay in the stream."
                        .formatted(
                                figure(survey.measured().flow().litresPerMinute()),
                                figure(survey.dry().share().value() * 100),
                                figure(survey.dry().mustStay().litresPerMinute())));
    }

    static List<String> reasons(Survey survey, List<Rejection> rejected) {
        List<String> reasons = new ArrayList<>();
        double source = survey.usable().flow().litresPerMinute();
        double ideal = idealLDay(survey);
        double demand = survey.demand().litresPerDay();
        if (ideal < demand) {
            reasons.add(
                    "There is not enough water times fall. %s l/min falling %s m cannot lift more than %s l/day to %s m, whatever the pump; %s l/day are wanted."
                            .formatted(
                                    figure(source),
                                    figure(survey.fall().value()),
                                    figure(Math.floor(ideal)),
                                    figure(survey.lift().value()),
                                    figure(demand)));
        } else if (ideal * USUAL_EFFICIENCY < demand) {
            reasons.add(
                    "The water times the fall is too little for a real pump: of the %s l/day that would rise without any loss a good pump brings some %s, and %s l/day are wanted."
                            .formatted(
                                    figure(Math.floor(ideal)),
                                    figure(Math.floor(ideal * USUAL_EFFICIENCY)),
                                    figure(demand)));
        }
        if (!rejected.isEmpty() && rejected.stream().allMatch(each -> each.reason() == Rejection.Reason.LIFT)) {
            reasons.add("No pump of the catalogue lifts to %s m: more water or more fall would not change that."
                    .formatted(figure(survey.lift().value())));
        }
        if (reasons.isEmpty()) {
            reasons.add(
                    rejected.size() == 1
                            ? "The one pump of the catalogue does not fit this place."
                            : "None of the %d pumps of the catalogue fits this place; each says why below."
                                    .formatted(rejected.size()));
        }
        return reasons;
    }

    /** What would make it possible; nothing where the lift is above every pump, for then no water helps. */
    static List<String> wouldDo(Survey survey, List<Rejection> rejected) {
        List<String> would = new ArrayList<>();
        if (!rejected.isEmpty() && rejected.stream().allMatch(each -> each.reason() == Rejection.Reason.LIFT)) {
            return would;
        }
        double source = survey.usable().flow().litresPerMinute();
        double lift = survey.lift().value();
        double fall = survey.fall().value();
        double asked = survey.demand().litresPerMinute();
        double needed = asked * lift / (USUAL_EFFICIENCY * fall);
        if (needed > source) {
            would.add("About %s l/min in the dry month would do at this fall; %s l/min may be taken."
                    .formatted(figure(Math.ceil(needed)), figure(source)));
            double otherFall = Math.ceil(10 * asked * lift / (USUAL_EFFICIENCY * source)) / 10;
            if (otherFall <= MOST_FALL_M && otherFall < lift) {
                would.add(
                        "Or a fall of about %s m with the water there is: another place for the pump, if there is one."
                                .formatted(figure(otherFall)));
            }
            double less = Math.floor(idealLDay(survey) * USUAL_EFFICIENCY / 10) * 10;
            if (less > 0) {
                would.add("Or a demand of at most about %s l/day.".formatted(figure(less)));
            }
        }
        return would;
    }

    /** Without any loss: what energy allows. */
    private static double idealLDay(Survey survey) {
        return survey.usable().flow().litresPerDay()
                * survey.fall().value()
                / survey.lift().value();
    }

    /** Rough words want few digits: whole numbers from ten on, else one place. */
    private static String figure(double value) {
        return String.format(Locale.ROOT, Math.abs(value) >= 10 || value == Math.rint(value) ? "%.0f" : "%.1f", value);
    }
}

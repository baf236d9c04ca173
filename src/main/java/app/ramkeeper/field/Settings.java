package app.ramkeeper.field;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The valve settings tried at commissioning. */
final class Settings {

    private Settings() {}

    /** Of the settings that the dry month can feed, the one that delivers most: the same as the phone shows. */
    static Optional<PhoneVisit.Step> bestOfDryMonth(PhoneVisit visit) {
        Double dry = number(visit.dryFlow());
        List<PhoneVisit.Step> steps = visit.steps();
        if (dry == null || steps == null) {
            return Optional.empty();
        }
        return steps.stream()
                .filter(s -> number(s.delivered()) != null && within(number(s.drive()), dry))
                .max(Comparator.comparing(
                        s -> String.valueOf(s.delivered()), Comparator.comparingDouble(Settings::of)));
    }

    /** Drive and delivered flow of each setting with both, by drive flow. */
    static List<double[]> measured(PhoneVisit visit) {
        List<double[]> points = new ArrayList<>();
        for (PhoneVisit.Step step : visit.steps() == null ? List.<PhoneVisit.Step>of() : visit.steps()) {
            Double drive = number(step.drive());
            Double delivered = number(step.delivered());
            if (drive != null && delivered != null) {
                points.add(new double[] {drive, delivered});
            }
        }
        points.sort(Comparator.comparingDouble(p -> p[0]));
        return points;
    }

    static Optional<Double> dryFlow(PhoneVisit visit) {
        return Optional.ofNullable(number(visit.dryFlow()));
    }

    private static boolean within(@Nullable Double drive, double dry) {
        return drive != null && drive <= dry;
    }

    private static double of(String typed) {
        Double value = number(typed);
        return value == null ? 0 : value;
    }

    static @Nullable Double number(@Nullable String typed) {
        try {
            Double value = typed == null ? null : Double.valueOf(typed.strip().replace(',', '.'));
            return value == null || !Double.isFinite(value) || value < 0 ? null : value;
        } catch (NumberFormatException noNumber) {
            return null;
        }
    }
}

package app.ramkeeper.visits;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Water quality and hygiene at one attendance: samples taken, what was disinfected, how boots and tools were cleaned. */
public record WaterCare(List<Sample> samples, @Nullable Hygiene hygiene) {

    /** What is left to do when a sample says when the next one is due. */
    public static final String NEXT_SAMPLE = "Take the next water sample";

    public WaterCare {
        samples = List.copyOf(samples);
    }

    /**
     * A sample; its results may come days later.
     *
     * @param reference number under which the laboratory has it
     * @param takenTime by the company's clock
     * @param nextOn when the next sample is due
     */
    public record Sample(
            @Nullable String reference,
            @Nullable String place,
            LocalDate takenOn,
            @Nullable LocalTime takenTime,
            @Nullable String takenBy,
            @Nullable String laboratory,
            @Nullable String remark,
            @Nullable LocalDate nextOn,
            List<Result> results) {

        public Sample {
            results = List.copyOf(results);
        }
    }

    /** One line of the laboratory's report, in its words. */
    public record Result(
            String parameter, String value, @Nullable String unit) {

        /** As one types it: parameter; value; unit. */
        public String line() {
            return parameter + "; " + value + (unit == null ? "" : "; " + unit);
        }
    }

    /**
     * Disinfection and cleaning.
     *
     * @param flushed where to and until when
     * @param isolated the pump was shut off, and it was dosed downstream of it only
     * @param notIsolated why it was not
     * @param cleaned how boots and tools were cleaned before the next catchment
     */
    public record Hygiene(
            @Nullable String product,
            @Nullable String strength,
            @Nullable Integer contactMinutes,
            @Nullable String flushed,
            boolean isolated,
            @Nullable String notIsolated,
            @Nullable String cleaned) {}
}

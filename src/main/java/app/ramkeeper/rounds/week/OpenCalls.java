package app.ramkeeper.rounds.week;

import app.ramkeeper.visits.Symptom;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Calls that nobody has closed yet, at the sites of a week. */
public final class OpenCalls {

    private OpenCalls() {}

    /**
     * What somebody rang about, in the company's time.
     *
     * @param dryAt when the water ends by what the caller said
     */
    public record OpenCall(
            UUID siteId,
            UUID id,
            Symptom symptom,
            boolean peopleDry,
            boolean stockDry,
            @Nullable LocalDateTime promisedBy,
            @Nullable LocalDateTime dryAt) {

        public @Nullable String promised() {
            return promisedBy == null ? null : Times.dayAndTime(promisedBy.toLocalDate(), promisedBy.toLocalTime());
        }

        public @Nullable String dry() {
            return dryAt == null ? null : Times.dayAndTime(dryAt.toLocalDate(), dryAt.toLocalTime());
        }

        /** True if somebody who comes at a minute of a day comes later than was promised. */
        public boolean isAfterPromise(LocalDate day, double starts) {
            return promisedBy != null
                    && day.atStartOfDay().plusMinutes((long) starts).isAfter(promisedBy);
        }
    }

    /** The most pressing one of each site of a plan, for the statement that reads the week. */
    static final String OF_PLAN = """
            select distinct on (site_id) site_id, id, symptom, people_dry, stock_dry, promised_by at time zone :zone as promised_by,
              (received_at + make_interval(mins => (60 * water_hours_left)::int)) at time zone :zone as dry_at
            from calls where closed_at is null and site_id in (select site_id from week_stops where plan_id = :plan)
            order by site_id, promised_by nulls last, received_at, id""";

    static Map<UUID, OpenCall> bySite(List<OpenCall> calls) {
        return calls.stream().collect(Collectors.toMap(OpenCall::siteId, Function.identity()));
    }
}

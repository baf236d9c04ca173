package app.ramkeeper.quotes.job;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A job with all that hangs on it, as its page shows it. */
public record JobView(
        Head head,
        List<Phase> phases,
        List<Certificate> certificates,
        List<Variation> variations,
        List<Item> items,
        List<Service> services) {

    /** The job itself and its places on the register. */
    public record Head(
            UUID id,
            String number,
            String title,
            int revision,
            String customer,
            UUID customerId,
            String site,
            UUID siteId,
            @Nullable UUID installId,
            @Nullable LocalDate commissionedOn,
            UUID installationVisit,
            @Nullable LocalDate installationOn,
            @Nullable UUID commissioningVisit,
            @Nullable LocalDate commissioningOn,
            String currency) {}

    /** A part of the work over some days. */
    public record Phase(
            UUID id,
            PhaseKind kind,
            String name,
            @Nullable LocalDate fromDate,
            @Nullable LocalDate untilDate,
            @Nullable String people,
            @Nullable String plant,
            @Nullable String subcontractor,
            @Nullable LocalDate heldSince,
            @Nullable String heldBecause,
            @Nullable LocalDate doneOn,
            @Nullable String note) {

        /** A word for its state: done, held, planned, not planned yet. */
        public String state() {
            return doneOn != null ? "done" : heldBecause != null ? "held" : fromDate != null ? "planned" : "open";
        }
    }

    /** A paper that somebody on the job must hold. */
    public record Certificate(
            UUID id,
            String holder,
            String what,
            @Nullable String number,
            @Nullable LocalDate expiresOn) {}

    /** What changed after acceptance. */
    public record Variation(
            UUID id,
            int number,
            String text,
            BigDecimal net,
            @Nullable BigDecimal cost,
            BigDecimal taxPercent,
            @Nullable Boolean accepted,
            @Nullable Instant decidedAt,
            @Nullable String decidedBy) {}

    /** A line for the books. */
    public record Item(
            UUID id,
            String reference,
            String kind,
            String text,
            BigDecimal net,
            BigDecimal tax,
            BigDecimal total,
            @Nullable LocalDate readyOn,
            boolean exported) {}

    /**
     * A service task of the install.
     *
     * @param every how often, in words
     * @param dueOn absent until the install is commissioned
     */
    public record Service(
            UUID id, String name, String every, @Nullable LocalDate dueOn) {}

    /** The last day of the work that is planned so far. */
    public @Nullable LocalDate lastDay() {
        return phases.stream()
                .map(phase -> phase.untilDate() == null ? phase.fromDate() : phase.untilDate())
                .filter(java.util.Objects::nonNull)
                .max(LocalDate::compareTo)
                .orElse(null);
    }

    /** Whether a certificate runs out before the work ends. */
    public boolean runsOut(Certificate certificate, LocalDate today) {
        LocalDate last = lastDay();
        LocalDate until = last == null || last.isBefore(today) ? today : last;
        return certificate.expiresOn() != null && certificate.expiresOn().isBefore(until);
    }
}

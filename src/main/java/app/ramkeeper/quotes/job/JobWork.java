package app.ramkeeper.quotes.job;

import app.ramkeeper.fleet.InstallCommissioned;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.quotes.offer.Answered;
import app.ramkeeper.quotes.price.PricedThing;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.visits.VisitId;
import app.ramkeeper.visits.Visits;
import app.ramkeeper.web.Money;
import app.ramkeeper.web.Say;
import java.math.BigDecimal;
import java.sql.Types;
import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.context.event.EventListener;
import org.springframework.dao.OptimisticLockingFailureException;
import org.springframework.jdbc.core.namedparam.MapSqlParameterSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Changes jobs: phases, certificates, variations; and says when a line for the books is ready. */
@Service
@Transactional
public class JobWork {

    private final JdbcClient jdbc;
    private final Visits visits;
    private final Clock clock;

    JobWork(JdbcClient jdbc, Visits visits, Clock clock) {
        this.jdbc = jdbc;
        this.visits = visits;
        this.clock = clock;
    }

    private record PhaseRow(
            UUID jobId,
            PhaseKind kind,
            String name,
            @Nullable LocalDate fromDate,
            @Nullable LocalDate untilDate,
            @Nullable String plant,
            @Nullable String subcontractor,
            @Nullable String heldBecause,
            @Nullable LocalDate doneOn,
            @Nullable String note,
            int version) {}

    @ForOffice
    @Transactional(readOnly = true)
    public PhaseForm phase(JobId job, UUID phase) {
        PhaseRow row = row(job, phase);
        List<UUID> people = jdbc.sql("select person_id from phase_people where phase_id = ?")
                .param(phase)
                .query(UUID.class)
                .list();
        return new PhaseForm(
                row.name(),
                row.fromDate(),
                row.untilDate(),
                people,
                row.plant(),
                row.subcontractor(),
                row.heldBecause(),
                row.doneOn(),
                row.note(),
                row.version());
    }

    private PhaseRow row(JobId job, UUID phase) {
        return jdbc.sql("select * from job_phases where id = ? and job_id = ?")
                .params(phase, job.value())
                .query(PhaseRow.class)
                .optional()
                .orElseThrow(() -> new Missing("phase", phase));
    }

    /** Writes a phase if nobody changed it meanwhile. Pipes laid make the stage payment ready, commissioning the rest. */
    @ForOffice
    public void change(JobId job, UUID phase, PhaseForm form) {
        PhaseRow before = row(job, phase);
        int done = jdbc.sql("""
                        update job_phases set name = :name, from_date = :from, until_date = :until, plant = :plant, subcontractor = :sub,
                          held_since = case when cast(:held as text) is null then null else coalesce(held_since, :today) end, held_because = :held,
                          done_on = :done, note = :note, version = version + 1 where id = :id and version = :version""")
                .paramSource(new MapSqlParameterSource("id", phase)
                        .addValue("name", form.name())
                        .addValue("from", form.fromDate(), Types.DATE)
                        .addValue("until", form.untilDate(), Types.DATE)
                        .addValue("plant", form.plant(), Types.VARCHAR)
                        .addValue("sub", form.subcontractor(), Types.VARCHAR)
                        .addValue("held", form.heldBecause(), Types.VARCHAR)
                        .addValue("today", LocalDate.now(clock))
                        .addValue("done", form.doneOn(), Types.DATE)
                        .addValue("note", form.note(), Types.VARCHAR)
                        .addValue("version", form.version()))
                .update();
        if (done == 0) {
            throw new OptimisticLockingFailureException("phase " + phase);
        }
        jdbc.sql("delete from phase_people where phase_id = ?").param(phase).update();
        for (UUID person : new ArrayList<>(
                form.people() == null
                        ? List.of()
                        : form.people().stream().distinct().toList())) {
            jdbc.sql("insert into phase_people (phase_id, person_id) values (?, ?)")
                    .params(phase, person)
                    .update();
        }
        if (form.doneOn() != null && before.kind() == PhaseKind.LAY) {
            ready(job.value(), form.doneOn(), "STAGE");
        }
        if (form.doneOn() != null && (before.kind() == PhaseKind.COMMISSION || before.kind() == PhaseKind.OTHER)) {
            ready(job.value(), form.doneOn(), "STAGE", "FINAL", "VARIATION");
        }
    }

    private record Commissioned(UUID id, UUID installationVisit) {}

    /**
     * Whoever records the commissioning visit makes the rest of the money due, and nothing is left to install; nobody has
     * to think of it.
     */
    @EventListener
    void on(InstallCommissioned event) {
        jdbc.sql("select id, installation_visit from jobs where install_id = ?")
                .param(event.install().value())
                .query(Commissioned.class)
                .list()
                .forEach(job -> {
                    ready(job.id(), event.on(), "STAGE", "FINAL", "VARIATION");
                    visits.overtaken(
                            new VisitId(job.installationVisit()),
                            "Put to work on " + Say.day(event.on()) + ": nothing is left to install.");
                });
    }

    private void ready(UUID job, LocalDate on, String... kinds) {
        jdbc.sql(
                        "update billing_items set ready_on = :on where job_id = :job and ready_on is null and export_id is null"
                                + " and kind = any(:kinds)")
                .param("on", on)
                .param("job", job)
                .param("kinds", kinds)
                .update();
    }

    @ForOffice
    public void addCertificate(JobId job, CertificateForm form) {
        require(job);
        jdbc.sql("insert into job_certificates (id, job_id, holder, what, number, expires_on)"
                        + " values (:id, :job, :holder, :what, :number, :expires)")
                .paramSource(new MapSqlParameterSource("id", Uuids.next())
                        .addValue("job", job.value())
                        .addValue("holder", form.holder())
                        .addValue("what", form.what())
                        .addValue("number", form.number(), Types.VARCHAR)
                        .addValue("expires", form.expiresOn(), Types.DATE))
                .update();
    }

    @ForOffice
    public void removeCertificate(JobId job, UUID certificate) {
        if (jdbc.sql("delete from job_certificates where id = ? and job_id = ?")
                        .params(certificate, job.value())
                        .update()
                == 0) {
            throw new Missing("certificate", certificate);
        }
    }

    /** Prices a variation; it counts once the customer has accepted it. */
    @ForOffice
    public void addVariation(JobId job, VariationForm form, PricedThing tax, String by) {
        require(job);
        jdbc.sql("""
                        insert into job_variations (id, job_id, number, text, net, cost, tax_name, tax_percent, made_at, made_by)
                        values (:id, :job, (select coalesce(max(number), 0) + 1 from job_variations where job_id = :job), :text, :net,
                          :cost, :taxName, :taxPercent, :now, :by)""")
                .paramSource(new MapSqlParameterSource("id", Uuids.next())
                        .addValue("job", job.value())
                        .addValue("text", form.text())
                        .addValue("net", form.net())
                        .addValue("cost", form.cost(), Types.NUMERIC)
                        .addValue("taxName", tax.name())
                        .addValue("taxPercent", tax.price())
                        .addValue("now", OffsetDateTime.now(clock))
                        .addValue("by", by))
                .update();
    }

    private record Priced(
            int number,
            String text,
            BigDecimal net,
            String taxName,
            BigDecimal taxPercent,
            @Nullable Boolean accepted) {}

    /** Records the customer's word on a variation. Accepted, it becomes a line for the books; a second time changes nothing. */
    @ForOffice
    public void decide(JobId job, UUID variation, boolean accepted, String name, Answered how) {
        require(job);
        Priced priced = jdbc.sql("select number, text, net, tax_name, tax_percent, accepted from job_variations"
                        + " where id = ? and job_id = ? for update")
                .params(variation, job.value())
                .query(Priced.class)
                .optional()
                .orElseThrow(() -> new Missing("variation", variation));
        if (priced.accepted() != null) {
            if (priced.accepted() != accepted) {
                throw new Conflict("This variation was answered already. Make another one.");
            }
            return;
        }
        jdbc.sql("update job_variations set accepted = ?, decided_at = ?, decided_by = ?, decided_how = ? where id = ?")
                .params(accepted, OffsetDateTime.now(clock), name, how.name(), variation)
                .update();
        if (accepted) {
            bill(job, variation, priced);
        }
    }

    private void bill(JobId job, UUID variation, Priced priced) {
        BigDecimal tax = Money.cents(priced.net().multiply(priced.taxPercent()).movePointLeft(2));
        jdbc.sql("""
                        insert into billing_items (id, reference, kind, job_id, variation_id, customer_id, text, currency, net, tax_name,
                          tax_percent, tax, total, ready_on)
                        select :id, q.number || '/V' || :number, 'VARIATION', j.id, :variation, j.customer_id, :text, r.currency, :net, :taxName,
                          :taxPercent, :tax, :total,
                          (select max(b.ready_on) from billing_items b where b.job_id = j.id and b.kind = 'FINAL')
                        from jobs j join quotes q on q.id = j.id join quote_revisions r on r.quote_id = j.id and r.revision = j.revision
                        where j.id = :job""")
                .param("id", Uuids.next())
                .param("number", Integer.toString(priced.number()))
                .param("variation", variation)
                .param("text", "Variation " + priced.number() + ": " + priced.text())
                .param("net", priced.net())
                .param("taxName", priced.taxName())
                .param("taxPercent", priced.taxPercent())
                .param("tax", tax)
                .param("total", priced.net().add(tax))
                .param("job", job.value())
                .update();
    }

    private void require(JobId job) {
        if (jdbc.sql("select id from jobs where id = ? for update")
                .param(job.value())
                .query(UUID.class)
                .optional()
                .isEmpty()) {
            throw new Missing("job", job);
        }
    }
}

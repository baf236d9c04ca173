package app.ramkeeper.visits.calls;

import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.visits.PlanVisit;
import app.ramkeeper.visits.VisitId;
import app.ramkeeper.visits.VisitKind;
import app.ramkeeper.visits.Visits;
import app.ramkeeper.web.Slice;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Calls from the first ring to the note that closes them. */
@Service
@ForOffice
@Transactional
public class Calls {

    private static final Logger LOG = LoggerFactory.getLogger(Calls.class);

    private final JdbcClient jdbc;
    private final CallQueries queries;
    private final Visits visits;
    private final Clock clock;

    Calls(JdbcClient jdbc, CallQueries queries, Visits visits, Clock clock) {
        this.jdbc = jdbc;
        this.queries = queries;
        this.visits = visits;
        this.clock = clock;
    }

    @Transactional(readOnly = true)
    List<CallLine> open() {
        return queries.open();
    }

    @Transactional(readOnly = true)
    List<CallLine> openAt(UUID site) {
        return queries.openAt(site);
    }

    @Transactional(readOnly = true)
    Slice<CallLine> all(@Nullable String after) {
        return queries.all(after);
    }

    /**
     * A call by its id.
     *
     * @throws Missing if there is none
     */
    @Transactional(readOnly = true)
    public CallView view(UUID id) {
        return queries.view(id).orElseThrow(() -> new Missing("call", id));
    }

    /**
     * Puts a call down. The same form sent twice is one call.
     *
     * @return false if its id is taken by a call with other words; nothing is changed then
     */
    boolean take(CallForm form, PersonId by) {
        UUID id = Objects.requireNonNull(form.id());
        boolean fresh = values(jdbc.sql("""
                        insert into calls (id, received_at, taken_by, site_id, install_id, caller, phone, place_text, symptom, water_hours_left,
                          people_dry, stock_dry, advice, promise, promised_by, note)
                        values (:id, :now, :by, :site, :install, :caller, :phone, :place, :symptom, :hours, :people, :stock, :advice,
                          :promise, :until, :note)
                        on conflict (id) do nothing"""), form)
                        .param("now", Timestamp.from(clock.instant()))
                        .param("by", by.value())
                        .update()
                == 1;
        if (fresh) {
            LOG.info("Call {} taken", id);
            return true;
        }
        return view(id).form().bare().equals(form.bare());
    }

    /** @return false if somebody else changed it since the version given */
    boolean change(UUID id, CallForm form) {
        CallView now = held(id);
        if (!now.open()) {
            throw new Conflict("This call is closed and stands as it is.");
        }
        if (!Objects.equals(now.form().version(), form.version())) {
            return false;
        }
        values(jdbc.sql("""
                        update calls set site_id = :site, install_id = :install, caller = :caller, phone = :phone, place_text = :place,
                          symptom = :symptom, water_hours_left = :hours, people_dry = :people, stock_dry = :stock, advice = :advice,
                          promise = :promise, promised_by = :until, note = :note, version = version + 1 where id = :id"""), form).param("id", id).update();
        return true;
    }

    /** Plans the call-out that answers a call. */
    public VisitId plan(UUID id, CallVisitForm form) {
        CallView call = held(id);
        UUID site = call.line().siteId();
        if (site == null) {
            throw new Conflict("Give the call its site first: a visit is at a site.");
        }
        if (!call.wantsVisit()) {
            throw new Conflict(
                    call.open() ? "This call has its visit already." : "This call is closed. Take a new one.");
        }
        List<PersonId> people = Stream.of(form.lead(), form.second())
                .filter(Objects::nonNull)
                .distinct()
                .map(PersonId::new)
                .toList();
        VisitId visit = visits.plan(new PlanVisit(
                new SiteId(site),
                VisitKind.CALL_OUT,
                form.on(),
                form.from(),
                Objects.requireNonNull(form.minutes()),
                people,
                List.of(),
                note(call.form())));
        jdbc.sql("update calls set visit_id = :visit, version = version + 1 where id = :id")
                .param("visit", visit.value())
                .param("id", id)
                .update();
        return visit;
    }

    /** Closes a call. */
    void close(UUID id, String note, PersonId by) {
        if (!held(id).open()) {
            throw new Conflict("This call is closed already.");
        }
        jdbc.sql("""
                        update calls set closed_at = greatest(:now, received_at), closed_by = :by, closed_note = :note, version = version + 1
                        where id = :id""")
                .param("now", Timestamp.from(clock.instant()))
                .param("by", by.value())
                .param("note", note)
                .param("id", id)
                .update();
        LOG.info("Call {} closed", id);
    }

    private CallView held(UUID id) {
        jdbc.sql("select 1 from calls where id = :id for update")
                .param("id", id)
                .query(Integer.class)
                .optional();
        return view(id);
    }

    /** What whoever drives there must know of the call. */
    private static @Nullable String note(CallForm form) {
        String said = Stream.of(form.caller(), form.phone(), form.promise(), form.note())
                .filter(Objects::nonNull)
                .reduce((one, other) -> one + "\n" + other)
                .orElse("");
        return said.isEmpty() ? null : said;
    }

    private JdbcClient.StatementSpec values(JdbcClient.StatementSpec sql, CallForm form) {
        LocalDateTime until = form.promisedBy();
        return sql.param("id", form.id())
                .param("site", form.site())
                .param("install", form.install())
                .param("caller", form.caller())
                .param("phone", form.phone())
                .param("place", form.placeText())
                .param("symptom", Objects.requireNonNull(form.symptom()).name())
                .param("hours", form.waterHoursLeft())
                .param("people", form.dryPeople())
                .param("stock", form.dryStock())
                .param("advice", form.advice())
                .param("promise", form.promise())
                .param(
                        "until",
                        until == null
                                ? null
                                : Timestamp.from(until.atZone(clock.getZone()).toInstant()))
                .param("note", form.note());
    }
}

package app.ramkeeper.quotes.survey;

import app.ramkeeper.identity.ForField;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.web.Cursor;
import app.ramkeeper.web.Slice;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The enquiries: who asks for water, where, and what became of it. */
@Service
@Transactional
@ForOffice
public class Enquiries {

    private static final int PAGE = 50;
    private static final String VIEW = """
            select e.id, e.customer_id, c.name as customer, e.site_id, coalesce(s.name, e.place) as place, e.customer_name, e.phone,
              e.email, e.received_on, e.note, e.state, e.reason, e.version,
              (select count(*) from surveys v where v.enquiry_id = e.id) as surveys,
              (select count(*) from design_choices d join surveys v on v.id = d.survey_id where v.enquiry_id = e.id) as designs
            from enquiries e left join customers c on c.id = e.customer_id left join sites s on s.id = e.site_id
            """;
    // Known if a customer of that name has a part at the site, or gave the same address to be reached at.
    private static final String KNOWN = """
            (select c.id from customers c where c.merged_into is null and folded(c.name) = folded(:name)
              and (exists (select 1 from site_parties p where p.site_id = :site and p.customer_id = c.id)
                or c.email = :email or c.phone = :phone) order by c.id limit 1)""";

    private final JdbcClient jdbc;

    Enquiries(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    EnquiryId add(EnquiryForm form) {
        EnquiryId id = EnquiryId.next();
        bound(jdbc.sql("""
                                insert into enquiries (id, customer_id, site_id, customer_name, phone, email, place, received_on, note)
                                values (:id, coalesce(cast(:customer as uuid), %s), :site, :name, :phone, :email, :place, :on, :note)""".formatted(KNOWN)), id.value(), form).update();
        return id;
    }

    /** False if somebody else changed it meanwhile. */
    boolean change(UUID id, EnquiryForm form) {
        return bound(jdbc.sql("""
                                        update enquiries set customer_id = coalesce(cast(:customer as uuid), %s, case when folded(customer_name) = folded(:name) then customer_id end),
                                          site_id = :site, customer_name = :name, phone = :phone, email = :email, place = :place,
                                          received_on = :on, note = :note, version = version + 1
                                        where id = :id and version = :version""".formatted(KNOWN)), id, form)
                        .param("version", form.version())
                        .update()
                == 1;
    }

    private static JdbcClient.StatementSpec bound(JdbcClient.StatementSpec sql, UUID id, EnquiryForm form) {
        return sql.param("id", id)
                .param("customer", form.customer())
                .param("site", form.site())
                .param("name", form.customerName())
                .param("phone", form.phone())
                .param("email", form.email())
                .param("place", form.place())
                .param("on", form.receivedOn())
                .param("note", form.note());
    }

    @Transactional(readOnly = true)
    EnquiryForm form(UUID id) {
        EnquiryView e = view(id);
        String place = e.siteId() == null ? e.place() : placeOf(id);
        return new EnquiryForm(
                e.customerName(),
                e.customerId(),
                e.phone(),
                e.email(),
                null,
                e.siteId(),
                place,
                e.receivedOn(),
                e.note(),
                e.version());
    }

    /** Whether that customer is on the register, and not merged into another. */
    @Transactional(readOnly = true)
    boolean knows(UUID customer) {
        return jdbc.sql("select exists (select from customers where id = ? and merged_into is null)")
                .param(customer)
                .query(Boolean.class)
                .single();
    }

    private @Nullable String placeOf(UUID id) {
        List<String> place = jdbc.sql("select coalesce(place, '') from enquiries where id = :id")
                .param("id", id)
                .query(String.class)
                .list();
        return place.isEmpty() || place.get(0).isEmpty() ? null : place.get(0);
    }

    /**
     * An enquiry; who goes out to survey may read it too.
     *
     * @throws Missing if there is none
     */
    @Transactional(readOnly = true)
    @ForField
    public EnquiryView view(UUID id) {
        return jdbc.sql(VIEW + " where e.id = :id")
                .param("id", id)
                .query(EnquiryView.class)
                .optional()
                .orElseThrow(() -> new Missing("enquiry", id));
    }

    /** Newest first, of one state or all that still want something. */
    @Transactional(readOnly = true)
    @ForField
    Slice<EnquiryView> list(@Nullable EnquiryState state, @Nullable String after) {
        String which = state == null ? " e.state in ('OPEN', 'QUOTED') " : " e.state = :state ";
        try {
            Optional<List<String>> keys = Cursor.read(after, 2);
            List<EnquiryView> rows = jdbc.sql(VIEW + " where" + which + """
                            and (:first or e.received_on < :on or (e.received_on = :on and e.id > :id))
                            order by e.received_on desc, e.id limit :limit""")
                    .param("state", state == null ? "" : state.name())
                    .param("first", keys.isEmpty())
                    .param("on", keys.map(k -> LocalDate.parse(k.get(0))).orElse(LocalDate.EPOCH))
                    .param("id", keys.map(k -> UUID.fromString(k.get(1))).orElse(new UUID(0, 0)))
                    .param("limit", PAGE + 1)
                    .query(EnquiryView.class)
                    .list();
            boolean more = rows.size() > PAGE;
            List<EnquiryView> shown = more ? rows.subList(0, PAGE) : rows;
            EnquiryView last = more ? shown.get(PAGE - 1) : null;
            long count = jdbc.sql("select count(*) from (select 1 from enquiries e where" + which + "limit 1001) as c")
                    .param("state", state == null ? "" : state.name())
                    .query(Long.class)
                    .single();
            return new Slice<>(shown, last == null ? null : Cursor.of(last.receivedOn(), last.id()), count);
        } catch (DateTimeException | IllegalArgumentException brokenCursor) {
            return list(state, null);
        }
    }

    /**
     * Puts an enquiry into a state.
     *
     * @param reason why; needed for one that is lost or closed
     * @throws Conflict without that reason
     */
    public void mark(EnquiryId id, EnquiryState state, @Nullable String reason) {
        boolean ends = state == EnquiryState.LOST || state == EnquiryState.CLOSED;
        if (ends && (reason == null || reason.isBlank())) {
            throw new Conflict("Say why, in a few words: it teaches for the next one.");
        }
        int rows = jdbc.sql(
                        "update enquiries set state = :state, reason = :reason, version = version + 1 where id = :id")
                .param("state", state.name())
                .param("reason", reason)
                .param("id", id.value())
                .update();
        if (rows == 0) {
            throw new Missing("enquiry", id);
        }
    }
}

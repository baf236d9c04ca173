package app.ramkeeper.quotes.offer;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.web.Cursor;
import app.ramkeeper.web.Slice;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Quotes by state and age: what is to be followed up. */
@Service
@ForOffice
@Transactional(readOnly = true)
public class QuoteList {

    /**
     * A quote as its list shows it.
     *
     * @param since the day from which its age counts: sent, answered, or made
     */
    public record Line(
            UUID id,
            @Nullable String number,
            int revision,
            QuoteState state,
            String title,
            String customerName,
            String place,
            LocalDate since,
            LocalDate validUntil,
            @Nullable BigDecimal total,
            String currency,
            @Nullable String decidedReason,
            boolean opened,
            OffsetDateTime createdAt) {}

    /** How many there are in a state, and for how much. */
    public record Count(QuoteState state, long quotes, BigDecimal total) {}

    private static final int PAGE = 50;
    private static final String FROM = """
             from quotes q join lateral (select * from quote_revisions r where r.quote_id = q.id
               order by r.state = 'ACCEPTED' desc, r.revision desc limit 1) r on true
             where (cast(:state as text) is null or r.state = :state)
               and (cast(:words as text) is null or folded(concat_ws(' ', q.number, q.title, q.customer_name, q.place)) like '%' || folded(:words) || '%')
            """;

    private final JdbcClient jdbc;
    private final Clock clock;

    QuoteList(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** Newest first; a cursor leads on. */
    public Slice<Line> page(@Nullable QuoteState state, @Nullable String words, @Nullable String after) {
        List<String> keys = Cursor.read(after, 2).orElse(List.of());
        OffsetDateTime at = keys.isEmpty() ? null : time(keys.get(0));
        List<Line> lines = jdbc.sql("""
                        select q.id, q.number, r.revision, r.state, q.title, q.customer_name, q.place,
                               (coalesce(r.decided_at, r.sent_at, q.created_at) at time zone :zone)::date as since, r.valid_until, r.total,
                               r.currency, r.decided_reason,
                               exists (select 1 from quote_links l where l.revision_id = r.id and l.opened_at is not null) as opened,
                               q.created_at
                        """ + FROM + """
                          and (cast(:at as timestamptz) is null or (q.created_at, q.id) < (:at, cast(:id as uuid)))
                        order by q.created_at desc, q.id desc limit :limit""")
                .param("state", state == null ? null : state.name())
                .param("words", words)
                .param("zone", clock.getZone().getId())
                .param("at", at)
                .param("id", at == null ? null : keys.get(1))
                .param("limit", PAGE + 1)
                .query(Line.class)
                .list();
        long count = jdbc.sql("select count(*) from (select 1 " + FROM + " limit 1001) c")
                .param("state", state == null ? null : state.name())
                .param("words", words)
                .query(Long.class)
                .single();
        boolean more = lines.size() > PAGE;
        List<Line> shown = more ? lines.subList(0, PAGE) : lines;
        Line last = more ? shown.get(PAGE - 1) : null;
        return new Slice<>(shown, last == null ? null : Cursor.of(last.createdAt(), last.id()), count);
    }

    private static @Nullable OffsetDateTime time(String text) {
        try {
            return OffsetDateTime.parse(text);
        } catch (DateTimeParseException broken) {
            return null;
        }
    }

    /** Sent quotes that wait for a word: a week old, or lapsing within a fortnight; the oldest first. */
    public List<Waiting> waiting() {
        return jdbc.sql("""
                        select q.id, q.number, q.title, q.customer_name, q.phone, (r.sent_at at time zone :zone)::date as sent_on, r.valid_until,
                          exists (select 1 from quote_links l where l.revision_id = r.id and l.opened_at is not null) as opened
                        from quote_revisions r join quotes q on q.id = r.quote_id
                        where r.state = 'SENT' and r.valid_until >= :today and (r.sent_at < :week or r.valid_until <= :fortnight)
                        order by r.sent_at, q.id limit 20""")
                .param("zone", clock.getZone().getId())
                .param("today", LocalDate.now(clock))
                .param("week", OffsetDateTime.now(clock).minusDays(7))
                .param("fortnight", LocalDate.now(clock).plusDays(14))
                .query(Waiting.class)
                .list();
    }

    /** A quote to ring about. */
    public record Waiting(
            UUID id,
            String number,
            String title,
            String customerName,
            @Nullable String phone,
            LocalDate sentOn,
            LocalDate validUntil,
            boolean opened) {}

    /** Counts and sums by state. */
    public List<Count> counts() {
        return jdbc.sql(
                        "select r.state, count(*) as quotes, coalesce(sum(r.total), 0) as total " + FROM
                                + " group by r.state order by array_position(array['DRAFT', 'SENT', 'ACCEPTED', 'DECLINED', 'LAPSED', 'REPLACED'], r.state)")
                .param("state", null)
                .param("words", null)
                .query(Count.class)
                .list();
    }

    /** Why quotes were won or lost, most frequent first. */
    public List<Reason> reasons() {
        return jdbc.sql("""
                        select state, decided_reason as reason, count(*) as quotes from quote_revisions
                        where state in ('ACCEPTED', 'DECLINED') and decided_reason is not null
                        group by state, decided_reason order by quotes desc, reason limit 30""").query(Reason.class).list();
    }

    /** A reason and how often it was given. */
    public record Reason(QuoteState state, String reason, long quotes) {}
}

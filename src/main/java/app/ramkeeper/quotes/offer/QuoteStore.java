package app.ramkeeper.quotes.offer;

import app.ramkeeper.fleet.CustomerId;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.quotes.design.ChosenDesign;
import app.ramkeeper.quotes.price.QuoteSettings.TaxRounding;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.shared.Uuids;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.namedparam.MapSqlParameterSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import tools.jackson.databind.json.JsonMapper;

/** Rows of quotes. */
@Repository
class QuoteStore {

    private final JdbcClient jdbc;
    private final LineStore lines;
    private final DiscountStore discounts;
    private final JsonMapper json;
    private final Clock clock;

    QuoteStore(JdbcClient jdbc, LineStore lines, DiscountStore discounts, JsonMapper json, Clock clock) {
        this.jdbc = jdbc;
        this.lines = lines;
        this.discounts = discounts;
        this.json = json;
        this.clock = clock;
    }

    QuoteCard card(QuoteId id) {
        return jdbc.sql("select * from quotes where id = ?")
                .param(id.value())
                .query(QuoteCard.class)
                .optional()
                .orElseThrow(() -> new Missing("quote", id));
    }

    /** The revision in force: the accepted one, else the newest. */
    Revision latest(QuoteId id) {
        return read("where r.quote_id = ? order by r.state = 'ACCEPTED' desc, r.revision desc limit 1", id.value())
                .orElseThrow(() -> new Missing("quote", id));
    }

    Revision revision(QuoteId id, int revision) {
        return read("where r.quote_id = ? and r.revision = ?", id.value(), revision)
                .orElseThrow(() -> new Missing("revision", revision));
    }

    Revision byId(UUID id) {
        return read("where r.id = ?", id).orElseThrow(() -> new Missing("revision", id));
    }

    /** Holds the newest revision for the length of the transaction. */
    Revision hold(QuoteId id) {
        if (jdbc.sql("select id from quotes where id = ? for update")
                .param(id.value())
                .query(UUID.class)
                .optional()
                .isEmpty()) {
            throw new Missing("quote", id);
        }
        return latest(id);
    }

    List<Revision> revisions(QuoteId id) {
        return jdbc.sql("select * from quote_revisions where quote_id = ? order by revision desc")
                .param(id.value())
                .query((row, number) -> revision(row, List.of(), List.of()))
                .list();
    }

    private Optional<Revision> read(String where, Object... keys) {
        return jdbc.sql("select * from quote_revisions r " + where)
                .params(List.of(keys))
                .query((row, number) -> {
                    UUID id = row.getObject("id", UUID.class);
                    return revision(row, lines.of(id), discounts.of(id));
                })
                .optional();
    }

    private Revision revision(ResultSet row, List<QuoteLine> lines, List<Discount> less) throws SQLException {
        String design = row.getString("design");
        String how = row.getString("decided_how");
        return new Revision(
                row.getObject("id", UUID.class),
                new QuoteId(row.getObject("quote_id", UUID.class)),
                row.getInt("revision"),
                QuoteState.valueOf(row.getString("state")),
                design == null ? null : json.readValue(design, ChosenDesign.class),
                row.getString("currency"),
                TaxRounding.valueOf(row.getString("tax_rounding")),
                row.getObject("valid_until", LocalDate.class),
                row.getString("intro"),
                row.getString("terms"),
                instant(row, "sent_at"),
                row.getString("sent_by"),
                row.getBytes("pdf_sha256"),
                instant(row, "decided_at"),
                row.getString("decided_by"),
                how == null ? null : Answered.valueOf(how),
                row.getString("decided_reason"),
                row.getInt("version"),
                lines,
                less);
    }

    private static @Nullable Instant instant(ResultSet row, String column) throws SQLException {
        OffsetDateTime at = row.getObject(column, OffsetDateTime.class);
        return row.wasNull() ? null : at.toInstant();
    }

    void add(QuoteId id, QuoteFor who, String by) {
        jdbc.sql("""
                        insert into quotes (id, enquiry_id, customer_id, site_id, title, customer_name, address, email, phone, place,
                          created_at, created_by)
                        values (:id, :enquiry, :customer, :site, :title, :name, :address, :email, :phone, :place, :now, :by)""")
                .paramSource(new MapSqlParameterSource("id", id.value())
                        .addValue(
                                "enquiry",
                                who.enquiry() == null ? null : who.enquiry().value(),
                                Types.OTHER)
                        .addValue(
                                "customer",
                                who.customer() == null ? null : who.customer().value(),
                                Types.OTHER)
                        .addValue("site", who.site() == null ? null : who.site().value(), Types.OTHER)
                        .addValue("title", who.title())
                        .addValue("name", who.customerName())
                        .addValue("address", who.address(), Types.VARCHAR)
                        .addValue("email", who.email(), Types.VARCHAR)
                        .addValue("phone", who.phone(), Types.VARCHAR)
                        .addValue("place", who.place())
                        .addValue("now", now())
                        .addValue("by", by))
                .update();
    }

    /** Opens a revision as a draft; its lines come as they are given. */
    UUID open(QuoteId quote, int number, Terms terms, @Nullable ChosenDesign design, List<QuoteLine> lines) {
        UUID id = Uuids.next();
        jdbc.sql("""
                        insert into quote_revisions (id, quote_id, revision, design, currency, tax_rounding, valid_until, intro, terms)
                        values (:id, :quote, :revision, :design::jsonb, :currency, :rounding, :valid, :intro, :terms)""")
                .paramSource(new MapSqlParameterSource("id", id)
                        .addValue("quote", quote.value())
                        .addValue("revision", number)
                        .addValue("design", design == null ? null : json.writeValueAsString(design), Types.VARCHAR)
                        .addValue("currency", terms.currency())
                        .addValue("rounding", terms.rounding().name())
                        .addValue("valid", terms.validUntil())
                        .addValue("intro", terms.intro(), Types.VARCHAR)
                        .addValue("terms", terms.terms(), Types.VARCHAR))
                .update();
        int position = 0;
        for (QuoteLine line : lines) {
            this.lines.add(id, ++position, line);
        }
        return id;
    }

    /** The terms a revision opens with. */
    record Terms(
            String currency,
            TaxRounding rounding,
            LocalDate validUntil,
            @Nullable String intro,
            @Nullable String terms) {}

    boolean changeTerms(UUID revision, HeadForm form) {
        return jdbc.sql("""
                        update quote_revisions set valid_until = :valid, intro = :intro, terms = :terms,
                          version = version + 1
                        where id = :id and version = :version and state = 'DRAFT'""")
                        .paramSource(new MapSqlParameterSource("id", revision)
                                .addValue("valid", form.validUntil())
                                .addValue("intro", form.intro(), Types.VARCHAR)
                                .addValue("terms", form.terms(), Types.VARCHAR)
                                .addValue("version", form.draftVersion()))
                        .update()
                == 1;
    }

    boolean changeWhom(QuoteId id, HeadForm form) {
        return jdbc.sql("""
                        update quotes set title = :title, customer_name = :name, address = :address, email = :email, phone = :phone,
                          place = :place, version = version + 1 where id = :id and version = :version""")
                        .paramSource(new MapSqlParameterSource("id", id.value())
                                .addValue("title", form.title())
                                .addValue("name", form.customerName())
                                .addValue("address", form.address(), Types.VARCHAR)
                                .addValue("email", form.email(), Types.VARCHAR)
                                .addValue("phone", form.phone(), Types.VARCHAR)
                                .addValue("place", form.place())
                                .addValue("version", form.version()))
                        .update()
                == 1;
    }

    /** The next number of the year. */
    String nextNumber(String prefix, int year) {
        return "%s%d-%04d".formatted(prefix, year, NumberSeries.next(jdbc, "quotes " + year));
    }

    void number(QuoteId id, String number) {
        jdbc.sql("update quotes set number = ? where id = ? and number is null")
                .params(number, id.value())
                .update();
    }

    void sent(Revision revision, String by, byte[] sha256) {
        Reckoning.Totals totals = revision.totals();
        jdbc.sql("""
                        update quote_revisions set state = 'SENT', sent_at = :now, sent_by = :by, pdf_sha256 = :hash, net = :net,
                          tax = :tax, total = :total, cost = :cost, version = version + 1 where id = :id and state = 'DRAFT'""")
                .param("now", now())
                .param("by", by)
                .param("hash", sha256)
                .param("net", totals.net())
                .param("tax", totals.tax())
                .param("total", totals.total())
                .param("cost", revision.cost())
                .param("id", revision.id())
                .update();
    }

    void decided(UUID revision, boolean accepted, Decision decision) {
        jdbc.sql("""
                        update quote_revisions set state = :state, decided_at = :now, decided_by = :by, decided_how = :how,
                          decided_reason = :reason, decided_sha256 = pdf_sha256, version = version + 1 where id = :id""")
                .paramSource(new MapSqlParameterSource("id", revision)
                        .addValue("state", accepted ? "ACCEPTED" : "DECLINED")
                        .addValue("now", now())
                        .addValue("by", decision.by())
                        .addValue("how", decision.how().name())
                        .addValue("reason", decision.reason(), Types.VARCHAR))
                .update();
    }

    /** Who answered and how. */
    record Decision(String by, Answered how, @Nullable String reason) {}

    /** Tells the enquiry, if there is one, what became of it. */
    void enquiry(QuoteId id, String state, @Nullable String reason) {
        jdbc.sql("update enquiries set state = :state, reason = :reason, version = version + 1"
                        + " where id = (select enquiry_id from quotes where id = :id)")
                .paramSource(new MapSqlParameterSource("id", id.value())
                        .addValue("state", state)
                        .addValue("reason", reason, Types.VARCHAR))
                .update();
    }

    /** Where the quote went on the register; its enquiry went there too. */
    void place(QuoteId id, CustomerId customer, SiteId site) {
        jdbc.sql("update quotes set customer_id = ?, site_id = ?, version = version + 1 where id = ?")
                .params(customer.value(), site.value(), id.value())
                .update();
        jdbc.sql("update enquiries set customer_id = ?, site_id = ?, version = version + 1"
                        + " where id = (select enquiry_id from quotes where id = ?)")
                .params(customer.value(), site.value(), id.value())
                .update();
    }

    void state(UUID revision, QuoteState state) {
        jdbc.sql("update quote_revisions set state = ?, version = version + 1 where id = ?")
                .params(state.name(), revision)
                .update();
    }

    void step(QuoteId quote, int revision, Step.Kind kind, String by, @Nullable String note) {
        jdbc.sql("insert into quote_steps (id, quote_id, revision, at, step, by_whom, note)"
                        + " values (:id, :quote, :revision, :now, :step, :by, :note)")
                .paramSource(new MapSqlParameterSource("id", Uuids.next())
                        .addValue("quote", quote.value())
                        .addValue("revision", revision)
                        .addValue("now", now())
                        .addValue("step", kind.name())
                        .addValue("by", by)
                        .addValue("note", note, Types.VARCHAR))
                .update();
    }

    List<Step> steps(QuoteId quote) {
        return jdbc.sql(
                        "select revision, at, step, by_whom, note from quote_steps where quote_id = ? order by at desc, id desc")
                .param(quote.value())
                .query((row, number) -> new Step(
                        row.getInt("revision"),
                        Objects.requireNonNull(instant(row, "at")),
                        Step.Kind.valueOf(row.getString("step")),
                        row.getString("by_whom"),
                        row.getString("note")))
                .list();
    }

    void keepPaper(byte[] sha256, byte[] content) {
        jdbc.sql(
                        "insert into files (sha256, media_type, size, content, created_at) values (?, 'application/pdf', ?, ?, ?)"
                                + " on conflict do nothing")
                .params(sha256, content.length, content, now())
                .update();
    }

    byte[] paper(byte[] sha256) {
        return jdbc.sql("select content from files where sha256 = ?")
                .param(sha256)
                .query((row, number) -> row.getBytes(1))
                .single();
    }

    OffsetDateTime now() {
        return OffsetDateTime.ofInstant(clock.instant(), ZoneOffset.UTC);
    }
}

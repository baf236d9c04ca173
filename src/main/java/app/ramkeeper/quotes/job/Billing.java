package app.ramkeeper.quotes.job;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.quotes.offer.NumberSeries;
import app.ramkeeper.quotes.price.PricedThing;
import app.ramkeeper.quotes.price.Prices;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.web.Money;
import java.math.BigDecimal;
import java.sql.Types;
import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.jdbc.core.namedparam.MapSqlParameterSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** What is done and not invoiced yet, and its way to the books: each line leaves once. */
@Service
@ForOffice
@Transactional
public class Billing {

    private static final Logger LOG = LoggerFactory.getLogger(Billing.class);

    /** The columns that the books get. */
    public static final List<String> HEADER = List.of(
            "reference",
            "ready_on",
            "customer_number",
            "customer",
            "address",
            "quote",
            "site",
            "text",
            "net",
            "tax_name",
            "tax_percent",
            "tax",
            "total",
            "currency");

    /** A line that may go to the books. */
    public record Ready(
            UUID id,
            String reference,
            String kind,
            @Nullable UUID jobId,
            @Nullable String customer,
            String text,
            BigDecimal net,
            BigDecimal tax,
            BigDecimal total,
            String currency,
            LocalDate readyOn) {}

    /**
     * A visit that was done, planned or not, of which nobody has said whether it is charged.
     *
     * @param id its first report, which stays the same when it is corrected
     * @param reportId the report in force
     */
    public record Visit(
            UUID id,
            UUID reportId,
            String kind,
            UUID siteId,
            String site,
            @Nullable String payer,
            LocalDate doneOn) {}

    /** What went to the books together. */
    public record Export(UUID id, OffsetDateTime at, String byWhom, int items) {}

    private static final String OPEN =
            " where b.ready_on is not null and b.export_id is null and b.waived_because is null ";
    private static final String PAYER = "(select p.customer_id from site_parties p where p.site_id = v.site_id"
            + " and p.part = 'PAYER' and p.customer_id is not null and p.until_date is null"
            + " order by p.from_date desc nulls last limit 1)";

    private final JdbcClient jdbc;
    private final Prices prices;
    private final Clock clock;

    Billing(JdbcClient jdbc, Prices prices, Clock clock) {
        this.jdbc = jdbc;
        this.prices = prices;
        this.clock = clock;
    }

    /** Done and not invoiced, oldest first. */
    @Transactional(readOnly = true)
    public List<Ready> ready() {
        return jdbc.sql(
                        "select b.*, c.name as customer from billing_items b left join customers c on c.id = b.customer_id"
                                + OPEN + "order by b.ready_on, b.reference limit 1000")
                .query(Ready.class)
                .list();
    }

    /** Visits done since the day of the settings that wait for a word. */
    @Transactional(readOnly = true)
    public List<Visit> visits() {
        return jdbc.sql("""
                        select first_report(v.id) as id, v.id as report_id, v.kind, v.site_id, s.name as site, v.attended_on as done_on,
                          (select c.name from customers c where c.id = %s) as payer
                        from current_reports v join sites s on s.id = v.site_id
                        where v.kind in ('SERVICE', 'CALL_OUT') and v.outcome <> 'COULD_NOT' and v.source in ('FORM', 'PHONE')
                          and v.attended_on >= (select bill_from from quote_settings)
                          and not exists (select 1 from billing_items b where b.report_id = first_report(v.id))
                        order by v.attended_on, v.id limit 1000""".formatted(PAYER)).query(Visit.class).list();
    }

    /** One visit that waits for a word. */
    @Transactional(readOnly = true)
    public Visit visit(UUID id) {
        return visits().stream()
                .filter(each -> each.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new Missing("visit to charge", id));
    }

    /** Charges a visit, or says why not. The visit can be charged once. */
    public void charge(UUID id, ChargeForm form, PricedThing tax) {
        Visit visit = visit(id);
        boolean free = form.waivedBecause() != null;
        BigDecimal net = free || form.net() == null ? BigDecimal.ZERO : Money.cents(form.net());
        BigDecimal amount = Money.cents(net.multiply(tax.price()).movePointLeft(2));
        UUID payer = jdbc.sql("select " + PAYER + " from visit_reports v where v.id = ?")
                .param(id)
                .query((row, number) -> java.util.Optional.ofNullable(row.getObject(1, UUID.class)))
                .single()
                .orElse(null);
        if (payer == null && !free) {
            throw new Conflict(
                    "Nobody pays for " + visit.site() + ". Say on the site's page who does, then charge the visit.");
        }
        jdbc.sql("""
                        insert into billing_items (id, reference, kind, report_id, customer_id, text, currency, net, tax_name, tax_percent, tax,
                          total, ready_on, waived_because)
                        values (:id, :reference, 'VISIT', :visit, :customer, :text, :currency, :net, :taxName, :taxPercent, :tax, :total, :ready,
                          :waived)""")
                .paramSource(new MapSqlParameterSource("id", Uuids.next())
                        .addValue("reference", "V-%05d".formatted(NumberSeries.next(jdbc, "visits")))
                        .addValue("visit", id)
                        .addValue("customer", payer, Types.OTHER)
                        .addValue("text", form.text())
                        .addValue("currency", prices.settings().currency())
                        .addValue("net", net)
                        .addValue("taxName", tax.name())
                        .addValue("taxPercent", tax.price())
                        .addValue("tax", amount)
                        .addValue("total", net.add(amount))
                        .addValue("ready", visit.doneOn())
                        .addValue("waived", form.waivedBecause(), Types.VARCHAR))
                .update();
    }

    /**
     * Sends all that is ready to the books.
     *
     * @throws Conflict if nothing is
     */
    public UUID export(String by) {
        List<UUID> ready = jdbc.sql(
                        "select b.id from billing_items b" + OPEN + "and b.customer_id is not null for update")
                .query(UUID.class)
                .list();
        if (ready.isEmpty()) {
            throw new Conflict("Nothing is ready for the books, or somebody sent it just now.");
        }
        UUID export = Uuids.next();
        jdbc.sql("insert into billing_exports (id, at, by_whom, items) values (?, ?, ?, ?)")
                .params(export, OffsetDateTime.now(clock), by, ready.size())
                .update();
        jdbc.sql("update billing_items set export_id = :export where id = any(:ready)")
                .param("export", export)
                .param("ready", ready.toArray(UUID[]::new))
                .update();
        LOG.info("Billing export {} of {} lines", export, ready.size());
        return export;
    }

    @Transactional(readOnly = true)
    public List<Export> exports() {
        return jdbc.sql("select * from billing_exports order by at desc limit 100")
                .query(Export.class)
                .list();
    }

    /** The lines of an export, as often as it is asked for: they never change. */
    @Transactional(readOnly = true)
    public List<List<@Nullable Object>> table(UUID export) {
        List<List<@Nullable Object>> rows = jdbc.sql("""
                        select b.reference, b.ready_on, c.reference, c.name, c.billing_address, q.number, s.name, b.text, b.net, b.tax_name,
                          b.tax_percent, b.tax, b.total, b.currency
                        from billing_items b join customers c on c.id = b.customer_id left join jobs j on j.id = b.job_id
                        left join quotes q on q.id = j.id left join visit_reports v on v.id = b.report_id left join sites s on s.id = coalesce(j.site_id, v.site_id)
                        where b.export_id = ? order by b.ready_on, b.reference""")
                .param(export)
                .query((row, number) -> {
                    List<@Nullable Object> cells = new ArrayList<>();
                    for (int i = 1; i <= HEADER.size(); i++) {
                        cells.add(row.getObject(i));
                    }
                    return cells;
                })
                .list();
        if (rows.isEmpty()) {
            throw new Missing("export", export);
        }
        return rows;
    }
}

package app.ramkeeper.quotes.job;

import app.ramkeeper.fleet.CustomerId;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.quotes.offer.QuoteCard;
import app.ramkeeper.quotes.offer.Reckoning.Tax;
import app.ramkeeper.quotes.offer.Revision;
import app.ramkeeper.quotes.price.Prices;
import app.ramkeeper.quotes.price.QuoteSettings;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.visits.VisitId;
import app.ramkeeper.web.Money;
import java.math.BigDecimal;
import java.sql.Types;
import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.EnumSet;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.namedparam.MapSqlParameterSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Opens a job: its row, its phases, and what is to be billed. */
@Repository
class JobStore {

    private final JdbcClient jdbc;
    private final Prices prices;
    private final Clock clock;

    JobStore(JdbcClient jdbc, Prices prices, Clock clock) {
        this.jdbc = jdbc;
        this.prices = prices;
        this.clock = clock;
    }

    boolean exists(JobId id) {
        return jdbc.sql("select count(*) > 0 from jobs where id = ?")
                .param(id.value())
                .query(Boolean.class)
                .single();
    }

    void add(
            JobId id,
            Revision revision,
            CustomerId customer,
            SiteId site,
            @Nullable InstallId install,
            VisitId installation,
            @Nullable VisitId commissioning) {
        jdbc.sql("""
                        insert into jobs (id, revision, at, customer_id, site_id, install_id, installation_visit, commissioning_visit)
                        values (:id, :revision, :now, :customer, :site, :install, :installation, :commissioning)""")
                .paramSource(new MapSqlParameterSource("id", id.value())
                        .addValue("revision", revision.revision())
                        .addValue("now", OffsetDateTime.now(clock))
                        .addValue("customer", customer.value())
                        .addValue("site", site.value())
                        .addValue("install", install == null ? null : install.value(), Types.OTHER)
                        .addValue("installation", installation.value())
                        .addValue("commissioning", commissioning == null ? null : commissioning.value(), Types.OTHER))
                .update();
    }

    /** The usual phases in their order; a job without an install has one of its own. */
    void addPhases(JobId id, boolean whole) {
        int position = 0;
        for (PhaseKind kind : whole ? EnumSet.complementOf(EnumSet.of(PhaseKind.OTHER)) : EnumSet.of(PhaseKind.OTHER)) {
            jdbc.sql("insert into job_phases (id, job_id, position, kind, name) values (?, ?, ?, ?, ?)")
                    .params(Uuids.next(), id.value(), ++position, kind.name(), PhaseWords.usual(kind))
                    .update();
        }
    }

    /** Deposit, stage and the rest of each tax rate; together they are the quote's total to the cent. */
    void addBilling(JobId id, QuoteCard card, Revision revision, CustomerId customer) {
        QuoteSettings settings = prices.settings();
        List<Tax> taxes = revision.totals().taxes();
        for (int i = 0; i < taxes.size(); i++) {
            Tax tax = taxes.get(i);
            String suffix = taxes.size() == 1 ? "" : Integer.toString(i + 1);
            BigDecimal deposit = part(tax.base(), settings.depositPercent());
            BigDecimal depositTax = part(tax.amount(), settings.depositPercent());
            BigDecimal stage = part(tax.base(), settings.stagePercent());
            BigDecimal stageTax = part(tax.amount(), settings.stagePercent());
            Billed of = new Billed(id, card, revision, customer, tax);
            item(of, "DEPOSIT", "/D" + suffix, deposit, depositTax, LocalDate.now(clock));
            item(of, "STAGE", "/S" + suffix, stage, stageTax, null);
            item(
                    of,
                    "FINAL",
                    "/F" + suffix,
                    tax.base().subtract(deposit).subtract(stage),
                    tax.amount().subtract(depositTax).subtract(stageTax),
                    null);
        }
    }

    private record Billed(JobId job, QuoteCard card, Revision revision, CustomerId customer, Tax tax) {}

    private void item(
            Billed of, String kind, String suffix, BigDecimal net, BigDecimal tax, @Nullable LocalDate readyOn) {
        if (net.signum() == 0 && tax.signum() == 0) {
            return;
        }
        jdbc.sql("""
                        insert into billing_items (id, reference, kind, job_id, customer_id, text, currency, net, tax_name, tax_percent,
                          tax, total, ready_on)
                        values (:id, :reference, :kind, :job, :customer, :text, :currency, :net, :taxName, :taxPercent, :tax, :total, :ready)""")
                .paramSource(new MapSqlParameterSource("id", Uuids.next())
                        .addValue("reference", of.card().name() + suffix)
                        .addValue("kind", kind)
                        .addValue("job", of.job().value())
                        .addValue("customer", of.customer().value())
                        .addValue(
                                "text",
                                PhaseWords.billing(kind) + ", quote "
                                        + of.card().name() + ": " + of.card().title())
                        .addValue("currency", of.revision().currency())
                        .addValue("net", net)
                        .addValue("taxName", of.tax().name())
                        .addValue("taxPercent", of.tax().percent())
                        .addValue("tax", tax)
                        .addValue("total", net.add(tax))
                        .addValue("ready", readyOn, Types.DATE))
                .update();
    }

    private static BigDecimal part(BigDecimal amount, BigDecimal percent) {
        return Money.cents(amount.multiply(percent).movePointLeft(2));
    }
}

package app.ramkeeper.quotes.price;

import app.ramkeeper.identity.ForSetup;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.web.Choice;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.OptimisticLockingFailureException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Keeps the priced things and their prices by date. */
@Service
@ForSetup
@Transactional
public class PriceBook {

    /** A thing as its list shows it, with its price that day and the day from which another one holds. */
    public record Line(
            UUID id,
            String code,
            PriceKind kind,
            String name,
            String unit,
            @Nullable LocalDate withdrawnOn,
            @Nullable BigDecimal price,
            @Nullable BigDecimal cost,
            @Nullable LocalDate nextFrom) {}

    /** One price with its days. */
    public record Period(
            UUID id,
            LocalDate fromDate,
            @Nullable LocalDate untilDate,
            BigDecimal price,
            @Nullable BigDecimal cost) {}

    static final String VALUES = ":code, :kind, :name, :unit, :modelId, :pipeUse, :material, :series, :outsideMm,"
            + " :wallMm, :classBar, :soldInM, :litres, :ratingBar, coalesce(:drinkingWaterFit, false)";
    static final String COLUMNS = "code, kind, name, unit, model_id, pipe_use, material, series, outside_mm, wall_mm,"
            + " class_bar, sold_in_m, litres, rating_bar, drinking_water_fit";

    private final JdbcClient jdbc;
    private final Clock clock;

    PriceBook(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** All things by kind, in use first. */
    @Transactional(readOnly = true)
    public List<Line> list(LocalDate day, @Nullable PriceKind kind) {
        return jdbc.sql("""
                        select t.id, t.code, t.kind, t.name, t.unit, t.withdrawn_on, p.price, p.cost,
                               (select min(n.from_date) from prices n where n.thing_id = t.id and n.from_date > :day) as next_from
                        from priced_things t left join prices p on p.thing_id = t.id and p.from_date <= :day
                          and (p.until_date is null or p.until_date >= :day)
                        where cast(:kind as text) is null or t.kind = :kind
                        order by t.withdrawn_on is not null,
                          array_position(array['PUMP','FITTINGS_KIT','PIPE','VESSEL','VALVE','STRAINER','TANK','LABOUR','TRAVEL','TAX','OTHER'], t.kind),
                          t.outside_mm nulls first, t.litres nulls first, t.code""")
                .param("day", day)
                .param("kind", kind == null ? null : kind.name())
                .query(Line.class)
                .list();
    }

    @Transactional(readOnly = true)
    public ThingForm form(UUID id) {
        return jdbc.sql("select * from priced_things where id = ?")
                .param(id)
                .query(ThingForm.class)
                .optional()
                .orElseThrow(() -> new Missing("priced thing", id));
    }

    @Transactional(readOnly = true)
    public boolean isWithdrawn(UUID id) {
        return jdbc.sql("select withdrawn_on is not null from priced_things where id = ?")
                .param(id)
                .query(Boolean.class)
                .single();
    }

    @Transactional(readOnly = true)
    public List<Period> periods(UUID id) {
        return jdbc.sql(
                        "select id, from_date, until_date, price, cost from prices where thing_id = ? order by from_date desc")
                .param(id)
                .query(Period.class)
                .list();
    }

    @Transactional(readOnly = true)
    public List<Choice> models() {
        return jdbc.sql(
                        "select id::text as value, name as label from pump_models where withdrawn_on is null order by name")
                .query(Choice.class)
                .list();
    }

    public UUID add(ThingForm form) {
        UUID id = Uuids.next();
        jdbc.sql("insert into priced_things (id, " + COLUMNS + ") values (:id, " + VALUES + ")")
                .paramSource(ThingParameters.of(id, form))
                .update();
        return id;
    }

    /** Writes the thing if nobody changed it meanwhile. */
    public void change(UUID id, ThingForm form) {
        int changed = jdbc.sql("update priced_things set (" + COLUMNS + ") = (" + VALUES
                        + "), version = version + 1 where id = :id and version = :version")
                .paramSource(ThingParameters.of(id, form))
                .update();
        if (changed == 0) {
            form(id);
            throw new OptimisticLockingFailureException("priced thing " + id);
        }
    }

    /** Adds a price; an open one that began before ends the day before. */
    public void addPeriod(UUID id, PeriodForm form) {
        form(id);
        jdbc.sql("update prices set until_date = :from::date - 1 where thing_id = :id and until_date is null"
                        + " and from_date < :from")
                .param("from", form.fromDate())
                .param("id", id)
                .update();
        jdbc.sql("insert into prices (id, thing_id, from_date, until_date, price, cost)"
                        + " values (:period, :id, :fromDate, :untilDate, :price, :cost)")
                .param("period", Uuids.next())
                .param("id", id)
                .param("fromDate", form.fromDate())
                .param("untilDate", form.untilDate())
                .param("price", form.price())
                .param("cost", form.cost())
                .update();
    }

    /** Takes away a price that has not begun yet; what has held stays on record. */
    public void removePeriod(UUID id, UUID period) {
        int gone = jdbc.sql("delete from prices where id = ? and thing_id = ? and from_date > ?")
                .params(period, id, LocalDate.now(clock))
                .update();
        if (gone == 0) {
            throw new Missing("price to come", period);
        }
    }

    public void withdraw(UUID id, boolean withdrawn) {
        form(id);
        jdbc.sql("update priced_things set withdrawn_on = ?, version = version + 1 where id = ?")
                .params(java.util.Arrays.asList(withdrawn ? LocalDate.now(clock) : null, id))
                .update();
    }

    /** Writes how quotes are reckoned if nobody did meanwhile. */
    public void change(QuoteSettings changed) {
        int done = jdbc.sql("""
                        update quote_settings set currency = :currency, tax_rounding = :rounding,
                          off_cut_percent = :offCut, valid_days = :validDays, deposit_percent = :deposit,
                          stage_percent = :stage, labour_days = :labour, metres_a_day = :metres,
                          number_prefix = coalesce(:prefix, ''), bill_from = :billFrom, version = version + 1 where version = :version""")
                .param("currency", changed.currency())
                .param("rounding", changed.taxRounding().name())
                .param("offCut", changed.offCutPercent())
                .param("validDays", changed.validDays())
                .param("deposit", changed.depositPercent())
                .param("stage", changed.stagePercent())
                .param("labour", changed.labourDays())
                .param("metres", changed.metresADay())
                .param("prefix", changed.numberPrefix())
                .param("billFrom", changed.billFrom())
                .param("version", changed.version())
                .update();
        if (done == 0) {
            throw new OptimisticLockingFailureException("quote settings");
        }
    }
}

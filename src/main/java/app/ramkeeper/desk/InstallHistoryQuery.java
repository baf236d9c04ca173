package app.ramkeeper.desk;

import app.ramkeeper.desk.InstallHistory.Entry;
import app.ramkeeper.desk.InstallHistory.Measured;
import app.ramkeeper.desk.InstallHistory.Period;
import app.ramkeeper.identity.ForField;
import app.ramkeeper.web.Cursor;
import java.sql.Array;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Reads the story of an install in three statements, however long it is. */
@Service
@ForField
@Transactional(readOnly = true)
class InstallHistoryQuery {

    private static final int PAGE = 40;

    /** Each kind of happening as (day, kind, title, lines, report, key); the page is cut from their union. */
    private static final String ENTRIES = """
            select * from (
              select r.attended_on as on_day, 'REPORT' as kind, r.kind || ' ' || r.outcome as title, r.id as report, r.id as key,
                array_remove(array[
                  (select string_agg(p.name, ', ' order by rp.lead desc, p.name) from report_people rp join people p on p.id = rp.person_id where rp.report_id = r.id),
                  (select string_agg(k.name || case w.outcome when 'DONE' then ' done' when 'INSPECTED_GOOD' then ' inspected, good' when 'COULD_NOT' then ' could not be done' else ' not needed' end
                     || case w.done_by when 'OWNER' then ' (by the owner)' else '' end, '; ' order by k.name)
                     from report_works w join task_kinds k on k.id = w.task_kind_id where w.report_id = r.id and w.install_id = :install),
                  (select string_agg('Found: ' || concat_ws(' – ', f.cause, f.action), '; ') from findings f where f.report_id = r.id and (f.install_id = :install or f.install_id is null)),
                  (select 'Parts: ' || string_agg(concat_ws(' ', trim_scale(u.quantity)::text || ' ×', coalesce(q.name, u.part_text), case when u.batch is not null then '(batch ' || u.batch || ')' end), ', ')
                     from parts_used u left join parts q on q.id = u.part_id where u.report_id = r.id and u.install_id = :install),
                  r.note, (select 'Promised: ' || string_agg(f.text, '; ') from follow_ups f where f.report_id = r.id and f.promised)], null) as lines
              from current_reports c join visit_reports r on r.id = c.id
              where r.site_id = (select site_id from installs where id = :install)
                and (exists (select from report_works w where w.report_id = r.id and w.install_id = :install)
                  or exists (select from readings d where d.report_id = r.id and d.install_id = :install)
                  or exists (select from findings f where f.report_id = r.id and f.install_id = :install)
                  or exists (select from parts_used u where u.report_id = r.id and u.install_id = :install)
                  or r.commissioned_install_id = :install
                  or not exists (select from report_works w where w.report_id = r.id) and not exists (select from readings d where d.report_id = r.id)
                    and not exists (select from parts_used u where u.report_id = r.id) and r.commissioned_install_id is null
                    and not exists (select from findings f where f.report_id = r.id and f.install_id is not null))
              union all
              select coalesce(c.from_date, i.commissioned_on, '1900-01-01'), 'CONFIGURATION', '', null, c.id,
                array_remove(array[c.reason, 'Fall ' || round(c.fall_m::numeric, 1) || ' m, lift ' || round(c.lift_m::numeric, 1) || ' m',
                  'Valve setting ' || c.valve_setting], null)
              from configurations c join installs i on i.id = c.install_id where c.install_id = :install
              union all
              select coalesce(f.from_date, '1900-01-01'), 'PUMP', f.place, null, f.id,
                array_remove(array[concat_ws(' ', m.name, 'serial ' || p.serial), f.reason], null)
              from pump_fittings f join pumps p on p.id = f.pump_id left join pump_models m on m.id = p.model_id where f.install_id = :install
              union all
              select coalesce(s.from_date, '1900-01-01'), 'STATE', s.state, null, s.id, array_remove(array[s.reason], null)
              from running_states s where s.install_id = :install and s.from_date is not null
              union all
              select (c.received_at at time zone :zone)::date, 'CALL', '', null, c.id,
                array_remove(array[c.note, 'Advice: ' || c.advice, 'Promised: ' || c.promise, c.closed_note], null)
              from calls c where c.install_id = :install
            ) as happened
            where :from::date is null or (on_day, key) < (:from::date, :key::uuid)
            order by on_day desc, key desc limit :limit""";

    private static final String PERIODS = """
            select c.from_date, c.until_date, c.fall_m, c.lift_m, c.reason, b.drive_flow_si, b.delivered_flow_si
            from configurations c left join baselines b on b.configuration_id = c.id
            where c.install_id = :install order by c.from_date nulls first""";

    private static final String MEASURED = """
            select r.attended_on, avg(d.value_si) filter (where d.quantity = 'DRIVE_FLOW') as drive,
              avg(d.value_si) filter (where d.quantity = 'DELIVERED_FLOW') as delivered,
              avg(d.value_si) filter (where d.quantity = 'BEAT_RATE') as beat,
              avg(d.value_si) filter (where d.quantity = 'DELIVERY_PRESSURE') as pressure,
              bool_and(d.comparable) as comparable, max(d.not_comparable_reason) as reason
            from readings d join current_reports r on r.id = d.report_id
            where d.install_id = :install and d.quantity in ('DRIVE_FLOW', 'DELIVERED_FLOW', 'BEAT_RATE', 'DELIVERY_PRESSURE')
            group by r.attended_on, r.id order by r.attended_on, r.id""";

    private final JdbcClient jdbc;
    private final java.time.Clock clock;

    InstallHistoryQuery(JdbcClient jdbc, java.time.Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    InstallHistory of(UUID install, @Nullable String after) {
        List<Row> rows = entries(install, after);
        List<Row> page = rows.subList(0, Math.min(PAGE, rows.size()));
        String next = rows.size() > PAGE
                ? Cursor.of(page.get(PAGE - 1).entry().on(), page.get(PAGE - 1).key())
                : null;
        List<Period> periods = periods(install);
        return new InstallHistory(page.stream().map(Row::entry).toList(), next, periods, measured(install, periods));
    }

    /** Its configurations and what was read, without the story. */
    List<Measured> measured(UUID install) {
        return measured(install, periods(install));
    }

    List<Period> periods(UUID install) {
        return jdbc.sql(PERIODS)
                .param("install", install)
                .query((row, number) -> new Period(
                        day(row, "from_date"),
                        day(row, "until_date"),
                        number(row, "fall_m"),
                        number(row, "lift_m"),
                        row.getString("reason"),
                        number(row, "drive_flow_si"),
                        number(row, "delivered_flow_si")))
                .list();
    }

    private List<Measured> measured(UUID install, List<Period> periods) {
        return jdbc.sql(MEASURED)
                .param("install", install)
                .query((row, number) -> measured(row, periods))
                .list();
    }

    private static Measured measured(ResultSet row, List<Period> periods) throws SQLException {
        LocalDate on = row.getObject("attended_on", LocalDate.class);
        Period period = periods.stream().filter(p -> p.covers(on)).findFirst().orElse(null);
        return new Measured(
                on,
                number(row, "drive"),
                number(row, "delivered"),
                number(row, "beat"),
                number(row, "pressure"),
                row.getBoolean("comparable"),
                row.getString("reason"),
                period);
    }

    private record Row(Entry entry, UUID key) {}

    private List<Row> entries(UUID install, @Nullable String after) {
        List<String> from =
                Cursor.read(after, 2).filter(InstallHistoryQuery::sound).orElse(null);
        return jdbc.sql(ENTRIES)
                .param("install", install)
                .param("zone", clock.getZone().getId())
                .param("from", from == null ? null : from.get(0))
                .param("key", from == null ? null : from.get(1))
                .param("limit", PAGE + 1)
                .query((row, number) -> new Row(entry(row), row.getObject("key", UUID.class)))
                .list();
    }

    private static boolean sound(List<String> keys) {
        try {
            LocalDate.parse(keys.get(0));
            UUID.fromString(keys.get(1));
            return true;
        } catch (DateTimeParseException | IllegalArgumentException broken) {
            return false;
        }
    }

    private static Entry entry(ResultSet row) throws SQLException {
        Array lines = row.getArray("lines");
        return new Entry(
                row.getObject("on_day", LocalDate.class),
                row.getString("kind"),
                row.getString("title"),
                Arrays.asList((String[]) lines.getArray()),
                row.getObject("report", UUID.class));
    }

    private static @Nullable LocalDate day(ResultSet row, String column) throws SQLException {
        return row.getObject(column, LocalDate.class);
    }

    private static @Nullable Double number(ResultSet row, String column) throws SQLException {
        double value = row.getDouble(column);
        return row.wasNull() ? null : value;
    }
}

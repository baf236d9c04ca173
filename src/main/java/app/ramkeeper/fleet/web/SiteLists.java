package app.ramkeeper.fleet.web;

import app.ramkeeper.fleet.ConsentKind;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.SiteMatch;
import app.ramkeeper.fleet.SitePart;
import app.ramkeeper.web.Cursor;
import app.ramkeeper.web.Slice;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Reads what the site pages list. */
@Component
@Transactional(readOnly = true)
class SiteLists {

    private static final int PAGE = 50;

    /** A note with the row to strike it out by. */
    record NoteRow(UUID id, String text) {}

    /** Who plays or played a part. */
    record PartyRow(
            UUID id,
            SitePart part,
            @Nullable UUID customer,
            @Nullable UUID contact,
            String name,
            @Nullable String phone,
            @Nullable LocalDate from,
            @Nullable LocalDate until,
            @Nullable BigDecimal share) {}

    /** A consent with its limits and days. */
    record ConsentRow(
            UUID id,
            ConsentKind kind,
            @Nullable String number,
            @Nullable Double limitLDay,
            @Nullable Double residualLMin,
            @Nullable LocalDate due,
            @Nullable LocalDate expires,
            @Nullable String notes) {}

    private final JdbcClient jdbc;

    SiteLists(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Slice<SiteMatch> page(@Nullable UUID depot, @Nullable String after) {
        Optional<List<String>> keys = Cursor.read(after, 2).filter(k -> CustomerLists.isId(k.get(1)));
        String where = depot == null ? "" : " and s.depot_id = :depot";
        record Keyed(SiteMatch match, String sort) {}
        List<Keyed> rows = jdbc.sql("""
                        select s.id, s.reference, s.name, s.locality, d.name as depot, folded(s.name) as sort,
                          (select string_agg(distinct c.name, ', ') from site_parties p join customers c on c.id = p.customer_id
                             where p.site_id = s.id and p.part in ('OWNER', 'OCCUPIER') and p.until_date is null) as customer,
                          (select count(*) from installs i where i.site_id = s.id and i.retired_on is null) as installs
                        from sites s left join depots d on d.id = s.depot_id where s.merged_into is null"""
                        + where
                        + (keys.isPresent() ? " and (folded(s.name), s.id) > (:name, cast(:id as uuid))" : "")
                        + " order by folded(s.name), s.id limit " + (PAGE + 1))
                .param("depot", depot)
                .param("name", keys.map(k -> k.get(0)).orElse(""))
                .param("id", keys.map(k -> k.get(1)).orElse(null))
                .query((rs, n) -> new Keyed(
                        new SiteMatch(
                                new SiteId(rs.getObject("id", UUID.class)),
                                rs.getString("reference"),
                                rs.getString("name"),
                                rs.getString("locality"),
                                rs.getString("customer"),
                                rs.getString("depot"),
                                rs.getLong("installs")),
                        rs.getString("sort")))
                .list();
        long count = jdbc.sql("select count(*) from (select from sites s where s.merged_into is null" + where
                        + " limit 1001) as capped")
                .param("depot", depot)
                .query(Long.class)
                .single();
        boolean more = rows.size() > PAGE;
        List<SiteMatch> shown = rows.stream().limit(PAGE).map(Keyed::match).toList();
        Keyed last = more ? rows.get(PAGE - 1) : null;
        return new Slice<>(
                shown, last == null ? null : Cursor.of(last.sort(), last.match().id()), count);
    }

    List<NoteRow> hazards(SiteId site) {
        return notes(
                "select id, kind || coalesce(': ' || text, '') from site_hazards where site_id = :id order by kind",
                site);
    }

    List<NoteRow> windows(SiteId site) {
        return notes("""
                select id, (array['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'])[weekday]
                  || ', ' || to_char(from_time, 'HH24:MI') || ' to ' || to_char(until_time, 'HH24:MI')
                from access_windows where site_id = :id order by weekday, from_time""", site);
    }

    List<NoteRow> closedPeriods(SiteId site) {
        return notes("""
                select id, from_date || ' to ' || until_date || coalesce(': ' || reason, '') from closed_periods
                where site_id = :id order by from_date""", site);
    }

    private List<NoteRow> notes(String sql, SiteId site) {
        return jdbc.sql(sql)
                .param("id", site.value())
                .query((rs, n) -> new NoteRow(rs.getObject(1, UUID.class), rs.getString(2)))
                .list();
    }

    List<PartyRow> parties(SiteId site) {
        return jdbc.sql("""
                        select p.*, coalesce(c.name, k.name) as name, coalesce(c.phone, k.phone) as phone from site_parties p
                          left join customers c on c.id = p.customer_id left join contacts k on k.id = p.contact_id
                        where p.site_id = :id order by p.until_date is not null, p.part, p.from_date nulls first""")
                .param("id", site.value())
                .query((rs, n) -> new PartyRow(
                        rs.getObject("id", UUID.class),
                        SitePart.valueOf(rs.getString("part")),
                        rs.getObject("customer_id", UUID.class),
                        rs.getObject("contact_id", UUID.class),
                        rs.getString("name"),
                        rs.getString("phone"),
                        rs.getObject("from_date", LocalDate.class),
                        rs.getObject("until_date", LocalDate.class),
                        rs.getBigDecimal("share")))
                .list();
    }

    List<ConsentRow> consents(SiteId site) {
        return jdbc.sql("select * from consents where site_id = :id order by expires_on nulls last, kind")
                .param("id", site.value())
                .query((rs, n) -> new ConsentRow(
                        rs.getObject("id", UUID.class),
                        ConsentKind.valueOf(rs.getString("kind")),
                        rs.getString("number"),
                        rs.getObject("limit_l_day", Double.class),
                        rs.getObject("residual_l_min", Double.class),
                        rs.getObject("due_on", LocalDate.class),
                        rs.getObject("expires_on", LocalDate.class),
                        rs.getString("notes")))
                .list();
    }
}

package app.ramkeeper.fleet.web;

import app.ramkeeper.identity.ForSetup;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Controller;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;

/** What the register does not know yet or knows twice. */
@Controller
@ForSetup
class FixLists {

    private static final String TWINS = """
            select a.id, a.name, b.id as other, b.name as other_name from %1$s a
              join %1$s b on folded(a.name) %% folded(b.name) and a.id < b.id and similarity(folded(a.name), folded(b.name)) > 0.75
            where a.merged_into is null and b.merged_into is null order by similarity(folded(a.name), folded(b.name)) desc, a.id limit 100""";

    /** Something to mend. */
    public record Row(UUID id, String name, String more) {}

    /** Two that may be one. */
    public record Pair(UUID id, String name, UUID other, String otherName) {}

    private final JdbcClient jdbc;

    FixLists(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @GetMapping("/fix-lists")
    @Transactional(readOnly = true)
    public String show(Model model) {
        model.addAttribute("positions", rows("""
                select id, name, coalesce(locality, '') from sites
                where latitude is null and merged_into is null order by folded(name), id limit 200"""));
        model.addAttribute("ages", rows("""
                select i.id, i.name, s.name from installs i join sites s on s.id = i.site_id
                where not i.commissioning_known and i.retired_on is null order by folded(s.name), i.id limit 200"""));
        model.addAttribute("pumps", rows("""
                select i.id, i.name, s.name from installs i join sites s on s.id = i.site_id
                where (i.commissioned_on is not null or not i.commissioning_known) and i.retired_on is null
                  and not exists (select from pump_fittings f where f.install_id = i.id and f.until_date is null)
                order by folded(s.name), i.id limit 200"""));
        model.addAttribute("sites", pairs("sites"));
        model.addAttribute("customers", pairs("customers"));
        return "fleet/fix-lists";
    }

    private List<Row> rows(String sql) {
        return jdbc.sql(sql)
                .query((rs, n) -> new Row(rs.getObject(1, UUID.class), rs.getString(2), rs.getString(3)))
                .list();
    }

    private List<Pair> pairs(String table) {
        return jdbc.sql(TWINS.formatted(table))
                .query((rs, n) -> new Pair(
                        rs.getObject(1, UUID.class), rs.getString(2), rs.getObject(3, UUID.class), rs.getString(4)))
                .list();
    }
}

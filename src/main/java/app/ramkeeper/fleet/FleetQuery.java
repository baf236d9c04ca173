package app.ramkeeper.fleet;

import app.ramkeeper.catalogue.PumpModelId;
import app.ramkeeper.identity.ForAll;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.web.Choice;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Answers the register's questions from the database. */
@Service
@ForAll
@Transactional(readOnly = true)
class FleetQuery implements Fleet {

    private static final String PUMP = """
            select p.*, m.name as model_name, f.place, f.install_id, f.place_no, f.from_date
            from pumps p left join pump_models m on m.id = p.model_id
              left join pump_fittings f on f.pump_id = p.id and f.until_date is null
            where p.id = :id""";

    private static final String AT_WORK = """
            select i.id from installs i join sites s on s.id = i.site_id
            where i.retired_on is null and s.merged_into is null and\s""";

    private final JdbcClient jdbc;
    private final SiteCards sites;
    private final InstallCards installs;
    private final ConfigurationCards configurations;
    private final SiteSearch search;

    FleetQuery(
            JdbcClient jdbc,
            SiteCards sites,
            InstallCards installs,
            ConfigurationCards configurations,
            SiteSearch search) {
        this.jdbc = jdbc;
        this.sites = sites;
        this.installs = installs;
        this.configurations = configurations;
        this.search = search;
    }

    @Override
    public SiteCard site(SiteId id) {
        return sites.find(id).orElseThrow(() -> new Missing("site", id));
    }

    @Override
    public InstallCard install(InstallId id) {
        return installs.byId(id.value()).stream().findFirst().orElseThrow(() -> new Missing("install", id));
    }

    @Override
    public List<InstallCard> installsOf(SiteId id) {
        return installs.ofSite(id.value());
    }

    @Override
    public PumpCard pump(PumpId id) {
        return jdbc.sql(PUMP)
                .param("id", id.value())
                .query((rs, n) -> pump(new Columns(rs)))
                .optional()
                .orElseThrow(() -> new Missing("pump", id));
    }

    private static PumpCard pump(Columns row) throws SQLException {
        return new PumpCard(
                new PumpId(row.id("id")),
                row.orNull("serial"),
                row.id("model_id", PumpModelId::new),
                row.orNull("model_name"),
                Ownership.valueOf(row.text("ownership")),
                row.date("retired_on"),
                row.date("warranty_until"),
                row.word("place", PumpPlace.class),
                row.id("install_id", InstallId::new),
                row.whole("place_no"),
                row.date("from_date"));
    }

    @Override
    public List<ConfigurationCard> configurations(InstallId id) {
        return configurations.ofInstall(id.value());
    }

    @Override
    public List<RunningPeriod> runningPeriods(InstallId id) {
        return jdbc.sql("""
                        select state, from_date, until_date, reason from running_states
                        where install_id = :id order by until_date nulls last""")
                .param("id", id.value())
                .query((rs, n) -> running(new Columns(rs)))
                .list();
    }

    private static RunningPeriod running(Columns row) throws SQLException {
        return new RunningPeriod(
                RunningState.valueOf(row.text("state")),
                row.date("from_date"),
                row.date("until_date"),
                row.orNull("reason"));
    }

    @Override
    public List<SiteMatch> search(String words, int limit) {
        return search.find(words, limit);
    }

    @Override
    public Optional<CustomerId> customerByReference(String reference) {
        return byText(
                        "select id from customers where folded(reference) = folded(:text) and merged_into is null",
                        reference)
                .map(CustomerId::new);
    }

    @Override
    public Optional<SiteId> siteByReference(String reference) {
        return byText("select id from sites where folded(reference) = folded(:text) and merged_into is null", reference)
                .map(SiteId::new);
    }

    @Override
    public Optional<InstallId> installByReference(String reference) {
        return byText("select id from installs where folded(reference) = folded(:text)", reference)
                .map(InstallId::new);
    }

    @Override
    public Optional<PumpId> pumpBySerial(String serial) {
        return byText("select id from pumps where folded(serial) = folded(:text)", serial)
                .map(PumpId::new);
    }

    private Optional<UUID> byText(String sql, String text) {
        return jdbc.sql(sql).param("text", text).query(UUID.class).optional();
    }

    @Override
    public List<Choice> catchments() {
        return jdbc.sql("select id, name from catchments order by folded(name)")
                .query((rs, n) -> new Choice(rs.getString(1), rs.getString(2)))
                .list();
    }

    @Override
    public List<InstallId> installsIn(CatchmentId catchment) {
        return jdbc.sql(AT_WORK + "s.catchment_id = :catchment")
                .param("catchment", catchment.value())
                .query((rs, n) -> new InstallId(rs.getObject(1, UUID.class)))
                .list();
    }

    @Override
    public List<InstallId> installsIn(Position southWest, Position northEast) {
        boolean overTheDateLine = southWest.longitude() > northEast.longitude();
        return jdbc.sql(AT_WORK + "s.latitude between :south and :north and (s.longitude >= :west "
                        + (overTheDateLine ? "or" : "and") + " s.longitude <= :east)")
                .param("south", southWest.latitude())
                .param("north", northEast.latitude())
                .param("west", southWest.longitude())
                .param("east", northEast.longitude())
                .query((rs, n) -> new InstallId(rs.getObject(1, UUID.class)))
                .list();
    }

    @Override
    public List<SiteId> withDuplicates(SiteId id) {
        return jdbc.sql("select id from sites where id = :id or merged_into = :id")
                .param("id", id.value())
                .query((rs, n) -> new SiteId(rs.getObject(1, UUID.class)))
                .list();
    }
}

package app.ramkeeper.bench.pages;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** Asks a running server for its pages from 1, 8 and 32 clients; {@code ops/bench/run} starts everything it needs. */
public final class PagesBench {

    private static final int[] CLIENTS = {1, 8, 32};
    /** Until the machine has compiled what the page runs most. */
    private static final int WARM_SECONDS = 25;

    /** Sessions of an account that the clients share between them. */
    private static final int SESSIONS = 1;

    /** First page of the due list without a filter, as the application asks for it. */
    private static final String DUE = """
            select t.*, s.id as site_id, s.name as site_name, s.locality, d.name as depot_name, i.name as install_name,
            case when p.id is null then null else coalesce(p.serial, m.name, 'pump') end as pump_name, p.model_id,
            k.name as kind_name, k.watched, k.minutes, plan.planned_on, plan.visit_id
            from service_tasks t
            join task_kinds k on k.id = t.task_kind_id
            join installs i on i.id = t.install_id
            join sites s on s.id = i.site_id
            left join depots d on d.id = s.depot_id
            left join pumps p on p.id = t.pump_id
            left join pump_models m on m.id = p.model_id
            left join lateral (select v.planned_on, v.id as visit_id from visit_tasks vt join visits v on v.id = vt.visit_id
                               where vt.task_id = t.id and v.state = 'PLANNED' order by v.planned_on limit 1) plan on true
            where t.ended_on is null and t.done_by = 'US'
            and (t.asleep_since is null or t.asleep_since > current_date or t.wakes_on <= current_date) and t.due_on is not null
            order by t.due_on, t.id limit 51""";

    private final String server;
    private final String database;
    private final String password = Objects.requireNonNull(System.getenv("BENCH_PASSWORD"));
    private final Map<String, Load.Figures> figures = new LinkedHashMap<>();

    private PagesBench(String server, String database) {
        this.server = server;
        this.database = database;
    }

    /** Arguments: the server's address, the database's address with user. */
    public static void main(String[] arguments) throws Exception {
        new PagesBench(arguments[0], arguments[1]).run();
    }

    private void run() throws Exception {
        List<String> sites = column("select id::text from sites where id::text like '%7' order by id limit 2000");
        List<String> names = column("select name from sites where id::text like '%3' order by id limit 2000");
        // the clients of an account share its session
        List<Browser> office = browsers("office");
        List<Browser> managers = browsers("manager");
        List<Browser> field = browsers("technician");
        bare();
        measure("empty page", (client, turn) -> office.get(client).get("/help"));
        measure("due list", (client, turn) -> office.get(client).get("/due"));
        measure("overdue list", (client, turn) -> managers.get(client).get("/overdue"));
        measure(
                "site sheet",
                (client, turn) -> field.get(client).get("/sites/" + sites.get(turn % sites.size()) + "/sheet"));
        measure("search", (client, turn) -> office.get(client).get("/sites?q=" + Browser.encoded(slip(names, turn))));
        saving(field);
        ratios();
    }

    /** Only the sending of a filled form is timed; the forms are asked for before. */
    private void saving(List<Browser> field) throws Exception {
        List<String> all = column("select id::text from sites where id::text like '%9' order by id limit 2000");
        Iterator<String> unvisited = all.iterator();
        for (int clients : CLIENTS) {
            int turns = clients == 1 ? 200 : 400;
            List<VisitForm> forms = new ArrayList<>();
            for (int i = 0; i < turns; i++) {
                forms.add(VisitForm.of(unvisited.next(), field.get(0)));
            }
            report(
                    "saving a report",
                    clients,
                    Load.run(clients, turns, (client, turn) -> forms.get(turn).send(field.get(client))));
        }
    }

    /** A name with its third letter left out, as fingers leave one out. */
    private static String slip(List<String> names, int turn) {
        String name = names.get(turn % names.size());
        return name.substring(0, 2) + name.substring(3);
    }

    private List<Browser> browsers(String login) throws Exception {
        // one network may sign in only so often; the measurement is not about that
        try (Connection connection = DriverManager.getConnection(database);
                Statement statement = connection.createStatement()) {
            statement.executeUpdate("delete from attempts");
        }
        List<Browser> all = new ArrayList<>();
        for (int i = 0; i < CLIENTS[CLIENTS.length - 1]; i++) {
            all.add(i < SESSIONS ? Browser.signedIn(server, login, password) : all.get(i % SESSIONS));
        }
        return all;
    }

    private void bare() throws Exception {
        List<PreparedStatement> statements = new ArrayList<>();
        for (int i = 0; i < CLIENTS[CLIENTS.length - 1]; i++) {
            statements.add(DriverManager.getConnection(database).prepareStatement(DUE));
        }
        measure("bare SQL of the due list", (client, turn) -> readAll(statements.get(client)));
        for (PreparedStatement statement : statements) {
            statement.getConnection().close();
        }
    }

    private static void readAll(PreparedStatement statement) throws SQLException {
        int rows = 0;
        try (ResultSet answer = statement.executeQuery()) {
            int columns = answer.getMetaData().getColumnCount();
            while (answer.next()) {
                rows++;
                for (int i = 1; i <= columns; i++) {
                    answer.getObject(i);
                }
            }
        }
        if (rows != 51) {
            throw new IllegalStateException("The due list has " + rows + " rows");
        }
    }

    private void measure(String name, Load.Act act) throws Exception {
        Load.warm(4, WARM_SECONDS, act);
        for (int clients : CLIENTS) {
            report(name, clients, Load.run(clients, clients == 1 ? 200 : 800, act));
        }
    }

    private void report(String name, int clients, Load.Figures measured) {
        figures.put(name + clients, measured);
        System.out.printf(
                "| %s | %d | %.1f | %.1f | %.0f |%n",
                name, clients, measured.median(), measured.p99(), measured.perSecond());
    }

    private void ratios() {
        System.out.println();
        for (int clients : CLIENTS) {
            double empty = median("empty page", clients);
            double bare = median("bare SQL of the due list", clients);
            System.out.printf(
                    "| %d | %.2f | %.1f | %.1f | %.1f | %.1f | %.1f |%n",
                    clients,
                    median("due list", clients) / (bare + empty),
                    median("due list", clients) / empty,
                    median("overdue list", clients) / empty,
                    median("site sheet", clients) / empty,
                    median("search", clients) / empty,
                    median("saving a report", clients) / empty);
        }
    }

    private double median(String name, int clients) {
        Load.Figures measured = figures.get(name + clients);
        if (measured == null) {
            throw new IllegalStateException(name + " was not measured");
        }
        return measured.median();
    }

    private List<String> column(String sql) throws SQLException {
        List<String> all = new ArrayList<>();
        try (Connection connection = DriverManager.getConnection(database);
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(sql)) {
            while (rows.next()) {
                all.add(rows.getString(1));
            }
        }
        return all;
    }
}

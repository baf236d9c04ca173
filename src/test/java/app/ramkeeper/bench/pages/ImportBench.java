package app.ramkeeper.bench.pages;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Locale;
import java.util.Objects;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Times an import of a register into a running server: upload, dry run, bringing in, the same file again, taking back;
 * and, to compare, a plain JDBC batch of the same rows into tables of the same make without audit and search words.
 */
public final class ImportBench {

    private static final Pattern CHOSEN =
            Pattern.compile("<select[^>]*name=\"(column:[^\"]+)\".*?</select>", Pattern.DOTALL);
    private static final Pattern SELECTED = Pattern.compile("<option value=\"(\\d+)\"[^>]*selected");

    private final Browser browser;
    private final Connection database;

    private ImportBench(Browser browser, Connection database) {
        this.browser = browser;
        this.database = database;
    }

    /** Arguments: the server's address, the database's address with user, the number of rows. */
    public static void main(String[] arguments) throws Exception {
        int rows = Integer.parseInt(arguments[2]);
        String password = Objects.requireNonNull(System.getenv("BENCH_PASSWORD"));
        try (Connection database = DriverManager.getConnection(arguments[1])) {
            new ImportBench(Browser.signedIn(arguments[0], "office", password), database).run(rows);
            new PlainInsert(database).run(rows);
        }
    }

    private void run(int rows) throws IOException, InterruptedException, SQLException {
        byte[] file = file(rows).getBytes(StandardCharsets.UTF_8);
        say("file of %,d rows, %,d kB", rows, file.length / 1024);
        UUID first = checked(file, "first");
        long from = System.nanoTime();
        step(first, "apply");
        say("brought in: %.1f s, %.2f ms a row; %s", seconds(from), seconds(from) * 1000 / rows, counts(first));
        UUID again = checked(file, "the same again");
        say("the same file again: %s", counts(again));
        from = System.nanoTime();
        step(first, "undo");
        say("taken back: %.1f s; %s", seconds(from), counts(first));
        step(first, "columns", mapping(browser.get("/imports/" + first + "/columns")));
        from = System.nanoTime();
        step(first, "apply");
        say("brought in once more: %.1f s; %s", seconds(from), counts(first));
    }

    private UUID checked(byte[] file, String what) throws IOException, InterruptedException, SQLException {
        long from = System.nanoTime();
        String columns = browser.upload("/imports", browser.get("/imports/new"), "bench.csv", file);
        UUID id = UUID.fromString(columns.split("/")[2]);
        say("%s: read in %.1f s", what, seconds(from));
        from = System.nanoTime();
        step(id, "columns", mapping(browser.get(columns)));
        say("%s: dry run %.1f s; %s", what, seconds(from), counts(id));
        return id;
    }

    private static String mapping(String page) {
        StringBuilder form = new StringBuilder("dateOrder=DAY_FIRST&decimalMark=POINT");
        Matcher fields = CHOSEN.matcher(page);
        while (fields.find()) {
            Matcher option = SELECTED.matcher(fields.group());
            if (option.find()) {
                form.append('&')
                        .append(Browser.encoded(fields.group(1)))
                        .append('=')
                        .append(option.group(1));
            }
        }
        return form.toString();
    }

    private void step(UUID id, String step) throws IOException, InterruptedException, SQLException {
        step(id, step, "x=1");
    }

    private void step(UUID id, String step, String form) throws IOException, InterruptedException, SQLException {
        browser.post("/imports/" + id + "/" + step, browser.get("/imports/new"), form);
        while (state(id).endsWith("ING")) {
            Thread.sleep(200);
        }
    }

    private String state(UUID id) throws SQLException {
        return text("select state || coalesce('', remark) from imports where id = ?", id);
    }

    private String counts(UUID id) throws SQLException {
        return text(
                "select string_agg(state || ' ' || n, ', ') from (select state, count(*) n from import_rows where import_id = ? group by state) c",
                id);
    }

    private String text(String sql, UUID id) throws SQLException {
        try (PreparedStatement statement = database.prepareStatement(sql)) {
            statement.setObject(1, id);
            try (ResultSet row = statement.executeQuery()) {
                row.next();
                return row.getString(1);
            }
        }
    }

    /** Invented installs: two of each customer, each at a site of its own. */
    private static String file(int rows) {
        StringBuilder text = new StringBuilder("Reference,Customer,Phone,Site,Locality,Latitude,Longitude,Altitude (m),"
                + "Water class,Drinking water,Source,Way in,Install,Commissioned,Serial,Fall (m),Lift (m),"
                + "Drive pipe material,Drive pipe bore (mm),Drive pipe length (m),Delivery pipe,Delivery pipe bore (mm),"
                + "Delivery pipe length (m),Last done: Clean strainer,Last done: Change delivery valve rubber,Notes\n");
        for (int i = 0; i < rows; i++) {
            text.append(String.format(
                    Locale.ROOT,
                    "BN-%d,Customer %d,555 %04d,Place %d,Valley %d,%.5f,%.5f,%d,Clear,no,creek,Up the track past gate %d.,"
                            + "Ram pump,%02d/04/2021,BS%d,%d.4,45,steel,50,%d,PE,25,412,24/10/2025,09/04/2024,Row %d.%n",
                    i,
                    i / 2,
                    i % 10_000,
                    i,
                    i % 40,
                    -44 - (i % 997) / 1000.0,
                    169 + (i % 991) / 1000.0,
                    200 + i % 500,
                    i % 9,
                    1 + i % 28,
                    i,
                    2 + i % 6,
                    20 + i % 30,
                    i));
        }
        return text.toString();
    }

    static double seconds(long from) {
        return (System.nanoTime() - from) / 1e9;
    }

    static void say(String text, Object... values) {
        System.out.println(String.format(Locale.ROOT, text, values));
    }
}

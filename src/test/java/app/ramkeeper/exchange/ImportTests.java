package app.ramkeeper.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import app.ramkeeper.TestDatabase;
import app.ramkeeper.exchange.reading.DateOrder;
import app.ramkeeper.exchange.reading.DecimalMark;
import app.ramkeeper.exchange.reading.Reading;
import app.ramkeeper.exchange.reading.Unreadable;
import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.Role;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Uuids;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.test.context.support.WithMockUser;

/** Imports from file to register and back, with the real job on a real database. */
@SpringBootTest
@Import(TestDatabase.class)
@WithMockUser(username = "setup", roles = "OFFICE")
class ImportTests {

    private static final String HEAD =
            "Reference;Customer;Site;Install;Commissioned;Latitude;Longitude;Altitude;Fall (m);Lift (m);Serial;Last done: Clean strainer\n";

    @Autowired
    Imports imports;

    @Autowired
    RegisterExport export;

    @Autowired
    ImportRun run;

    @Autowired
    JdbcClient jdbc;

    @TempDir
    Path folder;

    private CurrentUser user = new CurrentUser(Uuids.next(), Uuids.next(), "setup", "Setup", Set.of(Role.OFFICE), null);

    /** A mark that keeps this test's rows apart from all others. */
    private final String own = UUID.randomUUID().toString().substring(0, 8);

    @BeforeEach
    void person() {
        jdbc.sql("insert into people (id, name) values (:id, :name)")
                .param("id", user.person())
                .param("name", "Setup " + own)
                .update();
    }

    @Test
    void bringsGoodRowsInLeavesBadOnesToMendAndTakesAllBack() throws IOException {
        ImportId id = checked(HEAD
                + row("A", "2019-03-05", "-45.03", "169.2", "12,5", "S1")
                + row("B", "2031-01-01", "-45.03", "169.2", "12,5", "S2")
                + row("C", "unknown", "169.2", "-45.03", "12,5", "S1")
                + row("D", "unknown", "0", "0", "12,5", "S4"));

        assertThat(imports.counts(id).byState()).isEqualTo(Map.of(RowState.READY, 1, RowState.PROBLEM, 3));
        assertThat(sentences(id, 3)).anyMatch(s -> s.contains("Wed 1 Jan 2031 lies in the future"));
        assertThat(sentences(id, 4)).anyMatch(s -> s.contains("swapped"));
        assertThat(sentences(id, 5)).anyMatch(s -> s.contains("stands for no position"));

        imports.apply(id);
        await(id, ImportState.APPLIED);
        assertThat(installs()).containsExactly("A" + own);
        assertThat(jdbc.sql(
                                "select fall_m from configurations c join installs i on i.id = c.install_id where i.reference = :r")
                        .param("r", "A" + own)
                        .query(Double.class)
                        .single())
                .isEqualTo(12.5);

        StagedRow mended = imports.mend(id, 3, cells(id, 3, 4, "5 Mar 2020"));
        assertThat(mended.state()).isEqualTo(RowState.READY);
        imports.apply(id);
        await(id, ImportState.APPLIED);
        assertThat(installs()).containsExactly("A" + own, "B" + own);

        imports.undo(id);
        await(id, ImportState.UNDONE);
        assertThat(installs()).isEmpty();
        assertThat(jdbc.sql("select count(*) from customers where name like :n")
                        .param("n", "%" + own)
                        .query(Long.class)
                        .single())
                .isZero();
    }

    @Test
    void sameFileAgainChangesNothingAndOneWithOtherContentIsAProblem() throws IOException {
        String text = HEAD + row("A", "2019-03-05", "-45.03", "169.2", "12,5", "S1");
        ImportId first = checked(text);
        imports.apply(first);
        await(first, ImportState.APPLIED);

        ImportId again = checked(text);
        ImportId other = checked(text.replace("12,5", "14,5"));

        assertThat(imports.get(again).sameFileSince()).isNotNull();
        assertThat(imports.counts(again).byState()).isEqualTo(Map.of(RowState.UNCHANGED, 1));
        assertThatExceptionOfType(Conflict.class).isThrownBy(() -> imports.apply(again));
        assertThat(sentences(other, 2))
                .containsExactly(
                        "Fall is “12.5” in the register already, and “14.5” here. Change it on its own page, or leave this row out.");
    }

    @Test
    void saysWhatTheReadyRowsMakeAndMakesJustThat() throws IOException {
        ImportId first = checked(HEAD + row("A", "2019-03-05", "-45.03", "169.2", "12,5", "S1"));
        imports.apply(first);
        await(first, ImportState.APPLIED);

        ImportId id = checked(HEAD
                + row("A", "2019-03-05", "-45.03", "169.2", "12,5", "S1")
                + row("B", "2019-03-05", "-45.03", "169.2", "12,5", "S2").replace("Customer", "CUSTOMER")
                + row("C", "2019-03-05", "-45.03", "169.2", "12,5", "S3").replace("Site", "Upper")
                + row("D", "2019-03-05", "-45.03", "169.2", "12,5", "S4").replace("Customer", "Other")
                + row("E", "2019-03-05", "-45.03", "169.2", "12,5", "S5").replace("Customer", "Other")
                + row("F", "2031-03-05", "-45.03", "169.2", "12,5", "S6").replace("Customer", "Bad")
                + row("G", "2019-03-05", "-45.03", "169.2", "12,5", "X").replace("X" + own, ""));
        assertThat(imports.makes(imports.get(id))).isEqualTo(new Makes.Made(1, 1, 2, 1, 5, 4, 0, 0));

        imports.apply(id);
        await(id, ImportState.APPLIED);
        assertThat(made(id, "customers")).isEqualTo(1);
        assertThat(made(id, "sites")).isEqualTo(2);
        assertThat(made(id, "installs")).isEqualTo(5);
    }

    private long made(ImportId id, String table) {
        return jdbc.sql("select coalesce(sum(jsonb_array_length(made -> cast(:table as text))), 0) from import_rows"
                        + " where import_id = :id")
                .param("table", table)
                .param("id", id.value())
                .query(Long.class)
                .single();
    }

    /** The site and the customer stay as they are, so what a new install's row says otherwise would be dropped. */
    @Test
    void aNewInstallAtAKnownSiteSaysCellByCellWhatDiffers() throws IOException {
        ImportId first = checked(HEAD + row("A", "2019-03-05", "-45.03", "169.2", "12,5", "S1"));
        imports.apply(first);
        await(first, ImportState.APPLIED);

        ImportId same = checked(HEAD + row("B", "2020-03-05", "-45.03", "169.2", "12,5", "S2"));
        ImportId other = checked(HEAD.replace("Install;", "Install;Phone;Drinking water;")
                + row("C", "2020-03-05", "-45.03", "169.25", "12,5", "S3").replace(";Pump C;", ";Pump C;021 555;yes;"));

        assertThat(imports.counts(same).byState()).isEqualTo(Map.of(RowState.READY, 1));
        assertThat(sentences(other, 2))
                .containsExactlyInAnyOrder(
                        "Longitude is “169.2” in the register already, and “169.25” here. Change it on its own page, or make this cell the same or blank.",
                        "Phone is blank in the register already, and “021 555” here. Change it on its own page, or make this cell the same or blank.",
                        "Drinking water is “no” in the register already, and “yes” here. Change it on its own page, or make this cell the same or blank.");
        assertThat(imports.withProblems(List.of(same, other))).isEqualTo(Map.of(other, 1));
    }

    @Test
    void asksAboutMoreDeliveredThanDrivenKnowsNamesHoweverSpelledAndSaysWhichHistoryStandsOnTop() throws IOException {
        ImportId register = checked(HEAD + row("A", "2019-03-05", "-45.03", "169.2", "12,5", "S1"));
        imports.apply(register);
        await(register, ImportState.APPLIED);
        String head = "Date;Install reference;Technician;Drive flow (l/min);Delivered flow (l/min)\n";
        ImportId id = checked(
                ImportKind.HISTORY,
                (head + "2021-05-06;A" + own + ";setup  " + own + ";85;8\n" + "2022-05-06;A" + own + ";Setup " + own
                                + ";85;600\n")
                        .getBytes(StandardCharsets.UTF_8),
                "history.csv");

        assertThat(sentences(id, 3))
                .singleElement()
                .asString()
                .contains("More water delivered than driven", "85 l/min");
        assertThat(imports.makes(imports.get(id))).isEqualTo(new Makes.Made(0, 0, 0, 0, 0, 0, 1, 0));
        imports.apply(id);
        await(id, ImportState.APPLIED);
        assertThat(jdbc.sql("select count(*) from people where name ilike :n")
                        .param("n", "setup%" + own)
                        .query(Long.class)
                        .single())
                .isEqualTo(1);
        assertThatExceptionOfType(Conflict.class)
                .isThrownBy(() -> imports.undo(register))
                .withMessageContaining("“history.csv”")
                .withMessageContaining("take that import back first");
    }

    @Test
    void isNotTakenBackOnceSomethingElseHasChangedIt() throws IOException {
        ImportId id = checked(HEAD + row("A", "2019-03-05", "-45.03", "169.2", "12,5", "S1"));
        imports.apply(id);
        await(id, ImportState.APPLIED);
        jdbc.sql("update installs set name = 'Renamed', version = version + 1 where reference = :r")
                .param("r", "A" + own)
                .update();

        assertThatExceptionOfType(Conflict.class)
                .isThrownBy(() -> imports.undo(id))
                .withMessageContaining("line 2");
        assertThat(installs()).containsExactly("A" + own);
    }

    @Test
    void leavesOldAndNewInTheAuditTrailUnderTheImportsName() throws IOException {
        ImportId id = checked(HEAD + row("A", "2019-03-05", "-45.03", "169.2", "12,5", "S1"));
        imports.apply(id);
        await(id, ImportState.APPLIED);

        assertThat(jdbc.sql("select distinct table_name from audit_entries where source = :s and actor = 'setup'")
                        .param("s", "import " + id)
                        .query(String.class)
                        .list())
                .contains("customers", "sites", "installs", "configurations", "pumps", "pump_fittings", "site_parties");
    }

    @Test
    void refusesTwinsInOneFile() throws IOException {
        ImportId id = checked(HEAD
                + row("A", "2019-03-05", "-45.03", "169.2", "12,5", "S1")
                + row("A", "2019-03-06", "-45.03", "169.2", "12,5", "S2")
                + row("B", "2019-03-06", "-45.03", "169.2", "12,5", "S1"));

        assertThat(sentences(id, 3)).singleElement().asString().contains("stands in line 2");
        assertThat(sentences(id, 4)).singleElement().asString().contains("stands in line 2");
    }

    @Test
    @DisplayName("SEC-04 takes hostile headings and cells as plain text")
    void sec04TakesHostileTextAsText() throws IOException {
        String evil = "'; drop table installs;-- ";
        ImportId id = checked("Customer,Site,\"" + evil + "\"\n\"" + evil + own + "\",1) or (1=1 " + own + ",x\n");
        imports.apply(id);
        await(id, ImportState.APPLIED);

        assertThat(jdbc.sql("select name from customers where name like :n")
                        .param("n", "%" + own)
                        .query(String.class)
                        .list())
                .containsExactly(evil + own);
    }

    @Test
    @DisplayName("FLT-22 a register that went out comes in again without change")
    void flt22RoundTripChangesNothing() throws IOException {
        ImportId id = checked(
                HEAD + row("'=A", "2019-03-05", "45°01'52\"S", "169°12'30\"E", "-5,5".replace("-", ""), "'+S1"));
        imports.apply(id);
        await(id, ImportState.APPLIED);
        assertThat(installs()).containsExactly("=A" + own);

        for (boolean xlsx : new boolean[] {false, true}) {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            if (xlsx) {
                export.xlsx(out);
            } else {
                export.csv(out);
                assertThat(out.toString(StandardCharsets.UTF_8))
                        .contains("'=A" + own)
                        .contains("'+S1" + own);
            }
            ImportId again = checked(out.toByteArray(), xlsx ? "register.xlsx" : "register.csv");
            // other tests leave sites without a customer behind, so only this test's own row is looked at
            assertThat(own(again, RowState.PROBLEM).stream().map(StagedRow::problems))
                    .isEmpty();
            assertThat(own(again, RowState.UNCHANGED)).hasSize(1);
        }
    }

    private List<StagedRow> own(ImportId id, RowState state) {
        return imports.rows(id, state, 0, 10_000).stream()
                .filter(row -> row.cells().stream().anyMatch(cell -> cell.contains(own)))
                .toList();
    }

    @Test
    @DisplayName("FLT-27 composed and decomposed spelling name one customer")
    void flt27OneCustomerForBothSpellings() throws IOException {
        ImportId id = checked("Customer;Site;Install\nM\u0101kara " + own + ";One;a\nMa\u0304kara " + own + ";Two;b\n");
        imports.apply(id);
        await(id, ImportState.APPLIED);

        assertThat(jdbc.sql("select count(*) from customers where name like :n")
                        .param("n", "%" + own)
                        .query(Long.class)
                        .single())
                .isEqualTo(1);
    }

    @Test
    @DisplayName("FLT-25 stops between batches and goes on where it ended; a doubled job does no row twice")
    void flt25StopsAndGoesOn() throws IOException {
        StringBuilder text = new StringBuilder(HEAD);
        for (int i = 0; i < 350; i++) {
            text.append(row("N" + i + "-", "2019-03-05", "-45.03", "169.2", "12,5", "S" + i + "-"));
        }
        ImportId id = checked(text.toString());
        imports.apply(id);
        Awaitility.await()
                .pollInSameThread()
                .atMost(Duration.ofSeconds(60))
                .until(() -> imports.counts(id).of("APPLIED") > 0);
        imports.stop(id);
        await(id, ImportState.APPLIED);
        int before = installs().size();
        assertThat(imports.counts(id).of("APPLIED")).isEqualTo(before);

        if (before < 350) {
            imports.apply(id);
            run.run(id);
        }
        await(id, ImportState.APPLIED);
        assertThat(installs()).hasSize(350);
        imports.undo(id);
        await(id, ImportState.UNDONE);
        assertThat(installs()).isEmpty();
    }

    @Test
    void aRowThatTheRegisterRefusesHoldsBackOnlyItself() throws Exception {
        ImportId id = checked(HEAD
                + row("A", "2019-03-05", "-45.03", "169.2", "12,5", "S1")
                + row("B", "2019-03-05", "-45.03", "169.2", "12,5", "S2")
                + row("C", "2019-03-05", "-45.03", "169.2", "12,5", "S3"));
        String rule = "ck_installs_refused_" + own;

        asOwner("alter table installs add constraint " + rule + " check (reference <> 'B" + own + "')");
        try {
            imports.apply(id);
            await(id, ImportState.APPLIED);
        } finally {
            asOwner("alter table installs drop constraint " + rule);
        }

        assertThat(installs()).containsExactly("A" + own, "C" + own);
        assertThat(sentences(id, 3)).singleElement().asString().startsWith("The register refused this row.");
        assertThat(jdbc.sql("select count(*) from audit_entries where new_values ->> 'reference' = :r")
                        .param("r", "B" + own)
                        .query(Long.class)
                        .single())
                .isZero();
        imports.mend(id, 3, imports.row(id, 3).cells());
        imports.apply(id);
        await(id, ImportState.APPLIED);
        assertThat(installs()).containsExactly("A" + own, "B" + own, "C" + own);
    }

    private static void asOwner(String sql) throws SQLException {
        JdbcConnectionDetails owner = TestDatabase.owner();
        try (Connection database =
                        DriverManager.getConnection(owner.getJdbcUrl(), owner.getUsername(), owner.getPassword());
                Statement statement = database.createStatement()) {
            statement.execute(sql);
        }
    }

    @Test
    void aFileThatBreaksOffLeavesNothing() {
        assertThatExceptionOfType(Unreadable.class)
                .isThrownBy(() -> staged(
                        (HEAD + row("A", "2019-03-05", "-45.03", "169.2", "12,5", "S1") + "\"open")
                                .getBytes(StandardCharsets.UTF_8),
                        "broken" + own + ".csv"));

        assertThat(jdbc.sql("select count(*) from imports where file_name = :n")
                        .param("n", "broken" + own + ".csv")
                        .query(Long.class)
                        .single())
                .isZero();
    }

    @Test
    void importsHistoryWithUnknownTechnicianAndTakesItBack() throws IOException {
        ImportId register = checked(HEAD + row("A", "2019-03-05", "-45.03", "169.2", "12,5", "S1"));
        imports.apply(register);
        await(register, ImportState.APPLIED);
        String text = "Date;Install reference;Technician;Kind of visit;Work done;Delivered flow (l/day);Note\n"
                + "2021-05-06;A" + own + ";Tama " + own
                + ";service;cleaned strainer, new delivery rubber;14400;all well\n"
                + "2018-01-01;A" + own + ";Tama " + own + ";service;clean strainer;;before\n"
                + "2018-01-01;A" + own + ";Tama " + own + ";installation;;;before\n"
                + "2021-05-06;ZZ" + own + ";Tama " + own + ";service;painted it;;\n";
        ImportId id = checked(ImportKind.HISTORY, text.getBytes(StandardCharsets.UTF_8), "h.csv");
        assertThat(imports.counts(id).byState()).isEqualTo(Map.of(RowState.READY, 2, RowState.PROBLEM, 2));
        assertThat(imports.makes(imports.get(id))).isEqualTo(new Makes.Made(0, 0, 0, 0, 0, 0, 2, 1));
        assertThat(sentences(id, 3))
                .singleElement()
                .asString()
                .contains("Mon 1 Jan 2018 lies before the install was commissioned (Tue 5 Mar 2019)");
        assertThat(sentences(id, 5))
                .anyMatch(s -> s.contains("painted it"))
                .anyMatch(s -> s.contains("no install with reference"));

        imports.apply(id);
        await(id, ImportState.APPLIED);
        assertThat(jdbc.sql(
                                "select count(*) from people p where name = :n and of_history and not exists (select from accounts a where a.person_id = p.id)")
                        .param("n", "Tama " + own)
                        .query(Long.class)
                        .single())
                .isEqualTo(1);
        assertThat(reports()).isEqualTo(2);
        ImportId again = checked(ImportKind.HISTORY, text.getBytes(StandardCharsets.UTF_8), "h.csv");
        assertThat(imports.counts(again).of("UNCHANGED")).isEqualTo(2);

        imports.undo(id);
        await(id, ImportState.UNDONE);
        assertThat(reports()).isZero();
    }

    private long reports() {
        return jdbc.sql(
                        "select count(*) from current_reports r join installs i on i.site_id = r.site_id where i.reference = :r")
                .param("r", "A" + own)
                .query(Long.class)
                .single();
    }

    private String row(
            String reference, String commissioned, String latitude, String longitude, String fall, String serial) {
        return String.join(
                        ";",
                        reference + own,
                        "Customer " + own,
                        "Site " + own,
                        "Pump " + reference,
                        commissioned,
                        "\"" + latitude.replace("\"", "\"\"") + "\"",
                        "\"" + longitude.replace("\"", "\"\"") + "\"",
                        "410",
                        fall,
                        "60",
                        serial + own,
                        "2024-01-02")
                + "\n";
    }

    private List<String> installs() {
        return jdbc.sql("select reference from installs where reference like :r order by reference")
                .param("r", "%" + own)
                .query(String.class)
                .list();
    }

    private List<String> sentences(ImportId id, int line) {
        return imports.row(id, line).problems().stream().map(Problem::sentence).toList();
    }

    private List<String> cells(ImportId id, int line, int column, String value) {
        List<String> cells = new java.util.ArrayList<>(imports.row(id, line).cells());
        cells.set(column, value);
        return cells;
    }

    private ImportId checked(String text) throws IOException {
        return checked(text.getBytes(StandardCharsets.UTF_8), "t.csv");
    }

    private ImportId checked(byte[] content, String name) throws IOException {
        return checked(ImportKind.REGISTER, content, name);
    }

    private ImportId checked(ImportKind kind, byte[] content, String name) throws IOException {
        ImportId id = staged(kind, content, name);
        Mapping offered = imports.offered(imports.get(id));
        DecimalMark mark = imports.get(id).mark();
        imports.map(id, new Mapping(offered.columns(), DateOrder.DAY_FIRST, mark));
        await(id, ImportState.CHECKED);
        return id;
    }

    private ImportId staged(byte[] content, String name) throws IOException {
        return staged(ImportKind.REGISTER, content, name);
    }

    private ImportId staged(ImportKind kind, byte[] content, String name) throws IOException {
        Path file = Files.write(folder.resolve("upload"), content);
        return imports.stage(kind, new Imports.Upload(file, name, null), Reading.RECOGNISE, user);
    }

    private void await(ImportId id, ImportState state) {
        Awaitility.await()
                .pollInSameThread()
                .atMost(Duration.ofSeconds(90))
                .pollInterval(Duration.ofMillis(100))
                .until(() -> !imports.get(id).state().isWorking());
        app.ramkeeper.exchange.Import now = imports.get(id);
        assertThat(now.state()).as(String.valueOf(now.remark())).isEqualTo(state);
    }
}

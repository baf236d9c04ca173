package app.ramkeeper.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.TestDatabase;
import app.ramkeeper.fleet.Customers;
import app.ramkeeper.fleet.Installs;
import app.ramkeeper.fleet.Sites;
import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.Role;
import app.ramkeeper.shared.Uuids;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;

/** The pages of an import, from the file to the register and back, with the real job. */
@SpringBootTest
@AutoConfigureMockMvc
@Import({TestDatabase.class, Customers.class, Sites.class, Installs.class})
class ImportPagesTests {

    private static final String HEAD = "Reference;Customer;Site;Way in;Commissioned;Fall (m)\n";

    @Autowired
    MockMvcTester mvc;

    @Autowired
    JdbcClient jdbc;

    private final CurrentUser clerk =
            new CurrentUser(Uuids.next(), Uuids.next(), "tester", "Tess Ter", Set.of(Role.OFFICE), null);

    /** A mark that keeps this test's rows apart from all others. */
    private final String own = UUID.randomUUID().toString().substring(0, 8);

    @BeforeEach
    void person() {
        jdbc.sql("insert into people (id, name) values (?, ?)")
                .params(clerk.person(), "Tess Ter " + own)
                .update();
    }

    @Test
    void bringsAFileInMendsABadRowAndTakesAllBack() {
        String columns = uploaded(HEAD + row("A", "12,5") + row("B", "deep"));
        assertThat(text(get(columns))).contains("A" + own, "Fall (m)");

        String page = mapped(columns);
        assertThat(text(get(page)))
                .contains(
                        "register.csv",
                        "What the ready rows make",
                        "1 new customer<",
                        "1 new site<",
                        "1 new install with");
        assertThat(installs()).as("a dry run writes nothing").isEmpty();
        assertThat(text(get(page + "/rows"))).contains("Line 3", "deep");
        assertThat(text(get(page + "/rows/3"))).contains("deep", "aria-invalid=\"true\"");

        assertThat(post(page + "/apply")).hasStatus3xxRedirection();
        awaitRest(page);
        assertThat(installs()).containsExactly("A" + own);

        MvcTestResult stillWrong = mend(page, 3, "still deep");
        assertThat(stillWrong).hasStatus(422);
        assertThat(text(stillWrong)).contains("still deep");
        assertThat(mend(page, 3, "4.2")).hasStatus3xxRedirection();
        assertThat(post(page + "/apply")).hasStatus3xxRedirection();
        awaitRest(page);
        assertThat(installs()).containsExactly("A" + own, "B" + own);

        assertThat(post(page + "/undo")).hasStatus3xxRedirection();
        awaitRest(page);
        assertThat(installs()).isEmpty();
        assertThat(text(get("/imports"))).contains("register.csv");
    }

    @Test
    @DisplayName("SEC-13 a column chosen twice, and one that is needed and not chosen, are named beside their fields")
    void sec13NamesWrongColumns() {
        String columns = uploaded(HEAD + row("A", "12,5"));

        MvcTestResult answer = post(columns, "column:reference", "0", "column:customer", "0", "dateOrder", "DAY_FIRST");

        assertThat(answer).hasStatus(422);
        assertThat(text(answer))
                .contains("Column A is chosen twice.", "#f-site")
                .doesNotContain("?" + "?");
    }

    @Test
    @DisplayName("SEC-39 a file larger than the limit is refused with the limit, and no file is left behind")
    void sec39NamesTheLimit() throws IOException {
        List<Path> before = temporary();
        MvcTestResult answer = upload("register.csv", "text/csv", new byte[16 * 1024 * 1024 + 1]);

        assertThat(answer).hasStatus(413);
        assertThat(text(answer)).contains("16 MB");
        assertThat(upload("register.csv", "text/csv", (HEAD + row("A", "1,5")).getBytes(StandardCharsets.UTF_8)))
                .hasStatus3xxRedirection();
        assertThat(temporary()).isEqualTo(before);
    }

    @ParameterizedTest
    @CsvSource({
        "photo.png,image/png,PNG",
        "page.html,text/html,<html>",
        "register.csv.html,text/html,a;b",
        "register.xlsx,application/vnd.openxmlformats-officedocument.spreadsheetml.sheet,a;b",
        "none.csv,text/csv,''"
    })
    @DisplayName("SEC-40 another kind of file is refused in words, and nothing is written")
    void sec40RefusesOtherFiles(String name, String type, String content) {
        MvcTestResult answer = upload(name, type, content.getBytes(StandardCharsets.UTF_8));

        assertThat(answer.getResponse().getStatus()).isIn(415, 422);
        assertThat(text(answer)).contains("role=\"alert\"");
        assertThat(jdbc.sql("select count(*) from imports where started_by = ?")
                        .param(clerk.person())
                        .query(Integer.class)
                        .single())
                .isZero();
    }

    @Test
    @DisplayName("SEC-12 a cell that names a class is a text")
    void sec12NamesOfClassesAreText() {
        String evil = "{\"@class\":\"javax.script.ScriptEngineManager\",\"@type\":\"java.net.URL\"}";
        String page = mapped(uploaded(HEAD + "A" + own + ";Customer " + own + ";Site " + own + ";\""
                + evil.replace("\"", "\"\"") + "\";2020-05-06;12,5\n"));

        assertThat(post(page + "/apply")).hasStatus3xxRedirection();
        awaitRest(page);
        assertThat(jdbc.sql("select way_in from sites where name = ?")
                        .param("Site " + own)
                        .query(String.class)
                        .single())
                .isEqualTo(evil);
    }

    @Test
    @DisplayName("SEC-64 an import or row that is not there is missing")
    void sec64Missing() {
        String page = mapped(uploaded(HEAD + row("A", "12,5")));

        assertThat(get("/imports/" + UUID.randomUUID())).hasStatus(404);
        assertThat(get(page + "/rows/99")).hasStatus(404);
        assertThat(post("/imports/" + UUID.randomUUID() + "/apply")).hasStatus(404);
        assertThat(post(page + "/undo")).as("nothing was brought in yet").hasStatus(409);
    }

    private static List<Path> temporary() throws IOException {
        try (Stream<Path> files = Files.list(Path.of(System.getProperty("java.io.tmpdir")))) {
            return files.filter(file -> file.getFileName().toString().startsWith("ramkeeper-import"))
                    .sorted()
                    .toList();
        }
    }

    private String row(String reference, String fall) {
        return reference + own + ";Customer " + own + ";Site " + own + ";By the ford;2020-05-06;" + fall + "\n";
    }

    private String uploaded(String text) {
        MvcTestResult answer = upload("register.csv", "text/csv", text.getBytes(StandardCharsets.UTF_8));
        assertThat(answer).hasStatus3xxRedirection();
        return String.valueOf(answer.getResponse().getRedirectedUrl());
    }

    private MvcTestResult upload(String name, String type, byte[] content) {
        return mvc.post()
                .uri("/imports")
                .multipart()
                .file(new MockMultipartFile("file", name, type, content))
                .with(user(clerk))
                .with(csrf())
                .exchange();
    }

    /** Chooses the columns in the order of the file; gives the import's page once the rows are checked. */
    private String mapped(String columns) {
        assertThat(post(
                        columns,
                        "column:reference",
                        "0",
                        "column:customer",
                        "1",
                        "column:site",
                        "2",
                        "column:wayIn",
                        "3",
                        "column:commissioned",
                        "4",
                        "column:fall",
                        "5",
                        "dateOrder",
                        "DAY_FIRST",
                        "decimalMark",
                        "COMMA"))
                .hasStatus3xxRedirection();
        String page = columns.substring(0, columns.lastIndexOf('/'));
        awaitRest(page);
        return page;
    }

    private MvcTestResult mend(String page, int line, String fall) {
        return post(
                page + "/rows/" + line,
                "cell",
                "B" + own,
                "cell",
                "Customer " + own,
                "cell",
                "Site " + own,
                "cell",
                "By the ford",
                "cell",
                "2020-05-06",
                "cell",
                fall);
    }

    private void awaitRest(String page) {
        UUID id = UUID.fromString(page.substring("/imports/".length()));
        Awaitility.await()
                .atMost(Duration.ofSeconds(60))
                .pollInterval(Duration.ofMillis(100))
                .until(() -> !jdbc.sql("select state from imports where id = ?")
                        .param(id)
                        .query(String.class)
                        .single()
                        .endsWith("ING"));
    }

    private List<String> installs() {
        return jdbc.sql("select reference from installs where reference like ? order by reference")
                .param("%" + own)
                .query(String.class)
                .list();
    }

    private MvcTestResult get(String path) {
        return mvc.get().uri(path).with(user(clerk)).exchange();
    }

    private MvcTestResult post(String path, String... fields) {
        var request = mvc.post().uri(path).with(user(clerk)).with(csrf());
        for (int i = 0; i < fields.length; i += 2) {
            request = request.param(fields[i], fields[i + 1]);
        }
        return request.exchange();
    }

    private static String text(MvcTestResult answer) {
        return new String(answer.getResponse().getContentAsByteArray(), StandardCharsets.UTF_8);
    }
}

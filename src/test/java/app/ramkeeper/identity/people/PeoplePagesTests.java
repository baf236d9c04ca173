package app.ramkeeper.identity.people;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import app.ramkeeper.TestDatabase;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.identity.WebVisitor;
import app.ramkeeper.identity.people.Accounts.NewAccount;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.security.test.context.support.WithMockUser;

/** What administrators do with people and accounts, over http. */
@SpringBootTest(webEnvironment = WebEnvironment.RANDOM_PORT, properties = "ramkeeper.second-factor=off")
@Import(TestDatabase.class)
class PeoplePagesTests {

    private static final String PASSWORD = "a weir in the morning mist";

    @LocalServerPort
    int port;

    @Autowired
    Accounts accounts;

    @Autowired
    AccountAdmin admin;

    @Autowired
    JdbcClient jdbc;

    private final String tag = UUID.randomUUID().toString().substring(24);
    private WebVisitor administrator = new WebVisitor(0);
    private WebVisitor office = new WebVisitor(0);
    private UUID officePerson = UUID.randomUUID();

    @BeforeEach
    void signIn() {
        administrator = new WebVisitor(port);
        office = new WebVisitor(port);
        account("admin-" + tag, Role.ADMINISTRATOR);
        officePerson = account("office-" + tag, Role.OFFICE).value();
        administrator.signIn("admin-" + tag, PASSWORD);
        office.signIn("office-" + tag, PASSWORD);
    }

    @AfterEach
    void forgetTries() {
        jdbc.sql("delete from attempts").update();
    }

    @Test
    @DisplayName("SEC-61 disabling an account ends all its sessions at once and refuses the password")
    void sec61DisablingEndsSessions() {
        WebVisitor elsewhere = new WebVisitor(port);
        elsewhere.signIn("office-" + tag, PASSWORD);
        assertThat(office.isIn()).isTrue();
        assertThat(elsewhere.isIn()).isTrue();

        var answer = administrator.submit(page(), page() + "/account/disable");

        assertThat(answer.statusCode()).isEqualTo(302);
        assertThat(office.isIn()).isFalse();
        assertThat(elsewhere.isIn()).isFalse();
        assertThat(new WebVisitor(port).signIn("office-" + tag, PASSWORD).statusCode())
                .isEqualTo(422);
    }

    @Test
    @DisplayName("SEC-58 a change of rights ends the sessions that hold the old ones")
    void sec58ChangedRolesHoldAtOnce() {
        administrator.submit(
                page(), page() + "/account/edit", "login", "office-" + tag, "roles", "TECHNICIAN", "version", "0");

        assertThat(office.isIn()).isFalse();
        office.signIn("office-" + tag, PASSWORD);
        assertThat(office.get("/due").statusCode()).isEqualTo(403);
        assertThat(office.get("/my-day").statusCode()).isEqualTo(200);
    }

    @Test
    @DisplayName("SEC-21 fields that a form does not have change nothing")
    void sec21IgnoresForeignFields() {
        administrator.submit(
                page() + "/edit",
                page() + "/edit",
                "name",
                "Office " + tag,
                "version",
                "0",
                "id",
                UUID.randomUUID().toString(),
                "passwordHash",
                "x",
                "roles",
                "ADMINISTRATOR",
                "account.roles",
                "ADMINISTRATOR");

        assertThat(office.get("/people").statusCode()).isEqualTo(403);
        assertThat(jdbc.sql(
                                "select string_agg(role, ' ') from account_roles r join accounts a on a.id = r.account_id where a.person_id = ?")
                        .param(officePerson)
                        .query(String.class)
                        .single())
                .isEqualTo("OFFICE");
    }

    @Test
    void whatCannotBeReadIsSaidByItsFieldAndStays() {
        for (String[] form : new String[][] {
            {"/depots/new", "/depots", "name", "Weir " + tag, "latitude", "45°01'S", "longitude", "169.1"},
            {"/people/new", "/people", "name", "Ana " + tag, "startedOn", "1/2/24 or so"},
            {page() + "/edit", page() + "/edit", "name", "Ana " + tag, "leftOn", "soon", "version", "0"},
        }) {
            var answer = administrator.submit(form[0], form[1], java.util.Arrays.copyOfRange(form, 2, form.length));

            assertThat(answer.statusCode()).as(form[0]).isEqualTo(422);
            assertThat(answer.body()).contains("Please mend this", tag);
            assertThat(answer.body().replace("&#39;", "'")).containsAnyOf("45°01'S", "1/2/24 or so", "soon");
        }
    }

    @Test
    void daysAwayStandOnThePersonsPage() {
        administrator.submit(
                page(), page() + "/leave", "fromDate", "2031-12-01", "untilDate", "2031-12-02", "note", "shearing");

        var page = administrator.get(page());

        assertThat(page.statusCode()).isEqualTo(200);
        assertThat(page.body()).contains("1 Dec 2031 – Tue 2 Dec 2031", "shearing", "Remove");
    }

    @Test
    void theOfficeKeepsDaysAwayToo() {
        String person = officePerson.toString();
        assertThat(office.submit(
                                "/days-away",
                                "/days-away",
                                "fromDate",
                                "2031-12-05",
                                "untilDate",
                                "2031-12-04",
                                "note",
                                "ill")
                        .body())
                .contains("Choose who is away.", "The last day lies before the first.", "value=\"ill\"");
        office.submit(
                "/days-away",
                "/days-away",
                "person",
                person,
                "fromDate",
                "2031-12-05",
                "untilDate",
                "2031-12-06",
                "note",
                "ill");

        String list = office.get("/days-away").body();
        assertThat(list).contains("5 Dec 2031 – Sat 6 Dec 2031", "ill");
        UUID leave = jdbc.sql("select id from person_leave where person_id = ?")
                .param(officePerson)
                .query(UUID.class)
                .single();
        office.submit("/days-away", "/days-away/" + person + "/" + leave + "/remove");
        assertThat(office.get("/days-away").body()).doesNotContain("5 Dec 2031 – Sat 6 Dec 2031");
    }

    @Test
    void aLostUpdateShowsBothTexts() {
        administrator.submit(page() + "/edit", page() + "/edit", "name", "First " + tag, "version", "0");

        var second = administrator.submit(page() + "/edit", page() + "/edit", "name", "Second " + tag, "version", "0");

        assertThat(second.statusCode()).isEqualTo(409);
        assertThat(second.body()).contains("First " + tag, "Second " + tag);
    }

    @Test
    void keepsWhatWasTypedBesideItsErrors() {
        var answer = administrator.submit(
                "/people/new", "/people", "name", "", "email", "not an address", "phone", "555 0199");

        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.body()).contains("not an address", "555 0199", "Please fill this in");
    }

    @Test
    @DisplayName("SEC-13 a day or a number that cannot be read is said by its field, and all that was typed stays")
    void sec13KeepsAFormWithAnUnreadableField() {
        var person = administrator.submit("/people/new", "/people", "name", "Typed Name", "startedOn", "1/2/2024");
        assertThat(person.statusCode()).isEqualTo(422);
        assertThat(person.body()).contains("value=\"1/2/2024\"", "value=\"Typed Name\"");

        var depot = administrator.submit(
                "/depots/new", "/depots", "name", "Typed Depot", "latitude", "45°01'S", "longitude", "169.1");
        assertThat(depot.statusCode()).isEqualTo(422);
        assertThat(depot.body()).contains("45°01&#39;S", "value=\"Typed Depot\"", "value=\"169.1\"");
    }

    @Test
    @DisplayName("SEC-54 an invitation is shown to the administrator when there is no mail, and works once")
    void sec54InvitesByLink() {
        PersonId person = accounts.addPerson("Invited " + tag);
        String page = "/people/" + person;

        var made = administrator.submit(page, page + "/account", "login", "new-" + tag, "roles", "OFFICE");
        assertThat(made.statusCode()).as(made.body()).isEqualTo(200);
        String shown = made.body();

        var link = java.util.regex.Pattern.compile("value=\"http://localhost[^\"]*(/link[^\"]+)\"")
                .matcher(shown);
        assertThat(link.find()).as(shown).isTrue();
        assertThat(new WebVisitor(port).get(link.group(1)).statusCode()).isEqualTo(200);
        assertThat(administrator.get(page).body()).doesNotContain(link.group(1));
    }

    @Test
    void theLastAdministratorStays() {
        jdbc.sql(
                        "update accounts set disabled_at = now() where login <> ? and id in (select account_id from account_roles where role = 'ADMINISTRATOR')")
                .param("admin-" + tag)
                .update();
        UUID last = jdbc.sql("select person_id from accounts where login = ?")
                .param("admin-" + tag)
                .query(UUID.class)
                .single();

        assertThat(administrator
                        .submit("/people/" + last, "/people/" + last + "/account/disable")
                        .statusCode())
                .isEqualTo(409);
        assertThat(administrator.isIn()).isTrue();
    }

    @Test
    @DisplayName("SEC-47 the password changes with the present one only, and other sessions end")
    void sec47ChangesThePassword() {
        WebVisitor elsewhere = new WebVisitor(port);
        elsewhere.signIn("office-" + tag, PASSWORD);

        var wrong = office.submit(
                "/account", "/account/password", "password", "not it", "newPassword", "a heron on the weir");
        var common = office.submit("/account", "/account/password", "password", PASSWORD, "newPassword", "iloveyou");
        var right = office.submit(
                "/account", "/account/password", "password", PASSWORD, "newPassword", " a heron on the weir");

        assertThat(wrong.statusCode()).isEqualTo(422);
        assertThat(common.statusCode()).isEqualTo(422);
        assertThat(right.statusCode()).isEqualTo(302);
        assertThat(office.isIn()).isTrue();
        assertThat(elsewhere.isIn()).isFalse();
        assertThat(new WebVisitor(port)
                        .signIn("office-" + tag, "a heron on the weir")
                        .statusCode())
                .isEqualTo(422);
        assertThat(new WebVisitor(port)
                        .signIn("office-" + tag, " a heron on the weir")
                        .statusCode())
                .isEqualTo(302);
    }

    @Test
    @DisplayName("SEC-62 people see and end their sessions, and changing ways in asks for a fresh sign-in")
    void sec62EndsOwnSessions() {
        WebVisitor elsewhere = new WebVisitor(port);
        elsewhere.signIn("office-" + tag, PASSWORD);
        String page = office.get("/account").body();
        assertThat(page).contains("Linux, Firefox").doesNotContain(elsewhere.sessionId(), office.sessionId());

        office.submit("/account", "/account/sessions/end-others");

        assertThat(elsewhere.isIn()).isFalse();
        assertThat(office.isIn()).isTrue();
    }

    @Test
    @DisplayName("SEC-62 the eleventh session ends the one that was idle longest")
    void sec62KeepsTenSessions() {
        for (int i = 0; i < 10; i++) {
            new WebVisitor(port).signIn("office-" + tag, PASSWORD);
        }

        assertThat(office.isIn()).isFalse();
        assertThat(jdbc.sql("select count(*) from spring_session where principal_name = ?")
                        .param("office-" + tag)
                        .query(Long.class)
                        .single())
                .isEqualTo(10);
    }

    @Test
    @WithMockUser(roles = {"OFFICE", "TECHNICIAN", "MANAGER"})
    @DisplayName("SEC-66 the service refuses too, not only the page")
    void sec66ServiceRefuses() {
        assertThatThrownBy(() -> admin.disable(officePerson)).isInstanceOf(AccessDeniedException.class);
        assertThatThrownBy(() -> admin.sendLink(officePerson)).isInstanceOf(AccessDeniedException.class);
    }

    @Test
    void erasesAPersonFromTheTrailToo() {
        administrator.submit(
                page() + "/edit",
                page() + "/edit",
                "name",
                "Wren O'Kettle \"Quill\" " + tag,
                "phone",
                "555 " + tag,
                "version",
                "0");
        administrator.submit(page(), page() + "/account/disable");

        assertThat(administrator
                        .submit(page(), page() + "/erase", "name", "Wren")
                        .statusCode())
                .isEqualTo(409);
        var erased = administrator.submit(page(), page() + "/erase", "name", "Wren O'Kettle \"Quill\" " + tag);

        assertThat(erased.statusCode()).isEqualTo(302);
        assertThat(jdbc.sql(
                                "select count(*) from audit_entries where actor = :login or old_values::text like :tag or new_values::text like :tag")
                        .param("login", "office-" + tag)
                        .param("tag", "%Wren%" + tag + "%")
                        .query(Long.class)
                        .single())
                .isZero();
        assertThat(jdbc.sql(
                                "select count(*) from audit_entries where old_values::text like :login or new_values::text like :login or old_values::text like :phone or new_values::text like :phone")
                        .param("login", "%office-" + tag + "%")
                        .param("phone", "%555 " + tag + "%")
                        .query(Long.class)
                        .single())
                .isZero();
        assertThat(jdbc.sql("select count(*) from audit_entries where row_id = ?")
                        .param(officePerson.toString())
                        .query(Long.class)
                        .single())
                .isGreaterThanOrEqualTo(3);
    }

    @Test
    void showsTheTrail() {
        administrator.submit(page() + "/edit", page() + "/edit", "name", "Trail " + tag, "version", "0");

        String story =
                administrator.get("/audit?table=people&row=" + officePerson).body();

        assertThat(story).contains("Changed in people", "Trail " + tag, "admin-" + tag, "POST /people/");
        assertThat(administrator.get("/audit?from=nonsense").statusCode()).isEqualTo(400);
        assertThat(administrator.get("/audit?after=nonsense&who=%27%3B--").statusCode())
                .isEqualTo(200);
    }

    private String page() {
        return "/people/" + officePerson;
    }

    private PersonId account(String login, Role role) {
        PersonId person = accounts.addPerson("Person " + login);
        accounts.create(new NewAccount(person, login, PASSWORD, Set.of(role)));
        return person;
    }
}

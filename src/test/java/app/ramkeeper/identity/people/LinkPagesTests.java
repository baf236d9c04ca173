package app.ramkeeper.identity.people;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;

import app.ramkeeper.TestDatabase;
import app.ramkeeper.identity.AccountId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.identity.people.Accounts.NewAccount;
import app.ramkeeper.identity.signin.OneTimeLinks;
import app.ramkeeper.identity.signin.OneTimeLinks.Purpose;
import java.net.URI;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.test.web.servlet.assertj.MockMvcTester;

@SpringBootTest
@AutoConfigureMockMvc
@Import(TestDatabase.class)
class LinkPagesTests {

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Accounts accounts;

    @Autowired
    AccountRepository repository;

    @Autowired
    OneTimeLinks links;

    @Test
    @DisplayName("SEC-54 a link works once, and looking at it or a refused password does not use it up")
    void sec54WorksOnce() {
        AccountId account = accounts.create(new NewAccount(
                accounts.addPerson("Tarn Willow"), "tarn-" + UUID.randomUUID(), null, Set.of(Role.OFFICE)));
        String path = path(links.make(Purpose.INVITE, account.value()));

        assertThat(mvc.get().uri(path)).hasStatusOk();
        assertThat(mvc.get().uri(path)).hasStatusOk().bodyText().contains("new-password");
        assertThat(post(path, "short")).hasStatus(422).bodyText().contains("too short");
        assertThat(post(path, "password1")).hasStatus(422).bodyText().contains("guessed first");
        assertThat(post(path, "a quiet brook in May")).hasStatus3xxRedirection();
        assertThat(repository.findById(account.value()).orElseThrow().hasPassword())
                .isTrue();
        assertThat(post(path, "another brook in June")).hasStatus(404);
        assertThat(mvc.get().uri(path)).hasStatus(404);
    }

    @Test
    @DisplayName("SEC-50 makes the first administrator only while there is no account")
    void sec50NoSecondFirstAdministrator() {
        accounts.create(
                new NewAccount(accounts.addPerson("Ash Rill"), "ash-" + UUID.randomUUID(), null, Set.of(Role.OFFICE)));
        String path = path(links.make(Purpose.SETUP, null));

        assertThat(mvc.get().uri(path)).hasStatusOk().bodyText().contains("first administrator");
        assertThat(post(path, "a quiet brook in May")).hasStatus(422).bodyText().contains("Type the name");
        assertThat(mvc.post()
                        .uri(path)
                        .with(csrf())
                        .param("name", "Ash")
                        .param("login", "ash-" + UUID.randomUUID())
                        .param("password", "a quiet brook in May"))
                .hasStatus(404);
    }

    private org.springframework.test.web.servlet.assertj.MvcTestResult post(String path, String password) {
        return mvc.post().uri(path).with(csrf()).param("password", password).exchange();
    }

    private static String path(String link) {
        return URI.create(link).getPath();
    }
}

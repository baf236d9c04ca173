package app.ramkeeper.browser;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.fleet.Customers;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.Installs;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.Sites;
import app.ramkeeper.identity.Role;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;

/** Opens the pages of each role on desk and phone, light and dark; nothing leaves this host. */
@Import({Customers.class, Sites.class, Installs.class})
class PagesBrowserTests extends BrowserRun {

    @Autowired
    Sites sites;

    @Autowired
    Installs installs;

    private SiteId site;
    private InstallId install;

    @BeforeAll
    void aSite() {
        site = sites.ownedBy("Ada Rimmer", "Kōwhai Terrace");
        install = installs.commissioned(site, LocalDate.of(2019, 3, 4));
    }

    private List<String> pages(Role role) {
        return switch (role) {
            case OFFICE ->
                List.of(
                        "/",
                        "/due",
                        "/due?state=UNKNOWN",
                        "/weather-events",
                        "/weather-events/new",
                        "/sites",
                        "/sites?q=kowhai",
                        "/sites/" + site,
                        "/sites/" + site + "/sheet",
                        "/installs/" + install,
                        "/installs/" + install + "/history",
                        "/customers",
                        "/pumps",
                        "/fix-lists",
                        "/imports",
                        "/prices",
                        "/prices/new?kind=PIPE",
                        "/prices/settings",
                        "/quotes",
                        "/quotes/new",
                        "/jobs",
                        "/billing",
                        "/help");
            case TECHNICIAN ->
                List.of("/", "/my-day", "/sites", "/sites/" + site + "/sheet", "/installs/" + install + "/history");
            case MANAGER -> List.of("/", "/overdue", "/due");
            case ADMINISTRATOR ->
                List.of(
                        "/",
                        "/imports",
                        "/audit",
                        "/audit?table=sites",
                        "/account",
                        "/account/confirm",
                        "/account/codes",
                        "/account/passkeys/new",
                        "/help");
        };
    }

    @Test
    @DisplayName("SEC-28 SEC-33 each role's pages are accessible, break no content policy and reach no other host")
    void opensEveryPageOfEachRoleAtADesk() {
        for (Role role : Role.values()) {
            Page page = desk();
            signIn(page, "Somebody of " + role, role);
            pages(role).forEach(path -> open(page, path));
        }
    }

    @Test
    void fitsAPhoneInLightAndDark() {
        Page page = window(320, 700);
        signIn(page, "Mere Harding", Role.TECHNICIAN);
        for (ColorScheme scheme : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
            page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
            for (String path : pages(Role.TECHNICIAN)) {
                open(page, path);
                assertThat((Integer) page.evaluate("document.documentElement.scrollWidth"))
                        .as("width of " + path)
                        .isLessThanOrEqualTo(320);
            }
        }
    }

    @Test
    void reachesThePageByKeyboardAlone() {
        Page page = desk();
        signIn(page, "Marama Teal", Role.OFFICE);
        page.navigate("/due");
        page.keyboard().press("Tab");
        assertThat(page.evaluate("document.activeElement.className")).isEqualTo("skip");

        page.keyboard().press("Enter");

        assertThat(page.evaluate("document.activeElement.id")).isEqualTo("main");
    }
}

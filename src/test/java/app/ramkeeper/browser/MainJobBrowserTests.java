package app.ramkeeper.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.identity.Role;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.FilePayload;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/**
 * The main job from the office's own spreadsheet to the manager's list: import, what is due, a technician reads the
 * history and records a visit, the due date moves, the manager sees what is overdue.
 */
class MainJobBrowserTests extends BrowserRun {

    private static final String STRAINER = "01900000-0000-7000-8000-000000000001";

    @Test
    void goesFromTheSpreadsheetToTheManagersList() {
        String farm = "Speargrass " + UUID.randomUUID().toString().substring(0, 8);
        Page office = desk();
        signIn(office, "Marama Teal", Role.OFFICE);

        importRegister(office, farm);
        office.navigate("/due?kind=" + STRAINER + "&sort=DUE&box=-45.5,168,-44.5,170");
        Locator row = office.locator("tbody tr", new Page.LocatorOptions().setHasText(farm + " upper"));
        assertThat(row).containsText("overdue");
        isAccessible(office);
        String sheet = row.getByRole(com.microsoft.playwright.options.AriaRole.LINK)
                .nth(1)
                .getAttribute("href");

        recordVisit(sheet, farm);

        office.reload();
        assertThat(office.locator("tbody tr", new Page.LocatorOptions().setHasText(farm + " upper")))
                .containsText("in ");
        managerSeesTheRubbers(farm);
    }

    private void importRegister(Page office, String farm) {
        LocalDate since = LocalDate.now(clock).minusYears(6);
        String csv = """
                Reference;Customer;Site;Latitude;Longitude;Water class;Install;Commissioned;Serial;Fall (m);Lift (m);\
                Last done: Clean strainer;Last done: Change delivery valve rubber
                %1$s-A;%1$s Ltd;%1$s upper;-45,031;168,662;Clear;Top ram;%2$s;SN-%1$s-1;4,2;38;%3$s;%3$s
                %1$s-B;%1$s Ltd;%1$s lower;-45,041;168,672;Clear;Creek ram;%2$s;SN-%1$s-2;3,1;22;%3$s;%3$s
                """.formatted(farm, since, since.plusYears(2));
        open(office, "/imports/new");
        office.locator("#kind-REGISTER").check();
        office.locator("#file")
                .setInputFiles(new FilePayload("register.csv", "text/csv", csv.getBytes(StandardCharsets.UTF_8)));
        office.locator("main button.primary").click();
        assertThat(office).hasURL(java.util.regex.Pattern.compile(".*/imports/.*/columns"));
        isAccessible(office);
        office.locator("main button.primary").click();
        Locator apply = office.locator("form[action$='/apply'] button");
        apply.waitFor();
        isAccessible(office);
        apply.click();
        office.waitForCondition(() -> {
            office.reload();
            return office.locator("form[action$='/undo']").count() > 0;
        });
        isAccessible(office);
    }

    private void recordVisit(String sheet, String farm) {
        Page technician = phone();
        signIn(technician, "Jonty Brack", Role.TECHNICIAN);
        open(technician, sheet);
        assertThat(technician.locator("h1")).hasText(farm + " upper");
        assertThat(technician.locator("#due")).isVisible();
        open(technician, sheet.replace("/sheet", "/record"));
        technician.locator("#asUsual").check();
        technician
                .locator("input[name$='DELIVERED_FLOW.PUMP.value'], input[name*='DELIVERED_FLOW']")
                .first()
                .fill("3.8");
        technician.locator("main form button.primary").click();
        technician.waitForLoadState();
        isAccessible(technician);
        if (technician.locator("#error-summary").count() > 0) {
            assertThat(technician.locator("#error-summary")).containsText("No part is named");
            technician.locator("main form button.primary").click();
            technician.waitForLoadState();
        }
        assertThat(technician.url()).contains("/visits/reports/");
    }

    private void managerSeesTheRubbers(String farm) {
        Page manager = desk();
        signIn(manager, "Isla Fennimore", Role.MANAGER);
        open(manager, "/overdue");
        assertThat(manager.locator("h1")).hasText("Overdue for a valve-rubber change");
        assertThat(manager.locator("tbody tr", new Page.LocatorOptions().setHasText(farm + " lower"))
                        .first())
                .containsText("Change");
    }
}

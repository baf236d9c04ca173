package app.ramkeeper.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.identity.Role;
import app.ramkeeper.quotes.design.Supplied;
import app.ramkeeper.quotes.offer.Offers;
import app.ramkeeper.quotes.survey.Surveyed;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.util.UUID;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * From somebody who rings to a planned install: enquiry, survey, design, quote, the customer's answer over the link, and
 * the job. Nothing is typed twice.
 */
class QuoteBrowserTests extends BrowserRun {

    @Autowired
    JdbcClient jdbc;

    @Test
    void goesFromTheEnquiryToThePlannedInstall() {
        Offers offers = new Offers(jdbc);
        offers.tax();
        Supplied supplied = new Supplied(jdbc);
        supplied.pump(5, 30, 0.6);
        supplied.pipe("DRIVE", "GALVANISED_STEEL", 88.9, 4, 25, "58.50");
        supplied.pipe("DELIVERY", "PE100", 32, 3, 16, "2.82");
        String name = "Tūī Grange " + UUID.randomUUID().toString().substring(0, 6);
        Page office = desk();
        signIn(office, "Marama Teal", Role.OFFICE);

        survey(office, name);
        design(office);
        String link = quote(office, name);
        accept(link, name);
        planned(office, name);
    }

    private void survey(Page office, String name) {
        open(office, "/enquiries/new");
        office.locator("#customerName").fill(name);
        office.locator("#place").fill(name + ", upper block");
        save(office);
        office.locator("form[action$='/surveys'] button").first().click();
        office.waitForURL(Pattern.compile(".*/surveys/.*"));
        Surveyed.complete().forEach((field, value) -> type(office, field, value));
        isAccessible(office);
        save(office);
    }

    private static void type(Page page, String field, String value) {
        Locator input =
                page.locator("main [name='" + field + "']:not([type=hidden])").first();
        if (!input.isVisible()) {
            page.locator("details:has([name='" + field + "']) > summary")
                    .first()
                    .click();
        }
        String kind = (String) input.evaluate("e => e.tagName + ' ' + e.type");
        if (kind.startsWith("SELECT")) {
            input.selectOption(value);
        } else if (kind.endsWith("radio")) {
            page.locator("main [name='" + field + "'][value='" + value + "']").check();
        } else if (kind.endsWith("checkbox")) {
            input.check();
        } else {
            input.fill(value);
        }
    }

    private void design(Page office) {
        String survey = office.url().replaceAll("(/surveys/[0-9a-f-]+).*", "$1");
        office.navigate(survey + "/designs");
        isAccessible(office);
        office.locator("main a[href*='/designs/try']").first().click();
        office.waitForURL(Pattern.compile(".*/designs/try.*"));
        for (Locator why : office.locator("main input[name^='why']").all()) {
            why.fill("Agreed with the customer.");
        }
        office.locator("main form[method=post] button.primary, main form[method=post] button[type=submit]")
                .last()
                .click();
        office.waitForURL(Pattern.compile(".*/designs/[0-9a-f-]{36}$"));
        isAccessible(office);
        office.locator("form[action$='/quotes/from-design'] button").click();
        office.waitForURL(Pattern.compile(".*/quotes/[0-9a-f-]{36}$"));
    }

    /** Prices what the list did not, sends, and returns the customer's link. */
    private String quote(Page office, String name) {
        assertThat(office.locator("main")).containsText(name);
        isAccessible(office);
        String quote = office.url();
        Locator open = office.locator("tr:has-text('no price') a");
        for (int left = open.count(); left > 0; left = open.count()) {
            open.first().click();
            office.locator("#price").fill("100");
            save(office);
            assertThat(office.url()).isEqualTo(quote);
        }
        office.locator("form[action$='/send'] button").click();
        office.waitForLoadState();
        assertThat(office.locator("h1")).containsText(Pattern.compile("Q\\d{4}-\\d{4}"));
        isAccessible(office);
        return office.locator("input[readonly]").inputValue().replaceAll("^https?://[^/]+", "");
    }

    private void accept(String link, String name) {
        Page customer = phone();
        open(customer, link);
        assertThat(customer.locator(".lead")).containsText("In a dry month you get");
        assertThat((Integer) customer.evaluate("document.documentElement.scrollWidth"))
                .isLessThanOrEqualTo(390);
        customer.locator("#name").fill(name);
        customer.locator("main button.primary").click();
        assertThat(customer.locator(".errors")).containsText("Tick this to accept");
        assertThat(customer.locator("#name")).hasValue(name);
        isAccessible(customer);
        customer.locator("#agreed").check();
        customer.locator("main button.primary").click();
        assertThat(customer.locator("main")).containsText("Accepted by " + name);
        isAccessible(customer);
    }

    private void planned(Page office, String name) {
        office.reload();
        office.locator("a[href*='/jobs/']").first().click();
        office.waitForURL(Pattern.compile(".*/jobs/.*"));
        assertThat(office.locator("main")).containsText("installation, no day yet");
        assertThat(office.locator("main")).containsText("Commission and hand over");
        isAccessible(office);
        office.locator("a[href*='/installs/']").first().click();
        office.waitForURL(Pattern.compile(".*/installs/.*"));
        assertThat(office.locator("main")).containsText("30");
        assertThat(office.locator("main")).containsText(name);
        office.navigate("/enquiries?state=WON");
        assertThat(office.locator("main")).containsText(name);
    }

    private static void save(Page page) {
        page.locator("main form[method=post] button.primary").first().click();
        page.waitForLoadState();
    }
}

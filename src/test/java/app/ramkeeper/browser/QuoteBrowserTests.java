package app.ramkeeper.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;
import static org.assertj.core.data.Percentage.withPercentage;

import app.ramkeeper.identity.Role;
import app.ramkeeper.quotes.design.Supplied;
import app.ramkeeper.quotes.offer.Offers;
import app.ramkeeper.quotes.survey.Surveyed;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.TestPropertySource;

/**
 * From somebody who rings to a planned install: enquiry, survey, design, quote, the customer's answer over the link, and
 * the job. Nothing is typed twice.
 */
@TestPropertySource(properties = "test.database=alone")
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

        survey(office, name, Surveyed.complete());
        design(office, "main a[href*='/designs/try']");
        String link = quote(office, name);
        accept(link, name);
        planned(office, name);
    }

    /**
     * Published examples, typed into the form, to the quote; rows of {@code sizing/hydraulics.csv}.
     *
     * <ul>
     *   <li>DF12 to DF15, USAID Water for the World, Technical Note RWS.4.D.5: 60 people at 40 l want 2400 l/day, 1.667 l/min; the
     *       source gives 30 000 l/day, 20.83 l/min (a bucket of 20.83 l a minute); 10 m of fall and 80 m of lift bring 117 l/day for
     *       each l/min, so 20.5 l/min must go in
     *   <li>DF03, design worksheet: 65 l/min at 10 m of fall and 22 m of lift, efficiency 0.6, bring 17.73 l/min
     * </ul>
     */
    @Test
    void publishedExamplesGoThroughTheFormToTheQuote() {
        new Offers(jdbc).tax();
        Supplied supplied = new Supplied(jdbc);
        supplied.pipe("DRIVE", "GALVANISED_STEEL", 114.3, 4.5, 25, "84");
        supplied.pipe("DELIVERY", "PE100", 110, 15.1, 25, "30");
        UUID village = supplied.pump(10, 80, 0.65);
        UUID worksheet = supplied.pump(10, 22, 0.6);
        Page office = desk();
        signIn(office, "Aroha Pike", Role.OFFICE);

        Map<String, String> typed = published("80");
        typed.put("demand[0].kind", "person/household");
        typed.put("demand[0].count", "60");
        typed.put("demand[0].each", "40");
        typed.put("method", "BUCKET");
        for (int i = 0; i < 3; i++) {
            typed.put("source[" + i + "].litres", "20.83");
            typed.put("source[" + i + "].seconds", "60");
        }
        Quoted sixty = quoted(office, typed, village);
        assertThat(sixty.drive()).isCloseTo(20.83, withPercentage(0.2));
        assertThat(sixty.demand()).isCloseTo(2400, offset(0.5));
        assertThat(sixty.demand() / 1440).isCloseTo(1.667, withPercentage(0.2));
        assertThat(sixty.drive() * sixty.demand() / 1440 / sixty.delivered()).isCloseTo(20.5, withPercentage(0.3));
        assertThat(office.locator("main")).containsText("2 400 l/day are asked for");

        typed = published("22");
        // what the worksheet brings, less two thousandths: so no narrower pipe will do
        typed.put("demandMore", "25485");
        typed.put("method", "GIVEN");
        typed.put("givenLMin", "65");
        typed.put("givenPercent", "0");
        Quoted sheet = quoted(office, typed, worksheet);
        assertThat(sheet.drive()).isCloseTo(65, withPercentage(0.01));
        assertThat(sheet.delivered()).isCloseTo(17.73, withPercentage(0.2));
    }

    private static Map<String, String> published(String lift) {
        Map<String, String> typed = new LinkedHashMap<>();
        typed.put("measuredDry", "true");
        typed.put("mustStayLMin", "0");
        typed.put("fallM", "10");
        typed.put("driveLengthM", "25");
        typed.put("mostPumps", "1");
        typed.put("liftM", lift);
        typed.put("deliveryLengthM", "200");
        return typed;
    }

    /** What stands on the quote: l/min into the drive pipe and delivered, l/day asked for. */
    private record Quoted(double drive, double delivered, double demand) {}

    private Quoted quoted(Page office, Map<String, String> typed, UUID pump) {
        survey(office, "Published " + pump.toString().substring(28), typed);
        design(office, "main a[href*='/designs/try'][href*='" + pump + "']");
        return jdbc.sql("""
                        select (design ->> 'driveFlowLMin')::double precision as drive,
                          (design ->> 'deliveredLMin')::double precision as delivered, (design ->> 'demandLDay')::double precision as demand
                        from quote_revisions where quote_id = ?::uuid""")
                .param(office.url().replaceAll(".*/quotes/", ""))
                .query(Quoted.class)
                .single();
    }

    private void survey(Page office, String name, Map<String, String> typed) {
        open(office, "/enquiries/new");
        office.locator("#customerName").fill(name);
        office.locator("#place").fill(name + ", upper block");
        save(office);
        office.locator("form[action$='/surveys'] button").first().click();
        office.waitForURL(Pattern.compile(".*/surveys/.*"));
        typed.forEach((field, value) -> type(office, field, value));
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

    private void design(Page office, String look) {
        String survey = office.url().replaceAll("(/surveys/[0-9a-f-]+).*", "$1");
        office.navigate(survey + "/designs");
        isAccessible(office);
        office.locator(look).first().click();
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

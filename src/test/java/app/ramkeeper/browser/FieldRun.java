package app.ramkeeper.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import app.ramkeeper.RamkeeperApplication;
import app.ramkeeper.TestDatabase;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.io.IOException;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;

/** A phone at the end of a line that can be cut, slowed and robbed of answers, and a site to visit. */
abstract class FieldRun extends BrowserRun {

    @Autowired
    JdbcClient jdbc;

    FlakyLine line;
    UUID site;
    UUID install;

    @BeforeAll
    void layLine() throws IOException {
        line = new FlakyLine(port);
    }

    @AfterAll
    void takeLineUp() throws IOException {
        line.close();
    }

    @Override
    String address() {
        return "http://localhost:" + line.port();
    }

    @BeforeEach
    void makeSite() {
        site = UUID.randomUUID();
        install = UUID.randomUUID();
        transaction.executeWithoutResult(status -> {
            jdbc.sql(
                            "insert into sites (id, name, way_in, private_notes, latitude, longitude) values (:id, :name, 'By the old sheep dip', 'owes us money', -45, 168.6)")
                    .param("id", site)
                    .param("name", "Tussock " + site)
                    .update();
            jdbc.sql(
                            "insert into installs (id, site_id, name, commissioned_on) values (:id, :site, 'Top ram', '2019-05-01')")
                    .param("id", install)
                    .param("site", site)
                    .update();
            jdbc.sql(
                            "insert into configurations (id, install_id, fall_m, lift_m, design_drive_flow_l_min, design_delivered_l_min) values (:id, :install, 4, 30, 60, 4.8)")
                    .param("id", UUID.randomUUID())
                    .param("install", install)
                    .update();
        });
    }

    @AfterEach
    void mendLine() {
        line.cut(false);
        line.slow(0);
        line.answers("");
        line.losesAnswers.set(0);
        line.cutsPhoto.set(0);
    }

    @Override
    boolean expected(String misdeed) {
        return misdeed.contains("net::ERR_") || misdeed.contains("status of 503");
    }

    PersonId technician(Page page, String name) {
        PersonId person = signIn(page, name, Role.TECHNICIAN);
        toField(page);
        return person;
    }

    void toField(Page page) {
        page.navigate("/field");
        ready(page);
    }

    static void ready(Page page) {
        page.waitForFunction("() => window.fieldReady === true && navigator.serviceWorker.controller !== null");
    }

    void openVisit(Page page) {
        page.evaluate("id => { location.hash = '#/site/' + id; }", site.toString());
        button(page, "Visit without a plan").click();
        page.locator("#finish").waitFor();
    }

    static Locator button(Page page, String name) {
        return page.locator("button", new Page.LocatorOptions().setHasText(name));
    }

    long reports() {
        return jdbc.sql("select count(*) from visit_reports where site_id = :site")
                .param("site", site)
                .query(Long.class)
                .single();
    }

    void sent(Page page, int count) {
        page.evaluate("() => { location.hash = '#/out'; }");
        button(page, "Send now").click();
        assertThat(page.locator(".state.sent")).hasCount(count);
    }

    /** Finishes visits without their pages, as the pages do: sealed, in the outbox. */
    static void unfold(Page page, String summary) {
        page.locator("summary", new Page.LocatorOptions().setHasText(summary)).click();
    }

    /** The one report of the site. */
    Map<String, Object> report() {
        return jdbc.sql("select * from visit_reports where site_id = :site")
                .param("site", site)
                .query()
                .singleRow();
    }

    List<String> leftToDo() {
        return jdbc.sql("select text from follow_ups where site_id = :site order by text")
                .param("site", site)
                .query(String.class)
                .list();
    }

    /** A visit planned for today, for the person signed in on this phone. */
    UUID planned(PersonId person) {
        UUID visit = UUID.randomUUID();
        transaction.executeWithoutResult(status -> {
            jdbc.sql(
                            "insert into visits (id, site_id, kind, planned_on, minutes) values (:id, :site, 'SERVICE', :on, 60)")
                    .param("id", visit)
                    .param("site", site)
                    .param("on", LocalDate.now(clock))
                    .update();
            jdbc.sql("insert into visit_people (visit_id, person_id, lead) values (:visit, :person, true)")
                    .param("visit", visit)
                    .param("person", person.value())
                    .update();
        });
        return visit;
    }

    void queue(Page page, int count, int photos) {
        queue(page, count, photos, 40);
    }

    void queue(Page page, int count, int photos, int side) {
        page.evaluate("""
                async ([site, count, photos, notes, side]) => {
                  const base = document.querySelector('script[type=module]').src.replace('app.js', '');
                  const store = await import(base + 'store.js');
                  const send = await import(base + 'send.js');
                  const who = await store.get('kv', 'who');
                  const data = await import(base + 'data.js');
                  for (let i = 0; i < count; i++) {
                    const id = crypto.randomUUID();
                    const ids = [];
                    for (let p = 0; p < photos; p++) {
                      const canvas = document.createElement('canvas');
                      canvas.width = side; canvas.height = side;
                      const pen = canvas.getContext('2d');
                      pen.fillStyle = `rgb(${i % 256}, ${p * 40}, 90)`; pen.fillRect(0, 0, side, side);
                      for (let k = 0; side > 100 && k < side * side / 4; k++) { pen.fillStyle = `hsl(${k * 7 % 360} 80% 50%)`; pen.fillRect(k * 2 % side, 2 * Math.floor(k * 2 / side), 2, 2); }
                      const photo = crypto.randomUUID();
                      await store.put('photos', { id: photo, entry: id, caption: 'n' + i, taken: null,
                        blob: await new Promise((resolve) => canvas.toBlob(resolve, 'image/jpeg')) });
                      ids.push(photo);
                    }
                    const visit = { v: 1, id, visit: null, site, kind: 'SERVICE', on: data.iso(), outcome: 'DONE', nobodyThere: true,
                      note: notes[i % notes.length] + ' ' + i, photos: photos };
                    const sealed = await send.seal(visit, who.person, ids);
                    await store.finish({ ...sealed, at: Date.now() + i });
                  }
                }""", List.of(site.toString(), count, photos, List.of("gorse on the track"), side));
    }

    long photos() {
        return jdbc.sql(
                        "select count(*) from photos p join visit_reports r on r.id = p.report_id where r.site_id = :site")
                .param("site", site)
                .query(Long.class)
                .single();
    }

    /** A second start of the application on the same database, as after a restart or on a second machine. */
    static ConfigurableApplicationContext another() {
        var database = TestDatabase.details();
        var owner = TestDatabase.owner();
        return new SpringApplicationBuilder(RamkeeperApplication.class)
                .run(
                        "--server.port=0",
                        "--ramkeeper.second-factor=off",
                        "--spring.datasource.url=" + database.getJdbcUrl(),
                        "--spring.datasource.username=" + database.getUsername(),
                        "--spring.datasource.password=" + database.getPassword(),
                        "--spring.flyway.url=" + owner.getJdbcUrl(),
                        "--spring.flyway.user=" + owner.getUsername(),
                        "--spring.flyway.password=" + owner.getPassword(),
                        "--ramkeeper.app-role=" + app.ramkeeper.trial.DatabaseRoles.APP,
                        "--spring.jmx.enabled=false");
    }
}

package app.ramkeeper.visits.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.Installs;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.Sites;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.visits.FieldPeople;
import app.ramkeeper.visits.PageTest;
import app.ramkeeper.visits.ReportId;
import app.ramkeeper.visits.ReportView;
import app.ramkeeper.visits.VisitHistory;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.authentication.TestingAuthenticationToken;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MockMvcTester.MockMvcRequestBuilder;

/** What the desk's form asks once before it records: which part went in, where a finding was, what a baseline lacks. */
@PageTest
class RecordAskedTests {

    private static final String KIND = "01900000-0000-7000-8000-000000000003";

    @Autowired
    MockMvcTester mvc;

    @Autowired
    VisitHistory history;

    @Autowired
    Sites sites;

    @Autowired
    Installs installs;

    @Autowired
    FieldPeople people;

    @Autowired
    JdbcClient jdbc;

    private final UUID id = UUID.randomUUID();
    private final UUID rubber = UUID.randomUUID();
    private SiteId site;
    private InstallId install;
    private PersonId tech;

    @BeforeEach
    void register() {
        site = sites.named("Tarn block");
        install = installs.commissioned(site, LocalDate.of(2021, 3, 4));
        tech = people.named("Ada Fell");
        UUID model = UUID.randomUUID();
        UUID van = UUID.randomUUID();
        jdbc.sql("insert into pump_models (id, name) values (?, ?)")
                .params(model, "Model " + model)
                .update();
        jdbc.sql("insert into parts (id, number, name, kind) values (?, ?, 'Waste rubber', 'VALVE_RUBBER')")
                .params(rubber, "R-" + rubber)
                .update();
        jdbc.sql("insert into pump_model_parts (model_id, part_id, position, quantity) values (?, ?, 'WASTE_VALVE', 2)")
                .params(model, rubber)
                .update();
        jdbc.sql("update pumps set model_id = ? where id in (select pump_id from pump_fittings where install_id = ?)")
                .params(model, install.value())
                .update();
        jdbc.sql("insert into stock_places (id, kind, person_id, name) values (?, 'VAN', ?, ?)")
                .params(van, tech.value(), "Van " + van)
                .update();
        jdbc.sql(
                        "insert into stock_movements (id, part_id, place_id, quantity, batch, at, by_person, reason) values (gen_random_uuid(), ?, ?, 5, 'B-7', now(), ?, 'RECEIVED')")
                .params(rubber, van, tech.value())
                .update();
    }

    @Test
    void rubberIsOfferedByTheModelAndLeavesTheVan() {
        assertThat(rubberChanged())
                .hasStatus(422)
                .bodyText()
                .contains(
                        "No part is named, so nothing leaves the van’s stock",
                        "Waste rubber: 2 of batch B-7 (5 on the van)",
                        "name=\"extra[0].partAsked\" value=\"true\"");
        assertThat(rubberChanged().param("extra[0].part", rubber.toString())).hasStatus3xxRedirection();
        assertThat(saved().parts())
                .extracting(ReportView.Part::name, p -> p.quantity().intValue(), ReportView.Part::batch)
                .containsExactly(tuple("Waste rubber", 2, "B-7"));
        assertThat(jdbc.sql("select position from parts_used where report_id = ?")
                        .param(id)
                        .query(String.class)
                        .single())
                .isEqualTo("WASTE_VALVE");
        assertThat(jdbc.sql("select quantity::int from stock_levels where part_id = ?")
                        .param(rubber)
                        .query(Integer.class)
                        .single())
                .isEqualTo(3);
    }

    @Test
    void whoDoesNotAnswerIsLetThroughTheSecondTime() {
        assertThat(rubberChanged().param("extra[0].partAsked", "true")).hasStatus3xxRedirection();
        assertThat(saved().parts()).isEmpty();
        assertThat(saved().works())
                .singleElement()
                .satisfies(w -> assertThat(w.note()).isEqualTo("No part named."));
    }

    @Test
    void oldRubberPutBackIsSaidWithTheTask() {
        assertThat(rubberChanged().param("extra[0].part", "OLD").param("extra[0].note", "Seat filed"))
                .hasStatus3xxRedirection();
        assertThat(saved().works())
                .singleElement()
                .satisfies(
                        w -> assertThat(w.note()).isEqualTo("Seat filed. No part went in: the old one was put back."));
        UUID newer = UUID.randomUUID();
        MockMvcRequestBuilder again = mvc.post()
                .uri("/sites/{id}/record", site.value())
                .with(user(PageTest.As.who(tech, Role.TECHNICIAN)))
                .with(csrf());
        asShown().forEach((name, value) -> again.param(name, name.equals("id") ? newer.toString() : value));
        assertThat(again).hasStatus3xxRedirection();
        assertThat(saved(newer).works())
                .singleElement()
                .satisfies(
                        w -> assertThat(w.note()).isEqualTo("Seat filed. No part went in: the old one was put back."));
    }

    @Test
    void partPutDownByHandIsEnoughAndSomethingElseIsRefused() {
        assertThat(rubberChanged().param("extra[0].part", UUID.randomUUID().toString()))
                .hasStatus(422)
                .bodyText()
                .contains("Choose one from the list.");
        assertThat(rubberChanged()
                        .param("parts", "1")
                        .param("part[0].part", rubber.toString())
                        .param("part[0].quantity", "1"))
                .hasStatus3xxRedirection();
        assertThat(saved().parts()).hasSize(1);
    }

    @Test
    void partNamedAtTheTaskAndUnderPartsLeavesTheVanOnce() {
        assertThat(rubberChanged()
                        .param("extra[0].part", rubber.toString())
                        .param("parts", "1")
                        .param("part[0].part", rubber.toString())
                        .param("part[0].quantity", "2"))
                .hasStatus3xxRedirection();
        assertThat(saved().parts())
                .singleElement()
                .satisfies(p -> assertThat(p.quantity().intValue()).isEqualTo(2));
    }

    @Test
    void partNamedInACorrectionEndsWhatWasSaidBefore() {
        assertThat(rubberChanged().param("extra[0].partAsked", "true").param("extra[0].note", "Seat filed"))
                .hasStatus3xxRedirection();
        UUID newer = UUID.randomUUID();
        Map<String, String> fields = new java.util.LinkedHashMap<>(asShown());
        fields.put("id", newer.toString());
        String task = fields.keySet().stream()
                .filter(name -> name.endsWith(".kind") && fields.get(name).equals(KIND))
                .findFirst()
                .orElseThrow();
        fields.put(task.replace(".kind", ".part"), rubber.toString());
        MockMvcRequestBuilder again = mvc.post()
                .uri("/sites/{id}/record", site.value())
                .with(user(PageTest.As.who(tech, Role.TECHNICIAN)))
                .with(csrf());
        fields.forEach(again::param);
        assertThat(again).hasStatus3xxRedirection();
        assertThat(saved(newer).parts()).hasSize(1);
        assertThat(saved(newer).works())
                .singleElement()
                .satisfies(w -> assertThat(w.note()).isEqualTo("Seat filed"));
    }

    /** What was asked for stands under the tasks again, and what the page says by itself is not typed text. */
    @Test
    void correctionShowsAskedTasksAsSuchAndWhatWasSaidOfThePartAsAnAnswer() {
        String task = jdbc.sql("select id::text from service_tasks where install_id = ? and task_kind_id = ?::uuid")
                .params(install.value(), KIND)
                .query(String.class)
                .single();
        MockMvcRequestBuilder answered = post(id, "SERVICE")
                .param("tasks", "1")
                .param("task[0].task", task)
                .param("task[0].install", install.value().toString())
                .param("task[0].kind", KIND)
                .param("task[0].outcome", "DONE")
                .param("task[0].note", "Seat filed")
                .param("task[0].partAsked", "true");
        jdbc.sql("select pump_id::text from service_tasks where id = ?::uuid and pump_id is not null")
                .param(task)
                .query(String.class)
                .optional()
                .ifPresent(pump -> answered.param("task[0].pump", pump));
        assertThat(answered).hasStatus3xxRedirection();

        Map<String, String> shown = asShown();

        assertThat(shown)
                .containsEntry("task[0].task", task)
                .containsEntry("task[0].outcome", "DONE")
                .containsEntry("task[0].note", "Seat filed")
                .containsEntry("task[0].partAsked", "true")
                .doesNotContainValue("No part named.");
        UUID newer = UUID.randomUUID();
        Map<String, String> fields = new java.util.LinkedHashMap<>(shown);
        fields.put("id", newer.toString());
        MockMvcRequestBuilder again = mvc.post()
                .uri("/sites/{id}/record", site.value())
                .with(user(PageTest.As.who(tech, Role.TECHNICIAN)))
                .with(csrf());
        fields.forEach(again::param);
        assertThat(again).hasStatus3xxRedirection();
        assertThat(saved(newer).works())
                .singleElement()
                .satisfies(w -> assertThat(w.note()).isEqualTo("Seat filed. No part named."));
    }

    @Test
    void inspectionThatTookNoPartIsNotAsked() {
        String seals = kind("INSPECT_SEALS");
        assertThat(post(id, "SERVICE").param("extras", "1").param("extra[0].kind", seals))
                .hasStatus3xxRedirection();
        assertThat(saved().works())
                .singleElement()
                .satisfies(w -> assertThat(w.note()).isNull());
        assertThat(post(UUID.randomUUID(), "SERVICE").param("extras", "1").param("extra[0].kind", kind("OVERHAUL")))
                .hasStatus(422)
                .bodyText()
                .contains("No part is named");
    }

    private String kind(String code) {
        return jdbc.sql("select id::text from task_kinds where code = ?")
                .param(code)
                .query(String.class)
                .single();
    }

    @Test
    void overhaulAndRubberOfOnePlaceTakeOneRubber() {
        assertThat(post(id, "SERVICE")
                        .param("extras", "2")
                        .param("extra[0].kind", "01900000-0000-7000-8000-000000000007")
                        .param("extra[0].part", rubber.toString())
                        .param("extra[1].kind", KIND)
                        .param("extra[1].part", rubber.toString()))
                .hasStatus3xxRedirection();
        assertThat(saved().parts()).hasSize(1);
        assertThat(saved().works()).allSatisfy(w -> assertThat(w.note()).isNull());
    }

    @Test
    void findingAtASiteOfSeveralInstallsNamesItsInstallOrTheWholeSite() {
        installs.commissioned(site, LocalDate.of(2022, 3, 4));
        assertThat(finding()).hasStatus(422).bodyText().contains("Say at which pump this was");
        assertThat(finding().param("finding[0].install", "SITE")).hasStatus3xxRedirection();
        assertThat(saved().findings())
                .singleElement()
                .satisfies(f -> assertThat(f.installName()).isNull());
        assertThat(asShown()).containsEntry("finding[0].install", "SITE");
        UUID newer = UUID.randomUUID();
        assertThat(post(newer, "SERVICE")
                        .param("supersedes", id.toString())
                        .param("findings", "1")
                        .param("finding[0].symptom", "LEAK_PIPE"))
                .hasStatus(422)
                .bodyText()
                .contains("Say at which pump this was");
    }

    @Test
    void commissioningWithoutReadingsIsAskedAbout() {
        assertThat(post(id, "COMMISSIONING")).hasStatus(422).bodyText().contains("no pump counts as put to work");
        String field = "reading." + install.value() + ".";
        assertThat(post(id, "COMMISSIONING").param(field + "DRIVE_FLOW.PUMP.value", "58"))
                .hasStatus(422)
                .bodyText()
                .contains("The baseline lacks what was not read: delivered flow of Top ram.");
        assertThat(post(id, "COMMISSIONING")
                        .param(field + "DRIVE_FLOW.PUMP.value", "58")
                        .param("noBaseline", "true"))
                .hasStatus3xxRedirection();
        assertThat(asShown()).containsEntry("noBaseline", "true");
    }

    @Test
    void commissioningWithItsFlowsIsNot() {
        String field = "reading." + install.value() + ".";
        assertThat(post(id, "COMMISSIONING")
                        .param(field + "DRIVE_FLOW.PUMP.value", "58")
                        .param(field + "DELIVERED_FLOW.TANK.value", "4"))
                .hasStatus3xxRedirection();
        assertThat(asShown()).doesNotContainKey("noBaseline");
    }

    @Test
    void asUsualBesideAFindingIsSaidAndRecorded() {
        UUID visit = UUID.randomUUID();
        jdbc.sql(
                        "insert into visits (id, site_id, kind, planned_on, minutes) values (?, ?, 'SERVICE', '2026-05-06', 60)")
                .params(visit, site.value())
                .update();
        assertThat(finding().param("asUsual", "true").param("visit", visit.toString()))
                .hasStatus3xxRedirection()
                .flash()
                .hasEntrySatisfying(
                        "saved", saved -> assertThat(saved.toString()).contains("visits.saved.recordedUnusual"));
    }

    private Map<String, String> asShown() {
        return PostedForm.fields(new String(
                        mvc.get()
                                .uri("/visits/reports/{id}/correct", id)
                                .with(user(PageTest.As.who(tech, Role.TECHNICIAN)))
                                .exchange()
                                .getResponse()
                                .getContentAsByteArray(),
                        StandardCharsets.UTF_8))
                .stream()
                .collect(java.util.stream.Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue, (a, b) -> a));
    }

    private MockMvcRequestBuilder finding() {
        return post(id, "SERVICE").param("findings", "1").param("finding[0].symptom", "LEAK_PIPE");
    }

    private MockMvcRequestBuilder rubberChanged() {
        return post(id, "SERVICE").param("extras", "1").param("extra[0].kind", KIND);
    }

    private MockMvcRequestBuilder post(UUID report, String kind) {
        return mvc.post()
                .uri("/sites/{id}/record", site.value())
                .with(user(PageTest.As.who(tech, Role.TECHNICIAN)))
                .with(csrf())
                .param("id", report.toString())
                .param("attendedOn", "2026-05-06")
                .param("kind", kind)
                .param("outcome", "DONE")
                .param("lead", tech.value().toString());
    }

    private ReportView saved() {
        return saved(id);
    }

    private ReportView saved(UUID report) {
        SecurityContextHolder.getContext()
                .setAuthentication(new TestingAuthenticationToken("mother", "", "ROLE_OFFICE"));
        return history.report(new ReportId(report)).orElseThrow();
    }
}

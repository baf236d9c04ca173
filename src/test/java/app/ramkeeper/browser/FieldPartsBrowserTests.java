package app.ramkeeper.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A rubber that was changed is named: offered from the pump's model, drawn from the van, or said to be unknown. */
class FieldPartsBrowserTests extends FieldRun {

    private final UUID model = UUID.randomUUID();
    private UUID waste;
    private UUID delivery;

    @BeforeEach
    void fitPump() {
        UUID pump = UUID.randomUUID();
        waste = UUID.randomUUID();
        delivery = UUID.randomUUID();
        transaction.executeWithoutResult(status -> {
            jdbc.sql("insert into pump_models (id, name) values (?, ?) on conflict do nothing")
                    .params(model, "Model " + model)
                    .update();
            rubber(waste, "Waste rubber", "WASTE_VALVE", 2);
            rubber(delivery, "Delivery rubber", "DELIVERY_VALVE", 1);
            jdbc.sql("insert into pumps (id, model_id) values (?, ?)")
                    .params(pump, model)
                    .update();
            jdbc.sql(
                            "insert into pump_fittings (id, pump_id, place, install_id, place_no, from_date) values (gen_random_uuid(), ?, 'INSTALL', ?, 1, '2019-05-01')")
                    .params(pump, install)
                    .update();
            task("CHANGE_WASTE_RUBBER");
            task("CHANGE_DELIVERY_RUBBER");
        });
    }

    private void rubber(UUID id, String name, String position, int quantity) {
        jdbc.sql("delete from pump_model_parts where model_id = ? and position = ?")
                .params(model, position)
                .update();
        jdbc.sql("insert into parts (id, number, name, kind) values (?, ?, ?, 'VALVE_RUBBER')")
                .params(id, "R-" + id, name + " " + id)
                .update();
        jdbc.sql("insert into pump_model_parts (model_id, part_id, position, quantity) values (?, ?, ?, ?)")
                .params(model, id, position, quantity)
                .update();
    }

    private void task(String kind) {
        jdbc.sql(
                        "insert into service_tasks (id, install_id, task_kind_id, due_on, window_from, window_until) select gen_random_uuid(), ?, id, current_date, current_date, current_date + 30 from task_kinds where code = ?")
                .params(install, kind)
                .update();
    }

    private String name(String kind) {
        return jdbc.sql("select name from task_kinds where code = ?")
                .param(kind)
                .query(String.class)
                .single();
    }

    /** A technician with a van on which lie five waste rubbers of one batch. */
    private Page withVan(String who) {
        Page page = phone();
        PersonId person = signIn(page, who, Role.TECHNICIAN);
        UUID van = UUID.randomUUID();
        transaction.executeWithoutResult(status -> {
            jdbc.sql("insert into stock_places (id, kind, person_id, name) values (?, 'VAN', ?, ?)")
                    .params(van, person.value(), "Van " + van)
                    .update();
            jdbc.sql(
                            "insert into stock_movements (id, part_id, place_id, quantity, batch, at, by_person, reason) values (gen_random_uuid(), ?, ?, 5, 'B-7', now(), ?, 'RECEIVED')")
                    .params(waste, van, person.value())
                    .update();
        });
        toField(page);
        openVisit(page);
        return page;
    }

    private static Locator asked(Page page) {
        return page.locator(".note").filter(new Locator.FilterOptions().setHasText("Which rubber went in?"));
    }

    private void done(Page page, String kind) {
        page.getByLabel(name(kind), new Page.GetByLabelOptions().setExact(true)).selectOption("DONE");
    }

    private List<Map<String, Object>> parts() {
        return jdbc.sql("""
                        select p.part_id, p.quantity::int as quantity, p.batch, p.position from parts_used p join visit_reports r on r.id = p.report_id
                        where r.site_id = ? order by p.position""").param(site).query().listOfRows();
    }

    @Test
    void fittingRubberIsOneTapWithQuantityAndBatchAndLeavesTheVan() {
        Page page = withVan("Ansa Byre");
        assertThat(asked(page)).hasCount(0);
        button(page, "All as usual").click();
        assertThat(asked(page)).hasCount(2);
        isAccessible(page);
        button(page, "Waste rubber " + waste + ": 2 of batch B-7 (5 on the van)")
                .click();
        assertThat(page.getByLabel("How many")).hasValue("2");
        assertThat(page.getByLabel("Batch")).hasValue("B-7");
        assertThat(asked(page)).hasCount(1);
        button(page, "Delivery rubber " + delivery + ": 1 (none counted on the van)")
                .click();
        assertThat(asked(page)).hasCount(0);
        assertThat(page.locator("main")).not().containsText("This as well?");
        button(page, "I have read this").first().click();
        page.locator("#finish").click();
        assertThat(page.locator(".state.sent")).hasCount(1);
        assertThat(parts())
                .extracting(row -> row.get("part_id"), row -> row.get("quantity"), row -> row.get("batch"))
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple(delivery, 1, null),
                        org.assertj.core.groups.Tuple.tuple(waste, 2, "B-7"));
        assertThat(parts()).extracting(row -> row.get("position")).containsExactly("DELIVERY_VALVE", "WASTE_VALVE");
        assertThat(jdbc.sql("select quantity::int from stock_levels where part_id = ?")
                        .param(waste)
                        .query(Integer.class)
                        .single())
                .isEqualTo(3);
    }

    @Test
    void overhaulKnowsTheRubberThatAnotherTaskTook() {
        task("OVERHAUL");
        Page page = withVan("Dagny Heft");
        Locator part = page.locator(".note").filter(new Locator.FilterOptions().setHasText("Which part went in?"));
        button(page, "All as usual").click();
        assertThat(part).hasCount(1);
        // beside the overhaul too
        button(page, "Waste rubber " + waste).first().click();
        assertThat(part).hasCount(0);
        assertThat(asked(page)).hasCount(1);
        Locator more = page.locator(".note").filter(new Locator.FilterOptions().setHasText("This as well?"));
        assertThat(more.locator("button")).hasCount(1);
        assertThat(more).containsText("Delivery rubber " + delivery);
    }

    @Test
    void partOfATaskThatIsNotDoneAfterAllIsAskedAbout() {
        Page page = withVan("Odd Kvern");
        done(page, "CHANGE_WASTE_RUBBER");
        button(page, "Waste rubber " + waste).first().click();
        assertThat(page.getByLabel("How many")).hasValue("2");
        page.getByLabel(name("CHANGE_WASTE_RUBBER"), new Page.GetByLabelOptions().setExact(true))
                .selectOption("NOT_NEEDED");
        button(page, "I have read this").first().click();
        page.locator("#finish").click();
        assertThat(page.locator("[role=alert]")).containsText("take it away there if it did not go in");
    }

    @Test
    void inspectionOffersAPartAndAsksForNone() {
        task("INSPECT_SEALS");
        Page page = withVan("Runa Peel");
        done(page, "INSPECT_SEALS");
        assertThat(page.locator("main")).containsText("If a seal went in:");
        assertThat(asked(page)).hasCount(0);
        page.locator("#finish").click();
        assertThat(page.locator("main")).not().containsText("No part is named");
        button(page, "Finish all the same").click();
        assertThat(page.locator(".state.sent")).hasCount(1);
        assertThat(jdbc.sql(
                                "select count(*) from report_works w join visit_reports r on r.id = w.report_id where r.site_id = ? and w.note is not null")
                        .param(site)
                        .query(Integer.class)
                        .single())
                .isZero();
    }

    @Test
    void noNameIsAskedOnceAndThereIsAWayThrough() {
        Page page = withVan("Bodil Garth");
        done(page, "CHANGE_WASTE_RUBBER");
        button(page, "None, old one put back").click();
        assertThat(page.locator("main")).containsText("If the old one goes on, answer “inspected, good”");
        done(page, "CHANGE_DELIVERY_RUBBER");
        button(page, "I have read this").first().click();
        page.locator("#finish").click();
        assertThat(page.locator("[role=alert]"))
                .containsText(name("CHANGE_DELIVERY_RUBBER") + ": which rubber went in? No part is named");
        assertThat(page.locator("[role=alert]")).not().containsText(name("CHANGE_WASTE_RUBBER"));
        isAccessible(page);
        button(page, "Finish all the same").click();
        assertThat(page.locator(".state.sent")).hasCount(1);
        assertThat(report()).containsEntry("note", name("CHANGE_DELIVERY_RUBBER") + ": done, no part named.");
        assertThat(jdbc.sql(
                                "select w.note from report_works w join visit_reports r on r.id = w.report_id where r.site_id = ? and w.note is not null")
                        .param(site)
                        .query(String.class)
                        .list())
                .containsExactly("No part went in: the old one was put back.");
        assertThat(parts()).isEmpty();
    }

    @Test
    void partPutDownByHandAnswersTheQuestion() {
        Page page = withVan("Cleo Stell");
        done(page, "CHANGE_DELIVERY_RUBBER");
        button(page, "Add a part").click();
        page.getByLabel("Which part").fill("Rubber cut from a sheet");
        assertThat(asked(page)).hasCount(1);
        button(page, "Nobody there").click();
        button(page, "“Rubber cut from a sheet”, put down below").click();
        assertThat(asked(page)).hasCount(0);
        assertThat(page.getByLabel("Which part")).hasValue("Rubber cut from a sheet");
        done(page, "CHANGE_WASTE_RUBBER");
        assertThat(asked(page)).hasCount(1);
        page.getByLabel("From the van").selectOption(waste.toString());
        assertThat(asked(page)).hasCount(1);
        button(page, "Add a part").click();
        assertThat(page.getByLabel("From the van")).hasCount(2);
        page.getByLabel("From the van").last().selectOption(waste.toString());
        assertThat(asked(page)).hasCount(0);
    }
}

package app.ramkeeper.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.visits.PageTest;
import app.ramkeeper.visits.PlanVisit;
import app.ramkeeper.visits.VisitId;
import app.ramkeeper.visits.VisitKind;
import app.ramkeeper.visits.Visits;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.stream.StreamSupport;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import tools.jackson.databind.JsonNode;

/** Whether a phone is told since when a visit stands as it does, and where one went that is no longer its person's. */
class ChangedSinceTests extends FromPhones {

    @Autowired
    Visits visits;

    @Test
    void aVisitBroughtForwardOnItsOwnPageComesMarkedAsChanged() {
        LocalDate today = LocalDate.now(clock);
        Instant start = clock.instant().minusMillis(1);
        VisitId visit = visits.plan(plan(today.plusDays(30), ada, "bring the long hose"));

        change(visit, plan(today.plusDays(7), ada, "bring the long hose"));

        JsonNode here = one("planned", visit);
        assertThat(moment(here, "made")).isAfter(start);
        assertThat(moment(here, "changed")).isAfterOrEqualTo(moment(here, "made"));
    }

    @Test
    void aVisitThatStandsAsItWasPlannedIsNotChanged() {
        LocalDate day = LocalDate.now(clock).plusDays(2);
        VisitId visit = visits.plan(plan(day, ada, null));
        change(visit, plan(day, ada, null));

        assertThat(one("planned", visit).path("changed").asString("")).isEmpty();
        assertThat(moment(one("planned", visit), "made")).isNotNull();
    }

    @Test
    void aVisitMovedOnItsOwnPageSaysWhereItWent() {
        LocalDate today = LocalDate.now(clock);
        VisitId later = visits.plan(plan(today.plusDays(2), ada, null));
        VisitId others = visits.plan(plan(today.plusDays(3), ada, null));
        PersonId ben = people.named("Ben Adit");
        change(later, plan(today.plusDays(20), ada, null));
        change(others, plan(today.plusDays(3), ben, null));

        assertThat(one("moved", later).path("on").asString())
                .isEqualTo(today.plusDays(20).toString());
        assertThat(one("moved", others).path("who").asString()).isEqualTo("Ben Adit");

        jdbc.sql("update visits set changed_at = changed_at - interval '10 days' where id = ?")
                .param(later.value())
                .update();
        assertThat(of("moved", later)).as("long ago").isEmpty();
    }

    private PlanVisit plan(LocalDate on, PersonId who, @Nullable String note) {
        return new PlanVisit(site, VisitKind.SERVICE, on, null, 60, List.of(who), List.of(), note);
    }

    private void change(VisitId visit, PlanVisit plan) {
        int version = jdbc.sql("select version from visits where id = ?")
                .param(visit.value())
                .query(Integer.class)
                .single();
        assertThat(visits.change(visit, version, plan)).isTrue();
    }

    private static @Nullable Instant moment(JsonNode visit, String field) {
        String text = visit.path(field).asString("");
        return text.isEmpty() ? null : OffsetDateTime.parse(text).toInstant();
    }

    private JsonNode one(String section, VisitId visit) {
        List<JsonNode> found = of(section, visit);
        assertThat(found).hasSize(1);
        return found.get(0);
    }

    private List<JsonNode> of(String section, VisitId visit) {
        return bundle(section).stream()
                .filter(v -> visit.value().toString().equals(v.path("id").asString()))
                .toList();
    }

    private List<JsonNode> bundle(String section) {
        byte[] body = mvc.get()
                .uri("/field/bundle")
                .with(user(PageTest.As.who(ada, Role.TECHNICIAN)))
                .exchange()
                .getResponse()
                .getContentAsByteArray();
        return StreamSupport.stream(json.readTree(body).path(section).spliterator(), false)
                .toList();
    }
}

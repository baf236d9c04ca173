package app.ramkeeper.field;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.fleet.ConfigurationDetails;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.InstallWorks;
import app.ramkeeper.fleet.RunningState;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.Future;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.PessimisticLockingFailureException;
import org.springframework.security.authentication.TestingAuthenticationToken;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.test.web.servlet.assertj.MvcTestResult;

/** What phones send late: the register, the clock or the checklist have moved on meanwhile. */
class IntakeLateTests extends FromPhones {

    @Autowired
    InstallWorks works;

    @Test
    @DisplayName("SYN-12 for a visit that is not on the plan: kept whole for the office")
    void syn12UnknownVisitIsKept() {
        UUID id = UUID.randomUUID();
        Map<String, Object> visit = visit(id, "did it anyway");
        visit.put("visit", UUID.randomUUID());
        assertThat(send(ada, envelope(ada, visit)))
                .hasStatusOk()
                .bodyJson()
                .extractingPath("$.result")
                .isEqualTo("HELD");
        assertThat(held(id)).startsWith("VISIT_UNKNOWN").contains("did it anyway");
    }

    @Test
    @DisplayName("SYN-11 SYN-12 an install that is gone from the register: every word is kept for the office")
    void syn12RegisterChanged() {
        UUID id = UUID.randomUUID();
        Map<String, Object> visit = visit(id, "pump was gone");
        visit.put(
                "readings",
                List.of(Map.of(
                        "install",
                        UUID.randomUUID(),
                        "quantity",
                        "BEAT_RATE",
                        "place",
                        "PUMP",
                        "value",
                        60,
                        "unit",
                        "PER_MINUTE",
                        "asRead",
                        true)));
        assertThat(send(ada, envelope(ada, visit)))
                .hasStatusOk()
                .bodyJson()
                .extractingPath("$.result")
                .isEqualTo("HELD");
        assertThat(held(id)).startsWith("REGISTER_CHANGED").contains("pump was gone", "BEAT_RATE");
    }

    @Test
    @DisplayName("SYN-12 the works were laid out anew meanwhile: the baseline goes to what stood there on the day")
    void syn12PlacedOnTheConfigurationOfItsDay() {
        InstallId install = installs.notYetCommissioned(site);
        LocalDate today = LocalDate.now(clock);
        UUID old = configuration(install);
        inTheOffice(() ->
                works.changeConfiguration(install, today, "a second drive pipe", ConfigurationDetails.unknown(), null));
        UUID id = UUID.randomUUID();

        assertThat(send(ada, envelope(ada, commissioning(id, install, today.minusDays(1)))))
                .bodyJson()
                .extractingPath("$.result")
                .isEqualTo("APPLIED");

        assertThat(jdbc.sql("select configuration_id from baselines where report_id = ?")
                        .param(id)
                        .query(UUID.class)
                        .single())
                .isEqualTo(old);
        assertThat(jdbc.sql("select valve_setting from configurations where id = ?")
                        .param(old)
                        .query(String.class)
                        .single())
                .isEqualTo("3 turns");
    }

    @Test
    @DisplayName("SYN-12 the register no longer allows what was done: every word is kept for the office")
    void syn12KeptWhenTheRegisterRefusesWhatFollows() {
        LocalDate today = LocalDate.now(clock);
        InstallId retired = installs.notYetCommissioned(site);
        jdbc.sql("update installs set retired_on = ? where id = ?")
                .params(today, retired.value())
                .update();
        InstallId asleep = installs.notYetCommissioned(site);
        inTheOffice(() -> works.changeState(asleep, RunningState.DORMANT, today.minusDays(30), "frost"));

        for (InstallId changed : List.of(retired, asleep)) {
            UUID id = UUID.randomUUID();
            Map<String, Object> entry = envelope(ada, commissioning(id, changed, today.minusDays(1)));
            assertThat(send(ada, entry)).bodyJson().extractingPath("$.result").isEqualTo("HELD");
            assertThat(send(ada, entry)).bodyJson().extractingPath("$.repeated").isEqualTo(true);
            assertThat(held(id)).startsWith("REGISTER_CHANGED").contains("beats evenly", "DELIVERED_FLOW", "4.1");
            assertThat(reports(id)).isZero();
        }
    }

    private Map<String, Object> commissioning(UUID id, InstallId install, LocalDate on) {
        Map<String, Object> visit = visit(id, "beats evenly");
        visit.put("kind", "COMMISSIONING");
        visit.put("on", on.toString());
        visit.put("leftSetting", "3 turns");
        visit.put(
                "readings",
                List.of(Map.of(
                        "install",
                        install.value(),
                        "quantity",
                        "DELIVERED_FLOW",
                        "place",
                        "TANK",
                        "value",
                        new BigDecimal("4.1"),
                        "unit",
                        "LITRE_PER_MINUTE",
                        "asRead",
                        true)));
        return visit;
    }

    private UUID configuration(InstallId install) {
        return jdbc.sql("select id from configurations where install_id = ?")
                .param(install.value())
                .query(UUID.class)
                .single();
    }

    private static void inTheOffice(Runnable work) {
        SecurityContextHolder.getContext()
                .setAuthentication(new TestingAuthenticationToken("marama", "", "ROLE_OFFICE"));
        try {
            work.run();
        } finally {
            SecurityContextHolder.clearContext();
        }
    }

    @Test
    @DisplayName("SYN-21 a clock three days ahead is noted; the visit is taken as told")
    void syn21Clock() {
        Map<String, Object> entry = envelope(ada, visit(UUID.randomUUID(), "early"));
        entry.put("sentAt", clock.instant().plus(Duration.ofDays(3)).toString());
        assertThat(send(ada, entry))
                .hasStatusOk()
                .bodyJson()
                .extractingPath("$.clockAheadS")
                .asNumber()
                .satisfies(ahead -> assertThat(ahead.longValue()).isBetween(259_100L, 259_200L));
    }

    @Test
    @DisplayName("SYN-07 sent again after sixty days: still the first answer, still one visit")
    void syn07SixtyDaysLater() {
        UUID id = UUID.randomUUID();
        Map<String, Object> visit = visit(id, "from a phone that lay in a drawer");
        Map<String, Object> entry = envelope(ada, visit);
        assertThat(send(ada, entry)).hasStatusOk();
        Clock later = Clock.offset(clock, Duration.ofDays(60));
        Intake then = new Intake(jdbc, json, recorder, devices, checklists, transaction, later);
        SecurityContextHolder.getContext()
                .setAuthentication(new TestingAuthenticationToken("ada", "", "ROLE_TECHNICIAN"));
        try {
            Intake.Answer again = then.take(json.readValue(json.writeValueAsString(entry), Entry.class), ada);
            assertThat(again.repeated()).isTrue();
            assertThat(again.result()).isEqualTo("APPLIED");
        } finally {
            SecurityContextHolder.clearContext();
        }
        assertThat(reports(id)).isEqualTo(1);
    }

    @Test
    @DisplayName("SYN-25 two that wait for each other: it arrives, or is told to come again in a moment; never a 500")
    void syn25Crossing() throws Exception {
        UUID planned = UUID.randomUUID();
        jdbc.sql("insert into visits (id, site_id, kind, planned_on) values (:id, :site, 'SERVICE', :on)")
                .param("id", planned)
                .param("site", site.value())
                .param("on", LocalDate.now(clock))
                .update();
        UUID id = UUID.randomUUID();
        Map<String, Object> visit = visit(id, "crossing");
        visit.put("visit", planned);
        Map<String, Object> entry = envelope(ada, visit);
        try (Pool pool = new Pool()) {
            Future<MvcTestResult> sent = transaction.execute(status -> {
                jdbc.sql("select id from visits where id = :id for update")
                        .param("id", planned)
                        .query(UUID.class)
                        .single();
                Future<MvcTestResult> sending = pool.threads().submit(() -> send(ada, entry));
                pause();
                try {
                    jdbc.sql("select pg_advisory_xact_lock(hashtextextended(:id, 0))")
                            .param("id", id.toString())
                            .query((row, n) -> true)
                            .list();
                } catch (PessimisticLockingFailureException chosen) {
                    status.setRollbackOnly();
                }
                return sending;
            });
            int answer = sent.get().getResponse().getStatus();
            assertThat(answer).isIn(200, 409, 503);
            assertThat(reports(id)).isEqualTo(answer == 200 ? 1 : 0);
        }
        assertThat(send(ada, entry)).hasStatusOk();
        assertThat(reports(id)).isEqualTo(1);
    }

    private static void pause() {
        try {
            Thread.sleep(600);
        } catch (InterruptedException stop) {
            Thread.currentThread().interrupt();
        }
    }

    @Test
    @DisplayName("SYN-22 fields this release does not know are kept in the text and not refused")
    void syn22OtherEdition() {
        UUID id = UUID.randomUUID();
        Map<String, Object> visit = visit(id, "from another edition");
        visit.put("moodOfTheGoat", "fair");
        assertThat(send(ada, envelope(ada, visit))).hasStatusOk();
        assertThat(jdbc.sql("select text from field_entries where id = :id")
                        .param("id", id)
                        .query(String.class)
                        .single())
                .contains("moodOfTheGoat");
    }
}

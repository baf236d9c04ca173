package app.ramkeeper.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.visits.PageTest;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** Commissionings from phones: which install they are for, and what becomes of its baseline and setting. */
class IntakeCommissioningTests extends FromPhones {

    private InstallId top;
    private LocalDate today;

    @BeforeEach
    void makeInstall() {
        top = installs.notYetCommissioned(site);
        today = LocalDate.now(clock);
    }

    @Test
    @DisplayName("SEC-14 of two installs the named one is commissioned, whatever else was measured or ticked")
    void sec14NamedInstall() {
        InstallId other = installs.notYetCommissioned(site);
        Map<String, Object> visit = commissioning(top, today, "4.1", "3 turns");
        List<Object> both = new ArrayList<>((List<?>) visit.get("readings"));
        both.add(delivered(other, "2.2"));
        visit.put("readings", both);

        assertThat(applied(visit)).isTrue();

        assertThat(story(top)).containsExactly("null until null: 4.1, 3 turns");
        assertThat(story(other)).containsExactly("null until null: none, null");
        assertThat(commissioned(other)).isNull();
        assertThat(commissioned(top)).isEqualTo(today);
    }

    @Test
    @DisplayName("SYN-22 an older page that names no install is taken: its flows tell which one it was")
    void syn22OlderPage() {
        InstallId other = installs.notYetCommissioned(site);
        Map<String, Object> visit = commissioning(top, today, "4.1", "3 turns");
        visit.remove("install");

        assertThat(applied(visit)).isTrue();

        assertThat(story(top)).containsExactly("null until null: 4.1, 3 turns");
        assertThat(commissioned(other)).isNull();
    }

    @Test
    void commissionedAnewOpensItsOwnConfigurationAndTheOldBaselineStays() {
        assertThat(applied(commissioning(top, today.minusDays(30), "4.1", "3 turns")))
                .isTrue();
        assertThat(applied(commissioning(top, today, "4.6", "4 turns"))).isTrue();

        assertThat(story(top))
                .containsExactly("null until " + today + ": 4.1, 3 turns", today + " until null: 4.6, 4 turns");
    }

    @Test
    void anotherSettingAloneEndsTheOldBaseline() {
        assertThat(applied(commissioning(top, today.minusDays(30), "4.1", "3 turns")))
                .isTrue();
        assertThat(applied(commissioning(top, today, null, "4 turns"))).isTrue();
        assertThat(applied(commissioning(top, today, null, "4 turns"))).isTrue();

        assertThat(story(top))
                .containsExactly("null until " + today + ": 4.1, 3 turns", today + " until null: none, 4 turns");
    }

    @Test
    @DisplayName("SYN-12 an older visit that arrives late changes nothing that is newer")
    void syn12OlderArrivesLate() {
        assertThat(applied(commissioning(top, today.minusDays(1), "4.6", "4 turns")))
                .isTrue();
        assertThat(applied(commissioning(top, today.minusDays(10), "4.1", "3 turns")))
                .isTrue();

        assertThat(story(top)).containsExactly("null until null: 4.6, 4 turns");
    }

    @Test
    @DisplayName("SYN-12 a visit between two that were recorded gets its own days, and no more")
    void syn12BetweenTwo() {
        assertThat(applied(commissioning(top, today.minusDays(30), "4.1", "3 turns")))
                .isTrue();
        assertThat(applied(commissioning(top, today, "4.6", "4 turns"))).isTrue();
        assertThat(applied(commissioning(top, today.minusDays(10), "3.9", "2 turns")))
                .isTrue();

        assertThat(story(top))
                .containsExactly(
                        "null until " + today.minusDays(10) + ": 4.1, 3 turns",
                        today.minusDays(10) + " until " + today + ": 3.9, 2 turns",
                        today + " until null: 4.6, 4 turns");
    }

    @Test
    @DisplayName("SYN-12 SYN-11 commissioned again but retired or gone meanwhile: every word is kept for the office")
    void syn12GoneMeanwhile() {
        assertThat(applied(commissioning(top, today.minusDays(30), "4.1", "3 turns")))
                .isTrue();
        jdbc.sql("update installs set retired_on = ? where id = ?")
                .params(today, top.value())
                .update();
        for (InstallId gone : List.of(top, InstallId.next())) {
            Map<String, Object> visit = commissioning(gone, today, "4.6", "locked at 4 turns");
            visit.put("steps", List.of(Map.of("setting", "tried at 9 turns", "drive", "40", "delivered", "3.2")));
            assertThat(applied(visit)).isFalse();
            assertThat(held((UUID) visit.get("id")))
                    .startsWith("REGISTER_CHANGED")
                    .contains("beats evenly", "4.6", "locked at 4 turns", gone.toString());
            assertThat(settlePage((UUID) visit.get("id")))
                    .contains("locked at 4 turns", "tried at 9 turns", "Put to work");
        }
        assertThat(story(top)).containsExactly("null until null: 4.1, 3 turns");
    }

    @Test
    void withoutAPumpInTheRegisterTheReportIsTakenAndItsPumpIsAskedFor() {
        jdbc.sql("delete from pump_fittings where install_id = ?")
                .param(top.value())
                .update();
        assertThat(applied(commissioning(top, today, "4.1", "3 turns"))).isTrue();
        assertThat(left()).singleElement().asString().contains("no pump stands in New ram", "nobody named the one");
        assertThat(mvc.get().uri("/fix-lists").with(user(PageTest.As.who(ada, Role.ADMINISTRATOR))))
                .bodyText()
                .contains("/installs/" + top.value());
        Map<String, Object> named = commissioning(top, today, "4.1", "3 turns");
        named.put("pump", "Bittern 80, serial LW2001");
        assertThat(applied(named)).isTrue();
        assertThat(left()).hasSize(2).element(1).asString().contains("put to work: Bittern 80, serial LW2001");
    }

    @Test
    void nobodyIsAskedForAPumpThatTheRegisterKnows() {
        assertThat(applied(commissioning(top, today, "4.1", "3 turns"))).isTrue();
        assertThat(left()).isEmpty();
    }

    private List<String> left() {
        return jdbc.sql("select text from open_follow_ups where site_id = ? order by id")
                .param(site.value())
                .query(String.class)
                .list();
    }

    @Test
    void settingThatIsTooLongIsSaidToItsWriter() {
        assertThat(send(ada, envelope(ada, commissioning(top, today, "4.1", "x".repeat(201)))))
                .hasStatus(422)
                .bodyJson()
                .extractingPath("$.problems[0].path")
                .isEqualTo("leftSetting");
    }

    private String settlePage(UUID report) {
        UUID held = jdbc.sql("select id from to_settle where report_id = ?")
                .param(report)
                .query(UUID.class)
                .single();
        return new String(
                mvc.get()
                        .uri("/to-settle/{id}", held)
                        .with(user(PageTest.As.who(ada, Role.OFFICE)))
                        .exchange()
                        .getResponse()
                        .getContentAsByteArray(),
                StandardCharsets.UTF_8);
    }

    private boolean applied(Map<String, Object> visit) {
        var answer = send(ada, envelope(ada, visit));
        assertThat(answer).hasStatusOk();
        return reports((UUID) visit.get("id")) == 1;
    }

    private Map<String, Object> commissioning(InstallId install, LocalDate on, @Nullable String flow, String left) {
        Map<String, Object> visit = visit(UUID.randomUUID(), "beats evenly");
        visit.put("kind", "COMMISSIONING");
        visit.put("on", on.toString());
        visit.put("install", install.value());
        visit.put("leftSetting", left);
        visit.put("readings", flow == null ? List.of() : List.of(delivered(install, flow)));
        return visit;
    }

    private static Map<String, Object> delivered(InstallId install, String flow) {
        return Map.of(
                "install",
                install.value(),
                "quantity",
                "DELIVERED_FLOW",
                "place",
                "TANK",
                "value",
                new BigDecimal(flow),
                "unit",
                "LITRE_PER_MINUTE",
                "asRead",
                true);
    }

    /** Its configurations, oldest first: days, baseline in l/min, setting. */
    private List<String> story(InstallId install) {
        return jdbc.sql("""
                        select coalesce(c.from_date::text, 'null') || ' until ' || coalesce(c.until_date::text, 'null') || ': '
                          || coalesce(round((b.delivered_flow_si * 60000)::numeric, 1)::text, 'none') || ', ' || coalesce(c.valve_setting, 'null')
                        from configurations c left join baselines b on b.configuration_id = c.id
                        where c.install_id = ? order by c.from_date nulls first""").param(install.value()).query(String.class).list();
    }

    private @Nullable LocalDate commissioned(InstallId install) {
        return jdbc.sql("select commissioned_on from installs where id = ?")
                .param(install.value())
                .query((row, n) -> row.getObject(1, LocalDate.class))
                .list()
                .get(0);
    }
}

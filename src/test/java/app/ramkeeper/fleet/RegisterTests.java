package app.ramkeeper.fleet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import app.ramkeeper.TestDatabase;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.web.Say;
import java.time.LocalDate;
import java.time.LocalTime;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.context.annotation.Import;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.dao.OptimisticLockingFailureException;
import org.springframework.security.test.context.support.WithMockUser;
import org.springframework.transaction.annotation.Transactional;

@SpringBootTest
@Import({TestDatabase.class, Customers.class, Sites.class, Installs.class})
@Transactional
@WithMockUser(roles = "OFFICE")
class RegisterTests {

    private static final LocalDate START = LocalDate.of(2021, 3, 4);

    @Autowired
    Customers customers;

    @Autowired
    Sites sites;

    @Autowired
    Installs installs;

    @Autowired
    Fleet fleet;

    @Autowired
    SiteRegister siteRegister;

    @Autowired
    InstallWorks works;

    @Autowired
    PumpRegister pumps;

    @Test
    void showsSiteWithAllThatHangsOnIt() {
        SiteId id = sites.ownedBy("Quill Downs Ltd", "Quill gully");
        siteRegister.addHazard(id, HazardKind.CONFINED_SPACE, "Pump chamber, 2 m deep");
        siteRegister.addWindow(id, new AccessWindow(1, LocalTime.of(8, 0), LocalTime.of(17, 0)));
        siteRegister.addClosedPeriod(
                id, new ClosedPeriod(LocalDate.of(2099, 9, 1), LocalDate.of(2099, 10, 15), "Lambing"));

        SiteCard card = fleet.site(id);

        assertThat(card.position()).isEqualTo(Sites.HILLS);
        assertThat(card.needsTwo()).isTrue();
        assertThat(card.windows()).containsExactly(new AccessWindow(1, LocalTime.of(8, 0), LocalTime.of(17, 0)));
        assertThat(card.closedOn(LocalDate.of(2099, 10, 15))).isNotNull();
        assertThat(card.parties()).extracting(PartyCard::name).containsExactly("Quill Downs Ltd");
    }

    @Test
    void showsInstallAsItStands() {
        InstallId id = installs.commissioned(START);

        InstallCard card = fleet.install(id);

        assertThat(card.state()).isEqualTo(RunningState.RUNNING);
        assertThat(card.stateSince()).isEqualTo(START);
        assertThat(card.pumps()).hasSize(1);
        assertThat(card.configuration()).isNotNull();
        assertThat(card.configuration().details().fallM()).isEqualTo(4.2);
        assertThat(card.configuration().baseline()).isEqualTo(Installs.baseline(START));
    }

    @Test
    void closesOldConfigurationAndItsBaseline() {
        InstallId id = installs.commissioned(START);
        LocalDate moved = START.plusYears(2);

        works.changeConfiguration(id, moved, "Pump moved 60 m down", ConfigurationDetails.of(7.0, 44.0), null);

        assertThat(fleet.configurationOn(id, moved.minusDays(1))
                        .orElseThrow()
                        .details()
                        .fallM())
                .isEqualTo(4.2);
        ConfigurationCard now = fleet.configurationOn(id, moved).orElseThrow();
        assertThat(now.details().fallM()).isEqualTo(7.0);
        assertThat(now.baseline()).isNull();
    }

    @Test
    void keepsHistoryWithThePumpThatIsSwapped() {
        InstallId id = installs.commissioned(START);
        PumpId old = fleet.install(id).pumps().get(0).id();
        PumpId loan = pumps.register(PumpDetails.of("RK-LOAN-1", null));

        pumps.fit(new FitPump(loan, id, 1, START.plusDays(400), true, PumpPlace.WORKSHOP, "Cracked body"));

        assertThat(fleet.install(id).pumps()).singleElement().matches(FittedPump::loan);
        assertThat(fleet.pump(old).place()).isEqualTo(PumpPlace.WORKSHOP);
        assertThat(fleet.pump(old).since()).isEqualTo(START.plusDays(400));
    }

    @Test
    void refusesStateChangeThatRewritesThePast() {
        InstallId id = installs.commissioned(START);
        works.changeState(id, RunningState.NO_WATER, START.plusDays(30), "Source dry");

        assertThatThrownBy(() -> works.changeState(id, RunningState.RUNNING, START.plusDays(10), null))
                .isInstanceOf(Conflict.class)
                .hasMessageContaining("began on " + Say.day(START.plusDays(30)) + ";");
    }

    @Test
    void commissionsBuiltInstallOnce() {
        InstallId id = installs.notYetCommissioned(sites.named("Bare flat"));
        assertThat(fleet.install(id).state()).isNull();

        works.commission(id, START, Installs.baseline(START));

        assertThat(fleet.install(id).state()).isEqualTo(RunningState.RUNNING);
        assertThatThrownBy(() -> works.commission(id, START, null)).isInstanceOf(Conflict.class);
    }

    @Test
    void syn10RefusesAnEditOfAnOlderVersion() {
        SiteId id = sites.named("Lost update");
        siteRegister.edit(id, 0, SiteDetails.named("First", null));

        assertThatThrownBy(() -> siteRegister.edit(id, 0, SiteDetails.named("Second", null)))
                .isInstanceOf(OptimisticLockingFailureException.class);
    }

    @Test
    void sec14RefusesLiftThatFallingWaterCannotPay() {
        ConfigurationDetails impossible =
                new ConfigurationDetails(2.0, 40.0, null, null, null, null, null, null, null, 50.0, 10.0, null);
        InstallId id = installs.commissioned(START);

        assertThatThrownBy(() -> works.changeConfiguration(id, START.plusDays(9), null, impossible, null))
                .isInstanceOf(DataIntegrityViolationException.class);
    }

    @Test
    void findsSiteBySlipOfTheKey() {
        SiteId id = sites.ownedBy("Harriet Tollemache", "Drumquhassle");

        assertThat(fleet.search("drumquasle", 5))
                .first()
                .extracting(SiteMatch::id)
                .isEqualTo(id);
        assertThat(fleet.search("Tolemash", 5))
                .first()
                .extracting(SiteMatch::id)
                .isEqualTo(id);
    }
}

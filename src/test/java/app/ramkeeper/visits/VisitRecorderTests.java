package app.ramkeeper.visits;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import app.ramkeeper.TestDatabase;
import app.ramkeeper.catalogue.Catalogue;
import app.ramkeeper.catalogue.TaskKindId;
import app.ramkeeper.fleet.ConfigurationCard;
import app.ramkeeper.fleet.Customers;
import app.ramkeeper.fleet.Fleet;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.Installs;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.Sites;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Unit;
import app.ramkeeper.web.Say;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.test.context.support.WithMockUser;
import org.springframework.test.context.event.ApplicationEvents;
import org.springframework.test.context.event.RecordApplicationEvents;
import org.springframework.transaction.annotation.Transactional;

@SpringBootTest
@Import({TestDatabase.class, Customers.class, Sites.class, Installs.class, FieldPeople.class})
@Transactional
@RecordApplicationEvents
@WithMockUser(roles = {"TECHNICIAN", "OFFICE"})
class VisitRecorderTests {

    private static final LocalDate START = LocalDate.of(2021, 3, 4);
    private static final LocalDate DAY = LocalDate.of(2026, 5, 6);

    @Autowired
    VisitRecorder recorder;

    @Autowired
    Visits visits;

    @Autowired
    VisitHistory history;

    @Autowired
    Catalogue catalogue;

    @Autowired
    Fleet fleet;

    @Autowired
    Sites sites;

    @Autowired
    Installs installs;

    @Autowired
    FieldPeople people;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    ApplicationEvents events;

    @Autowired
    Clock clock;

    SiteId site;
    InstallId install;
    PersonId tech;
    TaskKindId strainer;

    @BeforeEach
    void prepare() {
        site = sites.named("Tarn block");
        install = installs.commissioned(site, START);
        tech = people.named("Ada Fell");
        strainer = catalogue.taskKind("CLEAN_STRAINER").orElseThrow().id();
    }

    @Test
    void recordsReportAndTellsTheOthers() {
        RecordVisit report = Reports.service(site, tech, DAY)
                .done(install, strainer)
                .reading(install, Quantity.DELIVERED_FLOW, MeasuredAt.TANK, "4.2", Unit.LITRE_PER_MINUTE)
                .note("All as usual")
                .build();

        Recorded recorded = recorder.record(report, tech);

        assertThat(recorded).isEqualTo(new Recorded.Applied(report.id(), false));
        assertThat(visits.worksOf(install)).singleElement().satisfies(work -> {
            assertThat(work.kind()).isEqualTo(strainer);
            assertThat(work.on()).isEqualTo(DAY);
        });
        assertThat(history.readings(install))
                .singleElement()
                .extracting(ReadingPoint::si)
                .isEqualTo(Unit.LITRE_PER_MINUTE.toSi(4.2));
        assertThat(events.stream(VisitReported.class))
                .singleElement()
                .satisfies(event -> assertThat(event.works()).hasSize(1));
        assertThat(history.lastVisits(site, 3)).singleElement().satisfies(visit -> {
            assertThat(visit.who()).isEqualTo("Ada Fell");
            assertThat(visit.words())
                    .contains("Clean strainer")
                    .contains("4.20 l/min")
                    .contains("All as usual");
        });
    }

    @Test
    void saysWhichInstallTheWorkBelongsToWhereThereAreSeveralAndGoesAlongWhenTheSiteIsSplit() {
        InstallId lower = installs.ofUnknownAge(site);
        RecordVisit report = Reports.service(site, tech, DAY)
                .done(lower, strainer)
                .reading(lower, Quantity.DELIVERED_FLOW, MeasuredAt.TANK, "4.2", Unit.LITRE_PER_MINUTE)
                .finding(new RecordVisit.Finding(lower, Symptom.LEAK_PUMP, null, "new seal"))
                .build();
        recorder.record(report, tech);
        RecordVisit upper =
                Reports.service(site, tech, DAY).done(install, strainer).build();
        recorder.record(upper, tech);

        assertThat(history.lastVisits(site, 3))
                .filteredOn(visit -> visit.report().equals(report.id()))
                .singleElement()
                .extracting(VisitInWords::words)
                .isEqualTo(
                        "At Old ram. Done: Clean strainer. Found: Leak at the pump → new seal. Delivered 4.20 l/min.");
        RecordVisit both = Reports.service(site, tech, DAY.minusDays(1))
                .done(lower, strainer)
                .done(install, strainer)
                .build();
        recorder.record(both, tech);
        assertThat(history.lastVisits(site, 3))
                .filteredOn(visit -> visit.report().equals(both.id()))
                .singleElement()
                .extracting(VisitInWords::words)
                .isEqualTo("Done: Clean strainer (Old ram), Clean strainer (Top ram).");

        SiteId part = sites.split(site, "Lower tarn", LocalDate.now(clock), lower);

        assertThat(history.lastVisits(part, 3))
                .extracting(VisitInWords::report)
                .containsExactly(report.id(), both.id());
        assertThat(history.lastVisits(site, 3)).extracting(VisitInWords::report).containsExactly(upper.id(), both.id());
    }

    @Test
    void syn02SameReportAgainGivesTheFirstResult() {
        RecordVisit report =
                Reports.service(site, tech, DAY).done(install, strainer).build();
        recorder.record(report, tech);

        for (int i = 0; i < 4; i++) {
            assertThat(recorder.record(report, tech)).isEqualTo(new Recorded.Applied(report.id(), true));
        }

        assertThat(visits.worksOf(install)).hasSize(1);
        assertThat(events.stream(VisitReported.class)).hasSize(1);
    }

    @Test
    void syn03SameIdWithOneOtherWordIsRefused() {
        RecordVisit report =
                Reports.service(site, tech, DAY).note("Strainer clean").build();
        recorder.record(report, tech);
        RecordVisit other = Reports.service(site, tech, DAY)
                .id(report.id())
                .note("Strainer cleaned")
                .build();

        assertThatThrownBy(() -> recorder.record(other, tech))
                .isInstanceOf(ReportRefused.class)
                .hasMessageContaining("other content");
        assertThat(history.report(report.id()).orElseThrow().note()).isEqualTo("Strainer clean");
    }

    @Test
    void correctionSupersedesAndRestates() {
        RecordVisit report =
                Reports.service(site, tech, DAY).done(install, strainer).build();
        recorder.record(report, tech);
        RecordVisit correction = Reports.service(site, tech, DAY.minusDays(1))
                .corrects(report.id())
                .note("It was the day before, and the strainer was not due")
                .build();

        recorder.record(correction, tech);

        assertThat(visits.worksOf(install)).isEmpty();
        assertThat(history.ofSite(site, null).rows())
                .extracting(VisitInWords::report)
                .containsExactly(correction.id());
        assertThat(history.report(report.id()).orElseThrow().supersededBy()).isEqualTo(correction.id());
        assertThat(events.stream(ReportSuperseded.class))
                .singleElement()
                .satisfies(event -> assertThat(event.works()).hasSize(1));
    }

    @Test
    void syn11SecondCorrectionOfOneReportIsKeptForAPerson() {
        RecordVisit report = Reports.service(site, tech, DAY).note("first").build();
        recorder.record(report, tech);
        RecordVisit one = Reports.service(site, tech, DAY)
                .corrects(report.id())
                .note("by the office")
                .build();
        RecordVisit two = Reports.service(site, tech, DAY)
                .corrects(report.id())
                .note("by the technician")
                .build();

        recorder.record(one, tech);
        Recorded second = recorder.record(two, tech);

        assertThat(second).isEqualTo(new Recorded.Held(two.id(), HeldBecause.SUPERSEDED_ALREADY, false));
        assertThat(recorder.record(two, tech))
                .isEqualTo(new Recorded.Held(two.id(), HeldBecause.SUPERSEDED_ALREADY, true));
        assertThat(history.ofSite(site, null).rows())
                .extracting(VisitInWords::words)
                .singleElement()
                .asString()
                .contains("by the office");
        assertThat(jdbc.sql("select payload ->> 'note' from to_settle where report_id = :id")
                        .param("id", two.id().value())
                        .query(String.class)
                        .single())
                .isEqualTo("by the technician");
    }

    @Test
    void syn12ReportOnACancelledVisitIsKeptForReview() {
        VisitId visit = planned();
        visits.cancel(visit, "Owner away");
        RecordVisit report = Reports.service(site, tech, DAY)
                .visit(visit)
                .note("Was there all the same")
                .build();

        assertThat(recorder.record(report, tech))
                .isEqualTo(new Recorded.Held(report.id(), HeldBecause.VISIT_CANCELLED, false));
        assertThat(history.ofSite(site, null).isEmpty()).isTrue();
    }

    @Test
    void syn12ReportOnAVisitThatIsGoneIsKeptForReview() {
        RecordVisit report =
                Reports.service(site, tech, DAY).visit(VisitId.next()).build();

        assertThat(recorder.record(report, tech))
                .isEqualTo(new Recorded.Held(report.id(), HeldBecause.VISIT_UNKNOWN, false));
    }

    @Test
    void sec17SecondReportOfAVisitIsKeptForAPerson() {
        VisitId visit = planned();
        RecordVisit first = Reports.service(site, tech, DAY).visit(visit).build();
        recorder.record(first, tech);
        RecordVisit second =
                Reports.service(site, tech, DAY).visit(visit).note("and this").build();

        assertThat(recorder.record(second, tech))
                .isEqualTo(new Recorded.Held(second.id(), HeldBecause.SECOND_REPORT, false));
        assertThatThrownBy(() -> visits.cancel(visit, "Too late")).hasMessageContaining("over");
    }

    @Test
    void sec13RefusesADayInTheFutureAndTextThatIsTooLong() {
        RecordVisit future = Reports.service(site, tech, LocalDate.of(2999, 1, 1))
                .note("x".repeat(10_001))
                .build();

        assertThatThrownBy(() -> recorder.record(future, tech))
                .isInstanceOfSatisfying(
                        ReportRefused.class,
                        refused -> assertThat(refused.problems())
                                .extracting(ReportRefused.Problem::path)
                                .containsExactly("attendedOn", "note"));
        assertThat(history.ofSite(site, null).isEmpty()).isTrue();
    }

    @Test
    void sec14RefusesInstallOfAnotherSiteAndUnitOfAnotherQuantity() {
        InstallId elsewhere = installs.commissioned(START);
        RecordVisit report = Reports.service(site, tech, DAY)
                .done(elsewhere, strainer)
                .reading(install, Quantity.BEAT_RATE, MeasuredAt.PUMP, "60", Unit.BAR)
                .build();

        assertThatThrownBy(() -> recorder.record(report, tech))
                .isInstanceOfSatisfying(
                        ReportRefused.class,
                        refused -> assertThat(refused.problems())
                                .extracting(ReportRefused.Problem::sentence)
                                .anyMatch(s -> s.contains("another site"))
                                .anyMatch(s -> s.contains("cannot be measured in bar")));
    }

    @Test
    void sec14RefusesServiceBeforeCommissioningButTakesTheSurvey() {
        LocalDate before = START.minusDays(30);

        assertThatThrownBy(() -> recorder.record(
                        Reports.service(site, tech, before)
                                .done(install, strainer)
                                .build(),
                        tech))
                .hasMessageContaining("commissioned on " + Say.day(START) + ":");
        assertThat(recorder.record(
                        Reports.of(VisitKind.SURVEY, site, tech, before)
                                .reading(install, Quantity.SOURCE_FLOW, MeasuredAt.SOURCE, "80", Unit.LITRE_PER_MINUTE)
                                .build(),
                        tech))
                .isInstanceOf(Recorded.Applied.class);
    }

    @Test
    void commissioningVisitHandsOverWithItsReadingsAsBaseline() {
        InstallId built = installs.notYetCommissioned(site);
        RecordVisit report = Reports.of(VisitKind.COMMISSIONING, site, tech, DAY)
                .reading(built, Quantity.DRIVE_FLOW, MeasuredAt.PUMP, "55", Unit.LITRE_PER_MINUTE)
                .reading(built, Quantity.DELIVERED_FLOW, MeasuredAt.PUMP, "4.1", Unit.LITRE_PER_MINUTE)
                .reading(built, Quantity.DELIVERED_FLOW, MeasuredAt.TANK, "4.0", Unit.LITRE_PER_MINUTE)
                .build();

        recorder.record(report, tech);

        assertThat(fleet.install(built).commissionedOn()).isEqualTo(DAY);
        ConfigurationCard configuration = fleet.configurations(built).get(0);
        assertThat(configuration.baseline()).isNotNull();
        assertThat(configuration.baseline().deliveredFlowSi()).isEqualTo(Unit.LITRE_PER_MINUTE.toSi(4.0));
        assertThat(configuration.baseline().report()).isEqualTo(report.id().value());
    }

    @Test
    void correctedCommissioningMendsItsBaselineWhereItStands() {
        InstallId built = installs.notYetCommissioned(site);
        RecordVisit first = Reports.of(VisitKind.COMMISSIONING, site, tech, DAY)
                .commissioned(built, "3 turns")
                .reading(built, Quantity.DELIVERED_FLOW, MeasuredAt.TANK, "4.0", Unit.LITRE_PER_MINUTE)
                .build();
        recorder.record(first, tech);
        RecordVisit mended = Reports.of(VisitKind.COMMISSIONING, site, tech, DAY.plusDays(1))
                .corrects(first.id())
                .reading(built, Quantity.DELIVERED_FLOW, MeasuredAt.TANK, "4.4", Unit.LITRE_PER_MINUTE)
                .build();

        recorder.record(mended, tech);

        assertThat(fleet.configurations(built)).singleElement().satisfies(only -> {
            assertThat(only.details().valveSetting()).isEqualTo("3 turns");
            assertThat(only.baseline()).isNotNull();
            assertThat(only.baseline().deliveredFlowSi()).isEqualTo(Unit.LITRE_PER_MINUTE.toSi(4.4));
            assertThat(only.baseline().report()).isEqualTo(mended.id().value());
        });
        assertThat(history.report(mended.id()).orElseThrow().commissioned())
                .isEqualTo(new ReportView.Commissioned(built, "New ram", "3 turns"));
    }

    @Test
    void thirdVisitInVainAtALockedGateMakesTheOfficeRing() {
        for (int i = 0; i < 3; i++) {
            assertThat(history.now(site).planned()).noneMatch(PlannedVisit::officeMustRing);
            recorder.record(
                    Reports.service(site, tech, DAY.plusDays(i))
                            .inVain(Reason.LOCKED_GATE)
                            .build(),
                    tech);
        }

        VisitId next = planned();

        assertThat(history.now(site).planned()).singleElement().matches(PlannedVisit::officeMustRing);
        visits.answered(next, ContactBy.PHONE, Answer.CONFIRMED, "Gate will be open", tech);
        assertThat(history.now(site).planned()).singleElement().matches(v -> !v.officeMustRing() && v.attempts() == 1);
    }

    @Test
    void withdrawsAnImportedReport() {
        RecordVisit r = Reports.service(site, tech, DAY).done(install, strainer).build();
        recorder.record(r, tech);

        recorder.withdraw(r.id(), "Import undone", tech);

        assertThat(visits.worksOf(install)).isEmpty();
        assertThat(history.ofSite(site, null).isEmpty()).isTrue();
    }

    private VisitId planned() {
        return visits.plan(new PlanVisit(
                site, VisitKind.SERVICE, LocalDate.now(clock).plusDays(5), null, 60, List.of(tech), List.of(), null));
    }
}

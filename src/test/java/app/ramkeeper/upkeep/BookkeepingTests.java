package app.ramkeeper.upkeep;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.TestDatabase;
import app.ramkeeper.catalogue.Catalogue;
import app.ramkeeper.catalogue.TaskKindId;
import app.ramkeeper.fleet.ConfigurationDetails;
import app.ramkeeper.fleet.FitPump;
import app.ramkeeper.fleet.InstallDetails;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.InstallRegister;
import app.ramkeeper.fleet.InstallWorks;
import app.ramkeeper.fleet.Installs;
import app.ramkeeper.fleet.PumpDetails;
import app.ramkeeper.fleet.PumpId;
import app.ramkeeper.fleet.PumpPlace;
import app.ramkeeper.fleet.PumpRegister;
import app.ramkeeper.fleet.RegisterInstall;
import app.ramkeeper.fleet.RunningState;
import app.ramkeeper.fleet.SiteDetails;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.SiteRegister;
import app.ramkeeper.fleet.Sites;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.upkeep.rules.LastDone;
import app.ramkeeper.upkeep.rules.TaskState;
import app.ramkeeper.upkeep.rules.Waiting;
import app.ramkeeper.visits.DoneBy;
import app.ramkeeper.visits.FieldPeople;
import app.ramkeeper.visits.PlanVisit;
import app.ramkeeper.visits.Reason;
import app.ramkeeper.visits.RecordVisit;
import app.ramkeeper.visits.Reports;
import app.ramkeeper.visits.VisitId;
import app.ramkeeper.visits.VisitKind;
import app.ramkeeper.visits.VisitRecorder;
import app.ramkeeper.visits.Visits;
import app.ramkeeper.visits.WorkOutcome;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.context.annotation.Import;
import org.springframework.security.test.context.support.WithMockUser;
import org.springframework.transaction.annotation.Transactional;

/** What happens on the register and at visits moves due dates in the same transaction. */
@SpringBootTest
@Import({TestDatabase.class, Sites.class, Installs.class, FieldPeople.class})
@Transactional
@WithMockUser(roles = {"TECHNICIAN", "OFFICE"})
class BookkeepingTests {

    private static final LocalDate START = LocalDate.of(2021, 3, 4);

    @Autowired
    Upkeep upkeep;

    @Autowired
    VisitRecorder recorder;

    @Autowired
    Visits visits;

    @Autowired
    Clock clock;

    @Autowired
    InstallWorks works;

    @Autowired
    PumpRegister pumps;

    @Autowired
    SiteRegister register;

    @Autowired
    InstallRegister installRegister;

    @Autowired
    StatedDates stated;

    @Autowired
    Catalogue catalogue;

    @Autowired
    Sites sites;

    @Autowired
    Installs installs;

    @Autowired
    FieldPeople people;

    SiteId site;
    InstallId install;
    PersonId tech;

    @BeforeEach
    void prepare() {
        site = sites.named("Tarn block");
        install = installs.commissioned(site, START);
        tech = people.named("Ada Fell");
    }

    private TaskKindId kind(String code) {
        return catalogue.taskKind(code).orElseThrow().id();
    }

    private DueTask task(String code) {
        List<DueTask> tasks = upkeep.tasksFor(install).stream()
                .filter(task -> task.kindId().equals(kind(code).value()))
                .toList();
        assertThat(tasks).hasSize(1);
        return tasks.get(0);
    }

    @Test
    void commissioningMakesTheTasks() {
        assertThat(upkeep.tasksFor(install))
                .extracting(DueTask::kindName)
                .contains("Clean strainer", "Change delivery valve rubber", "Make ready for frost")
                .doesNotContain("Look after a flood", "Sample water");
        assertThat(task("CLEAN_STRAINER").dueOn()).isEqualTo(START.plusMonths(3));
        assertThat(task("CHANGE_DELIVERY_RUBBER").pumpId()).isNotNull();
    }

    @Test
    void unknownCommissioningLeavesTheDateUnknown() {
        install = installs.ofUnknownAge(site);

        assertThat(task("CLEAN_STRAINER").state()).isEqualTo(TaskState.UNKNOWN);
        assertThat(task("BEFORE_FROST").dueOn())
                .as("a season comes round all the same")
                .isNotNull();
    }

    @Test
    void tasksOfAPlannedInstallStartAtItsCommissioning() {
        install = installs.notYetCommissioned(site);

        assertThat(upkeep.tasksFor(install))
                .extracting(DueTask::kindName)
                .contains("Clean strainer", "Change delivery valve rubber", "Make ready for frost");
        assertThat(upkeep.tasksFor(install))
                .allMatch(task -> task.state() == TaskState.PLANNED && task.dueOn() == null && !task.presses());

        works.commission(install, START, null);

        assertThat(task("CLEAN_STRAINER").dueOn()).isEqualTo(START.plusMonths(3));
        assertThat(upkeep.tasksFor(install)).noneMatch(task -> task.state() == TaskState.PLANNED);
    }

    @Test
    void doneMovesTheDateAndALateReportDoesNotMoveItBack() {
        recorder.record(
                Reports.service(site, tech, LocalDate.of(2026, 5, 6))
                        .done(install, kind("CLEAN_STRAINER"))
                        .build(),
                tech);
        recorder.record(
                Reports.service(site, tech, LocalDate.of(2026, 2, 1))
                        .done(install, kind("CLEAN_STRAINER"))
                        .build(),
                tech);

        assertThat(task("CLEAN_STRAINER").dueOn()).isEqualTo("2026-08-06");
        assertThat(task("CLEAN_STRAINER").lastDoneAs()).isEqualTo(LastDone.KNOWN);
    }

    @Test
    void correctionIsWorkedOutFromAllReports() {
        RecordVisit wrong = Reports.service(site, tech, LocalDate.of(2026, 5, 6))
                .done(install, kind("CLEAN_STRAINER"))
                .build();
        recorder.record(
                Reports.service(site, tech, LocalDate.of(2026, 2, 1))
                        .done(install, kind("CLEAN_STRAINER"))
                        .build(),
                tech);
        recorder.record(wrong, tech);

        recorder.record(
                Reports.service(site, tech, LocalDate.of(2026, 5, 6))
                        .corrects(wrong.id())
                        .build(),
                tech);

        assertThat(task("CLEAN_STRAINER").lastDoneOn()).isEqualTo("2026-02-01");
    }

    @Test
    void overhaulResetsRubbersAndSeals() {
        recorder.record(
                Reports.service(site, tech, LocalDate.of(2026, 5, 6))
                        .done(install, kind("OVERHAUL"))
                        .build(),
                tech);

        assertThat(task("CHANGE_DELIVERY_RUBBER").lastDoneOn()).isEqualTo("2026-05-06");
        assertThat(task("INSPECT_SEALS").lastDoneOn()).isEqualTo("2026-05-06");
        assertThat(task("CLEAN_STRAINER").lastDoneOn()).isNull();
    }

    @Test
    void couldNotLeavesItDueWithTheReason() {
        recorder.record(
                Reports.service(site, tech, LocalDate.of(2026, 5, 6))
                        .work(new RecordVisit.Work(
                                install,
                                null,
                                kind("CLEAN_STRAINER"),
                                null,
                                WorkOutcome.COULD_NOT,
                                Reason.LOCKED_GATE,
                                null,
                                DoneBy.US,
                                false,
                                "chain on the gate"))
                        .build(),
                tech);

        assertThat(task("CLEAN_STRAINER").dueOn()).isEqualTo(START.plusMonths(3));
        assertThat(task("CLEAN_STRAINER").waiting()).isEqualTo(Waiting.CANNOT_REACH);
        assertThat(task("CLEAN_STRAINER").waitingNote()).isEqualTo("chain on the gate");
    }

    @Test
    void aVisitInVainLeavesAllItWasToDoWaitingForTheSameReason() {
        LocalDate today = LocalDate.now(clock);
        UUID rubber = task("CHANGE_WASTE_RUBBER").id();
        UUID strainer = task("CLEAN_STRAINER").id();
        VisitId visit = visits.plan(new PlanVisit(
                site,
                VisitKind.SERVICE,
                today,
                null,
                60,
                List.of(tech),
                List.of(
                        new PlanVisit.Task(rubber, install, kind("CHANGE_WASTE_RUBBER")),
                        new PlanVisit.Task(strainer, install, kind("CLEAN_STRAINER"))),
                null));

        recorder.record(
                Reports.service(site, tech, today)
                        .visit(visit)
                        .inVain(Reason.LOCKED_GATE)
                        .work(new RecordVisit.Work(
                                install,
                                null,
                                kind("CHANGE_WASTE_RUBBER"),
                                rubber,
                                WorkOutcome.COULD_NOT,
                                Reason.PARTS,
                                null,
                                DoneBy.US,
                                false,
                                null))
                        .build(),
                tech);

        assertThat(task("CHANGE_WASTE_RUBBER").waiting())
                .as("what the report says of a task holds")
                .isEqualTo(Waiting.PARTS);
        assertThat(task("CLEAN_STRAINER").waiting()).isEqualTo(Waiting.CANNOT_REACH);
        assertThat(task("CHANGE_DELIVERY_RUBBER").waiting())
                .as("nobody asked for it")
                .isEqualTo(Waiting.OURS);
    }

    @Test
    void dormantInstallSleeps() {
        works.changeState(install, RunningState.DORMANT, LocalDate.of(2026, 5, 1), "drained");

        assertThat(task("CLEAN_STRAINER").state()).isEqualTo(TaskState.ASLEEP);
    }

    @Test
    void retiredInstallHasNoTasks() {
        PumpId pump = new PumpId(Objects.requireNonNull(task("OVERHAUL").pumpId()));
        pumps.move(pump, PumpPlace.STORE, LocalDate.of(2026, 5, 1), null);
        assertThat(upkeep.tasksFor(install)).extracting(DueTask::kindName).doesNotContain("Overhaul pump");

        works.retire(install, LocalDate.of(2026, 5, 1), "gone");

        assertThat(upkeep.tasksFor(install)).isEmpty();
    }

    @Test
    void drunkWaterIsSampledFromThenOn() {
        var before = register.read(site);
        SiteDetails was = before.details();
        register.edit(site, before.version(), water(was, was.waterClass(), true));

        assertThat(upkeep.tasksFor(install)).extracting(DueTask::kindName).contains("Sample water");
    }

    @Test
    void silterWaterBringsTheStrainerForward() {
        LocalDate due = task("CLEAN_STRAINER").dueOn();
        var before = register.read(site);
        register.edit(site, before.version(), water(before.details(), "SILTY", false));

        assertThat(task("CLEAN_STRAINER").dueOn()).isBefore(due);
    }

    private static SiteDetails water(SiteDetails was, @Nullable String water, boolean drunk) {
        return new SiteDetails(
                was.reference(),
                was.name(),
                was.locality(),
                was.catchment(),
                was.depot(),
                was.position(),
                was.altitudeM(),
                was.wayIn(),
                was.gate(),
                was.walkMinutes(),
                was.sourceKind(),
                water,
                drunk,
                was.privateNotes());
    }

    @Test
    void anotherPumpStartsAfresh() {
        recorder.record(
                Reports.service(site, tech, LocalDate.of(2026, 5, 6))
                        .done(install, kind("OVERHAUL"))
                        .build(),
                tech);
        PumpId spare = pumps.register(PumpDetails.of(null, null));

        pumps.fit(new FitPump(spare, install, 1, LocalDate.of(2026, 6, 7), false, PumpPlace.WORKSHOP, "worn"));

        assertThat(task("OVERHAUL").pumpId()).isEqualTo(spare.value());
        assertThat(task("OVERHAUL").lastDoneOn()).isNull();
        assertThat(task("OVERHAUL").dueOn()).isAfter(LocalDate.of(2026, 6, 7));
    }

    @Test
    void whatNobodySaidOfAnImportedInstallIsUnknownAndNotLateSinceItsCommissioning() {
        LocalDate taken = LocalDate.of(2026, 5, 1);
        install = takenOver(LocalDate.of(2016, 4, 20), taken);
        stated.state(List.of(new StatedDates.Stated(install, "CLEAN_STRAINER", LocalDate.of(2026, 4, 2))));

        assertThat(task("CLEAN_STRAINER").dueOn()).isEqualTo("2026-07-02");
        assertThat(task("CHANGE_DELIVERY_RUBBER").state()).isEqualTo(TaskState.UNKNOWN);
        assertThat(task("FLUSH_DRIVE_PIPE").dueOn()).isNull();
        assertThat(task("BEFORE_FROST").dueOn()).isAfterOrEqualTo(taken);
    }

    @Test
    void anImportedInstallStillInItsFirstIntervalCountsFromItsCommissioning() {
        install = takenOver(LocalDate.of(2025, 9, 1), LocalDate.of(2026, 5, 1));

        assertThat(task("CHANGE_DELIVERY_RUBBER").dueOn()).isEqualTo("2027-09-01");
        assertThat(task("CLEAN_STRAINER").state()).isEqualTo(TaskState.UNKNOWN);
    }

    @Test
    void aStatedDayGoesWithItsPumpAndStaysBehindWithNoOther() {
        StatedDates.Stated mine = new StatedDates.Stated(install, "CHECK_PRECHARGE", LocalDate.of(2026, 4, 4));
        InstallId other = takenOver(LocalDate.of(2016, 4, 20), LocalDate.of(2026, 5, 1));
        LocalDate said = LocalDate.of(2026, 1, 2);
        stated.state(List.of(mine, new StatedDates.Stated(other, "CHECK_PRECHARGE", said)));
        PumpId theirs = new PumpId(Objects.requireNonNull(upkeep.tasksFor(other).stream()
                .filter(task -> task.kindId().equals(kind("CHECK_PRECHARGE").value()))
                .findFirst()
                .orElseThrow()
                .pumpId()));

        pumps.fit(new FitPump(theirs, install, 1, LocalDate.of(2026, 6, 7), false, PumpPlace.WORKSHOP, null));

        assertThat(task("CHECK_PRECHARGE").pumpId()).isEqualTo(theirs.value());
        assertThat(task("CHECK_PRECHARGE").lastDoneOn()).isEqualTo(said);
        assertThat(task("CHANGE_DELIVERY_RUBBER").state()).isEqualTo(TaskState.UNKNOWN);

        PumpId spare = pumps.register(PumpDetails.of(null, null));
        pumps.fit(new FitPump(spare, install, 1, LocalDate.of(2026, 6, 8), false, PumpPlace.WORKSHOP, null));
        assertThat(task("CHECK_PRECHARGE").lastDoneOn()).isNull();
    }

    private InstallId takenOver(LocalDate commissioned, LocalDate on) {
        InstallId id = InstallId.next();
        installRegister.takeOver(
                Map.of(
                        id,
                        new RegisterInstall(
                                site,
                                InstallDetails.commissioned("Lower ram " + id, commissioned),
                                ConfigurationDetails.of(3.0, 30.0),
                                null,
                                List.of(PumpDetails.of(null, null)))),
                on);
        return id;
    }
}

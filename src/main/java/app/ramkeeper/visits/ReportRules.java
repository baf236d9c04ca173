package app.ramkeeper.visits;

import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.visits.ReportRefused.Problem;
import app.ramkeeper.web.Say;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** The rules every report must keep, whoever sends it; each broken one is named beside its part. */
class ReportRules {

    static final int NOTE = 10_000;
    static final int LINE = 2_000;
    private static final LocalDate EARLIEST = LocalDate.of(1900, 1, 1);

    private final RecordVisit command;
    private final ReportFacts.Known known;
    private final LocalDate today;
    private final List<Problem> problems = new ArrayList<>();

    private ReportRules(RecordVisit command, ReportFacts.Known known, LocalDate today) {
        this.command = command;
        this.known = known;
        this.today = today;
    }

    /** The rules that the report breaks, none if it may be recorded. */
    static List<Problem> broken(RecordVisit command, ReportFacts.Known known, LocalDate today) {
        ReportRules rules = new ReportRules(command, known, today);
        rules.checkHead();
        rules.checkCommissioned();
        rules.checkTimes();
        rules.checkWorks();
        rules.checkReadings();
        rules.checkRest();
        rules.checkWater();
        return rules.problems;
    }

    private void checkHead() {
        if (!known.site()) {
            problems.add(new Problem("site", "This site is not in the register.", true));
        }
        say(!command.people().isEmpty(), "people", "Say who was there.");
        for (int i = 0; i < command.people().size(); i++) {
            exists(command.people().get(i).value(), "people[" + i + "]", "This person is not in the register.");
        }
        say(new HashSet<>(command.people()).size() == command.people().size(), "people", "A person is named twice.");
        say(
                !command.attendedOn().isAfter(today),
                "attendedOn",
                "The day of the visit lies in the future. Give the day you were there.");
        say(!command.attendedOn().isBefore(EARLIEST), "attendedOn", "The day of the visit lies before 1900.");
        say(command.outcome() != ReportOutcome.WITHDRAWN, "outcome", "Say how the visit went.");
        say(
                command.outcome() != ReportOutcome.COULD_NOT || command.reason() != null,
                "reason",
                "Say why the visit could not be done.");
        length(command.note(), NOTE, "note");
        length(command.customerName(), 200, "customerName");
        say(
                !command.nobodyThere() || command.customerName() == null,
                "customerName",
                "Either nobody was there or give the name, not both.");
    }

    private void checkCommissioned() {
        RecordVisit.Commissioned commissioned = command.commissioned();
        if (commissioned != null) {
            install(commissioned.install(), "install");
            String setting = commissioned.setting();
            say(
                    setting == null || setting.length() <= 200,
                    "leftSetting",
                    "The valve setting is longer than 200 characters: say it shorter.");
        }
    }

    private void checkTimes() {
        order(command.startedAt(), command.arrivedAt(), "arrivedAt", "You arrived before you set out.");
        order(command.arrivedAt(), command.leftAt(), "leftAt", "You left before you arrived.");
        order(command.startedAt(), command.leftAt(), "leftAt", "You left before you set out.");
    }

    private void checkWorks() {
        size(command.works().size(), 200, "works", "tasks");
        Set<List<@Nullable Object>> seen = new HashSet<>();
        for (int i = 0; i < command.works().size(); i++) {
            RecordVisit.Work work = command.works().get(i);
            String path = "works[" + i + "]";
            install(work.install(), path + ".outcome");
            exists(work.kind().value(), path + ".kind", "This kind of task is not in the catalogue.");
            exists(
                    work.pump() == null ? null : work.pump().value(),
                    path + ".pump",
                    "This pump is not in the register.");
            say(
                    seen.add(java.util.Arrays.asList(work.install(), work.pump(), work.kind())),
                    path + ".outcome",
                    "This task is answered twice.");
            say(
                    work.lookAgainOn() == null || work.lookAgainOn().isAfter(command.attendedOn()),
                    path + ".lookAgainOn",
                    "The day to look again must lie after the visit.");
            length(work.note(), LINE, path + ".note");
        }
    }

    private void checkReadings() {
        size(command.readings().size(), 200, "readings", "readings");
        for (int i = 0; i < command.readings().size(); i++) {
            RecordVisit.Reading reading = command.readings().get(i);
            String path = "readings[" + i + "]";
            install(reading.install(), path + ".value");
            exists(
                    reading.pump() == null ? null : reading.pump().value(),
                    path + ".pump",
                    "This pump is not in the register.");
            exists(reading.instrument(), path + ".instrument", "This instrument is not in the register.");
            length(reading.notComparable(), 500, path + ".notComparable");
            Limits.problem(reading).ifPresent(sentence -> problems.add(new Problem(path + ".value", sentence)));
        }
    }

    private void checkRest() {
        size(command.findings().size(), 100, "findings", "findings");
        size(command.parts().size(), 200, "parts", "parts");
        size(command.photos().size(), 40, "photos", "photos");
        size(command.followUps().size(), 50, "followUps", "things left to do");
        for (int i = 0; i < command.findings().size(); i++) {
            RecordVisit.Finding finding = command.findings().get(i);
            install(finding.install(), "findings[" + i + "].symptom");
            length(finding.cause(), LINE, "findings[" + i + "].cause");
            length(finding.action(), LINE, "findings[" + i + "].action");
        }
        for (int i = 0; i < command.parts().size(); i++) {
            checkPart(command.parts().get(i), "parts[" + i + "]");
        }
        for (int i = 0; i < command.photos().size(); i++) {
            RecordVisit.Photo photo = command.photos().get(i);
            say(known.photos().contains(photo.sha256()), "photos", "A photo did not arrive. Please choose it again.");
            length(photo.caption(), 300, "photos[" + i + "].caption");
        }
        for (int i = 0; i < command.followUps().size(); i++) {
            RecordVisit.FollowUp left = command.followUps().get(i);
            say(!left.text().isBlank(), "followUps[" + i + "].text", "Say what is left to do.");
            length(left.text(), LINE, "followUps[" + i + "].text");
        }
    }

    private void checkWater() {
        WaterCare water = command.water();
        if (water == null) {
            return;
        }
        size(water.samples().size(), 10, "water", "water samples");
        for (WaterCare.Sample sample : water.samples()) {
            WaterRules.broken(sample)
                    .forEach((field, sentence) -> problems.add(new Problem("water." + field, sentence)));
        }
        if (water.hygiene() != null) {
            WaterRules.broken(water.hygiene())
                    .forEach((field, sentence) -> problems.add(new Problem("water." + field, sentence)));
        }
    }

    private void checkPart(RecordVisit.PartUsed part, String path) {
        install(part.install(), path + ".part");
        exists(part.part() == null ? null : part.part().value(), path + ".part", "This part is not in the catalogue.");
        exists(part.pump() == null ? null : part.pump().value(), path + ".pump", "This pump is not in the register.");
        say(part.part() != null || part.text() != null, path + ".part", "Choose the part or say what it was.");
        say(
                part.quantity().signum() > 0 && part.quantity().compareTo(BigDecimal.valueOf(10_000)) <= 0,
                path + ".quantity",
                "Give a quantity above 0 and up to 10 000.");
        length(part.text(), 200, path + ".text");
        length(part.batch(), 60, path + ".batch");
    }

    /** An install must be of this site, or have been when the report that is corrected was written, and, for most kinds of visit, at work on that day. */
    private void install(@Nullable InstallId id, String path) {
        if (id == null) {
            return;
        }
        ReportFacts.Install install = known.installs().get(id.value());
        if (install == null) {
            problems.add(new Problem(path, "This install is not in the register.", true));
        } else if (!install.site().equals(command.site().value())
                && !known.before().contains(id)) {
            problems.add(new Problem(path, install.name() + " stands at another site.", true));
        } else if (!command.kind().mayPrecedeCommissioning()) {
            commissioned(install);
        }
    }

    private void commissioned(ReportFacts.Install install) {
        LocalDate on = install.commissionedOn();
        if (on == null && install.commissioningKnown()) {
            once(
                    "kind",
                    install.name() + " is not commissioned yet: record a survey, installation or commissioning visit.");
        } else if (on != null && command.attendedOn().isBefore(on)) {
            once(
                    "attendedOn",
                    install.name() + " was commissioned on " + Say.day(on)
                            + ": before that day only survey, installation and commissioning visits are possible.");
        }
    }

    private void once(String path, String sentence) {
        Problem problem = new Problem(path, sentence, true);
        if (!problems.contains(problem)) {
            problems.add(problem);
        }
    }

    private void exists(@Nullable UUID id, String path, String sentence) {
        if (id != null && !known.things().contains(id)) {
            problems.add(new Problem(path, sentence, true));
        }
    }

    private void order(@Nullable Instant first, @Nullable Instant second, String path, String sentence) {
        say(first == null || second == null || !second.isBefore(first), path, sentence);
    }

    private void length(@Nullable String text, int most, String path) {
        say(
                text == null || text.length() <= most,
                path,
                "This text is too long: at most %,d characters.".formatted(most));
    }

    private void size(int size, int most, String path, String what) {
        say(size <= most, path, "At most %d %s fit into one report.".formatted(most, what));
    }

    private void say(boolean kept, String path, String sentence) {
        if (!kept) {
            problems.add(new Problem(path, sentence));
        }
    }
}

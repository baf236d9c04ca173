package app.ramkeeper.quotes.design;

import app.ramkeeper.quotes.survey.Survey;
import app.ramkeeper.sizing.line.LinePoint;
import app.ramkeeper.sizing.line.LineResult;
import app.ramkeeper.sizing.line.StretchResult;
import app.ramkeeper.sizing.pipe.PipeType;
import app.ramkeeper.sizing.quantity.Check;
import app.ramkeeper.sizing.quantity.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Turns a worked design into the record that quotes and papers are made from. */
final class Choosing {

    private Choosing() {}

    static ChosenDesign of(DesignId id, Survey survey, Worked worked, Map<String, String> reasons) {
        double pumpLevel = survey.ground().pumpLevelM();
        PipeType drive = worked.drivePipe();
        ChosenDesign.Vessel vessel = worked.vessel();
        return new ChosenDesign(
                id,
                survey.id(),
                survey.enquiry(),
                worked.selection().pumpModelId(),
                worked.pumpName(),
                worked.selection().pumps(),
                new ChosenDesign.PipeLine(
                        worked.selection().drivePipeId(),
                        drive.standard(),
                        0,
                        survey.driveLengthM(),
                        survey.driveLengthM(),
                        drive.bore().millimetres(),
                        drive.rating().bar()),
                delivery(survey, worked),
                vessel == null ? new ChosenDesign.Vessel(0, 0, 0) : vessel,
                new ChosenDesign.PerDay(worked.p10(), worked.p50(), worked.p90()),
                survey.demand().litresPerDay(),
                survey.fall().value(),
                survey.lift().value(),
                worked.duty().pumps().stream()
                        .mapToDouble(p -> p.drive().litresPerMinute())
                        .sum(),
                worked.duty().delivered().litresPerMinute(),
                rules(worked, reasons),
                profile(worked.line(), pumpLevel),
                assumptions(survey, worked),
                survey.openPoints());
    }

    static List<ChosenDesign.PipeLine> delivery(Survey survey, Worked worked) {
        List<ChosenDesign.PipeLine> lines = new ArrayList<>();
        List<StretchResult> stretches = worked.line().stretches();
        for (int i = 0; i < stretches.size(); i++) {
            StretchResult one = stretches.get(i);
            PipeType type = one.stretch().type();
            lines.add(new ChosenDesign.PipeLine(
                    worked.selection().delivery().get(i).pipeId(),
                    type.standard(),
                    one.fromM(),
                    one.stretch().toM(),
                    Slope.length(survey.ground(), one.fromM(), one.stretch().toM()),
                    type.bore().millimetres(),
                    type.rating().bar()));
        }
        return lines;
    }

    private static List<ChosenDesign.RuleLine> rules(Worked worked, Map<String, String> reasons) {
        return worked.checks().stream()
                .map(check -> new ChosenDesign.RuleLine(
                        check.rule(),
                        check.verdict().name(),
                        check.sentence(),
                        check.verdict() == Verdict.FAILS ? reasons.get(key(check)) : null))
                .toList();
    }

    /** Names a rule in forms: the same rule may stand for several stretches, each with its own sentence. */
    static String key(Check check) {
        return check.rule() + "|" + check.sentence();
    }

    static List<ChosenDesign.ProfilePoint> profile(LineResult line, double pumpLevel) {
        List<ChosenDesign.ProfilePoint> points = new ArrayList<>();
        for (LinePoint point : line.points()) {
            double rating = line.stretches().stream()
                    .filter(stretch -> point.chainageM() <= stretch.stretch().toM() + 1e-6)
                    .findFirst()
                    .orElse(line.stretches().get(line.stretches().size() - 1))
                    .stretch()
                    .type()
                    .rating()
                    .bar();
            points.add(new ChosenDesign.ProfilePoint(
                    point.chainageM(),
                    point.levelM() - pumpLevel,
                    point.levelM() + point.staticHeadM() - pumpLevel,
                    point.gradeM() - pumpLevel,
                    rating));
        }
        return points;
    }

    private static List<String> assumptions(Survey survey, Worked worked) {
        List<String> all = new ArrayList<>(survey.assumptions());
        all.add(
                "The source gave %.0f l/min on the day (%s); in the dry month %.0f l/min may be taken, %.0f l/min stay in the stream."
                        .formatted(
                                survey.measured().flow().litresPerMinute(),
                                survey.measured().method(),
                                survey.usable().flow().litresPerMinute(),
                                survey.dry().mustStay().litresPerMinute()));
        all.add("The pump stands still about one day in ten, for leaves, service and floods.");
        all.addAll(worked.notes());
        return all.stream().distinct().toList();
    }
}

package app.ramkeeper.quotes.design;

import app.ramkeeper.sizing.design.Battery;
import app.ramkeeper.sizing.design.BatteryDuty;
import app.ramkeeper.sizing.design.DeliveryForecast;
import app.ramkeeper.sizing.line.LineResult;
import app.ramkeeper.sizing.pipe.PipeType;
import app.ramkeeper.sizing.quantity.Check;
import app.ramkeeper.sizing.quantity.Verdict;
import app.ramkeeper.sizing.ram.CycleSetup;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A design with all that follows from it.
 *
 * @param duty in the dry month, at what may be taken then
 * @param line the delivery line under that duty
 * @param forecast litres a day, in a dry month
 * @param vessel the least that does; null where the rule asks for an engineer
 * @param setup the beat, for how it answers the valve setting
 * @param checks every rule with its verdict
 * @param cost of pumps with their kits, and pipes, for ranking
 */
public record Worked(
        Selection selection,
        String pumpName,
        PipeType drivePipe,
        Battery battery,
        BatteryDuty duty,
        LineResult line,
        DeliveryForecast forecast,
        ChosenDesign.@Nullable Vessel vessel,
        CycleSetup setup,
        List<Check> checks,
        double cost,
        List<String> notes) {

    /** Keeps its own copies. */
    public Worked {
        checks = List.copyOf(checks);
        notes = List.copyOf(notes);
    }

    public double p10() {
        return forecast.p10().litresPerDay();
    }

    public double p50() {
        return forecast.p50().litresPerDay();
    }

    public double p90() {
        return forecast.p90().litresPerDay();
    }

    /** Delivered at the design point, l/day. */
    public double deliveredLDay() {
        return duty.delivered().litresPerDay();
    }

    /** The rules that do not hold. */
    public List<Check> broken() {
        return checks.stream().filter(check -> check.verdict() == Verdict.FAILS).toList();
    }

    /** The rules that only just hold. */
    public List<Check> close() {
        return checks.stream().filter(check -> check.verdict() == Verdict.CLOSE).toList();
    }

    /** The delivery pipes in a line of words, from the pump on. */
    public String delivery() {
        return String.join(
                ", then ",
                line.stretches().stream()
                        .map(stretch -> "%s to %.0f m"
                                .formatted(
                                        stretch.stretch().type().standard(),
                                        stretch.stretch().toM()))
                        .toList());
    }
}

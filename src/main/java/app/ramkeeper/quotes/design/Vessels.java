package app.ramkeeper.quotes.design;

import app.ramkeeper.quotes.price.PricedThing;
import app.ramkeeper.sizing.quantity.Check;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.quantity.Verdict;
import app.ramkeeper.sizing.quantity.Volume;
import app.ramkeeper.sizing.ram.Cycle;
import app.ramkeeper.sizing.vessel.PreCharge;
import app.ramkeeper.sizing.vessel.PreChargeRule;
import app.ramkeeper.sizing.vessel.VesselKind;
import app.ramkeeper.sizing.vessel.VesselVolume;
import app.ramkeeper.sizing.water.Ambient;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/** The pressure vessel of a design: pre-charge by rule, volume from the water of a beat. */
final class Vessels {

    /** Swing of the delivery pressure, of the running pressure, that is let pass; common practice, no source. */
    private static final double SWING = 0.1;

    /** Where the beat cannot be reckoned: common practice, no source. */
    private static final double USUAL_BEATS_PER_MINUTE = 60;

    /** The vessel, if the rules give one, what it breaks, and what to know of it. */
    record Advice(Optional<ChosenDesign.Vessel> vessel, Optional<Check> broken, List<String> notes) {}

    private Vessels() {}

    static Advice advise(
            String vesselKind,
            Head lift,
            Head running,
            double deliveredEachM3s,
            Cycle cycle,
            Pressure most,
            List<PricedThing> onSale,
            Ambient ambient) {
        VesselKind kind = vesselKind.equals("BLADDER") ? VesselKind.BLADDER : VesselKind.PLAIN_CHAMBER;
        Pressure runs = ambient.pressureOf(running);
        Pressure bears = most.compareTo(runs) > 0 ? most : runs;
        PreCharge charge = PreCharge.advise(
                lift, kind, Pressure.ofBar(Math.max(bears.bar(), 1)), Optional.empty(), PreChargeRule.usual(), ambient);
        List<String> notes =
                charge.notes().stream().map(note -> note.sentence()).toList();
        if (charge.charge().isEmpty() && kind == VesselKind.BLADDER) {
            return new Advice(Optional.empty(), Optional.of(broken("no rule covers this lift")), notes);
        }
        Pressure gas = charge.charge().orElse(Pressure.NONE);
        double perBeat = cycle.delivers() && cycle.beatsPerMinute() > 0
                ? deliveredEachM3s * 60 / cycle.beatsPerMinute()
                : deliveredEachM3s * 60 / USUAL_BEATS_PER_MINUTE;
        double swing = Math.min(SWING * runs.pascals(), 1.9 * runs.minus(gas).pascals());
        double litres;
        try {
            litres = VesselVolume.needed(
                                    new Volume(Math.max(perBeat, 1e-6)),
                                    gas,
                                    runs,
                                    new Pressure(swing),
                                    ambient.airPressure(),
                                    VesselVolume.ADIABATIC)
                            .cubicMetres()
                    * 1000;
        } catch (ImpossibleInput noSwing) {
            return new Advice(
                    Optional.empty(), Optional.of(broken("the charge leaves the pressure no room to swing")), notes);
        }
        return enough(litres, gas, bears, onSale)
                .map(vessel -> new Advice(Optional.of(vessel), Optional.empty(), notes))
                .orElseGet(() -> new Advice(
                        Optional.of(new ChosenDesign.Vessel(litres, gas.bar(), bears.bar())),
                        onSale.isEmpty()
                                ? Optional.empty()
                                : Optional.of(broken("none of the catalogue holds %.0f l and bears %.1f bar"
                                        .formatted(Math.ceil(litres), bears.bar()))),
                        notes));
    }

    /** The smallest on sale that does. */
    private static Optional<ChosenDesign.Vessel> enough(
            double litres, Pressure gas, Pressure bears, List<PricedThing> onSale) {
        return onSale.stream()
                .filter(thing -> value(thing.litres()) >= litres && value(thing.ratingBar()) >= bears.bar())
                .findFirst()
                .map(thing -> new ChosenDesign.Vessel(value(thing.litres()), gas.bar(), value(thing.ratingBar())));
    }

    private static Check broken(String why) {
        return new Check(
                "Pressure vessel",
                Verdict.FAILS,
                0,
                0,
                "",
                "Pressure vessel: " + why + ". Ask the engineer for vessel and pre-charge.");
    }

    private static double value(@org.jspecify.annotations.Nullable BigDecimal value) {
        return value == null ? 0 : value.doubleValue();
    }
}

package app.ramkeeper.sizing.vessel;

import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Numbers;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.quantity.Require;
import app.ramkeeper.sizing.quantity.Temperature;
import app.ramkeeper.sizing.water.Ambient;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Advice on the pre-charge of a pressure vessel.
 *
 * @param charge gauge pressure to set at the site, the vessel empty of water and not under pressure; empty if none is
 *     right or none can be advised
 * @param basis the rule it comes from, in words
 * @param notes what the technician must know
 */
public record PreCharge(Optional<Pressure> charge, String basis, List<Note> notes) {

    /** Keeps its own copy of the notes. */
    public PreCharge {
        notes = List.copyOf(notes);
    }

    /**
     * The charge for a lift.
     *
     * <p>In the usual range the static delivery pressure less the rule's amount; elsewhere the maker's figure, else the
     * rule's share of static; refused with an {@link Note.Code#ASK_ENGINEER} note outside the rule's limits or where the
     * static pressure is above the rating, or where the charge comes out at nothing or above static (the vessel would take
     * no water). A plain chamber has none. Common practice, no source. Worked
     * value: 4.40 bar for 50 m at 10 degC (about 5 bar less a half).
     *
     * @param lift to the highest water level of the delivery line above the pump
     * @param kind of vessel
     * @param rating greatest gauge pressure of the vessel, more than 0
     * @param maker the maker's figure for outside the usual range, if known; more than 0
     * @param rule the office's rule
     */
    public static PreCharge advise(
            Head lift, VesselKind kind, Pressure rating, Optional<Pressure> maker, PreChargeRule rule, Ambient at) {
        Require.positive("lift", lift.metres(), "m");
        Require.positive("vessel rating", rating.pascals(), "Pa");
        maker.ifPresent(figure -> Require.positive("maker's charge", figure.pascals(), "Pa"));
        if (kind == VesselKind.PLAIN_CHAMBER) {
            return none();
        }
        if (lift.compareTo(rule.refuseBelow()) < 0 || lift.compareTo(rule.refuseAbove()) > 0) {
            return refused(Numbers.sentence(
                    "The lift of %s m is outside the %s to %s m this rule covers",
                    Numbers.text(lift.metres()),
                    Numbers.text(rule.refuseBelow().metres()),
                    Numbers.text(rule.refuseAbove().metres())));
        }
        Pressure still = at.pressureOf(lift);
        if (still.compareTo(rating) > 0) {
            return refused(
                    Numbers.sentence("The vessel would see %.2f bar and is rated %.2f bar", still.bar(), rating.bar()));
        }
        PreCharge found = choose(lift, still, maker, rule);
        double charge = found.charge.orElse(Pressure.NONE).bar();
        if (charge <= 0 || charge > still.bar()) {
            return refused(Numbers.sentence(
                    "By %s the charge would be %.2f bar; it has to lie between nothing and the static delivery pressure of %.2f bar",
                    found.basis, charge, still.bar()));
        }
        return found;
    }

    private static PreCharge choose(Head lift, Pressure still, Optional<Pressure> maker, PreChargeRule rule) {
        List<Note> notes = new ArrayList<>();
        notes.add(
                new Note(
                        Note.Code.CAUTION,
                        "Charge with the vessel empty of water and off pressure, before it is fitted; compressed gas can kill."));
        boolean usual = lift.compareTo(rule.usualFrom()) >= 0 && lift.compareTo(rule.usualTo()) <= 0;
        if (!usual && maker.isPresent()) {
            return new PreCharge(maker, "the maker's figure", notes);
        }
        notes.add(
                0,
                new Note(
                        Note.Code.COMMON_PRACTICE,
                        "The air charge of the vessel follows common practice; no standard gives it."));
        if (usual) {
            Pressure charge = still.minus(rule.below());
            String basis = Numbers.sentence(
                    "static delivery pressure less %.2f bar", rule.below().bar());
            return new PreCharge(Optional.of(charge), basis, notes);
        }
        String basis = Numbers.sentence("%.2f of the static delivery pressure", rule.shareElsewhere());
        return new PreCharge(Optional.of(still.times(rule.shareElsewhere())), basis, notes);
    }

    private static PreCharge none() {
        return new PreCharge(
                Optional.empty(),
                "a plain air chamber has no pre-charge",
                List.of(new Note(
                        Note.Code.CAUTION,
                        "Nothing to charge: see that the snifter is clear and the chamber is not waterlogged.")));
    }

    private static PreCharge refused(String why) {
        return new PreCharge(
                Optional.empty(), "no rule", List.of(new Note(Note.Code.ASK_ENGINEER, why + ": ask the engineer.")));
    }

    /**
     * What a charge reads at another temperature of the gas: absolute pressure goes with absolute temperature.
     *
     * <p>For a vessel without water in it, whose gas fills the same volume (Gay-Lussac; ideal gas, good to 1 % up to 20
     * bar). Worked value: 4.50 bar at 30 degC reads 4.05 bar at 5 degC at sea level.
     *
     * @param reading gauge pressure as read
     * @param readAt gas temperature at the reading
     * @param wanted gas temperature wanted
     * @param air absolute air pressure where both are read
     */
    public static Pressure atTemperature(Pressure reading, Temperature readAt, Temperature wanted, Pressure air) {
        Pressure absolute = absolute("reading", reading, air);
        return absolute.times(wanted.kelvin() / readAt.kelvin()).minus(air);
    }

    /**
     * What to set elsewhere, such as at a depot, so that the gauge shows the wanted charge at the site.
     *
     * <p>The gas keeps its absolute pressure, the air outside changes: set = wanted + site air - depot air. A gauge reading
     * taken at the site needs no correction of any kind. Worked value: 4.44 bar at sea level for 4.50 bar at 500 m.
     *
     * @param wanted gauge pressure wanted at the site
     * @param siteAir absolute air pressure at the site
     * @param depotAir absolute air pressure where the charge is set
     */
    public static Pressure toSetElsewhere(Pressure wanted, Pressure siteAir, Pressure depotAir) {
        Require.positive("depot air pressure", depotAir.pascals(), "Pa");
        return absolute("wanted charge", wanted, siteAir).minus(depotAir);
    }

    static Pressure absolute(String name, Pressure gauge, Pressure air) {
        Require.positive("air pressure", air.pascals(), "Pa");
        Require.positive("absolute " + name, gauge.plus(air).pascals(), "Pa");
        return gauge.plus(air);
    }
}

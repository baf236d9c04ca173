package app.ramkeeper.sizing.surge;

import app.ramkeeper.sizing.quantity.Check;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Numbers;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.quantity.Require;
import app.ramkeeper.sizing.quantity.Verdict;
import app.ramkeeper.sizing.water.Ambient;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What happens when the pump beats on against a shut delivery: a float valve, frost, a closed valve.
 *
 * @param pressure the gauge pressure it climbs towards at the pump
 * @param checks each part against it, weakest first
 * @param notes advice where a part does not bear it
 */
public record DeadHead(Pressure pressure, List<Check> checks, List<Note> notes) {

    /** A part that would feel the pressure. */
    public record Part(String name, Pressure rating) {

        /** Refuses a rating of nothing and a blank name. */
        public Part {
            Require.positive("pressure rating", rating.pascals(), "Pa");
            if (name.isBlank()) {
                throw new ImpossibleInput("part name", "blank", "a name");
            }
        }
    }

    /** Keeps its own copies. */
    public DeadHead {
        checks = List.copyOf(checks);
        notes = List.copyOf(notes);
    }

    /**
     * The gauge pressure a pump can climb to: the fall's static pressure plus the full surge of its closing velocity.
     *
     * <p>An upper bound: each beat adds a little until the surge no longer opens the delivery valve; leaks and give of the
     * valves stop it earlier. Take the pump maker's own figure where there is one. Source: Joukowsky 1900 applied to the
     * ram's own closing; that pumps come near it is common practice, no source. Worked value: 13.2 bar for 2 m of fall,
     * 1 m/s, 1300 m/s, 10 degC.
     *
     * @param fall source level above the waste valve, more than 0
     * @param closingVelocity velocity in the drive pipe when the waste valve shuts, m/s, 0 or more
     * @param waveSpeed of the drive pipe, m/s
     */
    public static Pressure pressure(Head fall, double closingVelocity, double waveSpeed, Ambient ambient) {
        Require.positive("fall", fall.metres(), "m");
        return ambient.pressureOf(fall).plus(Surge.joukowsky(ambient.water().density(), waveSpeed, closingVelocity));
    }

    /**
     * Holds the parts against a dead-head pressure.
     *
     * <p>Worked value: 13.2 bar against a pump of 16, a vessel of 10 and a pipe of 16 bar fails for the vessel only.
     *
     * @param pressure that the pump climbs towards, see {@link #pressure}
     * @param parts pump, vessel, pipe classes and the weakest fitting, at least one
     */
    public static DeadHead check(Pressure pressure, List<Part> parts) {
        if (parts.isEmpty()) {
            throw new ImpossibleInput("parts", "none", "at least one part with its rating");
        }
        List<Check> checks = new ArrayList<>();
        parts.stream()
                .sorted(Comparator.comparing(Part::rating))
                .forEach(part -> checks.add(Check.atMost(
                        "Shut delivery against " + part.name(),
                        pressure.bar(),
                        part.rating().bar(),
                        "bar")));
        boolean fails = checks.stream().anyMatch(check -> check.verdict() == Verdict.FAILS);
        return new DeadHead(pressure, checks, fails ? List.of(overflow(checks.get(0))) : List.of());
    }

    private static Note overflow(Check weakest) {
        return new Note(
                Note.Code.CAUTION,
                Numbers.sentence(
                        "With the delivery shut the pressure may climb to %.1f bar and the weakest part is rated %.1f bar: let the tank overflow, or fit a relief valve set below that rating, instead of a float valve; never stop the pump by its delivery valve.",
                        weakest.number(), weakest.limit()));
    }
}

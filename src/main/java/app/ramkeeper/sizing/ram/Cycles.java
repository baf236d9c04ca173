package app.ramkeeper.sizing.ram;

import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Volume;
import java.util.ArrayList;
import java.util.List;

/** Makes a {@link Cycle} of what was integrated. */
final class Cycles {

    private static final Note NOT_MEASURED = new Note(
            Note.Code.ASSUMED,
            "The beat is computed; no complete measured data set with beat rate was found to check it against.");

    /** Rams are known to beat well between these (see {@code drive.LengthRule}); beyond them the beat is a guess. */
    private static final double LEAST_BORES = 150;

    private static final double MOST_BORES = 1000;

    private Cycles() {}

    static Cycle of(
            CycleSetup setup,
            double[] y,
            double openSeconds,
            double deliverySeconds,
            double closing,
            double recoil,
            double peak,
            List<Note> notes) {
        double period = openSeconds + deliverySeconds;
        double delivered = Math.max(0, y[Column.OUT]);
        double drive = Math.max(y[Column.IN], delivered);
        double fall = setup.fall().metres();
        double lift = setup.lift().metres();
        double weight = setup.ambient().specificWeight();
        boolean lifts = delivered > 0;
        List<Note> all = new ArrayList<>(notes);
        if (!lifts) {
            all.add(new Note(
                    Note.Code.OUTSIDE_RANGE,
                    "The blow of the closing valve is too weak for the lift: the pump beats and delivers nothing."));
        }
        return new Cycle(
                lifts ? Cycle.Outcome.DELIVERS : Cycle.Outcome.TOO_HIGH,
                openSeconds,
                deliverySeconds,
                new Volume(Math.max(0, y[Column.WASTE])),
                new Volume(delivered),
                closing,
                recoil,
                new Head(peak),
                deadHead(setup, closing),
                new Energy(
                        weight * fall * y[Column.IN],
                        weight * lift * delivered,
                        y[Column.PIPE],
                        y[Column.WASTE_VALVE],
                        y[Column.DELIVERY_VALVE]),
                new Flow(drive / period),
                new Flow(delivered / period),
                Efficiency.dAubuisson(drive, delivered, fall, lift),
                Efficiency.rankine(drive, delivered, fall, lift),
                all);
    }

    /** Water runs through a waste valve that never shuts. */
    static Cycle staysOpen(CycleSetup setup, double velocity, Head head, List<Note> notes) {
        List<Note> all = new ArrayList<>(notes);
        all.add(new Note(
                Note.Code.OUTSIDE_RANGE,
                "The water never gets fast enough to shut the waste valve: it runs to waste without a beat."));
        return new Cycle(
                Cycle.Outcome.STAYS_OPEN,
                0,
                0,
                new Volume(0),
                new Volume(0),
                velocity,
                0,
                head,
                deadHead(setup, 0),
                new Energy(0, 0, 0, 0, 0),
                new Flow(setup.area() * velocity),
                Flow.NONE,
                0,
                0,
                all);
    }

    private static Head deadHead(CycleSetup setup, double velocity) {
        double blow = setup.waveSpeed() * velocity / setup.ambient().gravity();
        return new Head(setup.fall().metres() + blow);
    }

    static List<Note> notes(CycleSetup setup) {
        List<Note> notes = new ArrayList<>(setup.ambient().notes());
        notes.add(NOT_MEASURED);
        double bores = setup.drive().length().metres() / setup.drive().bore().metres();
        if (bores < LEAST_BORES || bores > MOST_BORES) {
            notes.add(Note.outside(
                    "the rule for drive pipes",
                    "the drive pipe's length in bores",
                    bores,
                    LEAST_BORES,
                    MOST_BORES,
                    ""));
        }
        return notes;
    }
}

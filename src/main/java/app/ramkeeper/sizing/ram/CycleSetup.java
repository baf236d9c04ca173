package app.ramkeeper.sizing.ram;

import app.ramkeeper.sizing.pipe.PipeRun;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Require;
import app.ramkeeper.sizing.water.Ambient;

/**
 * A ram pump and its drive pipe, as far as the beat needs to know them.
 *
 * @param fall water level at the intake above the waste valve, more than 0
 * @param lift head at the pump's delivery side with its line's friction, above the waste valve; more than the fall
 * @param drive the drive pipe; its fittings include the entrance
 * @param friction whether the drive pipe's wall takes head
 * @param waveSpeed speed of a pressure wave in the drive pipe, 100 to 1500 m/s
 * @param waste the waste valve at its setting
 * @param deliveryValveLoss loss coefficient of the delivery valve, in velocity heads of the drive pipe, 0 or more
 * @param ambient water, gravity and air
 */
public record CycleSetup(
        Head fall,
        Head lift,
        PipeRun drive,
        ColumnFriction friction,
        double waveSpeed,
        WasteValve waste,
        double deliveryValveLoss,
        Ambient ambient) {

    /** Refuses what cannot beat: no fall, a lift not above the fall, a drive pipe without length. */
    public CycleSetup {
        RamChecks.fallAndLift(fall, lift);
        Require.positive("drive pipe length", drive.length().metres(), "m");
        Require.within("wave speed", waveSpeed, 100, 1500, "m/s");
        Require.notNegative("loss coefficient of the delivery valve", deliveryValveLoss, "");
        if (waste instanceof WasteValve.Weighted valve
                && valve.seat().metres() > 4 * drive.bore().metres()) {
            throw new ImpossibleInput("bore of the seat", valve.seat().metres(), "at most 4 bores of the drive pipe");
        }
    }

    /** The same at another valve setting (see {@link WasteValve#setting}). */
    public CycleSetup withSetting(double setting) {
        return with(fall, lift, waste.withSetting(setting));
    }

    /** The same under another fall. */
    public CycleSetup withFall(Head other) {
        return with(other, lift, waste);
    }

    /** The same against another lift. */
    public CycleSetup withLift(Head other) {
        return with(fall, other, waste);
    }

    private CycleSetup with(Head newFall, Head newLift, WasteValve valve) {
        return new CycleSetup(newFall, newLift, drive, friction, waveSpeed, valve, deliveryValveLoss, ambient);
    }

    /** Inside area of the drive pipe, m2. */
    double area() {
        double bore = drive.bore().metres();
        return Math.PI / 4 * bore * bore;
    }
}

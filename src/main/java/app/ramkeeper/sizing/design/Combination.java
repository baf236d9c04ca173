package app.ramkeeper.sizing.design;

import app.ramkeeper.sizing.ram.PumpModel;

/**
 * A pump model, how many, and their drive pipe, before a delivery line is chosen.
 *
 * @param model of pump
 * @param pumpIndex place in the catalogue
 * @param number side by side
 * @param driveIndex place of the drive pipe in the catalogue
 * @param driveM3s drive flow of each
 * @param netFallM fall less what the drive pipe takes, and no more than the model's range
 * @param cost of pumps and drive pipes
 */
record Combination(
        PumpModel model, int pumpIndex, int number, int driveIndex, double driveM3s, double netFallM, double cost) {

    double deliveredM3s(double headM) {
        return number * model.performance().deliveredM3s(netFallM, headM, driveM3s);
    }

    /** Greatest head at which it still delivers a flow, m; negative if it does not even at the standing lift. */
    double headFor(double flowM3s, double standingM) {
        if (deliveredM3s(standingM) < flowM3s) {
            return -1;
        }
        double most = model.mostLift().metres();
        if (deliveredM3s(most) >= flowM3s) {
            return most;
        }
        double low = standingM;
        double high = most;
        for (int i = 0; i < 40 && high - low > 1e-4; i++) {
            double middle = (low + high) / 2;
            if (deliveredM3s(middle) >= flowM3s) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }
}

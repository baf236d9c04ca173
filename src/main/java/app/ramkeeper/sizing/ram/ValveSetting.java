package app.ramkeeper.sizing.ram;

/**
 * How a pump does at one setting of its waste valve, and whether the source bears it.
 *
 * @param setting as {@link WasteValve#setting}
 * @param cycle the settled beat with the intake drowned
 * @param drowned whether the source gives at least what the pump takes, so that the intake stays drowned
 */
public record ValveSetting(double setting, Cycle cycle, boolean drowned) {

    /** Whether the pump can go on delivering like that in the dry season. */
    public boolean sustained() {
        return drowned && cycle.delivers();
    }
}

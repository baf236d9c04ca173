package app.ramkeeper.sizing.ram;

/**
 * A moment of the beat.
 *
 * @param seconds since the waste valve began to open
 * @param velocity in the drive pipe, m/s, negative in the recoil
 * @param head at the pump above the waste valve, m
 * @param openShare of the waste valve: 1 fully open, 0 shut
 */
public record CyclePoint(double seconds, double velocity, double head, double openShare) {}

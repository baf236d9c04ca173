package app.ramkeeper.fleet;

import java.time.LocalDate;

/** A pump was taken out of an install. */
public record PumpRemoved(InstallId install, PumpId pump, LocalDate on) {}

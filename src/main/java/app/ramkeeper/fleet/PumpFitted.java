package app.ramkeeper.fleet;

import java.time.LocalDate;

/** A pump was fitted in an install. */
public record PumpFitted(InstallId install, PumpId pump, LocalDate on) {}

package app.ramkeeper.fleet;

import java.time.LocalDate;

/** An install was handed over and runs. */
public record InstallCommissioned(InstallId install, LocalDate on) {}

package app.ramkeeper.fleet;

import java.time.LocalDate;

/** An install that stood on the register was handed over and runs. */
public record InstallCommissioned(InstallId install, LocalDate on) {}

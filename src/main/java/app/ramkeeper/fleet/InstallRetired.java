package app.ramkeeper.fleet;

import java.time.LocalDate;

/** An install is at work no more. */
public record InstallRetired(InstallId install, LocalDate on) {}

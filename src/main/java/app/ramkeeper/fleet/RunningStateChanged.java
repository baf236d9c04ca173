package app.ramkeeper.fleet;

import java.time.LocalDate;

/** An install runs, stands or sleeps from a day on. */
public record RunningStateChanged(InstallId install, RunningState state, LocalDate from) {}

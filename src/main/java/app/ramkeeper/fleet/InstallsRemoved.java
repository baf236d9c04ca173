package app.ramkeeper.fleet;

import java.util.List;

/** Installs that nothing referred to were taken off the register again. */
public record InstallsRemoved(List<InstallId> installs) {}

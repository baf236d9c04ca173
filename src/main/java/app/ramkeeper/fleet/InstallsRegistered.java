package app.ramkeeper.fleet;

import java.util.List;

/** Installs came onto the register, those already handed over included; their pumps are fitted already. */
public record InstallsRegistered(List<InstallId> installs) {}

package app.ramkeeper.fleet;

/** An install that nothing referred to was taken off the register again. */
public record InstallRemoved(InstallId install) {}

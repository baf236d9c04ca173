package app.ramkeeper.fleet;

/** An install came onto the register; its pumps are fitted already. */
public record InstallRegistered(InstallId install) {}

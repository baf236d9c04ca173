package app.ramkeeper.fleet;

/** An install belongs to another site of the register from now on, since its site was split or merged. */
public record InstallMoved(InstallId install, SiteId from, SiteId to) {}

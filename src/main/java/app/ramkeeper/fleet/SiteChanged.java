package app.ramkeeper.fleet;

/** Another class of water runs at a site, or it is drunk from now on, or no longer. */
public record SiteChanged(SiteId site) {}

package app.ramkeeper.fleet;

/** A duplicate site became a signpost; what refers to it should refer to the kept one. */
public record SitesMerged(SiteId duplicate, SiteId kept) {}

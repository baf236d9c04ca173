package app.ramkeeper.fleet;

import java.util.List;

/** Puts a site on the register with the people round it. */
public record RegisterSite(SiteDetails site, List<NewParty> parties) {}

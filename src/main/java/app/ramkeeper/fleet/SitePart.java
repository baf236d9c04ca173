package app.ramkeeper.fleet;

/** The part somebody plays at a site. */
public enum SitePart {
    OWNER,
    OCCUPIER,
    PAYER,
    KEY_HOLDER,
    LANDOWNER_CROSSED
}

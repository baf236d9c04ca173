package app.ramkeeper.fleet;

/** What lies at a point of a line as it was laid. */
public enum PointKind {
    POINT,
    JOINT,
    AIR,
    DRAIN,
    BRANCH,
    CROSSING,
    OUTLET
}

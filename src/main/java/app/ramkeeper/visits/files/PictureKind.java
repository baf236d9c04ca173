package app.ramkeeper.visits.files;

/** What a picture of a site shows. */
public enum PictureKind {
    GATE,
    DRAWING,
    PLACE
}

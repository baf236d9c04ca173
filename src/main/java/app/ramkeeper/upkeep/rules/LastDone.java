package app.ramkeeper.upkeep.rules;

/** How well the day is known on which a task was last done. */
public enum LastDone {
    KNOWN,
    /** "About May", as an owner says it. */
    ABOUT,
    /** It may well have been done; nobody knows when. */
    UNKNOWN,
    /** Not since the install was commissioned, or the pump fitted. */
    NEVER
}

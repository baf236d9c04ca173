package app.ramkeeper.visits;

/** What people hear or see at a pump that is not right; the same words on the phone and at the pump. */
public enum Symptom {
    STOPPED_OPEN,
    STOPPED_SHUT,
    BEATS_NO_WATER,
    LESS_WATER,
    UNEVEN_BEAT,
    FAST_BEAT,
    SLOW_BEAT,
    LOUD_KNOCK,
    LEAK_PUMP,
    LEAK_PIPE,
    SOURCE_DRY,
    INTAKE_BLOCKED,
    DIRTY_WATER,
    FROZEN,
    FLOOD_DAMAGE,
    MISSING_PART,
    TANK_OVERFLOWS,
    OTHER
}

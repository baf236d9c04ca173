package app.ramkeeper.quotes.job;

/** The first names of phases and billing lines; the office may change a phase's. */
final class PhaseWords {

    private PhaseWords() {}

    static String usual(PhaseKind kind) {
        return switch (kind) {
            case DIG -> "Dig intake, trench and plinth";
            case LAY -> "Lay drive and delivery pipe";
            case PLINTH -> "Cast plinth and thrust blocks";
            case CURE -> "Let the concrete cure";
            case FIT -> "Fit pump, vessel and valves";
            case COMMISSION -> "Commission and hand over";
            case OTHER -> "Work";
        };
    }

    static String billing(String kind) {
        return switch (kind) {
            case "DEPOSIT" -> "Deposit";
            case "STAGE" -> "Stage payment";
            default -> "Final payment";
        };
    }
}

package app.ramkeeper.rounds.travel;

/** The way from one place to another by road. */
public record Leg(double minutes, double metres) {

    public Leg {
        if (!(minutes >= 0) || !(metres >= 0)) {
            throw new IllegalArgumentException(
                    "A leg takes no less than nothing: " + minutes + " min, " + metres + " m");
        }
    }
}

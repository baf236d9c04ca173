package app.ramkeeper.rounds.solver;

/** Hears of the best plan so far while the optimiser works. */
@FunctionalInterface
public interface Progress {

    /** Called a few times a second from the optimiser's own thread; {@code share} runs from 0 to 1. */
    void best(Plan plan, double share, long iterations);

    /** Nobody listens. */
    static Progress none() {
        return (plan, share, iterations) -> {};
    }
}

/**
 * The optimiser of rounds: plain Java, no framework, one thread.
 *
 * <p>Method: ruin and recreate by removing strings of neighbouring stops and putting them back greedily with blinks,
 * accepted by simulated annealing (J. Christiaens, G. Vanden Berghe, "Slack induction by string removals for vehicle
 * routing problems", Transportation Science 54(2), 2020). Time windows and the longest day are checked in constant time
 * by concatenating segments (T. Vidal et al., "A hybrid genetic algorithm with adaptive diversity management for a large
 * class of vehicle routing problems with time-windows", Computers and Operations Research 40(1), 2013, section 4.1).
 */
@org.jspecify.annotations.NullMarked
package app.ramkeeper.rounds.solver;

/** The optimiser at work on a week: from plan to problem and back, in the background. */
@org.jspecify.annotations.NullMarked
package app.ramkeeper.rounds.run;

/** A week's plan: what could go in, who works when, the rounds and what each change does to them. */
@org.jspecify.annotations.NullMarked
package app.ramkeeper.rounds.week;

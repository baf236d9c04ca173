/** How long it takes from place to place: an estimate of our own, or what a table service answers. */
@org.jspecify.annotations.NullMarked
package app.ramkeeper.rounds.travel;

/** What follows an accepted quote: hand-over, phases, variations, lines for the books. */
@org.jspecify.annotations.NullMarked
package app.ramkeeper.quotes.job;

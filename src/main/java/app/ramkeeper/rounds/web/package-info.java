/** Pages of the week. */
@org.jspecify.annotations.NullMarked
package app.ramkeeper.rounds.web;

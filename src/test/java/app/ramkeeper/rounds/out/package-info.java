@org.jspecify.annotations.NullMarked
package app.ramkeeper.rounds.out;

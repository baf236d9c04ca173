/** Drives the application's own optimiser over academic files, which are read from outside the project and never shipped. */
@org.jspecify.annotations.NullMarked
package app.ramkeeper.bench.rounds;

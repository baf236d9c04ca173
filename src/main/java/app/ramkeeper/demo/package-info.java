/** The invented scenario of the trial run: a seeded simulation of nine years of an invented contractor. Not in the packaged jar. */
@org.jspecify.annotations.NullMarked
package app.ramkeeper.demo;

/** The trial run's own database server. Not in the packaged jar. */
@org.jspecify.annotations.NullMarked
package app.ramkeeper.trial;

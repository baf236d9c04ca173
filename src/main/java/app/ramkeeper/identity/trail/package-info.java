/** The trail of changes as the administrator reads it. */
@org.jspecify.annotations.NullMarked
package app.ramkeeper.identity.trail;

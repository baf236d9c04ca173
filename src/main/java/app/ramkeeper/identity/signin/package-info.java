/** Sign-in, sessions and the chain of checks that every request passes. */
@org.jspecify.annotations.NullMarked
package app.ramkeeper.identity.signin;

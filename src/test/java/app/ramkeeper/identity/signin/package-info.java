@org.jspecify.annotations.NullMarked
package app.ramkeeper.identity.signin;

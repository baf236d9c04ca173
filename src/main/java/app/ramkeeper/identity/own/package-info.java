/** What people do with their own account: password, second factor, passkeys, sessions. */
@org.jspecify.annotations.NullMarked
package app.ramkeeper.identity.own;

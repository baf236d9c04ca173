/** The company's people, depots and accounts, and the administrator's pages about them. */
@org.jspecify.annotations.NullMarked
package app.ramkeeper.identity.people;

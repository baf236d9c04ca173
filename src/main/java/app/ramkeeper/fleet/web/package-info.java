/** The pages of the register. */
@org.jspecify.annotations.NullMarked
package app.ramkeeper.fleet.web;

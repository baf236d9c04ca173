@org.jspecify.annotations.NullMarked
package app.ramkeeper.identity.own;

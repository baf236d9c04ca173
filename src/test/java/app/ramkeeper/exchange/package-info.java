@org.jspecify.annotations.NullMarked
package app.ramkeeper.exchange;

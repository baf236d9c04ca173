/** Quotes: built from a chosen design, sent, answered, handed over. */
@org.jspecify.annotations.NullMarked
package app.ramkeeper.quotes.offer;

/** What things cost from when to when, and how quotes are reckoned. */
@org.jspecify.annotations.NullMarked
package app.ramkeeper.quotes.price;

/** From a survey to the design that the office chose, with what it promises. */
@org.jspecify.annotations.NullMarked
package app.ramkeeper.quotes.design;

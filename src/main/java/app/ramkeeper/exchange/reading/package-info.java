/** How a table file is read: its kind, characters, separator, dates, numbers and positions. Plain Java, no database. */
@org.jspecify.annotations.NullMarked
package app.ramkeeper.exchange.reading;

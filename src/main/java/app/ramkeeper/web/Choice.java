package app.ramkeeper.web;

/** One line of a drop-down: the value that is posted and the words that are shown. */
public record Choice(String value, String label) {}

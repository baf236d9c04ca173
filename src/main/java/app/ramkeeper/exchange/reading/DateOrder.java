package app.ramkeeper.exchange.reading;

/** What comes first in a date of three numbers such as 03/04/2026. */
public enum DateOrder {
    DAY_FIRST,
    MONTH_FIRST
}

package app.ramkeeper.quotes.offer;

import org.springframework.jdbc.core.simple.JdbcClient;

/** Numbers without gaps: the counter's row stays locked until the transaction ends, and falls back with it. */
public final class NumberSeries {

    private NumberSeries() {}

    /** Takes the next number of a series; the first is 1. */
    public static int next(JdbcClient jdbc, String series) {
        return jdbc.sql("insert into number_series as n (name, last) values (?, 1)"
                        + " on conflict (name) do update set last = n.last + 1 returning last")
                .param(series)
                .query(Integer.class)
                .single();
    }
}

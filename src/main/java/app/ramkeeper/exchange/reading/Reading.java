package app.ramkeeper.exchange.reading;

import org.jspecify.annotations.Nullable;

/** What the person has said about the file; null means "recognise it". */
public record Reading(@Nullable String charset, @Nullable Character separator) {

    public static final Reading RECOGNISE = new Reading(null, null);
}

package app.ramkeeper.catalogue;

import java.util.List;

/** A kind of task as lists and forms of other features show it. */
public record TaskKindCard(
        TaskKindId id,
        String code,
        String name,
        Scope scope,
        Schedule schedule,
        int minutes,
        int crew,
        boolean watched,
        List<String> skills) {}

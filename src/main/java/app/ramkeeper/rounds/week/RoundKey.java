package app.ramkeeper.rounds.week;

import java.time.LocalDate;
import java.util.UUID;

/** Names a round: whose, on which day. */
public record RoundKey(UUID person, LocalDate day) {}

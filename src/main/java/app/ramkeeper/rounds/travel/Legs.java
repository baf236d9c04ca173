package app.ramkeeper.rounds.travel;

import app.ramkeeper.fleet.Position;

/** Says how long the way is. The way back may take another time. */
@FunctionalInterface
public interface Legs {
    Leg between(Position from, Position to);
}

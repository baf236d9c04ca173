package app.ramkeeper.visits;

import app.ramkeeper.identity.PersonId;

/**
 * The office put down what came of a try to reach the customer of a planned visit, in the same transaction.
 *
 * @param failed how many tries in a row, this one included, reached nobody
 * @param by who put it down
 */
public record VisitAnswered(VisitId visit, Answer answer, int failed, PersonId by) {}

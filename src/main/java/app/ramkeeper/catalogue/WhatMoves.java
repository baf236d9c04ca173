package app.ramkeeper.catalogue;

/** Says what a change of a kind's terms would do to due dates, before it is saved. The keeper of the tasks answers. */
public interface WhatMoves {

    /** Compares every task's date as it stands with the one under these terms; changes nothing. */
    Moves preview(TaskTerms changed);
}

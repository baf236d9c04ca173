package app.ramkeeper.rounds.solver;

import java.util.Arrays;

/** Remembers the rounds that a step changes, so that a rejected step costs no more than it touched. */
final class Undo {

    private final State state;
    private final int[][] saved;
    private final int[] savedSize;
    private final int[] touched;
    private final boolean[] isTouched;
    private int count;

    Undo(State state) {
        this.state = state;
        int rounds = state.stops.length;
        saved = new int[rounds][0];
        savedSize = new int[rounds];
        touched = new int[rounds];
        isTouched = new boolean[rounds];
    }

    void begin() {
        for (int i = 0; i < count; i++) {
            isTouched[touched[i]] = false;
        }
        count = 0;
    }

    /** To be called before a round is changed. */
    void touch(int round) {
        if (isTouched[round]) {
            return;
        }
        isTouched[round] = true;
        touched[count++] = round;
        int size = state.size[round];
        if (saved[round].length < size) {
            saved[round] = Arrays.copyOf(state.stops[round], size + 8);
        } else {
            System.arraycopy(state.stops[round], 0, saved[round], 0, size);
        }
        savedSize[round] = size;
    }

    void refreshTouched() {
        for (int i = 0; i < count; i++) {
            state.refresh(touched[i]);
        }
    }

    void rollBack() {
        for (int i = 0; i < count; i++) {
            state.clear(touched[i]);
        }
        for (int i = 0; i < count; i++) {
            state.set(touched[i], saved[touched[i]], savedSize[touched[i]]);
        }
    }
}

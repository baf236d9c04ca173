package app.ramkeeper.exchange;

/** How many rows one transaction brings in: a batch or, through a batch that was refused, one row at a time. */
final class Pace {

    private final int batch;
    private int single;

    Pace(int batch) {
        this.batch = batch;
    }

    int rows() {
        return single > 0 ? 1 : batch;
    }

    void done() {
        single = Math.max(0, single - 1);
    }

    /** Notes a refusal; true if it was of a single row, so that the bad one is known. */
    boolean refusedOne() {
        boolean one = single > 0;
        single = one ? single - 1 : batch;
        return one;
    }
}

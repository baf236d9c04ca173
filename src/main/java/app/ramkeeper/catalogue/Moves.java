package app.ramkeeper.catalogue;

/**
 * What a change of terms does to due dates.
 *
 * @param tasks how many tasks of this kind there are
 * @param earlier how many fall due earlier
 * @param later how many fall due later
 * @param most the longest move in days, either way
 * @param middle the median move in days among those that move, negative is earlier
 * @param windows how many keep their date but have another window
 * @param overdueBefore how many are overdue now
 * @param overdueAfter how many would be overdue
 */
public record Moves(
        long tasks,
        long earlier,
        long later,
        long most,
        long middle,
        long windows,
        long overdueBefore,
        long overdueAfter) {

    public static final Moves NOTHING = new Moves(0, 0, 0, 0, 0, 0, 0, 0);

    public long moved() {
        return earlier + later;
    }
}

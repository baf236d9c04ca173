package app.ramkeeper.exchange;

/**
 * What is wrong with a row.
 *
 * @param field the code of the field it stands beside; blank if it is about the whole row
 * @param sentence what is wrong and what would be right
 */
public record Problem(String field, String sentence) {

    static Problem ofRow(String sentence) {
        return new Problem("", sentence);
    }
}

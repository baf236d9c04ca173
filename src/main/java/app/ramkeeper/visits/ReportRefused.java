package app.ramkeeper.visits;

import java.util.List;
import java.util.stream.Collectors;

/** Says that a report breaks rules and nothing of it was recorded; names each rule beside its part of the command. */
public class ReportRefused extends RuntimeException {

    private final transient List<Problem> problems;

    public ReportRefused(List<Problem> problems) {
        super(problems.stream().map(Problem::sentence).collect(Collectors.joining(" ")));
        this.problems = List.copyOf(problems);
    }

    public List<Problem> problems() {
        return problems;
    }

    /**
     * One broken rule.
     *
     * @param path the part of the command, such as {@code attendedOn} or {@code readings[2].value}
     * @param sentence says what is wrong and what would be right
     * @param register the register does not fit what was written, so its writer may have done nothing wrong
     */
    public record Problem(String path, String sentence, boolean register) {

        public Problem(String path, String sentence) {
            this(path, sentence, false);
        }
    }
}

package app.ramkeeper.visits.record;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Finds the field of the form that a part of the command came from. */
final class FieldOf {

    private static final Pattern ROW =
            Pattern.compile("(people|works|readings|findings|parts|followUps)\\[(\\d{1,3})](.*)");

    private FieldOf() {}

    static String path(String path, FormReader reader) {
        Matcher row = ROW.matcher(path);
        if (row.matches()) {
            List<String> names = names(row.group(1), reader);
            int index = Integer.parseInt(row.group(2));
            return index < names.size() ? names.get(index) + row.group(3) : path;
        }
        if (path.startsWith("people")) {
            return "lead";
        }
        return path.startsWith("photos") ? "photoFiles" : path;
    }

    private static List<String> names(String group, FormReader reader) {
        return switch (group) {
            case "people" -> reader.people;
            case "works" -> reader.works;
            case "readings" -> reader.readings;
            case "findings" -> reader.findings;
            case "parts" -> reader.parts;
            default -> reader.lefts;
        };
    }
}

package app.ramkeeper.exchange.reading;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The two kinds of file that are read. Name, declared type and content must agree. */
public enum FileKind {
    TEXT,
    XLSX;

    private static final String SHEET = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
    private static final Set<String> ANY = Set.of("", "application/octet-stream");
    private static final Set<String> OF_TEXT = Set.of(
            "text/csv", "text/plain", "text/tab-separated-values", "application/csv", "application/vnd.ms-excel");

    /**
     * Recognises a file.
     *
     * @param name the name it came with; only its ending is looked at
     * @param type the type the browser declared, or null
     * @throws Unreadable if it is another kind of file
     */
    public static FileKind of(Path file, @Nullable String name, @Nullable String type) throws IOException {
        String lower = name == null ? "" : name.toLowerCase(Locale.ROOT);
        boolean sheet = lower.endsWith(".xlsx");
        if (!sheet && !lower.endsWith(".csv") && !lower.endsWith(".tsv") && !lower.endsWith(".txt")) {
            throw Unreadable.otherKind("This is not a table that can be read here. Save it as CSV or XLSX"
                    + " (a name that ends in .csv, .tsv, .txt or .xlsx) and choose that file.");
        }
        checkType(sheet, type);
        String content = content(file);
        if (sheet ? !content.equals("zip") : !content.equals("text")) {
            throw Unreadable.otherKind(mismatch(content, lower.substring(lower.lastIndexOf('.'))));
        }
        return sheet ? XLSX : TEXT;
    }

    private static void checkType(boolean sheet, @Nullable String type) {
        String plain = type == null ? "" : type.replaceAll(";.*", "").strip().toLowerCase(Locale.ROOT);
        if (!ANY.contains(plain) && !(sheet ? plain.equals(SHEET) : OF_TEXT.contains(plain))) {
            throw Unreadable.otherKind("The file's name says it is a table, but it was sent as another kind of file."
                    + " Save it again as CSV or XLSX and choose that file.");
        }
    }

    private static String mismatch(String content, String ending) {
        return switch (content) {
            case "ole" ->
                "This is an old or a password-protected spreadsheet. Open it, save it as XLSX without a password,"
                        + " and choose that file.";
            case "zip" ->
                "The name ends in " + ending + " but the content is a spreadsheet or an archive."
                        + " Give an XLSX file its own ending.";
            case "text" -> "The name ends in .xlsx but the content is text. Save the table as XLSX, or name it .csv.";
            default -> "The name ends in " + ending + " but the content is no table. Save the table as CSV or XLSX.";
        };
    }

    private static String content(Path file) throws IOException {
        byte[] head;
        try (InputStream in = Files.newInputStream(file)) {
            head = in.readNBytes(512);
        }
        String start = new String(head, StandardCharsets.ISO_8859_1);
        if (start.startsWith("PK\3\4") || start.startsWith("PK\5\6")) {
            return "zip";
        }
        if (start.startsWith("\u00D0\u00CF\u0011\u00E0")) {
            return "ole";
        }
        String words = start.replace("\u00EF\u00BB\u00BF", "").strip().toLowerCase(Locale.ROOT);
        boolean markup =
                words.startsWith("<") || words.startsWith("{") || words.startsWith("%pdf") || words.startsWith("%!");
        return markup || isPicture(start) ? "other" : "text";
    }

    private static boolean isPicture(String start) {
        return start.startsWith("\u0089PNG")
                || start.startsWith("\u00FF\u00D8\u00FF")
                || start.startsWith("GIF8")
                || start.startsWith("RIFF")
                || start.startsWith("\u001F\u008B")
                || start.startsWith("Rar!")
                || start.startsWith("7z\u00BC\u00AF")
                || start.startsWith("\u007FELF")
                || start.startsWith("MZ\u0090");
    }
}

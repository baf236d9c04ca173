package app.ramkeeper.exchange.reading;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** Files made for tests, and what is read from them. */
public final class Tables {

    /** What a file gave. */
    public record Content(List<String> heading, List<Row> rows, String words) {
        List<List<String>> cells() {
            return rows.stream().map(Row::cells).toList();
        }
    }

    private Tables() {}

    public static Path file(Path folder, String name, byte[] content) throws IOException {
        return Files.write(folder.resolve(name), content);
    }

    public static Content read(Path file, String name) throws IOException {
        List<String> heading = new ArrayList<>();
        List<Row> rows = new ArrayList<>();
        TableFile table = TableFile.of(file, FileKind.of(file, name, null), Reading.RECOGNISE, Limits.DEFAULT);
        table.read(heading::addAll, rows::add);
        return new Content(heading, rows, table.words());
    }

    public static Content csv(Path folder, String text, Charset charset) throws IOException {
        return read(file(folder, "t.csv", text.getBytes(charset)), "t.csv");
    }

    public static Content csv(Path folder, String text) throws IOException {
        return csv(folder, text, StandardCharsets.UTF_8);
    }

    /** A workbook of one sheet, from the parts that matter; {@code sheet} and {@code strings} are their XML. */
    public static Map<String, String> workbook(String sheet, String strings) {
        Map<String, String> parts = new LinkedHashMap<>();
        String head = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>";
        String types = "application/vnd.openxmlformats-officedocument.spreadsheetml.";
        String relation = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/";
        parts.put(
                "[Content_Types].xml",
                head
                        + "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\">"
                        + "<Default Extension=\"rels\" ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/>"
                        + "<Override PartName=\"/xl/workbook.xml\" ContentType=\"" + types + "sheet.main+xml\"/>"
                        + "<Override PartName=\"/xl/worksheets/sheet1.xml\" ContentType=\"" + types
                        + "worksheet+xml\"/>"
                        + "<Override PartName=\"/xl/sharedStrings.xml\" ContentType=\"" + types
                        + "sharedStrings+xml\"/></Types>");
        String relations = "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">";
        parts.put(
                "_rels/.rels",
                head + relations + "<Relationship Id=\"rId1\" Type=\"" + relation
                        + "officeDocument\" Target=\"xl/workbook.xml\"/></Relationships>");
        parts.put(
                "xl/workbook.xml",
                head
                        + "<workbook xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\" xmlns:r=\""
                        + relation.substring(0, relation.length() - 1)
                        + "\"><sheets><sheet name=\"Register\" sheetId=\"1\" r:id=\"rId1\"/></sheets></workbook>");
        parts.put(
                "xl/_rels/workbook.xml.rels",
                head + relations
                        + "<Relationship Id=\"rId1\" Type=\"" + relation
                        + "worksheet\" Target=\"worksheets/sheet1.xml\"/>"
                        + "<Relationship Id=\"rId2\" Type=\"" + relation
                        + "sharedStrings\" Target=\"sharedStrings.xml\"/></Relationships>");
        parts.put("xl/worksheets/sheet1.xml", sheet);
        parts.put("xl/sharedStrings.xml", strings);
        return parts;
    }

    public static final String SHEET_HEAD = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>"
            + "<worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><sheetData>";
    public static final String SHEET_FOOT = "</sheetData></worksheet>";
    public static final String NO_STRINGS = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>"
            + "<sst xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\" count=\"0\" uniqueCount=\"0\"/>";

    public static String text(String reference, String text) {
        return "<c r=\"" + reference + "\" t=\"inlineStr\"><is><t>" + text + "</t></is></c>";
    }

    public static Path zip(Path file, Map<String, String> parts) throws IOException {
        try (OutputStream out = Files.newOutputStream(file);
                ZipOutputStream zip = new ZipOutputStream(out)) {
            for (Map.Entry<String, String> part : parts.entrySet()) {
                zip.putNextEntry(new ZipEntry(part.getKey()));
                zip.write(part.getValue().getBytes(StandardCharsets.UTF_8));
                zip.closeEntry();
            }
        }
        return file;
    }
}

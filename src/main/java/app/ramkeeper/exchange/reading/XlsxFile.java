package app.ramkeeper.exchange.reading;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.function.Consumer;
import org.apache.poi.openxml4j.exceptions.OpenXML4JException;
import org.apache.poi.openxml4j.opc.OPCPackage;
import org.apache.poi.openxml4j.opc.PackageAccess;
import org.apache.poi.ss.usermodel.DataFormatter;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.util.XMLHelper;
import org.apache.poi.xssf.eventusermodel.ReadOnlySharedStringsTable;
import org.apache.poi.xssf.eventusermodel.XSSFReader;
import org.apache.poi.xssf.eventusermodel.XSSFSheetXMLHandler;
import org.apache.poi.xssf.usermodel.XSSFComment;
import org.jspecify.annotations.Nullable;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xml.sax.XMLReader;

/** The first sheet of an XLSX workbook, read as a stream of events; formulas give their last result. */
final class XlsxFile implements TableFile {

    private final Path file;
    private final Limits limits;
    private String sheet = "";

    XlsxFile(Path file, Limits limits) throws IOException {
        ZipCheck.check(file);
        this.file = file;
        this.limits = limits;
    }

    @Override
    public String words() {
        return sheet.isEmpty() ? "spreadsheet" : "spreadsheet, sheet “" + sheet + "”";
    }

    @Override
    public boolean ragged() {
        return false;
    }

    @Override
    public void read(Consumer<List<String>> heading, Consumer<Row> rows) throws IOException {
        try (OPCPackage workbook = OPCPackage.open(file.toFile(), PackageAccess.READ)) {
            read(workbook, new Receiver(limits, heading, rows));
        } catch (OpenXML4JException | SAXException | RuntimeException | IOException broken) {
            throw refused(broken);
        }
    }

    private void read(OPCPackage workbook, Receiver receiver) throws IOException, OpenXML4JException, SAXException {
        XSSFReader reader = new XSSFReader(workbook);
        DataFormatter formatter = new PlainCells(usesDatesFrom1904(reader));
        ReadOnlySharedStringsTable strings = new ReadOnlySharedStringsTable(workbook, false);
        Iterator<InputStream> sheets = reader.getSheetsData();
        if (!sheets.hasNext()) {
            throw Unreadable.broken("The workbook has no sheet. Nothing was imported.");
        }
        try (InputStream first = sheets.next()) {
            if (sheets instanceof XSSFReader.SheetIterator named) {
                sheet = String.valueOf(Cell.clean(1, 0, named.getSheetName()));
            }
            XMLReader xml = parser();
            xml.setContentHandler(new XSSFSheetXMLHandler(
                    reader.getStylesTable(), null, strings, new Sheet(limits, receiver), formatter, false));
            xml.parse(new InputSource(first));
        }
        receiver.finish();
    }

    private static XMLReader parser() throws SAXException {
        try {
            return XMLHelper.newXMLReader();
        } catch (javax.xml.parsers.ParserConfigurationException impossible) {
            throw new IllegalStateException("No XML reader", impossible);
        }
    }

    private static boolean usesDatesFrom1904(XSSFReader reader) throws IOException, OpenXML4JException {
        try (InputStream workbook = reader.getWorkbookData()) {
            String head = new String(workbook.readNBytes(20_000), StandardCharsets.UTF_8);
            return head.contains("date1904=\"1\"") || head.contains("date1904=\"true\"");
        }
    }

    private static RuntimeException refused(Exception failure) {
        for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
            if (cause instanceof Unreadable known) {
                return known;
            }
            String text = String.valueOf(cause.getMessage());
            if (text.contains("DOCTYPE")) {
                return Unreadable.broken(
                        "The spreadsheet holds a document type declaration, which no table needs. Nothing was imported.");
            }
            if (text.contains("Zip bomb") || text.contains("MAX_ENTRY") || text.contains("ratio")) {
                return Unreadable.tooLarge(ZipCheck.BOMB);
            }
        }
        return Unreadable.broken("The spreadsheet is damaged and cannot be read. Open it, save it again as XLSX, and"
                + " choose that file. Nothing was imported.");
    }

    /** Gathers the cells of a row; blank ones are not in the file. */
    private static final class Sheet implements XSSFSheetXMLHandler.SheetContentsHandler {

        private final Limits limits;
        private final Receiver receiver;
        private List<String> cells = new ArrayList<>();

        Sheet(Limits limits, Receiver receiver) {
            this.limits = limits;
            this.receiver = receiver;
        }

        @Override
        public void startRow(int row) {
            cells = new ArrayList<>();
        }

        @Override
        public void endRow(int row) {
            receiver.accept(row + 1, cells);
        }

        @Override
        public void cell(@Nullable String reference, @Nullable String text, @Nullable XSSFComment comment) {
            int column = reference == null ? cells.size() : new CellReference(reference).getCol();
            int line = reference == null ? 0 : new CellReference(reference).getRow() + 1;
            limits.checkColumns(line, column + 1);
            while (cells.size() < column) {
                cells.add("");
            }
            String raw = text == null ? "" : text;
            limits.checkCell(line, column, raw);
            cells.add(Cell.clean(line, column, raw));
        }
    }
}

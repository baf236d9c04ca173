package app.ramkeeper.exchange.reading;

import static app.ramkeeper.exchange.reading.Tables.NO_STRINGS;
import static app.ramkeeper.exchange.reading.Tables.SHEET_FOOT;
import static app.ramkeeper.exchange.reading.Tables.SHEET_HEAD;
import static app.ramkeeper.exchange.reading.Tables.text;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class XlsxFileTests {

    @TempDir
    Path folder;

    @Test
    void readsTextNumbersDatesFormulasAndGaps() throws IOException {
        Path file = folder.resolve("r.xlsx");
        try (XSSFWorkbook book = new XSSFWorkbook();
                OutputStream out = Files.newOutputStream(file)) {
            XSSFSheet sheet = book.createSheet("Pumps");
            sheet.createRow(0).createCell(0).setCellValue("Reference");
            sheet.getRow(0).createCell(1).setCellValue("Fall");
            sheet.getRow(0).createCell(2).setCellValue("Installed");
            sheet.createRow(2).createCell(0).setCellValue("R-1");
            sheet.getRow(2).createCell(1).setCellValue(1234.5);
            Cell date = sheet.getRow(2).createCell(2);
            CellStyle style = book.createCellStyle();
            style.setDataFormat(book.createDataFormat().getFormat("dd/mm/yy"));
            date.setCellStyle(style);
            date.setCellValue(LocalDate.of(2024, 2, 29));
            Cell formula = sheet.createRow(3).createCell(1);
            formula.setCellFormula("2*6.25");
            book.getCreationHelper().createFormulaEvaluator().evaluateFormulaCell(formula);
            book.write(out);
        }

        var read = Tables.read(file, "r.xlsx");

        assertThat(read.words()).contains("Pumps");
        assertThat(read.rows())
                .containsExactly(new Row(3, List.of("R-1", "1234.5", "2024-02-29")), new Row(4, List.of("", "12.5")));
    }

    @Test
    @DisplayName("SEC-11 refuses a document type and asks no outside server for it")
    void sec11RefusesDocumentType() throws IOException {
        try (ServerSocket listener = new ServerSocket(0, 5, InetAddress.getLoopbackAddress())) {
            listener.setSoTimeout(200);
            String doctype = "<!DOCTYPE x [<!ENTITY e SYSTEM \"http://127.0.0.1:" + listener.getLocalPort() + "/e\">]>";
            String cells = "<row r=\"1\">" + text("A1", "a") + "</row><row r=\"2\">" + text("A2", "&e;") + "</row>";
            Map<String, String> inSheet =
                    Tables.workbook(SHEET_HEAD.replace("?><", "?>" + doctype + "<") + cells + SHEET_FOOT, NO_STRINGS);
            Map<String, String> inStrings = Tables.workbook(
                    SHEET_HEAD + cells.replace("&e;", "x") + SHEET_FOOT,
                    NO_STRINGS.replace("?><", "?>" + doctype + "<"));

            refuses(inSheet, "document type declaration");
            refuses(inStrings, "document type declaration");

            assertThatExceptionOfType(java.net.SocketTimeoutException.class).isThrownBy(listener::accept);
        }
    }

    @Test
    @DisplayName("FLT-21 refuses a zip bomb before it unpacks")
    void flt21RefusesBomb() throws IOException {
        Path file = folder.resolve("bomb.xlsx");
        Map<String, String> parts = Tables.workbook("", NO_STRINGS);
        byte[] zeros = new byte[1 << 20];
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
            for (Map.Entry<String, String> part : parts.entrySet()) {
                zip.putNextEntry(new ZipEntry(part.getKey()));
                zip.write(part.getValue().getBytes(StandardCharsets.UTF_8));
                for (int mb = 0; part.getKey().endsWith("sheet1.xml") && mb < 400; mb++) {
                    zip.write(zeros);
                }
                zip.closeEntry();
            }
        }
        Instant start = Instant.now();

        assertThatExceptionOfType(Unreadable.class)
                .isThrownBy(() -> Tables.read(file, "bomb.xlsx"))
                .satisfies(refused -> assertThat(refused.reason()).isEqualTo(Unreadable.Reason.TOO_LARGE));
        assertThat(Duration.between(start, Instant.now())).isLessThan(Duration.ofSeconds(5));
    }

    @Test
    @DisplayName("FLT-21 refuses a bomb that lies about its size")
    void flt21RefusesLyingBomb() throws IOException {
        String blanks = " ".repeat(30 << 20);
        refuses(
                Tables.workbook(SHEET_HEAD + "<row r=\"1\">" + text("A1", blanks) + "</row>" + SHEET_FOOT, NO_STRINGS),
                "Nothing was imported");
    }

    @Test
    @DisplayName("FLT-21 refuses 100,000 parts and parts with forbidden names")
    void flt21RefusesManyAndForbiddenParts() throws IOException {
        Map<String, String> many = Tables.workbook(SHEET_HEAD + SHEET_FOOT, NO_STRINGS);
        for (int i = 0; i < 100_000; i++) {
            many.put("p" + i, "");
        }
        Map<String, String> forbidden = Tables.workbook(SHEET_HEAD + SHEET_FOOT, NO_STRINGS);
        forbidden.put("../../x", "y");

        refuses(many, "parts");
        refuses(forbidden, "forbidden name");
    }

    @Test
    void refusesArchivesAndDamage() throws IOException {
        refuses(Map.of("readme.txt", "x"), "no spreadsheet");
        refuses(Tables.workbook(SHEET_HEAD + "<row r=\"1\"><c", NO_STRINGS), "damaged");
        refuses(Tables.workbook(SHEET_HEAD + SHEET_FOOT, NO_STRINGS), "empty");
    }

    private void refuses(Map<String, String> parts, String words) throws IOException {
        Path file = Tables.zip(folder.resolve("x.xlsx"), parts);

        assertThatExceptionOfType(Unreadable.class)
                .isThrownBy(() -> Tables.read(file, "x.xlsx"))
                .satisfies(refused -> assertThat(refused.sentence()).contains(words));
    }
}

package app.ramkeeper.exchange.reading;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Enumeration;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import org.apache.poi.openxml4j.util.ZipSecureFile;

/** Looks at the list of a workbook's parts before anything is unpacked, and sets how much may be unpacked. */
final class ZipCheck {

    static final String BOMB = "The spreadsheet unpacks to far more than a register needs. Nothing was imported.";

    private static final int ENTRIES = 500;
    private static final long UNPACKED = 256L << 20;

    static {
        ZipSecureFile.setMinInflateRatio(0.005);
        ZipSecureFile.setMaxEntrySize(UNPACKED);
        ZipSecureFile.setMaxTextSize(32L << 20);
        ZipSecureFile.setMaxFileCount(ENTRIES);
    }

    private ZipCheck() {}

    static void check(Path file) throws IOException {
        try (ZipFile zip = new ZipFile(file.toFile())) {
            if (zip.size() > ENTRIES) {
                throw Unreadable.tooLarge(
                        "The spreadsheet has %,d parts; a register has a few dozen. Nothing was imported."
                                .formatted(zip.size()));
            }
            checkEntries(zip.entries());
            if (zip.getEntry("[Content_Types].xml") == null || zip.getEntry("xl/workbook.xml") == null) {
                throw Unreadable.otherKind(
                        "The name ends in .xlsx but the content is no spreadsheet. Save the table as XLSX or CSV.");
            }
        } catch (ZipException damaged) {
            throw Unreadable.broken("The spreadsheet is damaged and cannot be opened. Nothing was imported.");
        }
    }

    private static void checkEntries(Enumeration<? extends ZipEntry> entries) {
        long total = 0;
        while (entries.hasMoreElements()) {
            ZipEntry entry = entries.nextElement();
            String name = entry.getName();
            if (name.contains("..") || name.startsWith("/") || name.contains("\\") || name.contains(":")) {
                throw Unreadable.broken("The spreadsheet holds a part with a forbidden name. Nothing was imported.");
            }
            total += Math.max(0, entry.getSize());
        }
        if (total > UNPACKED) {
            throw Unreadable.tooLarge(BOMB);
        }
    }
}

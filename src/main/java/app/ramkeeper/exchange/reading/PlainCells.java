package app.ramkeeper.exchange.reading;

import java.math.BigDecimal;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.Locale;
import org.apache.poi.ss.usermodel.DataFormatter;
import org.apache.poi.ss.usermodel.DateUtil;

/** Gives numbers in full with a point, and dates as year-month-day, whatever the cell's own format shows. */
final class PlainCells extends DataFormatter {

    private final boolean from1904;

    PlainCells(boolean from1904) {
        super(Locale.ROOT);
        this.from1904 = from1904;
    }

    @Override
    public String formatRawCellContents(double value, int formatIndex, String formatString) {
        if (DateUtil.isADateFormat(formatIndex, formatString) && DateUtil.isValidExcelDate(value)) {
            LocalDateTime moment = DateUtil.getLocalDateTime(value, from1904);
            return moment.toLocalTime().equals(LocalTime.MIDNIGHT)
                    ? moment.toLocalDate().toString()
                    : moment.toString();
        }
        String plain = BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
        return plain.equals("-0") ? "0" : plain;
    }
}

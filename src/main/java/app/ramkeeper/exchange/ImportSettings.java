package app.ramkeeper.exchange;

import app.ramkeeper.exchange.reading.Limits;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;
import org.springframework.util.unit.DataSize;

/**
 * Limits of an import, {@code ramkeeper.imports}.
 *
 * @param maxFile size of a file; must stay below the multipart limit
 * @param maxRows rows of a file
 * @param maxColumns columns of a file
 * @param batch rows that are brought in by one transaction
 */
@ConfigurationProperties("ramkeeper.imports")
record ImportSettings(
        @DefaultValue("16MB") DataSize maxFile,
        @DefaultValue("100000") int maxRows,
        @DefaultValue("200") int maxColumns,
        @DefaultValue("200") int batch) {

    Limits limits() {
        return new Limits(maxFile.toBytes(), maxRows, maxColumns, Limits.DEFAULT.cell());
    }
}

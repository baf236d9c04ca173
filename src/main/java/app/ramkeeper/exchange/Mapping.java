package app.ramkeeper.exchange;

import app.ramkeeper.exchange.reading.DateOrder;
import app.ramkeeper.exchange.reading.DecimalMark;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * How a file's columns are understood.
 *
 * @param columns the column's index by the field's code
 * @param order null while the person still has to say
 * @param mark null while the person still has to say
 */
public record Mapping(
        Map<String, Integer> columns,
        @Nullable DateOrder order,
        @Nullable DecimalMark mark) {

    public Mapping {
        columns = Map.copyOf(columns);
    }

    /** Guesses the columns from the headings; each column serves one field. */
    static Map<String, Integer> guess(List<Field> fields, List<String> headings) {
        Map<String, Integer> columns = new LinkedHashMap<>();
        Set<Integer> taken = new HashSet<>();
        for (Field field : fields) {
            for (int i = 0; i < headings.size(); i++) {
                if (field.isMeantBy(headings.get(i)) && taken.add(i)) {
                    columns.put(field.code(), i);
                    break;
                }
            }
        }
        return columns;
    }
}

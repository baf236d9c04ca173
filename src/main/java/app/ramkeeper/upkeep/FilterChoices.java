package app.ramkeeper.upkeep;

import app.ramkeeper.upkeep.rules.Waiting;
import app.ramkeeper.web.Choice;
import java.sql.Types;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;

/** What can be chosen in the filters of the due and overdue lists, in one statement. */
@Component
class FilterChoices {

    private final JdbcClient jdbc;
    private final MessageSource words;

    FilterChoices(JdbcClient jdbc, MessageSource words) {
        this.jdbc = jdbc;
        this.words = words;
    }

    private record Option(String what, String value, String label) {}

    void addTo(Model model) {
        addTo(model, null);
    }

    /** The same, with the name of the customer that the filter names by id. */
    void addTo(Model model, @Nullable UUID customer) {
        List<Option> options = jdbc.sql("""
                        select 'kinds' as what, id::text as value, name as label from task_kinds where withdrawn_on is null
                        union all select 'depots', id::text, name from depots
                        union all select 'waters', code, name from water_classes
                        union all select 'customer', id::text, name from customers where id = :customer order by what, label""")
                .param("customer", customer, Types.OTHER)
                .query(Option.class)
                .list();
        options.stream()
                .filter(option -> option.what().equals("customer"))
                .forEach(option -> model.addAttribute("customerName", option.label()));
        for (String what : List.of("kinds", "depots", "waters")) {
            model.addAttribute(
                    what,
                    options.stream()
                            .filter(option -> option.what().equals(what))
                            .map(option -> new Choice(option.value(), option.label()))
                            .toList());
        }
        model.addAttribute("states", choices("due.state.", DueFilter.DueState.values()));
        model.addAttribute("waitings", choices("waiting.", Waiting.values()));
        model.addAttribute("sorts", choices("due.sort.", DueFilter.DueSort.values()));
    }

    /** The kind with this code; null if the company has none. */
    @Nullable
    UUID kind(String code) {
        return jdbc.sql("select id from task_kinds where code = ? and withdrawn_on is null")
                .param(code)
                .query(UUID.class)
                .optional()
                .orElse(null);
    }

    String stateWord(DueTask task) {
        return words.getMessage("upkeep.state." + task.state(), null, Locale.UK);
    }

    String waitingWord(DueTask task) {
        return words.getMessage("waiting." + task.waiting(), null, Locale.UK);
    }

    private List<Choice> choices(String prefix, Enum<?>[] values) {
        return Stream.of(values)
                .map(value -> new Choice(value.name(), words.getMessage(prefix + value.name(), null, Locale.UK)))
                .toList();
    }
}

package app.ramkeeper.visits.record;

import app.ramkeeper.fleet.ComponentPosition;
import app.ramkeeper.web.Choice;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The parts that a kind of task asks for: those of the pumps' models, or all of that kind where a model names none. */
@Component
class TaskParts {

    static final String ALL = "ALL";
    static final String OLD = "OLD";
    static final String UNKNOWN = "UNKNOWN";

    private static final String FITTING = """
            with needs as (select * from task_kind_parts where task_kind_id = :kind),
              fits as (
                select n.part_kind, p.id, m.position, sum(m.quantity) as quantity from needs n
                  join pump_fittings f on f.install_id = :install and daterange(f.from_date, f.until_date) @> cast(:on as date)
                    and (cast(:pump as uuid) is null or f.pump_id = :pump)
                  join pumps u on u.id = f.pump_id join pump_model_parts m on m.model_id = u.model_id
                  join parts p on p.id = m.part_id and p.kind = n.part_kind and p.withdrawn_on is null
                where n.position = '' or n.position = m.position group by 1, 2, 3
                union all
                select n.part_kind, p.id, n.position, n.quantity from needs n
                  join parts p on p.kind = n.part_kind and p.withdrawn_on is null
                where not exists (
                  select from pump_fittings f join pumps u on u.id = f.pump_id join pump_model_parts m on m.model_id = u.model_id
                    join parts o on o.id = m.part_id and o.kind = n.part_kind and o.withdrawn_on is null
                  where f.install_id = :install and daterange(f.from_date, f.until_date) @> cast(:on as date)
                    and (cast(:pump as uuid) is null or f.pump_id = :pump) and (n.position = '' or n.position = m.position)))
            select p.id as part, p.number || ' ' || p.name as name, f.position, f.quantity, v.on_van, v.batch
            from fits f join parts p on p.id = f.id
              left join (select l.part_id, sum(l.quantity) as on_van, case when count(*) = 1 then nullif(min(l.batch), '') end as batch
                from stock_levels l join stock_places s on s.id = l.place_id
                where s.person_id = :person and l.quantity > 0 group by l.part_id) v on v.part_id = p.id
            order by f.part_kind, f.position, v.on_van is null, p.number""";

    private final JdbcClient jdbc;
    private final MessageSource messages;

    TaskParts(JdbcClient jdbc, MessageSource messages) {
        this.jdbc = jdbc;
        this.messages = messages;
    }

    /** A task as it is asked about: what kind, where, on which day, and whose van. */
    record Task(UUID kind, @Nullable UUID install, @Nullable UUID pump, LocalDate on, UUID person) {}

    /** A part with the quantity that the model takes, and the batch if the van has only one. */
    record Fit(
            UUID part,
            String name,
            String position,
            BigDecimal quantity,
            @Nullable BigDecimal onVan,
            @Nullable String batch) {

        @Nullable
        ComponentPosition place() {
            return Stream.of(ComponentPosition.values())
                    .filter(p -> p.name().equals(position))
                    .findFirst()
                    .orElse(null);
        }
    }

    boolean asks(UUID kind) {
        return jdbc.sql("select exists (select from task_kind_parts where task_kind_id = :kind)")
                .param("kind", kind)
                .query(Boolean.class)
                .single();
    }

    /** True for a kind that is the change of a part: it asks for one in a place, or includes a kind that does. */
    boolean changes(UUID kind) {
        return jdbc.sql("select exists (select from part_changes where task_kind_id = :kind)")
                .param("kind", kind)
                .query(Boolean.class)
                .single();
    }

    List<Fit> of(Task task) {
        return jdbc.sql(FITTING)
                .param("kind", task.kind())
                .param("install", task.install())
                .param("pump", task.pump())
                .param("on", task.on())
                .param("person", task.person())
                .query(Fit.class)
                .list();
    }

    /** True if each part has a place of its own, so that all of them can have gone in together. */
    static boolean together(List<Fit> fits) {
        Set<String> places = new HashSet<>();
        return fits.size() > 1
                && fits.stream().allMatch(fit -> !fit.position().isEmpty() && places.add(fit.position()));
    }

    /** What can be said of a task that asks for parts; none if it asks for none. */
    List<Choice> choices(Task task) {
        if (!asks(task.kind())) {
            return List.of();
        }
        List<Fit> fits = of(task);
        List<Choice> choices = new ArrayList<>();
        if (together(fits)) {
            choices.add(new Choice(ALL, word("visits.form.part.all", fits.size())));
        }
        fits.stream()
                .map(fit -> new Choice(fit.part().toString(), words(fit)))
                .distinct()
                .forEach(choices::add);
        choices.add(new Choice(OLD, word("visits.form.part.old")));
        choices.add(new Choice(UNKNOWN, word("visits.form.part.unknown")));
        return choices;
    }

    private String words(Fit fit) {
        String quantity = fit.quantity().stripTrailingZeros().toPlainString();
        if (fit.onVan() == null) {
            return word("visits.form.part.one", fit.name(), quantity);
        }
        String onVan = fit.onVan().stripTrailingZeros().toPlainString();
        return fit.batch() == null
                ? word("visits.form.part.onVan", fit.name(), quantity, onVan)
                : word("visits.form.part.ofBatch", fit.name(), quantity, onVan, fit.batch());
    }

    private String word(String key, Object... with) {
        return messages.getMessage(key, with, LocaleContextHolder.getLocale());
    }
}

package app.ramkeeper.catalogue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Turns a kind into its form and a form into what is stored. */
final class TaskKindForms {

    private static final int SPARE_ROWS = 2;

    private TaskKindForms() {}

    static TaskKindForm of(TaskKind kind) {
        TaskTerms terms = kind.terms();
        return new TaskKindForm(
                kind.name(),
                kind.description(),
                terms.scope(),
                terms.schedule(),
                terms.interval().months(),
                terms.interval().days(),
                terms.life(),
                terms.season() == null ? null : terms.season().getMonthValue(),
                terms.season() == null ? null : terms.season().getDayOfMonth(),
                terms.earlyDays(),
                terms.lateDays(),
                terms.graceDays(),
                terms.afterChangeDays(),
                kind.minutes(),
                kind.crew(),
                kind.weight().stripTrailingZeros(),
                terms.watched(),
                terms.drinkingWater(),
                kind.skills().isEmpty()
                        ? null
                        : String.join(", ", kind.skills().stream().sorted().toList()),
                kind.includes().stream().sorted().toList(),
                terms.byModel().entrySet().stream()
                        .sorted(Map.Entry.comparingByKey())
                        .map(own -> new TaskKindForm.ModelInterval(
                                own.getKey(),
                                own.getValue().months(),
                                own.getValue().days()))
                        .toList(),
                terms.byWater().entrySet().stream()
                        .sorted(Map.Entry.comparingByKey())
                        .map(own -> new TaskKindForm.WaterFactor(
                                own.getKey(), own.getValue().stripTrailingZeros()))
                        .toList(),
                kind.parts().stream()
                        .map(part -> new TaskKindForm.PartNeed(
                                part.partKind(),
                                part.position().isEmpty() ? null : part.position(),
                                part.quantity().stripTrailingZeros()))
                        .sorted(java.util.Comparator.comparing(Object::toString))
                        .toList(),
                kind.version());
    }

    /** The form with a row for every model and water, and some rows to spare for parts. */
    static TaskKindForm roomy(TaskKindForm form, List<PumpModelCard> models, List<String> waters) {
        Map<UUID, TaskKindForm.ModelInterval> own = new HashMap<>();
        orEmpty(form.models()).stream().filter(row -> row.model() != null).forEach(row -> own.put(row.model(), row));
        Map<String, TaskKindForm.WaterFactor> factors = new HashMap<>();
        orEmpty(form.waters()).stream()
                .filter(row -> row.water() != null)
                .forEach(row -> factors.put(row.water(), row));
        List<TaskKindForm.PartNeed> parts = new ArrayList<>(orEmpty(form.parts()));
        parts.removeIf(part -> part.kind() == null && part.quantity() == null && part.position() == null);
        for (int i = 0; i < SPARE_ROWS; i++) {
            parts.add(new TaskKindForm.PartNeed(null, null, null));
        }
        return new TaskKindForm(
                form.name(),
                form.description(),
                form.scope(),
                form.schedule(),
                form.intervalMonths(),
                form.intervalDays(),
                form.life(),
                form.seasonMonth(),
                form.seasonDay(),
                form.earlyDays(),
                form.lateDays(),
                form.graceDays(),
                form.afterChangeDays(),
                form.minutes(),
                form.crew(),
                form.weight(),
                form.watched(),
                form.drinkingWater(),
                form.skills(),
                form.includeList(),
                models.stream()
                        .map(model -> own.getOrDefault(
                                model.id().value(),
                                new TaskKindForm.ModelInterval(model.id().value(), null, null)))
                        .toList(),
                waters.stream()
                        .map(water -> factors.getOrDefault(water, new TaskKindForm.WaterFactor(water, null)))
                        .toList(),
                parts,
                form.version());
    }

    static Map<UUID, TaskKind.ModelInterval> models(TaskKindForm form) {
        Map<UUID, TaskKind.ModelInterval> models = new HashMap<>();
        orEmpty(form.models()).stream()
                .filter(TaskKindForm.ModelInterval::isSet)
                .forEach(row -> models.put(
                        row.model(),
                        new TaskKind.ModelInterval(
                                TaskKindForm.orZero(row.months()), TaskKindForm.orZero(row.days()))));
        return models;
    }

    static Map<String, BigDecimal> waters(TaskKindForm form) {
        Map<String, BigDecimal> waters = new HashMap<>();
        for (TaskKindForm.WaterFactor row : orEmpty(form.waters())) {
            BigDecimal factor = row.factor();
            if (row.water() != null && factor != null && factor.compareTo(BigDecimal.ONE) != 0) {
                waters.put(row.water(), plain(factor));
            }
        }
        return waters;
    }

    static Set<TaskKind.PartNeed> parts(TaskKindForm form) {
        Map<String, TaskKind.PartNeed> parts = new HashMap<>();
        for (TaskKindForm.PartNeed row : orEmpty(form.parts())) {
            PartKind kind = row.kind();
            if (kind != null) {
                String position = row.position() == null ? "" : row.position();
                BigDecimal quantity = row.quantity() == null ? BigDecimal.ONE : plain(row.quantity());
                parts.put(kind + position, new TaskKind.PartNeed(kind, position, quantity));
            }
        }
        return new HashSet<>(parts.values());
    }

    /** 1.50 and 1.5 are one number: a set of rows must not take them for two. */
    private static BigDecimal plain(BigDecimal number) {
        BigDecimal stripped = number.stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }

    static <T> List<T> orEmpty(@Nullable List<T> rows) {
        return rows == null
                ? List.of()
                : rows.stream().filter(java.util.Objects::nonNull).toList();
    }
}

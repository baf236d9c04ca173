package app.ramkeeper.exchange;

import static app.ramkeeper.exchange.RegisterFields.*;

import app.ramkeeper.catalogue.Catalogue;
import app.ramkeeper.catalogue.PumpModelCard;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Compares rows of a register with what is there already. */
@Component
class RegisterCheck {

    private final RegisterRows register;
    private final RegisterLookups lookups;
    private final Catalogue catalogue;

    RegisterCheck(RegisterRows register, RegisterLookups lookups, Catalogue catalogue) {
        this.register = register;
        this.lookups = lookups;
        this.catalogue = catalogue;
    }

    /** What the register knows about a batch of rows. */
    private record Known(
            Map<String, Map<String, Object>> byReference,
            Map<String, Map<String, Object>> byNames,
            Map<Integer, Map<String, Object>> places,
            Map<String, String> before,
            Map<String, String> serials,
            Map<String, List<java.util.UUID>> customers,
            Set<String> models,
            Set<String> depots) {

        @Nullable
        Map<String, Object> held(Parsed row) {
            return row.has(REFERENCE)
                    ? byReference.get(row.text(REFERENCE))
                    : byNames.get(String.join("|", RegisterReader.names(row)));
        }
    }

    List<Verdict> verdicts(List<Parsed> rows, List<Field> fields) {
        Known known = known(rows);
        return rows.stream().map(row -> verdict(row, known, fields)).toList();
    }

    private Known known(List<Parsed> rows) {
        return new Known(
                register.byReference(asked(rows, row -> row.text(REFERENCE))),
                register.byNames(rows.stream()
                        .filter(row -> !row.has(REFERENCE) && row.has(CUSTOMER) && row.has(SITE))
                        .map(RegisterReader::names)
                        .collect(Collectors.toSet())),
                register.places(rows),
                lookups.broughtBefore(asked(rows, RegisterReader::thing)),
                lookups.serials(asked(rows, row -> row.text(SERIAL))),
                lookups.customersByName(asked(rows, row -> row.text(CUSTOMER))),
                catalogue.pumpModels().stream()
                        .map(PumpModelCard::name)
                        .map(Fold::of)
                        .collect(Collectors.toSet()),
                lookups.depots().keySet());
    }

    private static Set<String> asked(List<Parsed> rows, Function<Parsed, @Nullable String> what) {
        return rows.stream()
                .map(what)
                .filter(Objects::nonNull)
                .map(String::valueOf)
                .collect(Collectors.toSet());
    }

    private Verdict verdict(Parsed row, Known known, List<Field> fields) {
        String thing = RegisterReader.thing(row);
        String content = content(row);
        Map<String, Object> held = known.held(row);
        if (held != null && row.problems().isEmpty()) {
            List<Problem> differences = content.equals(known.before().get(thing))
                    ? List.of()
                    : RegisterReader.differences(row, held, fields);
            return new Verdict(
                    row.line(),
                    differences.isEmpty() ? RowState.UNCHANGED : RowState.PROBLEM,
                    differences,
                    thing,
                    row.text(SERIAL),
                    content);
        }
        lookUp(row, known);
        RegisterReader.differencesOfPlace(row, known.places().getOrDefault(row.line(), Map.of()), fields)
                .forEach(difference -> row.problem(difference.field(), difference.sentence()));
        RowState state = row.problems().isEmpty() ? RowState.READY : RowState.PROBLEM;
        return new Verdict(row.line(), state, row.problems(), thing, row.text(SERIAL), content);
    }

    private static void lookUp(Parsed row, Known known) {
        String serial = row.text(SERIAL);
        if (serial != null && known.serials().containsKey(serial)) {
            row.problem(
                    SERIAL,
                    "A pump with serial “%s” is in the register already (%s)."
                            .formatted(serial, known.serials().get(serial)));
        }
        String model = row.text(MODEL);
        if (model != null && !known.models().contains(Fold.of(model))) {
            row.problem(MODEL, "The catalogue has no pump model “" + model + "”. Add it there, or correct the name.");
        }
        String depot = row.text(DEPOT);
        if (depot != null && !known.depots().contains(Fold.of(depot))) {
            row.problem(
                    DEPOT,
                    "There is no depot “" + depot
                            + "”. An administrator can add it under Settings; else correct the name.");
        }
        String customer = row.text(CUSTOMER);
        if (customer != null
                && !row.has(CUSTOMER_REFERENCE)
                && known.customers().getOrDefault(customer, List.of()).size() > 1) {
            row.problem(
                    CUSTOMER, "Several customers are called “" + customer + "”. Give the customer's reference too.");
        }
    }

    static String content(Parsed row) {
        try {
            byte[] text = row.canonical().toString().getBytes(StandardCharsets.UTF_8);
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(text), 0, 16);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("Every Java has SHA-256", impossible);
        }
    }
}

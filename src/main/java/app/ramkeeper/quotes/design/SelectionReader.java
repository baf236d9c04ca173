package app.ramkeeper.quotes.design;

import app.ramkeeper.quotes.survey.Survey;
import app.ramkeeper.sizing.quantity.Numbers;
import app.ramkeeper.visits.form.TypedForm;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Reads a design that the office put together by hand; what cannot be is noted beside its field. */
final class SelectionReader {

    /** Rows of the form: more kinds of pipe in one line than this are no design. */
    static final int ROWS = 8;

    private SelectionReader() {}

    static @Nullable Selection read(TypedForm form, Survey survey, Supply supply) {
        UUID pump = form.uuid("pump");
        if (pump == null || !supply.pumps().containsKey(pump)) {
            form.problem("pump", "Choose a pump that has a price today.");
        }
        UUID drive = form.uuid("drive");
        if (drive == null || !supply.drivePipes().containsKey(drive)) {
            form.problem("drive", "Choose a drive pipe that has a price today.");
        }
        BigDecimal typed = form.number("pumps");
        int pumps = typed == null ? 0 : typed.intValue();
        if (pumps < 1 || pumps > 12) {
            form.problem("pumps", "From 1 to 12 pumps can stand side by side.");
        }
        List<Selection.Part> parts = parts(form, survey, supply);
        return form.hasProblems() || pump == null || drive == null ? null : new Selection(pump, pumps, drive, parts);
    }

    private static List<Selection.Part> parts(TypedForm form, Survey survey, Supply supply) {
        double end = survey.ground().endM();
        List<Selection.Part> parts = new ArrayList<>();
        double from = 0;
        String lastTo = "to0";
        for (int i = 0; i < ROWS; i++) {
            UUID pipe = form.uuid("pipe" + i);
            BigDecimal to = form.number("to" + i);
            if (pipe == null && to == null) {
                continue;
            }
            if (pipe == null || !supply.deliveryPipes().containsKey(pipe)) {
                form.problem("pipe" + i, "Choose a delivery pipe that has a price today.");
            }
            double until = to == null ? end : Math.abs(to.doubleValue() - end) < 0.06 ? end : to.doubleValue();
            if (until <= from || until > end) {
                form.problem(
                        "to" + i,
                        "This stretch must end beyond %s m and at most at %s m, the end of the line."
                                .formatted(Numbers.text(from), Numbers.text(end)));
            }
            lastTo = "to" + i;
            from = Math.max(from, until);
            if (pipe != null) {
                parts.add(new Selection.Part(pipe, until));
            }
        }
        if (parts.isEmpty()) {
            form.problem("pipe0", "Choose the delivery pipe.");
        } else if (from < end && form.error(lastTo) == null) {
            form.problem(lastTo, "The last stretch must end at %s m, at the tank.".formatted(Numbers.text(end)));
        }
        return parts;
    }

    static void write(TypedForm form, Selection selection) {
        form.set("pump", selection.pumpModelId())
                .set("pumps", selection.pumps())
                .set("drive", selection.drivePipeId());
        for (int i = 0; i < selection.delivery().size(); i++) {
            form.set("to" + i, selection.delivery().get(i).toM());
            form.set("pipe" + i, selection.delivery().get(i).pipeId());
        }
    }
}

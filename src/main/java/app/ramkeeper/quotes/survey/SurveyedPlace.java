package app.ramkeeper.quotes.survey;

import app.ramkeeper.fleet.ConsentKind;
import app.ramkeeper.fleet.Position;
import app.ramkeeper.fleet.PositionText;
import app.ramkeeper.visits.form.TypedForm;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a survey tells of the place itself, for the register.
 *
 * @param position of the pump
 * @param access way in, as typed
 * @param walkMinutes on foot from where the vehicle stays
 * @param residualLMin what must stay in the stream
 * @param rights those that are held or still to be had
 */
public record SurveyedPlace(
        @Nullable Position position,
        @Nullable Double altitudeM,
        @Nullable String waterClass,
        boolean drinkingWater,
        @Nullable String access,
        @Nullable Integer walkMinutes,
        @Nullable Double residualLMin,
        List<Right> rights) {

    /**
     * A right that the works need.
     *
     * @param on last day of one that is held; else the day by which an answer is due
     */
    public record Right(
            ConsentKind kind, boolean held, @Nullable LocalDate on) {}

    static SurveyedPlace of(SurveyRow row) {
        TypedForm form = SurveyForms.of(row);
        Amounts amounts = new Amounts(form);
        return new SurveyedPlace(
                position(form),
                form.value("altitudeM").isEmpty() ? null : amounts.or("altitudeM", 0, "", -400, 5_000, "m"),
                form.text("waterClass", 40),
                form.ticked("drinkingWater"),
                form.text("access", 4_000),
                walk(form),
                form.value("mustStayLMin").isEmpty() ? null : amounts.or("mustStayLMin", 0, "", 0, 1_000_000, "l/min"),
                rights(form));
    }

    /** Where the pump stands; what cannot be read is noted beside the field. */
    static @Nullable Position position(TypedForm form) {
        try {
            return form.value("position").isEmpty() ? null : PositionText.parse(form.value("position"));
        } catch (IllegalArgumentException unreadable) {
            form.problem("position", String.valueOf(unreadable.getMessage()));
            return null;
        }
    }

    static @Nullable Integer walk(TypedForm form) {
        return form.value("walkMinutes").isEmpty()
                ? null
                : (int) Math.round(new Amounts(form).or("walkMinutes", 0, "the way on foot", 0, 600, "min"));
    }

    private static List<Right> rights(TypedForm form) {
        List<Right> rights = new ArrayList<>();
        add(rights, form, "takeLicence", ConsentKind.TAKE);
        add(rights, form, "easement", ConsentKind.EASEMENT);
        add(rights, form, "discharge", ConsentKind.DISCHARGE);
        return rights;
    }

    private static void add(List<Right> rights, TypedForm form, String name, ConsentKind kind) {
        Consent consent = form.choice(name, Consent.class);
        if (consent != Consent.NOT_NEEDED) {
            rights.add(new Right(kind, consent == Consent.HELD, form.date(name + "On")));
        }
    }
}

package app.ramkeeper.rounds.web;

import app.ramkeeper.rounds.week.WorkingHours;
import app.ramkeeper.rounds.week.WorkingHours.Day;
import app.ramkeeper.visits.form.TypedForm;
import app.ramkeeper.web.LostUpdate;
import app.ramkeeper.web.LostUpdate.Difference;
import java.time.DayOfWeek;
import java.time.LocalTime;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The seven weekdays of a form of working hours, the company's or a technician's own. */
final class HoursForm {

    private static final int SHORTEST = 30;
    private static final int LONGEST_BREAK = 180;

    private HoursForm() {}

    /** The weekdays by number, Monday is 1. */
    static Map<Integer, String> weekdays() {
        Map<Integer, String> names = new LinkedHashMap<>();
        for (DayOfWeek day : DayOfWeek.values()) {
            names.put(day.getValue(), day.getDisplayName(TextStyle.FULL, Locale.UK));
        }
        return names;
    }

    static TypedForm of(List<Day> days) {
        TypedForm form = new TypedForm();
        form.set("seen", WorkingHours.edition(days));
        for (Day day : days) {
            form.set("from" + day.weekday(), day.fromTime())
                    .set("until" + day.weekday(), day.untilTime())
                    .set("longest" + day.weekday(), day.longestMinutes())
                    .set("break" + day.weekday(), day.breakMinutes());
        }
        return form;
    }

    /** The days on which somebody works; each thing that cannot stand is noted beside its field. */
    static List<Day> read(TypedForm form) {
        List<Day> days = new ArrayList<>();
        for (int weekday = 1; weekday <= 7; weekday++) {
            Day day = day(form, weekday);
            if (day != null) {
                days.add(day);
            }
        }
        return days;
    }

    /** Where what was typed and what somebody else has saved meanwhile differ, a weekday a line. */
    static LostUpdate between(List<Day> typed, List<Day> present) {
        List<Difference> differences = new ArrayList<>();
        for (int weekday = 1; weekday <= 7; weekday++) {
            String mine = words(typed, weekday);
            String theirs = words(present, weekday);
            if (!mine.equals(theirs)) {
                differences.add(new Difference("from" + weekday, "fleet.weekday." + weekday, mine, theirs));
            }
        }
        return new LostUpdate(differences);
    }

    private static String words(List<Day> days, int weekday) {
        return days.stream()
                .filter(day -> day.weekday() == weekday)
                .map(day -> "%s\u2013%s, at most %d min, break %d min"
                        .formatted(day.fromTime(), day.untilTime(), day.longestMinutes(), day.breakMinutes()))
                .findFirst()
                .orElse("no hours");
    }

    private static @Nullable Day day(TypedForm form, int weekday) {
        LocalTime from = form.time("from" + weekday);
        LocalTime until = form.time("until" + weekday);
        Integer longest = minutes(form, "longest", weekday);
        Integer pause = minutes(form, "break", weekday);
        boolean start = !form.value("from" + weekday).isEmpty();
        boolean end = !form.value("until" + weekday).isEmpty();
        if (start != end) {
            form.problem(
                    (start ? "until" : "from") + weekday,
                    on(weekday) + "give both times, or neither for a day without work.");
        }
        if (from == null || until == null) {
            return null;
        }
        if (!until.isAfter(from)) {
            form.problem(
                    "until" + weekday,
                    on(weekday)
                            + "the shift ends at %s, before it starts at %s. It has to end later on the same day."
                                    .formatted(until, from));
            return null;
        }
        int shift = (until.toSecondOfDay() - from.toSecondOfDay()) / 60;
        int most = longest == null ? shift : longest;
        int rest = pause == null ? 0 : pause;
        if (shift < SHORTEST) {
            form.problem("until" + weekday, on(weekday) + "a shift is at least %d minutes long.".formatted(SHORTEST));
        } else if (most < SHORTEST || most > shift) {
            form.problem(
                    "longest" + weekday,
                    on(weekday)
                            + "give from %d to %d minutes: the shift itself is %d minutes long."
                                    .formatted(SHORTEST, shift, shift));
        }
        if (rest > LONGEST_BREAK || rest >= most) {
            form.problem(
                    "break" + weekday,
                    on(weekday) + "give at most %d minutes, and less than the day is long.".formatted(LONGEST_BREAK));
        }
        return new Day(weekday, from, until, most, rest);
    }

    private static @Nullable Integer minutes(TypedForm form, String field, int weekday) {
        String typed = form.value(field + weekday);
        if (typed.isEmpty()) {
            return null;
        }
        if (!typed.matches("\\d{1,9}")) {
            form.problem(field + weekday, on(weekday) + "give whole minutes, such as 480.");
            return null;
        }
        if (typed.length() > 4) {
            form.problem(field + weekday, on(weekday) + "a day has 1440 minutes; give fewer, such as 480.");
            return null;
        }
        return Integer.valueOf(typed);
    }

    private static String on(int weekday) {
        return DayOfWeek.of(weekday).getDisplayName(TextStyle.FULL, Locale.UK) + ": ";
    }
}

package app.ramkeeper.web;

import app.ramkeeper.shared.Unit;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** How pages say dates, spans and quantities; templates call it as {@code ${@say.date(x)}}. An absent value reads "–". */
@Component("say")
public class Say {

    private static final String ABSENT = "–";
    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("EEE d MMM uuuu", Locale.UK);
    private static final DateTimeFormatter DATE_AND_TIME =
            DateTimeFormatter.ofPattern("EEE d MMM uuuu HH:mm", Locale.UK);
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.UK);

    private final Clock clock;

    Say(Clock clock) {
        this.clock = clock;
    }

    /** The company's today. */
    public LocalDate today() {
        return LocalDate.now(clock);
    }

    /** "Tue 24 Nov 2026". */
    public String date(@Nullable LocalDate date) {
        return date == null ? ABSENT : day(date);
    }

    /** The same for sentences that are put together where there is no bean, such as a refusal. */
    public static String day(LocalDate date) {
        return DATE.format(date);
    }

    /** "Tue 24 Nov 2026 14:05" in the company's zone. */
    public String moment(@Nullable Instant instant) {
        return instant == null ? ABSENT : DATE_AND_TIME.format(instant.atZone(clock.getZone()));
    }

    /** "14:05". */
    public String time(@Nullable LocalTime time) {
        return time == null ? ABSENT : TIME.format(time);
    }

    /** "in 12 days", "today", "34 days late": a due date seen from today. */
    public String due(@Nullable LocalDate date) {
        if (date == null) {
            return "date unknown";
        }
        long days = ChronoUnit.DAYS.between(today(), date);
        if (days == 0) {
            return "today";
        }
        return days > 0 ? "in " + count(days, "day") : count(-days, "day") + " late";
    }

    /** "3 days ago", "today", "14 months ago": a past date seen from today. */
    public String ago(@Nullable LocalDate date) {
        if (date == null) {
            return ABSENT;
        }
        long days = ChronoUnit.DAYS.between(date, today());
        if (days < 0) {
            return "in " + count(-days, "day");
        }
        if (days == 0) {
            return "today";
        }
        long months = ChronoUnit.MONTHS.between(date, today());
        return (months < 4 ? count(days, "day") : months < 36 ? count(months, "month") : count(months / 12, "year"))
                + " ago";
    }

    /** A count with its noun: "1 day", "2 days". */
    public String count(long number, String noun) {
        return number + " " + noun + (number == 1 ? "" : "s");
    }

    /** A flow in m3/s as "12.3 l/min". */
    public String perMinute(@Nullable Double si) {
        return quantity(si, Unit.LITRE_PER_MINUTE, 3);
    }

    /** A flow in m3/s as "17 700 l/day", three significant figures. */
    public String perDay(@Nullable Double si) {
        return quantity(si, Unit.LITRE_PER_DAY, 3);
    }

    /** A level or length in metres as "12.4 m". */
    public String metres(@Nullable Double si) {
        return quantity(si, Unit.METRE, 3);
    }

    /** A pressure in Pa as "4.52 bar". */
    public String bar(@Nullable Double si) {
        return quantity(si, Unit.BAR, 3);
    }

    /** A share of one as "62 %". */
    public String percent(@Nullable Double share) {
        return quantity(share, Unit.PERCENT, 2);
    }

    /** A change as a signed share: "−12 %", "+3 %". */
    public String change(@Nullable Double share) {
        if (share == null) {
            return ABSENT;
        }
        long percent = Math.round(100 * share);
        return (percent > 0 ? "+" : percent < 0 ? "−" : "±") + Math.abs(percent) + " %";
    }

    /** A quantity in SI, said in a unit with so many significant figures. */
    public String quantity(@Nullable Double si, Unit unit, int figures) {
        return si == null ? ABSENT : number(unit.fromSi(si), figures) + " " + unit.symbol();
    }

    /** A plain number with so many significant figures and thin spaces between thousands. */
    public String number(@Nullable Double value, int figures) {
        if (value == null || !Double.isFinite(value)) {
            return ABSENT;
        }
        int scale = value == 0 ? 0 : Math.max(0, figures - 1 - (int) Math.floor(Math.log10(Math.abs(value))));
        BigDecimal rounded = new BigDecimal(value).setScale(Math.min(scale, 6), RoundingMode.HALF_UP);
        String plain = String.format(Locale.ROOT, "%,." + rounded.scale() + "f", rounded);
        return plain.replace(',', ' ').replace("-", "−");
    }
}

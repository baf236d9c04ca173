package app.ramkeeper.upkeep.rules;

import app.ramkeeper.catalogue.Interval;
import app.ramkeeper.catalogue.Life;
import app.ramkeeper.catalogue.Schedule;
import java.time.LocalDate;
import java.time.MonthDay;

/** Terms and days that the tests of the rules share. */
final class Cases {

    private Cases() {}

    static Terms everyMonths(int months) {
        return new Terms(Schedule.INTERVAL, Interval.ofMonths(months), Life.CALENDAR, 30, 30, 14, null);
    }

    static Terms everyRunningDays(int days) {
        return new Terms(Schedule.INTERVAL, Interval.ofDays(days), Life.RUNNING, 30, 30, 14, null);
    }

    static Terms season(int month, int day) {
        return new Terms(Schedule.SEASON, Interval.NONE, Life.CALENDAR, 42, 14, 7, MonthDay.of(month, day));
    }

    static Terms event() {
        return new Terms(Schedule.EVENT, Interval.ofDays(14), Life.CALENDAR, 14, 7, 7, null);
    }

    static LocalDate day(String text) {
        return LocalDate.parse(text);
    }
}

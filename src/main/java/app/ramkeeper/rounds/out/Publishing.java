package app.ramkeeper.rounds.out;

import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.rounds.week.DayTimes;
import app.ramkeeper.rounds.week.DayTimes.Breach;
import app.ramkeeper.rounds.week.DayTimes.Line;
import app.ramkeeper.rounds.week.Stop;
import app.ramkeeper.rounds.week.TechDay;
import app.ramkeeper.rounds.week.Times;
import app.ramkeeper.rounds.week.Week;
import app.ramkeeper.rounds.week.WeekEdits;
import app.ramkeeper.rounds.week.WeekEdits.By;
import app.ramkeeper.rounds.week.WeekStore;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.visits.PlanVisit;
import app.ramkeeper.visits.ReportRefused;
import app.ramkeeper.visits.VisitId;
import app.ramkeeper.visits.VisitKind;
import app.ramkeeper.visits.Visits;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Makes a week's plan known: each stop of it becomes a visit with its day, time and people, which the technician then sees. A rule that is
 * broken without a reason stops it, and so does a plan that was changed since it was looked at. Publishing again tells only what has changed.
 */
@Service
@ForOffice
@Transactional
public class Publishing {

    private static final int LAST = 24 * 60 - 5;

    private final WeekStore weeks;
    private final WeekEdits edits;
    private final Visits visits;
    private final DueBack dueBack;
    private final JdbcClient jdbc;
    private final Clock clock;

    Publishing(WeekStore weeks, WeekEdits edits, Visits visits, DueBack dueBack, JdbcClient jdbc, Clock clock) {
        this.weeks = weeks;
        this.edits = edits;
        this.visits = visits;
        this.dueBack = dueBack;
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** Where a stop goes, as its visit will have it. */
    private record Going(Stop stop, TechDay round, LocalDate day, LocalTime from) {}

    /**
     * Publishes the week as it stands from today on.
     *
     * @return what was told, in words
     * @throws Conflict if rules are broken without a reason; each is named
     */
    public String publish(By by) {
        Week week = weeks.load(edits.hold(by));
        List<Breach> open = week.openBreaches();
        if (!open.isEmpty()) {
            throw new Conflict("Not published: " + open.size() + (open.size() == 1 ? " rule is" : " rules are")
                    + " broken without a reason. "
                    + String.join(
                            " ",
                            open.stream()
                                    .limit(10)
                                    .map(b -> b.stop().site() + ": " + b.words() + ".")
                                    .toList()));
        }
        LocalDate today = LocalDate.now(clock);
        List<Going> changed = going(week).stream()
                .filter(g -> !g.day().isBefore(today) && isNew(g))
                .toList();
        List<Stop> taken = week.leftOut().stream()
                .filter(stop -> stop.publishedOn() != null && stop.visitId() != null)
                .toList();
        // first everybody's time is freed, so that two visits can change places
        changed.stream().filter(g -> g.stop().visitId() != null).forEach(g -> free(g.stop(), g.day()));
        taken.forEach(stop -> {
            free(stop, null);
            jdbc.sql(
                            "update week_stops set published_on = null, published_from = null, published_to = null, changed_at = ? where id = ?")
                    .params(now(), stop.id())
                    .update();
        });
        changed.forEach(this::tell);
        dueBack.publish(week);
        jdbc.sql("""
                        update week_plans set published_version = version, published_at = :now, published_by = :by,
                          first_published_at = coalesce(first_published_at, :now) where id = :id""")
                .param("now", now())
                .param("by", by.person())
                .param("id", week.plan().id())
                .update();
        return words(changed.size(), taken.size());
    }

    /**
     * A visit that stands otherwise than its customer agreed to, and would be told so.
     *
     * @param agreed what they agreed to, in words
     * @param now where it stands, in words; null if it is in no round
     */
    public record Against(
            Stop stop, String agreed, @Nullable String now) {}

    /** The visits whose customers would have to be rung anew if the week were published as it stands. */
    @Transactional(readOnly = true)
    public List<Against> against(Week week) {
        LocalDate today = LocalDate.now(clock);
        List<Against> all = new ArrayList<>();
        going(week).stream()
                .filter(g -> isAgreed(g.stop()) && !g.day().isBefore(today) && isNew(g) && !keeps(g))
                .forEach(g -> all.add(against(g.stop(), Times.dayAndTime(g.day(), g.from()))));
        week.leftOut().stream()
                .filter(stop -> isAgreed(stop) && stop.publishedOn() != null)
                .forEach(stop -> all.add(against(stop, null)));
        return all;
    }

    private static Against against(Stop stop, @Nullable String now) {
        return new Against(stop, Times.dayAndTime(Objects.requireNonNull(stop.fixedOn()), stop.fixedFrom()), now);
    }

    private static boolean isAgreed(Stop stop) {
        return "CONFIRMED".equals(stop.answer()) && stop.fixedOn() != null;
    }

    private static boolean keeps(Going g) {
        LocalTime agreed = g.stop().fixedFrom();
        return g.day().equals(g.stop().fixedOn())
                && (agreed == null
                        || Math.abs(Duration.between(agreed, g.from()).toMinutes()) <= PlanVisit.PUNCTUAL);
    }

    private static String words(int told, int taken) {
        if (told + taken == 0) {
            return "Published. Nothing had changed since the last time.";
        }
        return "Published: " + told + (told == 1 ? " visit has" : " visits have")
                + " a new day, time, length, task or person"
                + (taken == 0 ? "." : ", " + taken + " taken out and open again.");
    }

    private static List<Going> going(Week week) {
        List<Going> all = new ArrayList<>();
        for (TechDay round : week.rounds()) {
            DayTimes times = week.times(round.key());
            int free = 0;
            for (Line line : times.lines()) {
                if (!line.stop().over()) {
                    int from = Math.max(timeOf(line), free);
                    free = (from + line.stop().minutes() + 4) / 5 * 5;
                    all.add(new Going(
                            line.stop(), round, round.day(), LocalTime.ofSecondOfDay(60L * Math.min(from, LAST))));
                }
            }
        }
        return all;
    }

    /**
     * The start in whole five minutes, the earlier; an agreed time stays as agreed. Where the visit before lasts a little into it,
     * as punctual allows, the time that is told is the later: nobody is at two sites at once.
     */
    private static int timeOf(Line line) {
        LocalTime agreed = line.stop().fixedFrom();
        if (agreed != null && line.stop().excuse() == null) {
            return agreed.toSecondOfDay() / 60;
        }
        return (int) Math.floor(line.starts() / 5) * 5;
    }

    private static boolean isNew(Going g) {
        return g.stop().visitId() == null
                || g.stop().outgrown()
                || !g.day().equals(g.stop().publishedOn())
                || !g.from().equals(g.stop().publishedFrom())
                || !g.round().personId().equals(g.stop().publishedTo());
    }

    private void free(Stop stop, @Nullable LocalDate day) {
        VisitId id = new VisitId(Objects.requireNonNull(stop.visitId()));
        Kept kept = kept(id, stop);
        PlanVisit plan = new PlanVisit(
                new SiteId(stop.siteId()),
                VisitKind.valueOf(stop.kind()),
                day,
                null,
                kept.minutes(),
                List.of(),
                List.of(),
                kept.note(),
                kept.byHand());
        require(visits.change(id, kept.version(), plan), stop);
    }

    private void tell(Going g) {
        List<PersonId> people = new ArrayList<>();
        people.add(new PersonId(g.round().personId()));
        Optional.ofNullable(g.round().mateId()).ifPresent(mate -> people.add(new PersonId(mate)));
        UUID visit = g.stop().visitId();
        try {
            if (visit == null) {
                visit = visits.plan(new PlanVisit(
                                new SiteId(g.stop().siteId()),
                                VisitKind.valueOf(g.stop().kind()),
                                g.day(),
                                g.from(),
                                g.stop().minutes(),
                                people,
                                weeks.tasks(g.stop()),
                                g.stop().addedByHand() ? g.stop().why() : null))
                        .value();
            } else {
                change(new VisitId(visit), g, people);
            }
        } catch (ReportRefused refused) {
            throw new Conflict("Not published: " + g.stop().site() + ", " + Times.day(g.day()) + ": "
                    + refused.problems().get(0).sentence());
        }
        jdbc.sql("""
                        update week_stops set visit_id = :visit, published_on = :day, published_from = :from, published_to = :to,
                          minutes = :minutes, minutes_given = :minutes, minutes_riding = 0,
                          fixed_on = case when kind in ('INSTALLATION', 'COMMISSIONING') then :day::date when :held then fixed_on end,
                          fixed_from = case when :held then fixed_from end,
                          changed_at = case when published_on is null and changed_at is null
                            and (select first_published_at from week_plans p where p.id = plan_id) is null then null else :now::timestamptz end where id = :id""")
                .param("visit", visit)
                .param("day", g.day())
                .param("from", g.from())
                .param("to", g.round().personId())
                .param("held", isHeld(visit))
                .param("minutes", g.stop().minutes())
                .param("now", now())
                .param("id", g.stop().id())
                .update();
    }

    /** Whether the customer's word still holds the visit where it stands now. */
    private boolean isHeld(UUID visit) {
        return jdbc.sql("select answer in ('TOLD', 'CONFIRMED') from visits where id = ?")
                .param(visit)
                .query(Boolean.class)
                .single();
    }

    /** What is not planned anew stays as the visit has it. */
    private record Kept(int version, @Nullable String note, int minutes, boolean byHand) {}

    private Kept kept(VisitId id, Stop stop) {
        return jdbc.sql("""
                        select v.version, v.note, v.minutes, v.minutes_by_hand and not w.minutes_taken as by_hand
                        from visits v join week_stops w on w.visit_id = v.id where v.id = ? and w.id = ?""")
                .param(id.value())
                .param(stop.id())
                .query(Kept.class)
                .single();
    }

    private void change(VisitId id, Going g, List<PersonId> people) {
        Kept kept = kept(id, g.stop());
        PlanVisit plan = new PlanVisit(
                new SiteId(g.stop().siteId()),
                VisitKind.valueOf(g.stop().kind()),
                g.day(),
                g.from(),
                g.stop().minutes(),
                people,
                weeks.tasks(g.stop()),
                kept.note(),
                kept.byHand());
        require(visits.changeWithTasks(id, kept.version(), plan), g.stop());
    }

    private static void require(boolean changed, Stop stop) {
        if (!changed) {
            throw new Conflict("The visit at " + stop.site() + " was changed at this moment. Publish once more.");
        }
    }

    private Timestamp now() {
        return Timestamp.from(clock.instant());
    }
}

package app.ramkeeper.rounds.week;

import app.ramkeeper.rounds.week.DueRow.Press;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** All that is due at a site in one visit: a visit of the plan with what else is due there, or what would make a new one. */
final class Bundle {

    static final int PROMISE = 300;
    static final int AGREED = 3_000;
    static final int CALL_OUT = 5_000;
    private static final int NOTHING_NAMED = 30;

    /** About what a drive of its own in a later week would cost; common practice, without source. */
    private static final double BROUGHT_FORWARD = 20;

    private static final double CAN_WAIT = 0.3;

    final UUID site;
    final @Nullable Appointment visit;
    final List<DueRow> tasks = new ArrayList<>();
    final List<Promise> promises = new ArrayList<>();
    private final List<Horizon.Move> moves = new ArrayList<>();
    private final LocalDate monday;
    private final LocalDate today;
    private @Nullable String works;

    /** It keeps the time that it was given, since as long as its tasks need it would not fit beside what is agreed. */
    private boolean keepsTime;

    /** The day of the visit that had no room for it. */
    private @Nullable LocalDate noRoomOn;

    Bundle(UUID site, @Nullable Appointment visit, LocalDate monday) {
        this(site, visit, monday, monday);
    }

    /** Of a week that is looked at on a day. */
    Bundle(UUID site, @Nullable Appointment visit, LocalDate monday, LocalDate today) {
        this.today = today;
        this.site = site;
        this.visit = visit;
        this.monday = monday;
    }

    /**
     * A visit that is on the plan already.
     *
     * @param call what the caller it answers said of the water, in words
     */
    record Appointment(
            UUID id,
            UUID siteId,
            String kind,
            @Nullable LocalDate plannedOn,
            @Nullable LocalTime plannedFrom,
            int minutes,
            String answer,
            String state,
            @Nullable UUID lead,
            @Nullable UUID second,
            int asked,
            @Nullable String call,
            boolean minutesByHand) {

        boolean agreed() {
            return plannedOn != null && answer.equals("CONFIRMED");
        }

        /** Multi-day works and handovers hold their day; so does what was told to the customer. */
        boolean holdsDay() {
            return plannedOn != null
                    && !answer.equals("ASKED_TO_MOVE")
                    && (agreed() || answer.equals("TOLD") || isWorks(kind));
        }
    }

    static boolean isWorks(String kind) {
        return kind.equals("INSTALLATION") || kind.equals("COMMISSIONING");
    }

    /** What was said would happen at a site. */
    record Promise(UUID siteId, String text, LocalDate dueOn, boolean promised) {}

    /** What a site asks of any visit. */
    record SiteTerms(UUID siteId, int walkMinutes, boolean confined, boolean heavy, boolean marked) {}

    /** What job its visit belongs to, in words. */
    void belongsTo(@Nullable String job) {
        works = job;
    }

    /** Which of its tasks the weeks ahead would rather have, or have given up to this one. */
    void lookAhead(Map<UUID, Horizon.Move> ofTasks) {
        tasks.stream()
                .map(t -> ofTasks.get(t.taskId()))
                .filter(Objects::nonNull)
                .forEach(moves::add);
    }

    /** What suits another week better counts little here; what was brought forward counts more. */
    private double worth(DueRow task) {
        double worth = task.worth(monday);
        return moves.stream()
                .filter(move -> move.taskId().equals(task.taskId()))
                .findFirst()
                .map(move -> move.to().equals(monday) ? worth + BROUGHT_FORWARD : worth * CAN_WAIT)
                .orElse(worth);
    }

    /**
     * Whether a task may be added. A visit that was planned without a second person or training does not get what asks for them,
     * and one that was told to the customer is made longer only by what is pressing.
     */
    boolean ridesAlong(DueRow task, Candidates.Terms terms) {
        if (visit == null) {
            return true;
        }
        boolean asksForMore = task.crew() > 1
                || !terms.skillsOfKind().getOrDefault(task.kindId(), Set.of()).isEmpty();
        Press press = task.press(monday);
        return !asksForMore && (!visit.holdsDay() || press == Press.OVERDUE || press == Press.LAST_WEEK);
    }

    /**
     * Takes out what asks for two people, so that what one may do need not wait for them; nothing where the site itself asks for
     * two, or where none of the rest is pressing.
     */
    Optional<Bundle> partForTwo(Candidates.Terms terms) {
        SiteTerms site = terms.of(this.site);
        List<DueRow> two = tasks.stream().filter(t -> forTwo(t, terms)).toList();
        boolean restPresses = tasks.stream()
                .filter(t -> !two.contains(t))
                .anyMatch(t -> t.press(monday) == Press.OVERDUE || t.press(monday) == Press.LAST_WEEK);
        if (visit != null || two.isEmpty() || !restPresses || site.confined() || site.heavy()) {
            return Optional.empty();
        }
        Bundle part = new Bundle(this.site, null, monday, today);
        part.tasks.addAll(two);
        tasks.removeAll(two);
        return Optional.of(part);
    }

    /** Leaves the visit the time that it was given. */
    void keepTime() {
        keepsTime = true;
    }

    /** Takes out what rides along on a visit that has no room for it. */
    List<DueRow> giveUpRiders() {
        List<DueRow> riders = tasks.stream().filter(t -> !isOwn(t)).toList();
        tasks.removeAll(riders);
        return riders;
    }

    /** Takes over what had no room in the visit of a day. */
    void take(List<DueRow> riders, @Nullable LocalDate day) {
        tasks.addAll(riders);
        noRoomOn = day;
    }

    private boolean isOwn(DueRow task) {
        return visit != null && visit.id().equals(task.visitId());
    }

    private static boolean forTwo(DueRow task, Candidates.Terms terms) {
        Set<String> skills = terms.skillsOfKind().getOrDefault(task.kindId(), Set.of());
        return task.crew() > 1 || skills.contains("CONFINED_SPACE") || skills.contains("LIFTING");
    }

    boolean pressing() {
        return visit != null
                || !promises.isEmpty()
                || tasks.stream().anyMatch(t -> t.press(monday) == Press.OVERDUE || t.press(monday) == Press.LAST_WEEK);
    }

    boolean onlySoon() {
        return visit == null && promises.isEmpty() && tasks.stream().allMatch(t -> t.press(monday) == Press.SOON);
    }

    double worth() {
        double sum = tasks.stream().mapToDouble(this::worth).sum();
        sum += promises.stream()
                .mapToDouble(p -> p.promised() ? PROMISE : PROMISE / 3.0)
                .sum();
        if (visit != null) {
            sum += visit.kind().equals("CALL_OUT") ? CALL_OUT : visit.holdsDay() ? AGREED : PROMISE;
        }
        return sum;
    }

    double worthADay() {
        return tasks.stream().mapToDouble(t -> t.worthADay(monday)).sum()
                + (visit != null && visit.kind().equals("CALL_OUT") ? 400 : 0);
    }

    /** The end of the first window that ends before the week does; what waits longer is late. A call-out is late from the first day. */
    @Nullable
    LocalDate lateFrom() {
        if (visit != null && visit.kind().equals("CALL_OUT")) {
            return null;
        }
        return tasks.stream()
                .filter(t -> t.pressing(monday))
                .map(DueRow::windowUntil)
                .min(Comparator.naturalOrder())
                .orElse(null);
    }

    /**
     * Time at the site with the walk in and out, in fives.
     *
     * @param given what the visit was planned with, and the tasks that ride along
     * @param asked the same, but at least as long as its own tasks need
     * @param riding how much of both is for what rides along
     */
    record Minutes(int given, int asked, int riding) {}

    /** What was typed stays as it is unless the office has taken over what the tasks ask for, and so does what has room for no more. */
    int planned(Minutes minutes, boolean taken) {
        return visit != null && (visit.minutesByHand() || keepsTime) && !taken ? minutes.given : minutes.asked;
    }

    /**
     * How long a planned visit may become.
     *
     * @param given without what rides along, as it was given
     * @param own as long as its own tasks need
     * @param full with what rides along
     */
    record Lengths(int given, int own, int full) {}

    Lengths lengths(SiteTerms terms, Map<UUID, Set<UUID>> includes, boolean taken) {
        Bundle alone = new Bundle(site, visit, monday, today);
        tasks.stream().filter(this::isOwn).forEach(alone.tasks::add);
        Minutes without = alone.minutes(terms, includes);
        int own = planned(without, taken);
        return new Lengths(taken ? own : without.given, own, planned(minutes(terms, includes), taken));
    }

    Minutes minutes(SiteTerms terms, Map<UUID, Set<UUID>> includes) {
        int riding = work(includes, false);
        int own = work(includes, true);
        int walk = 2 * terms.walkMinutes();
        if (visit == null) {
            int all = inFives(own + riding + walk);
            return new Minutes(all, all, 0);
        }
        int given = riding == 0 ? visit.minutes() : inFives(visit.minutes() + riding);
        int asked = own == 0 ? given : Math.max(given, inFives(own + walk + riding));
        return new Minutes(given, asked, riding);
    }

    /** Sum of the tasks that are the visit's own or of those that ride along, without those that another one here includes. */
    private int work(Map<UUID, Set<UUID>> includes, boolean own) {
        return tasks.stream()
                .filter(t -> own == isOwn(t))
                .filter(t -> tasks.stream()
                        .noneMatch(other -> other != t
                                && includes.getOrDefault(other.kindId(), Set.of())
                                        .contains(t.kindId())
                                && other.installId().equals(t.installId())
                                && (other.pumpId() == null || other.pumpId().equals(t.pumpId()))))
                .mapToInt(DueRow::minutes)
                .sum();
    }

    private static int inFives(int sum) {
        return Math.min(1440, Math.max(10, ((sum == 0 ? NOTHING_NAMED : sum) + 4) / 5 * 5));
    }

    Set<String> skills(SiteTerms terms, Map<UUID, Set<String>> ofKind) {
        Set<String> skills = tasks.stream()
                .flatMap(t -> ofKind.getOrDefault(t.kindId(), Set.of()).stream())
                .collect(Collectors.toCollection(TreeSet::new));
        if (terms.confined()) {
            skills.add("CONFINED_SPACE");
        }
        if (terms.heavy()) {
            skills.add("LIFTING");
        }
        return skills;
    }

    /** Never one person to a confined chamber or a heavy lift. */
    int crew(SiteTerms terms, Set<String> skills) {
        int most = tasks.stream().mapToInt(DueRow::crew).max().orElse(1);
        return terms.confined() || terms.heavy() || skills.contains("CONFINED_SPACE") || skills.contains("LIFTING")
                ? Math.max(2, most)
                : most;
    }

    @Nullable
    LocalDate dueOn() {
        return tasks.stream().map(DueRow::dueOn).min(Comparator.naturalOrder()).orElse(null);
    }

    /** The first day that something was promised by. */
    @Nullable
    LocalDate promisedOn() {
        return promises.stream()
                .filter(Promise::promised)
                .map(Promise::dueOn)
                .min(Comparator.naturalOrder())
                .orElse(null);
    }

    /** What was promised at the site and by when, in words. */
    @Nullable
    String promised() {
        return promises.isEmpty()
                ? null
                : promises.stream()
                        .limit(2)
                        .map(p -> (p.promised() ? "promised by " : "to do by ") + Times.day(p.dueOn()) + ": "
                                + (p.text().length() > 80 ? p.text().substring(0, 79) + "…" : p.text()))
                        .collect(Collectors.joining("; "));
    }

    String why() {
        List<String> parts = new ArrayList<>();
        if (visit != null) {
            parts.add(appointment(visit));
        }
        Optional.ofNullable(promised()).ifPresent(parts::add);
        tasks.stream()
                .sorted(Comparator.comparing(DueRow::windowUntil))
                .limit(2)
                .forEach(t -> parts.add(t.kind() + " " + press(t)));
        if (tasks.size() > 2) {
            parts.add((tasks.size() - 2) + " more");
        }
        if (noRoomOn != null) {
            parts.add("no room for it in the visit of " + Times.day(noRoomOn));
        }
        moves.stream()
                .limit(1)
                .forEach(m -> parts.add(
                        (m.to().equals(monday) ? "brought forward from the week of " : "can wait until the week of ")
                                + Times.day(m.to().equals(monday) ? m.from() : m.to()) + ": " + m.why()));
        return String.join("; ", parts);
    }

    private String appointment(Appointment visit) {
        String called = (visit.call() == null ? "" : visit.call() + ", ") + works(visit);
        String day = visit.plannedOn() == null ? "without a day" : "for " + Times.day(visit.plannedOn());
        return called
                + switch (visit.answer()) {
                    case "CONFIRMED" -> "confirmed " + day;
                    case "TOLD" -> "the customer was told " + day;
                    case "ASKED_TO_MOVE" -> "the customer asked to move it";
                    default -> "planned " + day;
                };
    }

    /** "installation of quote 12, Pump for the top block, " */
    private String works(Appointment visit) {
        return isWorks(visit.kind())
                ? visit.kind().toLowerCase(Locale.UK) + (works == null ? "" : " of " + works) + ", "
                : "";
    }

    private String press(DueRow task) {
        return switch (task.press(monday)) {
            case OVERDUE ->
                task.windowUntil().isBefore(today)
                        ? "due " + Times.day(task.dueOn(), monday) + ", overdue since "
                                + Times.day(task.windowUntil(), monday)
                        : "must be done by " + Times.day(task.windowUntil()) + ", before this week";
            case LAST_WEEK -> "must be done by " + Times.day(task.windowUntil());
            case IN_WINDOW -> "due " + Times.day(task.dueOn());
            case SOON -> "soon, due " + Times.day(task.dueOn());
        };
    }
}

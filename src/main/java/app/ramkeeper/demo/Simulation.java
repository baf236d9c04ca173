package app.ramkeeper.demo;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Lives one install through its years: rubbers wear by the scenario's true law, and visits find what they find. */
final class Simulation {

    private static final double DAYS_A_MONTH = 30.44;

    private final Scenario scenario;
    private final LocalDate today;

    Simulation(Scenario scenario, LocalDate today) {
        this.scenario = scenario;
        this.today = today;
    }

    List<DemoVisit> visits(DemoInstall install) {
        List<DemoVisit> visits = new ArrayList<>();
        Life life = new Life(install);
        LocalDate start =
                install.commissioned() == null ? today.minusYears(scenario.between(3, 8)) : install.commissioned();
        life.renewRubbers(start);
        if (install.commissioned() != null) {
            visits.add(visit(install, start, "COMMISSIONING", List.of(), life, null));
        }
        LocalDate last = install.neglected()
                ? today.minusDays(scenario.between(260, 640))
                : today.minusDays(scenario.between(5, 120));
        LocalDate day = next(start);
        while (!day.isAfter(last)) {
            LocalDate failed = life.failsOn();
            if (failed.isBefore(day) && failed.isBefore(last) && !failed.isBefore(start)) {
                LocalDate call = workday(failed.plusDays(scenario.between(0, 2)));
                life.renewRubbers(call);
                visits.add(visit(
                        install,
                        call,
                        "CALL_OUT",
                        List.of("CHANGE_DELIVERY_RUBBER", "CHANGE_WASTE_RUBBER", "CLEAN_STRAINER"),
                        life,
                        "BEATS_NO_WATER"));
            }
            visits.add(service(install, day, life));
            day = next(day);
        }
        visits.sort(java.util.Comparator.comparing(DemoVisit::on));
        return visits;
    }

    private DemoVisit service(DemoInstall install, LocalDate day, Life life) {
        if (scenario.chance(0.03)) {
            String reason = scenario.oneOf(List.of("LOCKED_GATE", "WEATHER", "OTHER"));
            return new DemoVisit(
                    install, day, "SERVICE", "COULD_NOT", reason, List.of(), false, 0, 0, 0, null, "Could not get in.");
        }
        List<String> works = new ArrayList<>(List.of("CLEAN_STRAINER"));
        life.dueAfter("CHECK_PRECHARGE", day, 11, works);
        life.dueAfter("INSPECT_SEALS", day, 11, works);
        life.dueAfter("FLUSH_DRIVE_PIPE", day, 23, works);
        if (install.drinking()) {
            life.dueAfter("SAMPLE_WATER", day, 11, works);
        }
        if (day.getMonthValue() == 4 || day.getMonthValue() == 5) {
            works.add("BEFORE_FROST");
        }
        if (life.rubberMonths(day) > 22 * install.rubberFactor(scenario) && scenario.chance(0.75)) {
            works.add("CHANGE_DELIVERY_RUBBER");
            works.add("CHANGE_WASTE_RUBBER");
        }
        String symptom = life.worn(day) > 0.85 ? "LESS_WATER" : scenario.chance(0.05) ? "INTAKE_BLOCKED" : null;
        DemoVisit visit = visit(install, day, "SERVICE", works, life, symptom);
        if (works.contains("CHANGE_DELIVERY_RUBBER")) {
            life.renewRubbers(day);
        }
        return visit;
    }

    private DemoVisit visit(
            DemoInstall install, LocalDate on, String kind, List<String> works, Life life, @Nullable String symptom) {
        double scatter = scenario.number("reading.scatter");
        double worn = life.worn(on);
        double share = 1 - scenario.number("flow.lost.at.life") * worn * worn;
        double drive = scenario.scattered(install.driveLMin() * life.season(on), scatter);
        double delivered = scenario.scattered(install.deliveredLMin() * life.season(on) * share, scatter);
        return new DemoVisit(
                install,
                on,
                kind,
                "DONE",
                null,
                List.copyOf(works),
                works.contains("CHANGE_DELIVERY_RUBBER"),
                drive,
                Math.min(delivered, 0.95 * drive * install.fallM() / install.liftM()),
                scenario.scattered(install.beat(), 0.015),
                symptom,
                scenario.word("note"));
    }

    private LocalDate next(LocalDate day) {
        return workday(day.plusDays(scenario.between(130, 215)));
    }

    private static LocalDate workday(LocalDate day) {
        return day.getDayOfWeek() == DayOfWeek.SATURDAY
                ? day.plusDays(2)
                : day.getDayOfWeek() == DayOfWeek.SUNDAY ? day.plusDays(1) : day;
    }

    /** What wears and what was done last. */
    private final class Life {

        private final DemoInstall install;
        private final Map<String, LocalDate> last = new HashMap<>();
        private LocalDate rubbers = LocalDate.MIN;
        private double months;

        Life(DemoInstall install) {
            this.install = install;
        }

        void renewRubbers(LocalDate day) {
            rubbers = day;
            double factor = install.rubberFactor(scenario);
            months = Math.min(scenario.life("delivery", factor), scenario.life("waste", factor));
        }

        double rubberMonths(LocalDate day) {
            return ChronoUnit.DAYS.between(rubbers, day) / DAYS_A_MONTH;
        }

        /** The share of its life that the weaker rubber has behind it. */
        double worn(LocalDate day) {
            return Math.max(0, Math.min(1.1, rubberMonths(day) / months));
        }

        LocalDate failsOn() {
            return rubbers.plusDays((long) (1.2 * months * DAYS_A_MONTH));
        }

        void dueAfter(String kind, LocalDate day, int everyMonths, List<String> works) {
            LocalDate before = last.get(kind);
            if (before == null || ChronoUnit.MONTHS.between(before, day) >= everyMonths) {
                works.add(kind);
                last.put(kind, day);
            }
        }

        /** Springs are lowest at the end of summer: late February to March in the south. */
        double season(LocalDate day) {
            return 1 + 0.06 * Math.cos(2 * Math.PI * (day.getDayOfYear() - 245) / 365.25);
        }
    }
}

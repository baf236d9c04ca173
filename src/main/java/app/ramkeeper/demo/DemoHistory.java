package app.ramkeeper.demo;

import app.ramkeeper.demo.DemoRegister.Placed;
import app.ramkeeper.shared.Uuids;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.UUID;
import java.util.random.RandomGenerator;
import org.jspecify.annotations.Nullable;

/** Nine years of visits: rubbers wear as the truth says, flow falls with them, people come when it is due, or later. */
final class DemoHistory {

    private final DemoRows rows;
    private final DemoCompany company;
    private final Wear wear;
    private final RandomGenerator random;
    private final LocalDate today;
    private final ZoneId zone;

    DemoHistory(DemoRows rows, DemoCompany company, Wear wear, RandomGenerator random, LocalDate today, ZoneId zone) {
        this.rows = rows;
        this.company = company;
        this.wear = wear;
        this.random = random;
        this.today = today;
        this.zone = zone;
    }

    /** Lives through an install's years; at one in nine the rubbers were left alone of late, though people came. */
    void live(Placed at, int number) {
        LocalDate changed = at.since();
        LocalDate looked = at.since();
        int readied = at.since().minusMonths(4).getYear();
        boolean overhauled = false;
        double life = wear.life(at.water(), random);
        long neglect = number % 9 == 5 ? 100 + random.nextInt(200) : 0;
        LocalDate day = at.since().plusDays(80 + random.nextInt(70));
        // Where the start is unknown, nothing of the first years is known either.
        if (!at.known()) {
            day = today.minusDays(200 + random.nextInt(100));
        }
        while (day.isBefore(today.minusDays(3))) {
            double age = months(changed, day);
            boolean left = neglect > 0 && day.isAfter(today.minusDays(neglect));
            boolean worn = at.known() && !left && age > life;
            boolean change = at.known() && !left && (worn || age > (at.water().equals("SILTY") ? 11 : 22));
            UUID report = report(at, workday(day), worn ? "CALL_OUT" : "SERVICE", "DONE", null, note(worn, change));
            work(report, at, "CLEAN_STRAINER", false);
            readings(report, at, at.known() ? wear.flowLeft(age, life) : 0.93);
            if (worn) {
                rows.add(
                        "findings (id, report_id, install_id, symptom, cause, action)",
                        Uuids.next(),
                        report,
                        at.install(),
                        "LESS_WATER",
                        "Delivery rubber worn through",
                        "Rubber changed");
            }
            if (change) {
                changeRubbers(report, at);
                work(report, at, "FLUSH_DRIVE_PIPE", false);
                if (!overhauled && months(at.since(), day) > 70) {
                    work(report, at, "OVERHAUL", true);
                    overhauled = true;
                }
                changed = day;
                life = wear.life(at.water(), random);
            }
            if (months(looked, day) > 10) {
                work(report, at, "CHECK_PRECHARGE", true);
                work(report, at, "INSPECT_SEALS", true);
                if (at.drinking()) {
                    work(report, at, "SAMPLE_WATER", false);
                }
                looked = day;
            }
            if (day.getMonthValue() >= 5 && day.getYear() > readied) {
                work(report, at, "BEFORE_FROST", false);
                readied = day.getYear();
            }
            day = day.plusDays(at.water().equals("SILTY") ? 45 + random.nextInt(20) : 75 + random.nextInt(40));
        }
        if (neglect > 0 && months(changed, today) > (at.water().equals("SILTY") ? 13 : 25)) {
            couldNot(at, number);
        }
    }

    private void couldNot(Placed at, int number) {
        String reason = new String[] {"LOCKED_GATE", "PARTS", "REFUSED", "WEATHER"}[number / 9 % 4];
        String note = switch (reason) {
            case "LOCKED_GATE" -> "Gate locked with a new chain, nobody answered.";
            case "PARTS" -> "The right rubber was not on the van.";
            case "REFUSED" -> "Not today: lambing below the pump.";
            default -> "Ford too deep after the rain.";
        };
        UUID report = report(at, workday(today.minusDays(20 + number % 40)), "SERVICE", "COULD_NOT", reason, note);
        for (String rubber : new String[] {"CHANGE_DELIVERY_RUBBER", "CHANGE_WASTE_RUBBER"}) {
            rows.add(
                    "report_works (id, report_id, install_id, pump_id, task_kind_id, outcome, reason)",
                    Uuids.next(),
                    report,
                    at.install(),
                    at.pump(),
                    company.taskKinds.get(rubber),
                    "COULD_NOT",
                    reason);
        }
    }

    UUID report(Placed at, LocalDate day, String kind, String outcome, @Nullable String reason, @Nullable String note) {
        UUID id = Uuids.next();
        UUID technician = company.technicians.get(random.nextInt(company.technicians.size()));
        var arrived = day.atTime(8 + random.nextInt(7), random.nextInt(60))
                .atZone(zone)
                .toInstant();
        rows.add(
                "visit_reports (id, site_id, kind, attended_on, arrived_at, left_at, recorded_at, recorded_by, outcome, reason,"
                        + " note, content_hash, source)",
                id,
                at.site(),
                kind,
                day,
                arrived,
                arrived.plusSeconds(1800 + random.nextInt(3600)),
                arrived.plusSeconds(7200),
                technician,
                outcome,
                reason,
                note,
                hash(id),
                "FORM");
        rows.add("report_people (report_id, person_id, lead)", id, technician, true);
        return id;
    }

    void work(UUID report, Placed at, String kind, boolean ofPump) {
        rows.add(
                "report_works (id, report_id, install_id, pump_id, task_kind_id, outcome)",
                Uuids.next(),
                report,
                at.install(),
                ofPump ? at.pump() : null,
                company.taskKinds.get(kind),
                "DONE");
    }

    private void changeRubbers(UUID report, Placed at) {
        work(report, at, "CHANGE_DELIVERY_RUBBER", true);
        work(report, at, "CHANGE_WASTE_RUBBER", true);
        part(report, at, at.model().deliveryRubber(), "DELIVERY_VALVE");
        part(report, at, at.model().wasteRubber(), "WASTE_VALVE");
    }

    private void part(UUID report, Placed at, UUID part, String position) {
        rows.add(
                "parts_used (id, report_id, install_id, pump_id, part_id, position, quantity, batch)",
                Uuids.next(),
                report,
                at.install(),
                at.pump(),
                part,
                position,
                1,
                "B" + (20 + random.nextInt(6)) + "-2");
    }

    private void readings(UUID report, Placed at, double left) {
        double drive = wear.read(at.driveFlow(), random);
        double delivered = wear.read(at.delivered() * left, random);
        reading(report, at, "DRIVE_FLOW", "PUMP", drive, "LITRE_PER_MINUTE", drive / 60_000);
        reading(report, at, "DELIVERED_FLOW", "TANK", delivered, "LITRE_PER_MINUTE", delivered / 60_000);
        double beats = 45 + random.nextInt(30);
        reading(report, at, "BEAT_RATE", "PUMP", beats, "PER_MINUTE", beats / 60);
    }

    private void reading(UUID report, Placed at, String quantity, String place, double value, String unit, double si) {
        rows.add(
                "readings (id, report_id, install_id, pump_id, quantity, place, value, unit, value_si)",
                Uuids.next(),
                report,
                at.install(),
                at.pump(),
                quantity,
                place,
                value,
                unit,
                si);
    }

    private @Nullable String note(boolean worn, boolean change) {
        if (worn) {
            return "Rang: less water at the tank. Rubber worn through; changed both.";
        }
        if (change) {
            return "Both rubbers changed, beat even again.";
        }
        return switch (random.nextInt(12)) {
            case 0 -> "Leaves on the intake.";
            case 1 -> "Stock at the spring again; fence wants mending.";
            case 2 -> "Owner shown how to clear the strainer.";
            default -> null;
        };
    }

    LocalDate workday(LocalDate day) {
        return day.getDayOfWeek().getValue() > 5 ? day.minusDays(2) : day;
    }

    private static double months(LocalDate from, LocalDate until) {
        return (until.toEpochDay() - from.toEpochDay()) / 30.44;
    }

    private static byte[] hash(UUID id) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(id.toString().getBytes(StandardCharsets.UTF_8));
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}

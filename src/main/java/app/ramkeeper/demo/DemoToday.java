package app.ramkeeper.demo;

import app.ramkeeper.demo.DemoRegister.Placed;
import app.ramkeeper.shared.Uuids;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.JdbcTemplate;

/** What waits today: calls, each technician's visits, promises, a loan, a dry source, a battery of two. */
final class DemoToday {

    private final DemoRows rows;
    private final DemoCompany company;
    private final DemoRegister register;
    private final LocalDate today;
    private final ZoneId zone;
    private final Instant now;

    DemoToday(DemoRows rows, DemoCompany company, DemoRegister register, LocalDate today, ZoneId zone, Instant now) {
        this.rows = rows;
        this.company = company;
        this.register = register;
        this.today = today;
        this.zone = zone;
        this.now = now;
    }

    void add(JdbcTemplate jdbc, DemoHistory history) {
        calls();
        visits(jdbc);
        promises(history);
        rows.write(jdbc);
        standing(jdbc);
    }

    private void calls() {
        call(11, 2, "LESS_WATER", 30.0, false, "Clean the strainer; look whether the float at the tank is open.");
        call(37, 5, "STOPPED_OPEN", 6.0, true, "Hold the waste valve shut with a stick for ten beats, fingers away.");
        call(80, 26, "UNEVEN_BEAT", null, false, null);
    }

    private void call(
            int install, int hoursAgo, String symptom, @Nullable Double left, boolean stock, @Nullable String advice) {
        Placed at = register.installs.get(install);
        rows.add(
                "calls (id, received_at, taken_by, site_id, install_id, caller, phone, symptom, water_hours_left, stock_dry,"
                        + " advice, promise, promised_by)",
                Uuids.next(),
                now.minusSeconds(3600L * hoursAgo),
                company.office,
                at.site(),
                at.install(),
                at.customer(),
                DemoRegister.phone(install),
                symptom,
                left,
                stock,
                advice,
                "Somebody comes tomorrow at the latest.",
                now.plusSeconds(3600L * 20));
    }

    private void visits(JdbcTemplate jdbc) {
        DemoRounds days = new DemoRounds(jdbc);
        for (int t = 0; t < company.technicians.size(); t++) {
            UUID depot = company.depots.get(t % 2);
            UUID technician = company.technicians.get(t);
            List<DemoRounds.Stop> stops = days.day(depot, 4);
            for (int i = 0; i < stops.size(); i++) {
                visit(stops.get(i).site(), today, stops.get(i).from(), technician, i == 3 ? "NO_ANSWER" : "CONFIRMED");
            }
            for (int day = 1; day < 6; day++) {
                LocalDate on = today.plusDays(day);
                if (on.getDayOfWeek().getValue() < 6) {
                    String answer = day % 2 == 0 ? "TOLD" : "NONE";
                    days.day(depot, 2).forEach(stop -> visit(stop.site(), on, stop.from(), technician, answer));
                }
            }
        }
        // A gate that was locked three times: the office rings first.
        Placed locked = register.installs.get(59);
        UUID visit =
                visit(locked.site(), today.plusDays(8), LocalTime.of(13, 0), company.technicians.get(1), "NO_ANSWER");
        for (int i = 1; i <= 3; i++) {
            rows.add(
                    "visit_attempts (id, visit_id, at, by_person, how, outcome, note)",
                    Uuids.next(),
                    visit,
                    today.minusDays(2L * i).atTime(17, 0).atZone(zone).toInstant(),
                    company.office,
                    "PHONE",
                    "NO_ANSWER",
                    "Rang out.");
        }
    }

    private UUID visit(UUID site, LocalDate day, LocalTime from, UUID technician, String answer) {
        UUID id = Uuids.next();
        rows.add(
                "visits (id, site_id, kind, planned_on, planned_from, minutes, answer, office_must_ring, note)",
                id,
                site,
                "SERVICE",
                day,
                from,
                DemoRounds.MINUTES,
                answer,
                "NO_ANSWER".equals(answer),
                "NO_ANSWER".equals(answer) ? "Ring before driving: the gate was locked last time." : null);
        rows.add("visit_people (visit_id, person_id, lead)", id, technician, true);
        if ("TOLD".equals(answer) || "CONFIRMED".equals(answer)) {
            rows.add(
                    "visit_attempts (id, visit_id, at, by_person, how, outcome, note)",
                    Uuids.next(),
                    id,
                    today.minusDays(2).atTime(16, 0).atZone(zone).toInstant(),
                    company.office,
                    "PHONE",
                    answer,
                    null);
        }
        return id;
    }

    private void promises(DemoHistory history) {
        List<String> said = List.of(
                "Bring a longer hose for the top trough.", "Send the reading of the tank to the owner.",
                "Come back with the right seal set.", "Mend the fence at the spring box.");
        for (int i = 0; i < said.size(); i++) {
            Placed at = register.installs.get(20 + i * 50);
            UUID report = history.report(at, history.workday(today.minusDays(12 + i)), "SERVICE", "PARTLY", null, null);
            history.work(report, at, "CLEAN_STRAINER", false);
            rows.add(
                    "follow_ups (id, report_id, site_id, text, due_on, promised)",
                    Uuids.next(),
                    report,
                    at.site(),
                    said.get(i),
                    today.plusDays(2L * i - 1),
                    true);
        }
    }

    /** A dry source, a stopped ram with a loan in its place, two pumps on one drive tank. */
    private void standing(JdbcTemplate jdbc) {
        state(
                jdbc,
                register.installs.get(71),
                "NO_WATER",
                33,
                "The spring has dried up; stock moved to the lower paddocks.");
        state(jdbc, register.installs.get(143), "DORMANT", 60, "Shut down for the season by the owner.");
        Placed swapped = register.installs.get(102);
        UUID loan = register.pump(swapped.model(), "COMPANY");
        Placed pair = register.installs.get(150);
        UUID second = register.pump(pair.model(), "CUSTOMER");
        rows.write(jdbc);
        LocalDate since = today.minusDays(18);
        jdbc.update("update pump_fittings set until_date = ? where pump_id = ?", since, swapped.pump());
        rows.add(
                "pump_fittings (id, pump_id, place, from_date, reason)",
                Uuids.next(),
                swapped.pump(),
                "WORKSHOP",
                since,
                "Shaft worn; overhaul");
        rows.add(
                "pump_fittings (id, pump_id, place, install_id, place_no, from_date, reason)",
                Uuids.next(),
                loan,
                "LOAN",
                swapped.install(),
                1,
                since,
                "While the customer's own is in the workshop");
        rows.add(
                "pump_fittings (id, pump_id, place, install_id, place_no, from_date, reason)",
                Uuids.next(),
                second,
                "INSTALL",
                pair.install(),
                2,
                today.minusDays(400),
                "Second pump on the same drive tank");
        rows.write(jdbc);
    }

    private void state(JdbcTemplate jdbc, Placed at, String state, int days, String reason) {
        LocalDate since = today.minusDays(days);
        jdbc.update(
                "update running_states set until_date = ? where install_id = ? and until_date is null",
                since,
                at.install());
        jdbc.update(
                "insert into running_states (id, install_id, state, from_date, reason) values (?, ?, ?, ?, ?)",
                Uuids.next(),
                at.install(),
                state,
                since,
                reason);
    }
}

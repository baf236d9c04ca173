package app.ramkeeper.demo;

import app.ramkeeper.shared.Uuids;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.random.RandomGenerator;

/** Customers, their sites and the installs on them. */
final class DemoRegister {

    /** An install with what its simulation needs; the first day is null where nobody knows it. */
    record Placed(
            UUID install,
            UUID site,
            UUID pump,
            DemoCompany.Model model,
            String water,
            LocalDate since,
            boolean known,
            double driveFlow,
            double delivered,
            double pressureBar,
            boolean drinking,
            String customer) {}

    final List<Placed> installs = new ArrayList<>();
    final List<UUID> catchments = new ArrayList<>();
    private final DemoRows rows;
    private final DemoCompany company;
    private final RandomGenerator random;
    private final Names names;
    private final LocalDate today;
    private int serial = 1000;

    DemoRegister(DemoRows rows, DemoCompany company, Wear wear, RandomGenerator random, LocalDate today) {
        this.rows = rows;
        this.company = company;
        this.random = random;
        this.names = new Names(random);
        this.today = today;
        for (int i = 0; i < Names.VALLEYS.size(); i++) {
            UUID id = Uuids.next();
            rows.add("catchments (id, name, biosecurity)", id, Names.VALLEYS.get(i), i == 4 ? "WEED" : "CLEAN");
            catchments.add(id);
        }
        int customers = wear.count("customers");
        int left = wear.count("installs");
        for (int i = 0; i < customers; i++) {
            int here = Math.min(left - (customers - 1 - i), i % 3 == 0 ? 2 : 1);
            customer(i, here, wear.count("years"));
            left -= here;
        }
    }

    private void customer(int number, int installsHere, int years) {
        String farm = names.farm();
        String owner = names.person();
        UUID customer = Uuids.next();
        rows.add(
                "customers (id, reference, name, billing_address, phone, email)",
                customer,
                "C%03d".formatted(number + 1),
                owner,
                farm + ", " + Names.VALLEYS.get(number % 6),
                phone(number),
                "c%03d@farms.example".formatted(number + 1));
        UUID site = Uuids.next();
        int valley = number % 6;
        int depot = valley < 3 ? 0 : 1;
        boolean lost = number % 30 == 17;
        String water =
                List.of("CLEAR", "CLEAR", "PEATY", "SILTY", "HARD", "CLEAR").get(random.nextInt(6));
        boolean drinking = random.nextInt(4) == 0;
        rows.add(
                "sites (id, reference, name, locality, catchment_id, depot_id, latitude, longitude, altitude_m, way_in, gate,"
                        + " walk_minutes, source_kind, water_class, drinking_water)",
                site,
                "S%03d".formatted(number + 1),
                farm,
                Names.VALLEYS.get(valley),
                catchments.get(valley),
                company.depots.get(depot),
                lost ? null : -45.18 + depot * 0.26 + random.nextGaussian() * 0.09,
                lost ? null : 169.32 + depot * 0.39 + random.nextGaussian() * 0.12,
                200.0 + random.nextInt(500),
                names.pick(List.of(
                        "Past the woolshed, second gate on the left, then down the fence line to the willows.",
                        "Up the farm track to the yards; on foot from there along the race.",
                        "From the road bridge follow the true left bank for ten minutes.",
                        "Ring the house first; the track is soft after rain.")),
                number % 9 == 4 ? "Combination " + (1000 + random.nextInt(9000)) + ", ask again each spring" : null,
                5 + random.nextInt(25),
                random.nextInt(3) == 0 ? "STREAM" : "SPRING",
                water,
                drinking);
        rows.add("site_parties (id, site_id, part, customer_id)", Uuids.next(), site, "OWNER", customer);
        rows.add("site_parties (id, site_id, part, customer_id)", Uuids.next(), site, "PAYER", customer);
        if (number % 5 == 0) {
            hazard(site, "DOG", "Two dogs, loud, tied up if rung before.");
        }
        if (number % 7 == 3) {
            hazard(site, "STEEP", "Wet clay below the fence; use the rope.");
        }
        if (number % 11 == 2) {
            hazard(site, "NO_SIGNAL", "None from the gate on.");
        }
        if (number % 4 == 1) {
            rows.add(
                    "consents (id, site_id, kind, number, limit_l_day, granted_on, expires_on)",
                    Uuids.next(),
                    site,
                    "TAKE",
                    "WT-%04d".formatted(2100 + number),
                    20000.0,
                    today.minusYears(6),
                    today.plusDays(40 + 37L * (number % 40)));
        }
        for (int i = 0; i < installsHere; i++) {
            install(site, i, owner, water, drinking, number, years);
        }
        if (number % 3 == 1) {
            UUID agreement = Uuids.next();
            rows.add(
                    "agreements (id, customer_id, number, from_date, covers, price, renewal_on)",
                    agreement,
                    customer,
                    "A%03d".formatted(number),
                    today.minusYears(2),
                    "Yearly service, parts at cost",
                    new java.math.BigDecimal(280 + 20 * (number % 9)),
                    today.plusDays(15 + number));
            rows.add(
                    "agreement_installs (agreement_id, install_id)",
                    agreement,
                    installs.get(installs.size() - 1).install());
        }
    }

    private void hazard(UUID site, String kind, String text) {
        rows.add("site_hazards (id, site_id, kind, text)", Uuids.next(), site, kind, text);
    }

    private void install(UUID site, int number, String owner, String water, boolean drinking, int customer, int years) {
        DemoCompany.Model model =
                company.models.get(Math.min(3, random.nextInt(5) * random.nextInt(2) + random.nextInt(2)));
        boolean known = customer % 15 != 8;
        LocalDate since = today.minusDays(120 + random.nextInt(365 * years - 150));
        double fall = Math.round((1.5 + random.nextDouble() * 5) * 10) / 10.0;
        double lift = Math.round(fall * (5 + random.nextDouble() * 7) * 10) / 10.0;
        double drive = Math.round(model.flowMin() + random.nextDouble() * (model.flowMax() - model.flowMin()) * 0.7);
        double delivered = Math.round((0.5 + random.nextDouble() * 0.15) * drive * fall / lift * 100) / 100.0;
        UUID install = Uuids.next();
        rows.add(
                "installs (id, site_id, reference, name, commissioned_on, commissioning_known)",
                install,
                site,
                "R%03d%s".formatted(customer + 1, number == 0 ? "" : "b"),
                number == 0 ? "House and troughs" : "Top tank",
                known ? since : null,
                known);
        UUID configuration = Uuids.next();
        rows.add(
                "configurations (id, install_id, from_date, fall_m, lift_m, drive_pipe_material, drive_pipe_bore_mm,"
                        + " drive_pipe_length_m, delivery_pipe, delivery_pipe_bore_mm, delivery_pipe_length_m, valve_setting,"
                        + " design_drive_flow_l_min, design_delivered_l_min, vessel_precharge_bar)",
                configuration,
                install,
                known ? since : null,
                fall,
                lift,
                "Steel",
                model.boreMm(),
                Math.rint(fall * 5),
                "PE 12 bar",
                25.0,
                120.0 + random.nextInt(900),
                turnsOpen(1 + random.nextInt(4)),
                drive,
                delivered,
                Math.max(0.5, Math.round((lift / 10.2 - 0.5) * 10) / 10.0));
        if (known) {
            rows.add(
                    "baselines (id, configuration_id, taken_on, drive_flow_si, delivered_flow_si)",
                    Uuids.next(),
                    configuration,
                    since,
                    drive / 60_000,
                    delivered / 60_000);
        }
        rows.add(
                "running_states (id, install_id, state, from_date)",
                Uuids.next(),
                install,
                "RUNNING",
                known ? since : null);
        UUID pump = pump(model, "CUSTOMER");
        rows.add(
                "pump_fittings (id, pump_id, place, install_id, place_no, from_date)",
                Uuids.next(),
                pump,
                "INSTALL",
                install,
                1,
                known ? since : null);
        installs.add(new Placed(
                install, site, pump, model, water, since, known, drive, delivered, lift / 10.2, drinking, owner));
    }

    UUID pump(DemoCompany.Model model, String ownership) {
        UUID pump = Uuids.next();
        rows.add("pumps (id, serial, model_id, ownership)", pump, "LW" + serial++, model.id(), ownership);
        return pump;
    }

    private static String turnsOpen(int turns) {
        return turns == 1 ? "1 turn open" : turns + " turns open";
    }

    static String phone(int number) {
        return "00 555 1%03d".formatted(number);
    }
}

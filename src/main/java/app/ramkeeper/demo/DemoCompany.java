package app.ramkeeper.demo;

import app.ramkeeper.shared.Uuids;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.jdbc.core.JdbcTemplate;

/** Longspur Water itself: its depots, people, pump models and parts. */
final class DemoCompany {

    /** A pump model with the part numbers of its two rubbers. */
    record Model(
            UUID id,
            String name,
            double boreMm,
            double flowMin,
            double flowMax,
            double liftMax,
            UUID deliveryRubber,
            UUID wasteRubber) {}

    final List<UUID> depots = new ArrayList<>();
    final List<UUID> technicians = new ArrayList<>();
    final Map<String, UUID> taskKinds = new LinkedHashMap<>();
    final List<Model> models = new ArrayList<>();
    final UUID office;
    private int people = 1;

    DemoCompany(JdbcTemplate jdbc, DemoRows rows, LocalDate today) {
        jdbc.update(
                "update company set name = 'Longspur Water', address = '4 Weir Road, Longspur', phone = '00 555 0100',"
                        + " email = 'office@longspur.example'");
        jdbc.query("select id, code from task_kinds", row -> {
            taskKinds.put(row.getString("code"), row.getObject("id", UUID.class));
        });
        depots.add(depot(rows, "Longspur", -45.18, 169.32, 210));
        depots.add(depot(rows, "Kettle Bridge", -44.92, 169.71, 340));
        rows.write(jdbc);
        office = person(jdbc, "Marama Teal", 0);
        person(jdbc, "Isla Fennimore", 0);
        person(jdbc, "Ruben Oake", 0);
        for (String name : List.of("Jonty Brack", "Piripi Sandell", "Elspeth Corrie", "Anton Vesk")) {
            UUID technician = person(jdbc, name, technicians.size() % 2);
            technicians.add(technician);
            for (String skill : List.of("LIFTING", "PRESSURE", "FIRST_AID")) {
                if (!skill.equals("LIFTING") || technicians.size() != 3) {
                    rows.add("person_skills (person_id, skill)", technician, skill);
                }
            }
        }
        model(rows, "Wren 25", 25, 6, 30, 12, 60);
        model(rows, "Dipper 40", 40, 20, 70, 22, 90);
        model(rows, "Heron 50", 50, 35, 120, 34, 110);
        model(rows, "Bittern 80", 80, 90, 300, 78, 130);
        model(rows, "Kingfisher 32", 32, 12, 45, 16, 80);
        model(rows, "Crake 65", 65, 60, 200, 52, 120);
        stock(rows, today);
        rows.write(jdbc);
    }

    private static UUID depot(DemoRows rows, String name, double latitude, double longitude, double altitude) {
        UUID id = Uuids.next();
        rows.add("depots (id, name, latitude, longitude, altitude_m)", id, name, latitude, longitude, altitude);
        return id;
    }

    /** The trial's accounts have made some of these people already. */
    private UUID person(JdbcTemplate jdbc, String name, int depot) {
        List<UUID> known = jdbc.queryForList("select id from people where name = ?", UUID.class, name);
        UUID id = known.isEmpty() ? Uuids.next() : known.get(0);
        if (known.isEmpty()) {
            jdbc.update("insert into people (id, name) values (?, ?)", id, name);
        }
        int number = people++;
        jdbc.update(
                "update people set depot_id = ?, phone = ?, vehicle = ?, next_of_kin = ?, next_of_kin_phone = ? where id = ?",
                depots.get(depot),
                "00 555 02%02d".formatted(number),
                "white van RK %d".formatted(number),
                "the family of " + name,
                "00 555 03%02d".formatted(number),
                id);
        return id;
    }

    private void model(
            DemoRows rows, String name, double bore, double flowMin, double flowMax, double mass, double lift) {
        UUID id = Uuids.next();
        rows.add(
                "pump_models (id, name, drive_bore_mm, fall_min_m, fall_max_m, lift_max_m, drive_flow_min_l_min,"
                        + " drive_flow_max_l_min, max_pressure_bar, mass_kg, vessel_kind)",
                id,
                name,
                bore,
                1,
                12,
                lift,
                flowMin,
                flowMax,
                25,
                mass,
                "BLADDER");
        UUID delivery = part(rows, id, name, "DELIVERY_VALVE", "Delivery valve rubber", "VALVE_RUBBER", "D");
        UUID waste = part(rows, id, name, "WASTE_VALVE", "Waste valve rubber", "VALVE_RUBBER", "W");
        part(rows, id, name, "SEAL", "Seal set", "SEAL", "S");
        part(rows, id, name, "STRAINER", "Strainer", "STRAINER", "F");
        models.add(new Model(id, name, bore, flowMin, flowMax, lift, delivery, waste));
    }

    private static UUID part(
            DemoRows rows, UUID model, String modelName, String position, String name, String kind, String letter) {
        UUID id = Uuids.next();
        String number = modelName.substring(0, 2).toUpperCase(java.util.Locale.ROOT) + "-" + letter
                + modelName.replaceAll("\\D", "");
        rows.add("parts (id, number, name, kind, drinking_water_fit)", id, number, name + " " + modelName, kind, true);
        rows.add("pump_model_parts (model_id, part_id, position, quantity)", model, id, position, 1);
        return id;
    }

    private void stock(DemoRows rows, LocalDate today) {
        List<UUID> places = new ArrayList<>();
        for (int i = 0; i < depots.size(); i++) {
            places.add(place(rows, "DEPOT", depots.get(i), null, i == 0 ? "Longspur store" : "Kettle Bridge store"));
        }
        List<String> vans = List.of("Jonty's van", "Piripi's van", "Elspeth's van", "Anton's van");
        for (int i = 0; i < vans.size(); i++) {
            places.add(place(rows, "VAN", null, technicians.get(i), vans.get(i)));
        }
        for (int p = 0; p < places.size(); p++) {
            for (Model model : models) {
                for (UUID part : List.of(model.deliveryRubber(), model.wasteRubber())) {
                    rows.add(
                            "stock_movements (id, part_id, place_id, quantity, batch, at, by_person, reason)",
                            Uuids.next(),
                            part,
                            places.get(p),
                            p < 2 ? 24 : 3,
                            "B" + (today.getYear() % 100) + "-1",
                            today.minusDays(20)
                                    .atStartOfDay(java.time.ZoneOffset.UTC)
                                    .toInstant(),
                            office,
                            "RECEIVED");
                }
            }
        }
    }

    private static UUID place(
            DemoRows rows,
            String kind,
            @org.jspecify.annotations.Nullable UUID depot,
            @org.jspecify.annotations.Nullable UUID person,
            String name) {
        UUID id = Uuids.next();
        rows.add("stock_places (id, kind, depot_id, person_id, name)", id, kind, depot, person, name);
        return id;
    }
}

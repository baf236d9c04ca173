package app.ramkeeper.demo;

import app.ramkeeper.demo.DemoRegister.Placed;
import app.ramkeeper.shared.Uuids;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What sits where in some installs: rubbers with their batch, strainers, vessels, gauges. */
final class DemoComponents {

    private static final int EVERY = 12;

    private final DemoRows rows;
    private final LocalDate today;

    DemoComponents(DemoRows rows, LocalDate today) {
        this.rows = rows;
        this.today = today;
    }

    void add(DemoRegister register) {
        for (int i = 0; i < register.installs.size(); i += EVERY) {
            fit(register.installs.get(i), today.minusDays(90 + i));
        }
    }

    private void fit(Placed at, LocalDate lately) {
        LocalDate first = at.known() ? at.since() : null;
        LocalDate changed = first == null || first.isBefore(lately) ? lately : null;
        row(at, null, "STRAINER", null, first, null, null, "Basket, 4 mm holes");
        row(
                at,
                at.pump(),
                "VESSEL",
                null,
                first,
                null,
                "V" + at.pump().toString().substring(24),
                "Bladder, 24 l");
        row(at, at.pump(), "GAUGE", null, first, null, null, "0 to 25 bar");
        row(at, at.pump(), "DELIVERY_VALVE", at.model().deliveryRubber(), first, changed, null, null);
        row(at, at.pump(), "WASTE_VALVE", at.model().wasteRubber(), first, null, null, null);
        if (changed != null) {
            row(at, at.pump(), "DELIVERY_VALVE", at.model().deliveryRubber(), changed, null, null, null);
        }
    }

    private void row(
            Placed at,
            @Nullable UUID pump,
            String position,
            @Nullable UUID part,
            @Nullable LocalDate fitted,
            @Nullable LocalDate removed,
            @Nullable String serial,
            @Nullable String note) {
        rows.add(
                "components (id, install_id, pump_id, position, part_id, fitted_on, fitted_known, removed_on, batch, serial, note)",
                Uuids.next(),
                at.install(),
                pump,
                position,
                part,
                fitted,
                fitted != null,
                removed,
                part == null || fitted == null ? null : "B" + fitted.getYear() % 100 + "-1",
                serial,
                note);
    }
}

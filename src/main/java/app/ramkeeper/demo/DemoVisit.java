package app.ramkeeper.demo;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** One simulated attendance. */
record DemoVisit(
        DemoInstall install,
        LocalDate on,
        String kind,
        String outcome,
        @Nullable String reason,
        List<String> works,
        boolean rubbersChanged,
        double driveLMin,
        double deliveredLMin,
        double beat,
        @Nullable String symptom,
        String note) {}

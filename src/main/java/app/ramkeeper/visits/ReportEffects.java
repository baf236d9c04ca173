package app.ramkeeper.visits;

import app.ramkeeper.identity.PersonId;
import app.ramkeeper.visits.stock.StockLedger;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** What follows from a report in the same transaction: the visit's state, stock, things left to do, water records, the baseline, the events. */
@Component
class ReportEffects {

    private final VisitRepository visits;
    private final WorkQueries works;
    private final StockLedger stock;
    private final LockedGates gates;
    private final Commissioning commissioning;
    private final WaterStore water;
    private final JdbcClient jdbc;
    private final ApplicationEventPublisher events;

    ReportEffects(
            VisitRepository visits,
            WorkQueries works,
            StockLedger stock,
            LockedGates gates,
            Commissioning commissioning,
            WaterStore water,
            JdbcClient jdbc,
            ApplicationEventPublisher events) {
        this.visits = visits;
        this.works = works;
        this.stock = stock;
        this.gates = gates;
        this.commissioning = commissioning;
        this.water = water;
        this.jdbc = jdbc;
        this.events = events;
    }

    void apply(RecordVisit command, List<UUID> partIds, PersonId by) {
        if (command.visit() != null) {
            Visit visit = visits.findById(command.visit().value()).orElseThrow();
            visit.reported(command.outcome());
            visits.saveAndFlush(visit);
        }
        if (command.source() != ReportSource.IMPORT) {
            stock.use(used(command, partIds), command.id().value(), command.people(), by);
        }
        if (command.supersedes() != null) {
            carryDoneFollowUps(command.supersedes(), command.id());
            water.carry(command.supersedes(), command);
        }
        water.keep(command);
        gates.markPlanned(command.site());
        commissioning.apply(command);
        events.publishEvent(new VisitReported(
                command.id(),
                command.site(),
                command.kind(),
                command.attendedOn(),
                works.worksIn(command.id()),
                works.partsIn(command.id())));
    }

    void undo(Superseding.Old old, PersonId by) {
        stock.giveBack(old.id().value(), by);
        events.publishEvent(
                new ReportSuperseded(old.id(), old.site(), works.worksIn(old.id()), works.partsIn(old.id())));
    }

    private static List<StockLedger.Used> used(RecordVisit command, List<UUID> partIds) {
        List<StockLedger.Used> used = new ArrayList<>();
        for (int i = 0; i < partIds.size(); i++) {
            RecordVisit.PartUsed part = command.parts().get(i);
            if (part.part() != null) {
                used.add(new StockLedger.Used(partIds.get(i), part.part(), part.quantity(), part.batch()));
            }
        }
        return used;
    }

    private void carryDoneFollowUps(ReportId old, ReportId corrected) {
        jdbc.sql("""
                        update follow_ups n set done_on = o.done_on, done_report_id = o.done_report_id
                        from follow_ups o
                        where n.report_id = :corrected and o.report_id = :old and o.text = n.text and o.done_on is not null""")
                .param("corrected", corrected.value())
                .param("old", old.value())
                .update();
    }
}

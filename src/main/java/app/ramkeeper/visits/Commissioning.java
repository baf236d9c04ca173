package app.ramkeeper.visits;

import app.ramkeeper.fleet.BaselineDetails;
import app.ramkeeper.fleet.Baselines;
import app.ramkeeper.fleet.Fleet;
import app.ramkeeper.fleet.InstallCard;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.InstallWorks;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.web.Say;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** What a commissioning visit means for the register: the install is handed over, its readings become the baseline. */
@Component
class Commissioning {

    private final Fleet fleet;
    private final InstallWorks works;
    private final Baselines baselines;
    private final JdbcClient jdbc;

    Commissioning(Fleet fleet, InstallWorks works, Baselines baselines, JdbcClient jdbc) {
        this.fleet = fleet;
        this.works = works;
        this.baselines = baselines;
        this.jdbc = jdbc;
    }

    void apply(RecordVisit command) {
        if (command.kind() == VisitKind.COMMISSIONING && command.outcome() == ReportOutcome.DONE) {
            RecordVisit.Commissioned said = command.commissioned();
            Set<InstallId> installs = PutToWork.installs(command);
            // Where more than one install was commissioned nobody knows whose setting it is.
            String setting = said == null || installs.size() != 1 ? null : said.setting();
            installs.forEach(install -> apply(command, install, setting));
        }
    }

    private void apply(RecordVisit command, InstallId id, @Nullable String setting) {
        InstallCard install = fleet.install(id);
        if (install.retiredOn() != null && command.source() != ReportSource.IMPORT) {
            throw new Conflict("This install was retired on " + Say.day(install.retiredOn()) + ".");
        }
        if (install.commissionedOn() == null && install.commissioningKnown()) {
            works.commission(id, command.attendedOn(), null);
        }
        ReportId corrects = command.supersedes();
        baselines.keep(
                id,
                new Baselines.Found(
                        command.attendedOn(),
                        baseline(command, id).orElse(null),
                        newerSetting(id, command) ? null : setting,
                        corrects == null ? null : corrects.value()));
        if (install.pumps().isEmpty() && command.source() != ReportSource.IMPORT) {
            askForPump(command, install.name());
        }
    }

    private static final String WITHOUT = "Register: no pump stands in ";

    static boolean asksForPump(String left) {
        return left.startsWith(WITHOUT);
    }

    /** No report is refused for it: what somebody has to put right is left to do. */
    private void askForPump(RecordVisit command, String install) {
        RecordVisit.Commissioned said = command.commissioned();
        String named = said == null || said.pump() == null
                ? "nobody named the one that was put to work: ask for model and serial, and fit it"
                : "fit the one that was put to work: " + said.pump();
        jdbc.sql("""
                        insert into follow_ups (id, report_id, site_id, text, promised)
                        select :id, :report, r.site_id, :asks || :named, false from visit_reports r where r.id = :report
                          and not exists (select from follow_ups f where f.report_id = :report and starts_with(f.text, :asks))""")
                .param("id", Uuids.next())
                .param("report", command.id().value())
                .param("asks", WITHOUT + install + "; ")
                .param("named", named)
                .update();
    }

    /** A later commissioning of the same configuration wrote its setting down already. */
    private boolean newerSetting(InstallId id, RecordVisit command) {
        return jdbc.sql("""
                        select exists (select from current_reports r join visit_reports v on v.id = r.id
                          where v.commissioned_install_id = :install and v.valve_setting is not null
                            and v.attended_on > :on and v.id <> :report
                            and exists (select from configurations c where c.install_id = :install
                              and daterange(c.from_date, c.until_date) @> cast(:on as date)
                              and daterange(c.from_date, c.until_date) @> v.attended_on))""")
                .param("install", id.value())
                .param("on", command.attendedOn())
                .param("report", command.id().value())
                .query(Boolean.class)
                .single();
    }

    /** The comparable readings as a baseline, if there is one and the flows are possible together. */
    static Optional<BaselineDetails> baseline(RecordVisit command, InstallId install) {
        Double drive = PutToWork.read(command, install, Quantity.DRIVE_FLOW);
        Double delivered = PutToWork.read(command, install, Quantity.DELIVERED_FLOW);
        Double beat = PutToWork.read(command, install, Quantity.BEAT_RATE);
        Double pressure = PutToWork.read(command, install, Quantity.DELIVERY_PRESSURE);
        boolean none = drive == null && delivered == null && beat == null && pressure == null;
        boolean impossible = drive != null && delivered != null && delivered >= drive;
        return none || impossible
                ? Optional.empty()
                : Optional.of(new BaselineDetails(
                        command.attendedOn(),
                        drive,
                        delivered,
                        beat,
                        pressure,
                        command.id().value()));
    }
}

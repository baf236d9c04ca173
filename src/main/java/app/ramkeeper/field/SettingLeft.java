package app.ramkeeper.field;

import app.ramkeeper.fleet.Fleet;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.InstallWorks;
import app.ramkeeper.shared.Text;
import app.ramkeeper.visits.ReportOutcome;
import app.ramkeeper.visits.VisitKind;
import app.ramkeeper.visits.VisitReported;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.context.event.EventListener;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/** Writes the valve setting that a commissioning left behind into the configuration in force. */
@Component
class SettingLeft {

    /** As long as the desk's form takes it. */
    private static final int LONGEST = 200;

    private final Fleet fleet;
    private final InstallWorks works;
    private final JdbcClient jdbc;
    private final JsonMapper json;

    SettingLeft(Fleet fleet, InstallWorks works, JdbcClient jdbc, JsonMapper json) {
        this.fleet = fleet;
        this.works = works;
        this.jdbc = jdbc;
        this.json = PhoneVisits.reader(json);
    }

    /** The setting as it is kept, empty if none was typed or nothing was commissioned. */
    static Optional<String> of(PhoneVisit visit) {
        boolean commissioned = visit.kind() == VisitKind.COMMISSIONING && visit.outcome() == ReportOutcome.DONE;
        return Optional.ofNullable(commissioned ? Text.clean(visit.leftSetting()) : null)
                .filter(setting -> !setting.isEmpty());
    }

    /** @throws app.ramkeeper.visits.ReportRefused if the register has no room for it */
    static void requireShort(PhoneVisit visit) {
        of(visit).filter(setting -> setting.length() > LONGEST).ifPresent(setting -> {
            throw Intake.refused(
                    "leftSetting", "The valve setting is longer than " + LONGEST + " characters: say it shorter.");
        });
    }

    /** Where more than one install was worked on nobody knows whose setting it is: only the record names it. */
    void keep(PhoneVisit visit) {
        List<UUID> installs = installs(visit);
        of(visit)
                .filter(setting -> installs.size() == 1)
                .ifPresent(setting -> fleet.configurationOn(new InstallId(installs.get(0)), visit.on())
                        .ifPresent(set -> works.keepValveSetting(set.id(), setting)));
    }

    private static List<UUID> installs(PhoneVisit visit) {
        List<PhoneVisit.Work> works = visit.works() == null ? List.of() : visit.works();
        List<PhoneVisit.Reading> readings = visit.readings() == null ? List.of() : visit.readings();
        return Stream.concat(
                        works.stream().map(PhoneVisit.Work::install),
                        readings.stream().map(PhoneVisit.Reading::install))
                .distinct()
                .toList();
    }

    /** An entry that the office has settled; one that is just coming in is not kept yet at this point. */
    @EventListener
    void settled(VisitReported reported) {
        jdbc.sql("select text from field_entries where id = :id")
                .param("id", reported.report().value())
                .query(String.class)
                .optional()
                .ifPresent(text -> keep(json.readValue(text, PhoneVisit.class)));
    }
}

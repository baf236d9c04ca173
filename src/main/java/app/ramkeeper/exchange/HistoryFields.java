package app.ramkeeper.exchange;

import app.ramkeeper.shared.Unit;
import java.util.List;
import java.util.Map;

/** What the columns of a visit history can say. */
final class HistoryFields {

    static final String REFERENCE = "visit";
    static final String DATE = "date";
    static final String INSTALL = "install";
    static final String SERIAL = "serial";
    static final String SITE = "site";
    static final String TECHNICIAN = "technician";
    static final String KIND = "kind";
    static final String WORK = "work";
    static final String OUTCOME = "outcome";
    static final String DRIVE_FLOW = "driveFlow";
    static final String DELIVERED = "delivered";
    static final String BEAT = "beatRate";
    static final String PRESSURE = "pressure";
    static final String PRECHARGE = "precharge";
    static final String NOTE = "note";

    private static final Map<String, String> KINDS = Map.ofEntries(
            Map.entry("service", "SERVICE"),
            Map.entry("maintenance", "SERVICE"),
            Map.entry("survey", "SURVEY"),
            Map.entry("installation", "INSTALLATION"),
            Map.entry("install", "INSTALLATION"),
            Map.entry("commissioning", "COMMISSIONING"),
            Map.entry("commission", "COMMISSIONING"),
            Map.entry("call-out", "CALL_OUT"),
            Map.entry("call out", "CALL_OUT"),
            Map.entry("callout", "CALL_OUT"),
            Map.entry("breakdown", "CALL_OUT"),
            Map.entry("repair", "CALL_OUT"));

    private static final Map<String, String> OUTCOMES = Map.of(
            "done",
            "DONE",
            "ok",
            "DONE",
            "yes",
            "DONE",
            "complete",
            "DONE",
            "partly",
            "PARTLY",
            "part",
            "PARTLY",
            "could not",
            "COULD_NOT",
            "no",
            "COULD_NOT",
            "not done",
            "COULD_NOT");

    private HistoryFields() {}

    static List<Field> all() {
        return List.of(
                Field.date(DATE, "Date", "visit date", "date of visit", "visited", "visited on", "day")
                        .needed(),
                Field.text(
                        INSTALL,
                        "Install reference",
                        60,
                        "install",
                        "install ref",
                        "install no",
                        "ref",
                        "our ref",
                        "our no",
                        "job no"),
                Field.text(SERIAL, "Serial", 60, "serial number", "serial no", "pump serial", "s n"),
                Field.text(SITE, "Site", 200, "site name", "farm", "property", "place", "site reference", "site ref"),
                Field.text(
                        REFERENCE,
                        "Visit reference",
                        60,
                        "visit no",
                        "visit number",
                        "visit ref",
                        "reference",
                        "job",
                        "docket",
                        "docket no"),
                Field.text(TECHNICIAN, "Technician", 120, "tech", "who", "by", "done by", "engineer", "person"),
                Field.choice(KIND, "Kind of visit", KINDS, "kind", "visit kind", "visit type", "type"),
                Field.text(WORK, "Work done", 2000, "work", "works", "tasks", "task", "job done", "done"),
                Field.choice(OUTCOME, "Outcome", OUTCOMES, "result"),
                Field.number(DRIVE_FLOW, "Drive flow", Unit.LITRE_PER_MINUTE, 0, 100_000, "drive flow in", "flow in"),
                Field.number(
                        DELIVERED,
                        "Delivered flow",
                        Unit.LITRE_PER_MINUTE,
                        0,
                        100_000,
                        "delivered",
                        "delivery flow",
                        "flow out",
                        "output"),
                Field.number(
                        BEAT,
                        "Beat rate",
                        Unit.PER_MINUTE,
                        0,
                        600,
                        "beats",
                        "beat",
                        "bpm",
                        "beats per minute",
                        "beats min"),
                Field.number(PRESSURE, "Delivery pressure", Unit.BAR, 0, 100, "pressure"),
                Field.number(
                        PRECHARGE,
                        "Pre-charge",
                        Unit.BAR,
                        0,
                        100,
                        "precharge",
                        "vessel pre charge",
                        "vessel precharge"),
                Field.text(NOTE, "Note", 8000, "notes", "remarks", "comments", "comment", "remark"));
    }
}

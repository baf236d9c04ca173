package app.ramkeeper.exchange;

import app.ramkeeper.catalogue.Catalogue;
import app.ramkeeper.catalogue.Schedule;
import app.ramkeeper.shared.Unit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** What the columns of a register can say. */
@Component
class RegisterFields {

    static final String REFERENCE = "reference";
    static final String INSTALL = "install";
    static final String CUSTOMER_REFERENCE = "customerReference";
    static final String CUSTOMER = "customer";
    static final String ADDRESS = "billingAddress";
    static final String EMAIL = "email";
    static final String PHONE = "phone";
    static final String CONTACT = "contact";
    static final String CONTACT_PHONE = "contactPhone";
    static final String CONTACT_EMAIL = "contactEmail";
    static final String SITE_REFERENCE = "siteReference";
    static final String SITE = "site";
    static final String LOCALITY = "locality";
    static final String DEPOT = "depot";
    static final String LATITUDE = "latitude";
    static final String LONGITUDE = "longitude";
    static final String POSITION = "position";
    static final String ALTITUDE = "altitude";
    static final String WAY_IN = "wayIn";
    static final String GATE = "gate";
    static final String SOURCE = "source";
    static final String WATER = "waterClass";
    static final String DRINKING = "drinkingWater";
    static final String NOTES = "notes";
    static final String COMMISSIONED = "commissioned";
    static final String MODEL = "model";
    static final String SERIAL = "serial";
    static final String FALL = "fall";
    static final String LIFT = "lift";
    static final String DRIVE_MATERIAL = "drivePipe";
    static final String DRIVE_BORE = "drivePipeBore";
    static final String DRIVE_LENGTH = "drivePipeLength";
    static final String DELIVERY_PIPE = "deliveryPipe";
    static final String DELIVERY_BORE = "deliveryPipeBore";
    static final String DELIVERY_LENGTH = "deliveryPipeLength";
    static final String SETTING = "valveSetting";
    static final String PRECHARGE = "precharge";
    static final String LAST = "last:";

    private final Catalogue catalogue;
    private final JdbcClient jdbc;

    RegisterFields(Catalogue catalogue, JdbcClient jdbc) {
        this.catalogue = catalogue;
        this.jdbc = jdbc;
    }

    /** All fields, with one "last done" for each kind of task that returns. */
    List<Field> all() {
        List<Field> fields = new ArrayList<>(install());
        fields.addAll(customer());
        fields.addAll(site());
        fields.addAll(works());
        catalogue.taskKinds().stream()
                .filter(kind -> kind.schedule() != Schedule.EVENT)
                .forEach(kind -> fields.add(Field.date(
                        LAST + kind.code(),
                        "Last done: " + kind.name(),
                        "last " + kind.name().toLowerCase(Locale.ROOT),
                        kind.code().toLowerCase(Locale.ROOT).replace('_', ' '),
                        "last " + kind.code().toLowerCase(Locale.ROOT).replace('_', ' '))));
        return fields;
    }

    private static List<Field> install() {
        return List.of(
                Field.text(
                        REFERENCE,
                        "Reference",
                        60,
                        "ref",
                        "install reference",
                        "install ref",
                        "install no",
                        "our ref",
                        "our no",
                        "job no",
                        "id",
                        "no"),
                Field.text(INSTALL, "Install", 200, "install name", "pump name", "name of install", "location of pump"),
                Field.dateOrUnknown(
                        COMMISSIONED,
                        "Commissioned",
                        "commissioned on",
                        "commissioning date",
                        "date commissioned",
                        "installed",
                        "install date",
                        "date installed",
                        "handed over"),
                Field.text(MODEL, "Pump model", 100, "model", "pump", "pump type", "type"),
                Field.text(SERIAL, "Serial", 60, "serial number", "serial no", "pump serial", "s n"));
    }

    private static List<Field> customer() {
        return List.of(
                Field.text(CUSTOMER, "Customer", 200, "customer name", "client", "owner", "name", "farmer")
                        .needed(),
                Field.text(
                        CUSTOMER_REFERENCE,
                        "Customer reference",
                        60,
                        "customer ref",
                        "customer no",
                        "customer number",
                        "client no",
                        "account no"),
                Field.text(ADDRESS, "Billing address", 1000, "address", "postal address"),
                Field.text(EMAIL, "Email", 254, "e mail", "customer email", "mail"),
                Field.text(PHONE, "Phone", 60, "telephone", "tel", "mobile", "customer phone"),
                Field.text(CONTACT, "Contact", 200, "contact name", "contact person", "occupier", "tenant", "manager"),
                Field.text(CONTACT_PHONE, "Contact phone", 60, "contact mobile", "contact tel"),
                Field.text(CONTACT_EMAIL, "Contact email", 254));
    }

    private List<Field> site() {
        return List.of(
                Field.text(SITE, "Site", 200, "site name", "farm", "property", "place")
                        .needed(),
                Field.text(SITE_REFERENCE, "Site reference", 60, "site ref", "site no", "site number"),
                Field.text(LOCALITY, "Locality", 200, "district", "area", "valley", "town"),
                Field.text(DEPOT, "Depot", 100, "branch"),
                Field.text(LATITUDE, "Latitude", 60, "lat", "y"),
                Field.text(LONGITUDE, "Longitude", 60, "lon", "long", "lng", "x"),
                Field.text(POSITION, "Position", 80, "gps", "coordinates", "coords", "lat lon", "latitude longitude"),
                Field.number(ALTITUDE, "Altitude", Unit.METRE, -430, 5500, "elevation", "height", "alt"),
                Field.text(WAY_IN, "Way in", 4000, "access", "directions", "how to get there"),
                Field.text(GATE, "Gate", 1000, "gate code", "key"),
                Field.choice(
                        SOURCE,
                        "Source",
                        Map.of("spring", "SPRING", "stream", "STREAM", "creek", "STREAM", "other", "OTHER"),
                        "source kind",
                        "water source"),
                Field.choice(WATER, "Water class", waterClasses(), "water", "water quality"),
                Field.choice(
                        DRINKING,
                        "Drinking water",
                        Map.of(
                                "yes", "yes", "y", "yes", "true", "yes", "1", "yes", "x", "yes", "no", "no", "n", "no",
                                "false", "no", "0", "no"),
                        "potable",
                        "drinking"),
                Field.text(NOTES, "Notes", 4000, "note", "remarks", "comments", "private notes"));
    }

    private static List<Field> works() {
        return List.of(
                Field.number(FALL, "Fall", Unit.METRE, 0.1, 200, "drive head", "supply head"),
                Field.number(LIFT, "Lift", Unit.METRE, 0.1, 1000, "delivery head", "head"),
                Field.text(DRIVE_MATERIAL, "Drive pipe material", 100, "drive pipe"),
                Field.number(
                        DRIVE_BORE,
                        "Drive pipe bore",
                        Unit.MILLIMETRE,
                        1,
                        1000,
                        "drive bore",
                        "drive pipe diameter",
                        "drive pipe dia"),
                Field.number(DRIVE_LENGTH, "Drive pipe length", Unit.METRE, 0.1, 1000, "drive length"),
                Field.text(DELIVERY_PIPE, "Delivery pipe", 200, "delivery pipe material"),
                Field.number(
                        DELIVERY_BORE,
                        "Delivery pipe bore",
                        Unit.MILLIMETRE,
                        1,
                        1000,
                        "delivery bore",
                        "delivery pipe diameter",
                        "delivery pipe dia"),
                Field.number(DELIVERY_LENGTH, "Delivery pipe length", Unit.METRE, 0.1, 50_000, "delivery length"),
                Field.text(SETTING, "Valve setting", 200, "setting", "stroke"),
                Field.number(PRECHARGE, "Vessel pre-charge", Unit.BAR, 0, 100, "pre charge", "precharge"));
    }

    private Map<String, String> waterClasses() {
        Map<String, String> classes = new LinkedHashMap<>();
        jdbc.sql("select code, name from water_classes")
                .query((row, n) -> {
                    classes.put(row.getString("code").toLowerCase(Locale.ROOT), row.getString("code"));
                    return classes.put(row.getString("name").toLowerCase(Locale.ROOT), row.getString("code"));
                })
                .list();
        return classes;
    }
}

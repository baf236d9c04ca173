package app.ramkeeper.quotes.survey;

import app.ramkeeper.web.Choice;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.springframework.context.MessageSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The lists of choices of the survey form, and the names of its fields. */
@Component
public class SurveyChoices {

    /** All fields of the form, without the number of a row. */
    private static final Set<String> FIELDS = Set.of(
            "surveyedOn",
            "demand.kind",
            "demand.count",
            "demand.each",
            "demandMore",
            "method",
            "source.litres",
            "source.seconds",
            "notchAngle",
            "notchHeadMm",
            "notchHeightM",
            "floatDistanceM",
            "floatSeconds",
            "floatSection",
            "floatFactor",
            "givenLMin",
            "givenPercent",
            "measuredDry",
            "dryPercent",
            "dryUnsurePercent",
            "mustStayLMin",
            "fallM",
            "fallUnsureM",
            "driveLengthM",
            "profile",
            "liftM",
            "deliveryLengthM",
            "tankRiseM",
            "liftUnsureM",
            "altitudeM",
            "waterC",
            "pipeWallC",
            "waterClass",
            "mayShut",
            "drinkingWater",
            "mostPumps",
            "takeLicence",
            "easement",
            "discharge",
            "takeLicenceOn",
            "easementOn",
            "dischargeOn",
            "position",
            "walkMinutes",
            "access",
            "note");

    private final MessageSource messages;
    private final JdbcClient jdbc;

    SurveyChoices(MessageSource messages, JdbcClient jdbc) {
        this.messages = messages;
        this.jdbc = jdbc;
    }

    public List<Choice> kinds() {
        return DemandReader.kinds();
    }

    public List<Choice> methods() {
        return choices("surveys.method.", SourceMethod.values());
    }

    public List<Choice> waterClasses() {
        return jdbc.sql("select code, name from water_classes order by code")
                .query((row, n) -> new Choice(row.getString(1), row.getString(2)))
                .list();
    }

    public List<Choice> consents() {
        return choices("surveys.consent.", Consent.values());
    }

    private List<Choice> choices(String prefix, Enum<?>[] values) {
        return Arrays.stream(values)
                .map(value ->
                        new Choice(value.name(), messages.getMessage(prefix + value.name(), null, Locale.ENGLISH)))
                .toList();
    }

    boolean isField(String name) {
        return FIELDS.contains(bare(name));
    }

    /** Key of a field's label. */
    String label(String name) {
        return "surveys." + bare(name);
    }

    private static String bare(String name) {
        return name.replaceAll("\\[\\d+]", "");
    }
}

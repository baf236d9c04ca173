package app.ramkeeper.quotes.survey;

import app.ramkeeper.sizing.line.GroundPoint;
import app.ramkeeper.sizing.line.GroundProfile;
import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Numbers;
import app.ramkeeper.sizing.quantity.Uncertain;
import app.ramkeeper.sizing.source.DrySeason;
import app.ramkeeper.sizing.source.FlowMeasurement;
import app.ramkeeper.sizing.water.Ambient;
import app.ramkeeper.visits.form.TypedForm;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Reads a typed survey into one that can be sized; what cannot stand is noted in the form beside its field. */
public final class SurveyReader {

    private static final int LONGEST_PROFILE = 400_000;

    private final TypedForm form;
    private final Amounts amounts;
    private final List<String> assumptions = new ArrayList<>();
    private final List<String> openPoints = new ArrayList<>();

    private SurveyReader(TypedForm form) {
        this.form = form;
        this.amounts = new Amounts(form);
    }

    /** The survey, or null if something is missing or cannot be; the form then has the problems. */
    public static @Nullable Survey read(TypedForm form, SurveyId id, EnquiryId enquiry) {
        return new SurveyReader(form).read(id, enquiry);
    }

    private @Nullable Survey read(SurveyId id, EnquiryId enquiry) {
        form.date("surveyedOn");
        form.text("note", 10_000);
        form.text("access", 4_000);
        SurveyedPlace.position(form);
        SurveyedPlace.walk(form);
        Flow demand = DemandReader.read(form, assumptions);
        double altitude = amounts.or("altitudeM", 0, "the altitude", -400, 5_000, "m");
        double water = amounts.or("waterC", 10, "the temperature of the water", 0, 40, "degC");
        double wall = amounts.or("pipeWallC", 20, "the warmest the pipe gets", 0, 60, "degC");
        Ambient ambient = Ambient.of(water, altitude);
        SourceReader source = new SourceReader(form);
        FlowMeasurement measured = source.measured(ambient);
        DrySeason dry = source.dry(openPoints);
        double fall = amounts.needed("fallM", "the fall", 0.3, 50, "m");
        double fallUnsure = amounts.or("fallUnsureM", 0.05, "how sure the fall is", 0, 5, "m");
        double drive = amounts.needed("driveLengthM", "the length of the drive pipe", 1, 500, "m");
        GroundProfile ground = ground();
        double rise = amounts.or("tankRiseM", 0, "the height of the tank's inlet", 0, 30, "m");
        double liftUnsure = amounts.or("liftUnsureM", 0.5, "how sure the lift is", 0, 20, "m");
        int pumps = (int) amounts.or("mostPumps", 4, "the most pumps", 1, 12, "");
        consents();
        assume(water, altitude, wall);
        if (ground == null || demand == null || measured == null || dry == null) {
            return null;
        }
        double tank = ground.points().get(ground.points().size() - 1).levelM() + rise;
        double lift = Math.max(ground.highestM(), tank) - ground.pumpLevelM();
        if (lift <= fall && form.error("fallM") == null) {
            form.problem(
                    form.value("profile").isEmpty() ? "liftM" : "profile",
                    "The lift of %s m is not above the fall of %s m: water runs there by itself, by a plain pipe from the source."
                            .formatted(Numbers.text(lift), Numbers.text(fall)));
        }
        if (form.hasProblems()) {
            return null;
        }
        return new Survey(
                id,
                enquiry,
                demand,
                measured,
                dry,
                new Uncertain(fall, fallUnsure),
                drive,
                ground,
                tank,
                new Uncertain(lift, liftUnsure),
                ambient,
                wall,
                form.ticked("mayShut"),
                form.ticked("drinkingWater"),
                pumps,
                assumptions,
                openPoints);
    }

    /** The profile, or a straight one from lift and length. */
    private @Nullable GroundProfile ground() {
        String profile = form.text("profile", LONGEST_PROFILE);
        if (profile != null) {
            try {
                return new GroundProfile(ProfileText.read(profile));
            } catch (ProfileText.Unreadable unreadable) {
                form.problem("profile", unreadable.sentence());
                return null;
            }
        }
        double lift = amounts.needed("liftM", "the lift, or a profile", 1, 500, "m");
        double length = amounts.needed("deliveryLengthM", "the length of the delivery line", 1, 50_000, "m");
        if (form.error("liftM") != null || form.error("deliveryLengthM") != null) {
            return null;
        }
        assumptions.add("The ground is taken to rise evenly from pump to tank; no profile was surveyed.");
        return new GroundProfile(List.of(new GroundPoint(0, 0), new GroundPoint(length, lift)));
    }

    private void consents() {
        point("takeLicence", "licence to take water");
        point("easement", "right to cross a neighbour's land");
        point("discharge", "right to let the waste water back");
    }

    private void point(String name, String words) {
        Consent consent = form.choice(name, Consent.class);
        form.date(name + "On");
        if (consent == Consent.APPLIED) {
            openPoints.add("Asked for, not answered yet: " + words + ".");
        } else if (consent == null || consent == Consent.UNKNOWN) {
            openPoints.add("Not looked into yet: " + words + ". The local rules decide.");
        }
    }

    private void assume(double water, double altitude, double wall) {
        if (form.value("waterC").isEmpty()) {
            assumptions.add("The water is taken to be at %s °C.".formatted(Numbers.text(water)));
        }
        if (form.value("altitudeM").isEmpty()) {
            assumptions.add("The altitude is taken to be %s m.".formatted(Numbers.text(altitude)));
        }
        assumptions.add(
                "The delivery pipe gets no warmer than %s °C: buried, or shaded.".formatted(Numbers.text(wall)));
    }
}

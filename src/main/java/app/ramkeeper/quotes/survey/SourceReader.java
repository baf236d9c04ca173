package app.ramkeeper.quotes.survey;

import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Uncertain;
import app.ramkeeper.sizing.quantity.Volume;
import app.ramkeeper.sizing.source.BucketAndWatch;
import app.ramkeeper.sizing.source.DrySeason;
import app.ramkeeper.sizing.source.FlowMeasurement;
import app.ramkeeper.sizing.source.Readings;
import app.ramkeeper.sizing.source.VNotch;
import app.ramkeeper.sizing.water.Ambient;
import app.ramkeeper.visits.form.TypedForm;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Reads how much water the source gives. */
final class SourceReader {

    /** A bucket's volume is known to some 2 %, a head over a notch to 2 mm; judgement, no source. */
    private static final double BUCKET_SHARE = 0.02, HEAD_M = 0.002;

    private final TypedForm form;
    private final Amounts amounts;

    SourceReader(TypedForm form) {
        this.form = form;
        this.amounts = new Amounts(form);
    }

    @Nullable
    FlowMeasurement measured(Ambient ambient) {
        SourceMethod method = form.choice("method", SourceMethod.class);
        if (method == null) {
            form.problem("method", "Say how the source was measured.");
            return null;
        }
        return switch (method) {
            case BUCKET -> bucket();
            case NOTCH -> notch(ambient);
            case FLOAT -> new FloatReader(form).measured();
            case GIVEN -> given();
        };
    }

    /** Runs with another bucket are brought to the first one's volume. */
    private @Nullable FlowMeasurement bucket() {
        List<Double> seconds = new ArrayList<>();
        double first = 0;
        boolean bad = false;
        for (int i = 0; i < form.rows("sources", 3); i++) {
            String field = "source[" + i + "]";
            if (form.value(field + ".litres").isEmpty()
                    && form.value(field + ".seconds").isEmpty()) {
                continue;
            }
            String litres =
                    form.value(field + ".litres").isEmpty() && first > 0 ? "source[0].litres" : field + ".litres";
            double volume = amounts.needed(litres, "the litres of the bucket", 0.1, 10_000, "l");
            double time = amounts.needed(field + ".seconds", "the seconds it took to fill", 0.2, 7_200, "s");
            bad |= form.error(litres) != null || form.error(field + ".seconds") != null;
            first = first == 0 ? volume : first;
            seconds.add(time * first / volume);
        }
        if (seconds.isEmpty()) {
            form.problem(
                    "source[0].seconds",
                    "Give at least one filling: litres and seconds. Three or more tell how sure it is.");
            return null;
        }
        return bad
                ? null
                : BucketAndWatch.measure(
                        Volume.ofLitres(first), BUCKET_SHARE, new Readings(seconds), BucketAndWatch.HAND_STOPPED_S);
    }

    private @Nullable FlowMeasurement notch(Ambient ambient) {
        double angle = amounts.or("notchAngle", 90, "the angle of the notch", 20, 100, "degrees");
        double head = amounts.needed("notchHeadMm", "the head over the notch", 1, 1_000, "mm") / 1000;
        double height = amounts.or("notchHeightM", 0.3, "the height of the notch over the bed", 0.02, 10, "m");
        return form.error("notchHeadMm") != null
                ? null
                : new VNotch(angle).measure(new Uncertain(head, HEAD_M), height, ambient.gravity());
    }

    private @Nullable FlowMeasurement given() {
        double flow = amounts.needed("givenLMin", "the flow of the source", 0.1, 1_000_000, "l/min");
        double share = amounts.or("givenPercent", 20, "how sure the flow is", 0, 100, "%") / 100;
        return form.error("givenLMin") != null
                ? null
                : new FlowMeasurement(
                        "as told",
                        Uncertain.relative(Flow.ofLitresPerMinute(flow).cubicMetresPerSecond(), share),
                        List.of(new Note(Note.Code.ASSUMED, "The flow was told, not measured by us.")));
    }

    @Nullable
    DrySeason dry(List<String> openPoints) {
        double stay = amounts.or("mustStayLMin", 0, "the water that must stay", 0, 1_000_000, "l/min");
        if (form.value("mustStayLMin").isEmpty()) {
            openPoints.add("How much water must stay in the stream is not known yet; nothing is left for it so far.");
        }
        if (form.ticked("measuredDry")) {
            return new DrySeason(Uncertain.exact(1), Flow.ofLitresPerMinute(stay));
        }
        openPoints.add("The source was not measured in the dry month: measure again then.");
        if (form.value("dryPercent").isEmpty()) {
            form.problem(
                    "dryPercent",
                    "Say how much of this still runs in the dry month, or tick that it was measured then.");
            return null;
        }
        double share = amounts.or("dryPercent", 100, "the share that runs in the dry month", 0, 100, "%") / 100;
        double unsure = amounts.or("dryUnsurePercent", 10, "how sure that share is", 0, 50, "%") / 100;
        return new DrySeason(new Uncertain(share, unsure), Flow.ofLitresPerMinute(stay));
    }
}

package app.ramkeeper.catalogue;

import app.ramkeeper.identity.ForSetup;
import app.ramkeeper.shared.Missing;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Keeps the pump models with what they deliver and which parts fit them. */
@Service
@ForSetup
@Transactional
public class PumpModels {

    private final PumpModelRepository models;
    private final Clock clock;

    PumpModels(PumpModelRepository models, Clock clock) {
        this.models = models;
        this.clock = clock;
    }

    public PumpModelId add(PumpModelForm form) {
        PumpModelId id = PumpModelId.next();
        models.saveAndFlush(new PumpModel(id, form));
        return id;
    }

    public void change(PumpModelId id, PumpModelForm form) {
        PumpModel model = find(id);
        model.change(form);
        models.saveAndFlush(model);
    }

    /** Withdraws a model from new quotes; pumps of it stay what they are. */
    public void withdraw(PumpModelId id) {
        find(id).withdraw(LocalDate.now(clock));
    }

    public void bringBack(PumpModelId id) {
        find(id).withdraw(null);
    }

    @Transactional(readOnly = true)
    public PumpModelForm form(PumpModelId id) {
        return find(id).form();
    }

    @Transactional(readOnly = true)
    public List<Line> list() {
        return models.listed().stream()
                .map(model -> new Line(model.id(), model.form(), model.withdrawnOn()))
                .toList();
    }

    @Transactional(readOnly = true)
    public boolean nameTaken(String name, UUID except) {
        return models.nameTaken(name, except);
    }

    private PumpModel find(PumpModelId id) {
        return models.findById(id.value()).orElseThrow(() -> new Missing("pump model", id));
    }

    /** A model as its list shows it. */
    public record Line(
            UUID id, PumpModelForm model, @Nullable LocalDate withdrawnOn) {}
}

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

/** Keeps the parts. */
@Service
@ForSetup
@Transactional
public class Parts {

    private final PartRepository parts;
    private final Clock clock;

    Parts(PartRepository parts, Clock clock) {
        this.parts = parts;
        this.clock = clock;
    }

    public PartId add(PartForm form) {
        PartId id = PartId.next();
        parts.saveAndFlush(new Part(id, form));
        return id;
    }

    public void change(PartId id, PartForm form) {
        Part part = find(id);
        part.change(form);
        parts.saveAndFlush(part);
    }

    public void withdraw(PartId id) {
        find(id).withdraw(LocalDate.now(clock));
    }

    public void bringBack(PartId id) {
        find(id).withdraw(null);
    }

    @Transactional(readOnly = true)
    public PartForm form(PartId id) {
        return find(id).form();
    }

    @Transactional(readOnly = true)
    public List<Line> list() {
        return parts.listed().stream()
                .map(part -> new Line(part.id(), part.form(), part.withdrawnOn()))
                .toList();
    }

    @Transactional(readOnly = true)
    public boolean numberTaken(String number, UUID except) {
        return parts.numberTaken(number, except);
    }

    private Part find(PartId id) {
        return parts.findById(id.value()).orElseThrow(() -> new Missing("part", id));
    }

    /** A part as its list shows it. */
    public record Line(UUID id, PartForm part, @Nullable LocalDate withdrawnOn) {}
}

package app.ramkeeper.visits.stock;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.shared.Uuids;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.PastOrPresent;
import jakarta.validation.constraints.Size;
import java.sql.Types;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.format.annotation.DateTimeFormat;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The places where parts lie, and the instruments that readings name. */
@Service
@ForOffice
@Transactional
class Keepers {

    private final JdbcClient jdbc;

    Keepers(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** A depot's store or a person's van; one of the two. */
    public record PlaceForm(
            @NotBlank @Size(max = 100) @Nullable String name,
            @Nullable UUID depot,
            @Nullable UUID person) {}

    /** A place with whose it is. */
    public record Place(UUID id, String name, String kind, String whose) {}

    /** What people measure with. */
    public enum InstrumentKind {
        BUCKET,
        GAUGE,
        METER,
        WATCH,
        LEVEL,
        OTHER
    }

    /** An instrument as its form posts it. */
    public record InstrumentForm(
            @NotBlank @Size(max = 100) @Nullable String name,
            @NotNull @Nullable InstrumentKind kind,

            @PastOrPresent @DateTimeFormat(iso = DateTimeFormat.ISO.DATE) @Nullable
            LocalDate checkedOn,

            @Nullable Integer version) {}

    /** An instrument and when it was last checked. */
    public record Instrument(
            UUID id,
            String name,
            InstrumentKind kind,
            @Nullable LocalDate checkedOn,
            int version) {}

    @Transactional(readOnly = true)
    List<Place> places() {
        return jdbc.sql("""
                        select s.id, s.name, s.kind, coalesce(d.name, p.name) as whose from stock_places s
                        left join depots d on d.id = s.depot_id left join people p on p.id = s.person_id order by s.kind, s.name""").query(Place.class).list();
    }

    void add(PlaceForm form) {
        jdbc.sql(
                        "insert into stock_places (id, kind, depot_id, person_id, name) values (:id, :kind, :depot, :person, :name)")
                .param("id", Uuids.next())
                .param("kind", form.depot() == null ? "VAN" : "DEPOT")
                .param("depot", form.depot(), Types.OTHER)
                .param("person", form.person(), Types.OTHER)
                .param("name", form.name())
                .update();
    }

    @Transactional(readOnly = true)
    List<Instrument> instruments() {
        return jdbc.sql("select id, name, kind, checked_on, version from instruments order by name")
                .query(Instrument.class)
                .list();
    }

    /** @throws Missing if there is none */
    @Transactional(readOnly = true)
    InstrumentForm instrument(UUID id) {
        return jdbc.sql("select name, kind, checked_on, version from instruments where id = :id")
                .param("id", id)
                .query(InstrumentForm.class)
                .optional()
                .orElseThrow(() -> new Missing("instrument", id));
    }

    void add(InstrumentForm form) {
        jdbc.sql("insert into instruments (id, name, kind, checked_on) values (:id, :name, :kind, :on)")
                .param("id", Uuids.next())
                .param("name", form.name())
                .param("kind", form.kind() == null ? null : form.kind().name())
                .param("on", form.checkedOn())
                .update();
    }

    /** @return false if somebody else changed it since the version given */
    boolean change(UUID id, InstrumentForm form) {
        return jdbc.sql("""
                        update instruments set name = :name, kind = :kind, checked_on = :on, version = version + 1
                        where id = :id and version = :version""")
                        .param("name", form.name())
                        .param("kind", form.kind() == null ? null : form.kind().name())
                        .param("on", form.checkedOn())
                        .param("id", id)
                        .param("version", form.version())
                        .update()
                == 1;
    }
}

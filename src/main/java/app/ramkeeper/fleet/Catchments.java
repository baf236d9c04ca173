package app.ramkeeper.fleet;

import app.ramkeeper.identity.ForRegister;
import app.ramkeeper.shared.Missing;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Keeps the catchments: whose flood hits whom, and what must not be carried out of one. */
@Service
@ForRegister
@Transactional
public class Catchments {

    private final JdbcClient jdbc;

    Catchments(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Registers under an id made by the form, so that a second post of it changes nothing. */
    public void register(CatchmentId id, String name, Biosecurity biosecurity) {
        jdbc.sql("insert into catchments (id, name, biosecurity) values (:id, :name, :bio) on conflict (id) do nothing")
                .param("id", id.value())
                .param("name", name)
                .param("bio", biosecurity.name())
                .update();
    }

    public void edit(CatchmentId id, int version, String name, Biosecurity biosecurity) {
        Integer present = jdbc.sql("select version from catchments where id = :id for update")
                .param("id", id.value())
                .query(Integer.class)
                .optional()
                .orElseThrow(() -> new Missing("catchment", id));
        Versions.require(present, version, Catchments.class, id);
        jdbc.sql("update catchments set name = :name, biosecurity = :bio, version = version + 1 where id = :id")
                .param("id", id.value())
                .param("name", name)
                .param("bio", biosecurity.name())
                .update();
    }
}

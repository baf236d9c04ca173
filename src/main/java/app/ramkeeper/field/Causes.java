package app.ramkeeper.field;

import app.ramkeeper.identity.ForSetup;
import app.ramkeeper.visits.Symptom;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The office's table from what is seen to likely causes, in the order to look, to what to do. */
@Service
@ForSetup
@Transactional
class Causes {

    private final JdbcClient jdbc;

    Causes(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** A likely cause and what is done about it. */
    public record Cause(String symptom, String cause, String action) {}

    @Transactional(readOnly = true)
    List<Cause> all() {
        return jdbc.sql("select symptom, cause, action from field_causes order by symptom, seq")
                .query(Cause.class)
                .list();
    }

    @Transactional(readOnly = true)
    List<Cause> of(Symptom symptom) {
        return all().stream().filter(c -> c.symptom().equals(symptom.name())).toList();
    }

    /** Writes a symptom's causes anew. */
    void write(Symptom symptom, List<Cause> causes) {
        jdbc.sql("delete from field_causes where symptom = :symptom")
                .param("symptom", symptom.name())
                .update();
        for (int i = 0; i < causes.size(); i++) {
            jdbc.sql("insert into field_causes (symptom, seq, cause, action) values (:symptom, :seq, :cause, :action)")
                    .param("symptom", symptom.name())
                    .param("seq", i + 1)
                    .param("cause", causes.get(i).cause())
                    .param("action", causes.get(i).action())
                    .update();
        }
    }
}

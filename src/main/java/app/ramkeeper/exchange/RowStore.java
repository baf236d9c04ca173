package app.ramkeeper.exchange;

import app.ramkeeper.exchange.reading.Row;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;

/** Keeps the rows of imports; writes them in batches. */
@Repository
class RowStore {

    private final JdbcClient jdbc;
    private final JsonMapper json;

    RowStore(JdbcClient jdbc, JsonMapper json) {
        this.jdbc = jdbc;
        this.json = json;
    }

    void stage(ImportId id, List<Row> rows) {
        jdbc.sql("""
                        insert into import_rows (import_id, line, cells)
                        select :id, r.line, r.cells::jsonb from unnest(:lines::integer[], :cells::text[]) as r(line, cells)""")
                .param("id", id.value())
                .param("lines", rows.stream().map(Row::line).toArray(Integer[]::new))
                .param(
                        "cells",
                        rows.stream()
                                .map(row -> json.writeValueAsString(row.cells()))
                                .toArray(String[]::new))
                .update();
    }

    /** Puts all rows back to unread, for a dry run with another mapping. */
    void reset(ImportId id) {
        jdbc.sql("""
                        update import_rows set state = 'NEW', problems = '[]', thing = null, serial = null, content = null
                        where import_id = :id and state in ('READY', 'UNCHANGED', 'PROBLEM', 'UNDONE')""").param("id", id.value()).update();
    }

    List<StagedRow> inState(ImportId id, RowState state, int afterLine, int most) {
        return jdbc.sql("""
                        select line, cells, state, problems, made from import_rows
                        where import_id = :id and state = :state and line > :after order by line limit :most""")
                .param("id", id.value())
                .param("state", state.name())
                .param("after", afterLine)
                .param("most", most)
                .query(this::row)
                .list();
    }

    /** All rows that were brought in, without their cells: a whole file of them must fit into memory. */
    List<StagedRow> made(ImportId id) {
        return jdbc.sql("""
                        select line, '[]' as cells, state, '[]' as problems, made from import_rows
                        where import_id = :id and state = 'APPLIED' order by line""").param("id", id.value()).query(this::row).list();
    }

    List<StagedRow> first(ImportId id, int most) {
        return jdbc.sql("""
                        select line, cells, state, problems, made from import_rows
                        where import_id = :id order by line limit :most""")
                .param("id", id.value())
                .param("most", most)
                .query(this::row)
                .list();
    }

    Optional<StagedRow> find(ImportId id, int line) {
        return jdbc.sql(
                        "select line, cells, state, problems, made from import_rows where import_id = :id and line = :line")
                .param("id", id.value())
                .param("line", line)
                .query(this::row)
                .optional();
    }

    void mend(ImportId id, int line, List<String> cells) {
        jdbc.sql("""
                        update import_rows set cells = :cells::jsonb
                        where import_id = :id and line = :line and state in ('PROBLEM', 'READY')""")
                .param("id", id.value())
                .param("line", line)
                .param("cells", json.writeValueAsString(cells))
                .update();
    }

    void judge(ImportId id, List<Verdict> verdicts) {
        jdbc.sql("""
                        update import_rows r set state = v.state, problems = v.problems::jsonb, thing = v.thing, serial = v.serial,
                          content = v.content
                        from unnest(:lines::integer[], :states::text[], :problems::text[], :things::text[], :serials::text[],
                          :contents::text[]) as v(line, state, problems, thing, serial, content)
                        where r.import_id = :id and r.line = v.line""")
                .param("id", id.value())
                .param("lines", verdicts.stream().map(Verdict::line).toArray(Integer[]::new))
                .param("states", verdicts.stream().map(v -> v.state().name()).toArray(String[]::new))
                .param(
                        "problems",
                        verdicts.stream()
                                .map(v -> json.writeValueAsString(v.problems()))
                                .toArray(String[]::new))
                .param("things", verdicts.stream().map(Verdict::thing).toArray(String[]::new))
                .param("serials", verdicts.stream().map(Verdict::serial).toArray(String[]::new))
                .param("contents", verdicts.stream().map(Verdict::content).toArray(String[]::new))
                .update();
    }

    void refuse(ImportId id, int line, Problem problem) {
        jdbc.sql("""
                        update import_rows set state = 'PROBLEM', problems = problems || :problem::jsonb
                        where import_id = :id and line = :line""")
                .param("id", id.value())
                .param("line", line)
                .param("problem", json.writeValueAsString(List.of(problem)))
                .update();
    }

    /** Of good rows that name the same thing or serial the first stays; the others are told where it stands. */
    void refuseTwins(ImportId id, String column, String field, String what) {
        String name = column.equals("serial") ? "serial" : "thing";
        jdbc.sql("""
                        with twins as (
                          select line, first_value(line) over (partition by folded(%1$s) order by state = 'APPLIED' desc, line) as first
                          from import_rows where import_id = :id and state in ('READY', 'APPLIED') and %1$s is not null)
                        update import_rows r set state = 'PROBLEM', problems = r.problems || jsonb_build_array(jsonb_build_object(
                          'field', :field::text, 'sentence', format('%%s “%%s” stands in line %%s of this file already.', :what::text, r.%1$s, t.first)))
                        from twins t where r.import_id = :id and r.line = t.line and t.first <> t.line and r.state = 'READY'""".formatted(name))
                .param("id", id.value())
                .param("field", field)
                .param("what", what)
                .update();
    }

    void applied(ImportId id, Map<Integer, Map<String, List<UUID>>> made) {
        Integer[] lines = made.keySet().toArray(Integer[]::new);
        String[] ids = made.values().stream().map(json::writeValueAsString).toArray(String[]::new);
        jdbc.sql("""
                        update import_rows r set state = 'APPLIED', made = m.made::jsonb
                        from unnest(:lines::integer[], :made::text[]) as m(line, made)
                        where r.import_id = :id and r.line = m.line""")
                .param("id", id.value())
                .param("lines", lines)
                .param("made", ids)
                .update();
    }

    void undone(ImportId id) {
        jdbc.sql("update import_rows set state = 'UNDONE', made = null where import_id = :id and state = 'APPLIED'")
                .param("id", id.value())
                .update();
    }

    private StagedRow row(ResultSet row, int n) throws SQLException {
        String made = row.getString("made");
        return new StagedRow(
                row.getInt("line"),
                json.readValue(row.getString("cells"), new TypeReference<List<String>>() {}),
                RowState.valueOf(row.getString("state")),
                json.readValue(row.getString("problems"), new TypeReference<List<Problem>>() {}),
                made == null ? Map.of() : json.readValue(made, new TypeReference<Map<String, List<UUID>>>() {}));
    }
}

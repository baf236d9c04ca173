package app.ramkeeper.fleet.web;

import app.ramkeeper.catalogue.Catalogue;
import app.ramkeeper.fleet.Fleet;
import app.ramkeeper.web.Choice;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.springframework.context.MessageSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Fills the drop-downs of the register's forms. */
@Component("fleetWords")
public class Words {

    private final MessageSource messages;
    private final JdbcClient jdbc;
    private final Fleet fleet;
    private final Catalogue catalogue;

    Words(MessageSource messages, JdbcClient jdbc, Fleet fleet, Catalogue catalogue) {
        this.messages = messages;
        this.jdbc = jdbc;
        this.fleet = fleet;
        this.catalogue = catalogue;
    }

    /** The word for a constant, {@code fleet.SitePart.OWNER}. */
    public String word(Enum<?> constant) {
        return messages.getMessage(
                "fleet." + constant.getDeclaringClass().getSimpleName() + "." + constant.name(), null, Locale.UK);
    }

    <E extends Enum<E>> List<Choice> all(Class<E> type) {
        return Arrays.stream(type.getEnumConstants())
                .map(constant -> new Choice(constant.name(), word(constant)))
                .toList();
    }

    @SafeVarargs
    final <E extends Enum<E>> List<Choice> some(E... constants) {
        return Arrays.stream(constants)
                .map(constant -> new Choice(constant.name(), word(constant)))
                .toList();
    }

    List<Choice> catchments() {
        return fleet.catchments();
    }

    List<Choice> depots() {
        return read("select id::text, name from depots order by folded(name)");
    }

    List<Choice> waterClasses() {
        return read("select code, name from water_classes order by code");
    }

    List<Choice> models() {
        return catalogue.pumpModels().stream()
                .map(model -> new Choice(model.id().toString(), model.name()))
                .toList();
    }

    List<Choice> parts() {
        return catalogue.parts().stream()
                .map(part -> new Choice(part.id().toString(), part.number() + " " + part.name()))
                .toList();
    }

    private List<Choice> read(String sql) {
        return jdbc.sql(sql)
                .query((rs, n) -> new Choice(rs.getString(1), rs.getString(2)))
                .list();
    }
}

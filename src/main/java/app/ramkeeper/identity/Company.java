package app.ramkeeper.identity;

import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The company that works with this database, as its papers name it. */
@Service
public class Company {

    /** What stands on the company's papers. */
    public record Card(
            @Nullable String name,
            @Nullable String address,
            @Nullable String phone,
            @Nullable String email,
            @Nullable String taxNumber,
            int version) {}

    private final JdbcClient jdbc;

    Company(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Transactional(readOnly = true)
    public Card card() {
        return jdbc.sql("select name, address, phone, email, tax_number, version from company")
                .query(Card.class)
                .single();
    }

    /** Writes all of it if nobody did meanwhile, and says whether it did. */
    @Transactional
    @ForAdministrator
    public boolean change(Card changed) {
        return jdbc.sql("update company set name = :name, address = :address, phone = :phone, email = :email,"
                                + " tax_number = :taxNumber, version = version + 1 where version = :version")
                        .paramSource(changed)
                        .update()
                == 1;
    }
}

package app.ramkeeper.fleet;

import app.ramkeeper.identity.ForRegister;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Finds customers by what somebody remembers of them. */
@Service
@ForRegister
@Transactional(readOnly = true)
public class CustomerSearch {

    private final JdbcClient jdbc;

    CustomerSearch(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Customers by half a name or their reference, best first. */
    public List<CustomerMatch> find(String typed, int limit) {
        jdbc.sql("select set_config('pg_trgm.word_similarity_threshold', '0.4', true)")
                .query(String.class)
                .single();
        return jdbc.sql("""
                        select c.id, c.reference, c.name, c.phone, c.email,
                          (select count(distinct p.site_id) from site_parties p where p.customer_id = c.id and p.until_date is null) as sites
                        from customers c where c.merged_into is null
                          and (folded(:q) <% folded(c.name) or folded(c.reference) = folded(:q))
                        order by folded(c.reference) is not distinct from folded(:q) desc,
                          word_similarity(folded(:q), folded(c.name)) + similarity(folded(:q), folded(c.name)) desc, c.id
                        limit :limit""")
                .param("q", typed.length() > 100 ? typed.substring(0, 100) : typed)
                .param("limit", limit)
                .query(CustomerMatch.class)
                .list();
    }
}

package app.ramkeeper.fleet;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Finds sites by half a name, mistyped or not: site, locality, reference, people, installs and pump serials at once.
 *
 * <p>Each word typed must be similar to some stretch of the site's line of words, or, if no site has that, one of them;
 * the sum of the similarities ranks.
 */
@Component
class SiteSearch {

    private static final int LONGEST = 100;
    private static final int MOST_WORDS = 6;
    private static final double STRICT = 0.6;
    private static final double FORGIVING = 0.35;
    private static final String ALL = " and ";
    private static final String SOME = " or ";

    private final JdbcClient jdbc;

    SiteSearch(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<SiteMatch> find(String typed, int limit) {
        List<String> words = words(typed);
        if (words.isEmpty()) {
            return List.of();
        }
        List<SiteMatch> found = find(words, limit, STRICT, ALL);
        if (found.size() < Math.min(5, limit)) {
            found = merge(found, find(words, limit, FORGIVING, ALL), limit);
        }
        return found.isEmpty() && words.size() > 1 ? find(words, limit, FORGIVING, SOME) : found;
    }

    private List<SiteMatch> find(List<String> words, int limit, double threshold, String how) {
        jdbc.sql("select set_config('pg_trgm.word_similarity_threshold', :threshold, true)")
                .param("threshold", Double.toString(threshold))
                .query(String.class)
                .single();
        JdbcClient.StatementSpec statement = jdbc.sql(sql(words.size(), how)).param("limit", limit);
        for (int i = 0; i < words.size(); i++) {
            statement = statement.param("w" + i, words.get(i));
        }
        return statement.query(SiteSearch::match).list();
    }

    private static String sql(int words, String how) {
        List<String> all = new ArrayList<>();
        List<String> rank = new ArrayList<>();
        for (int i = 0; i < words; i++) {
            all.add("folded(:w" + i + ") <% words");
            rank.add(
                    "word_similarity(folded(:w" + i + "), words) + strict_word_similarity(folded(:w" + i + "), words)");
        }
        return """
                with found as (
                  select site_id, %s as rank, length(words) as length from site_search where %s
                  order by rank desc, length, site_id limit :limit)
                select s.id, s.reference, s.name, s.locality, d.name as depot,
                  (select string_agg(distinct u.name, ', ') from site_parties p join customers u on u.id = p.customer_id
                     where p.site_id = s.id and p.part in ('OWNER', 'OCCUPIER') and p.until_date is null) as customer,
                  (select count(*) from installs i where i.site_id = s.id and i.retired_on is null) as installs
                from found join sites s on s.id = found.site_id left join depots d on d.id = s.depot_id
                order by found.rank desc, found.length, s.id""".formatted(String.join(" + ", rank), String.join(how, all));
    }

    private static SiteMatch match(ResultSet rs, int n) throws SQLException {
        Columns row = new Columns(rs);
        return new SiteMatch(
                new SiteId(row.id("id")),
                row.orNull("reference"),
                row.text("name"),
                row.orNull("locality"),
                row.orNull("customer"),
                row.orNull("depot"),
                rs.getLong("installs"));
    }

    private static List<SiteMatch> merge(List<SiteMatch> first, List<SiteMatch> more, int limit) {
        Map<SiteId, SiteMatch> all = new LinkedHashMap<>();
        first.forEach(match -> all.put(match.id(), match));
        more.forEach(match -> all.putIfAbsent(match.id(), match));
        return all.values().stream().limit(limit).toList();
    }

    /** The words typed, composed and lower case, without punctuation; at most so many. */
    static List<String> words(String typed) {
        String cut = typed.length() > LONGEST ? typed.substring(0, LONGEST) : typed;
        String plain = Normalizer.normalize(cut, Normalizer.Form.NFC).toLowerCase(Locale.ROOT);
        return Arrays.stream(plain.split("[^\\p{L}\\p{M}\\p{N}]+"))
                .filter(word -> !word.isEmpty())
                .limit(MOST_WORDS)
                .toList();
    }
}

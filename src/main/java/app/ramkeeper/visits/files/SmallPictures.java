package app.ramkeeper.visits.files;

import app.ramkeeper.identity.ForField;
import java.util.HexFormat;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Pictures made small for phones; each is made once. Whoever asks has decided that the person may see it. */
@Service
@ForField
@Transactional
public class SmallPictures {

    private final JdbcClient jdbc;
    private final Photos photos;

    SmallPictures(JdbcClient jdbc, Photos photos) {
        this.jdbc = jdbc;
        this.photos = photos;
    }

    /** The file with this key, its longest side at most as given. */
    public Optional<Photos.Shown> of(String sha256, int side) {
        byte[] key = HexFormat.of().parseHex(sha256);
        Optional<Photos.Shown> made =
                shown("select media_type, content from small_pictures where sha256 = :key and side = " + side, key);
        return made.isPresent()
                ? made
                : shown("select media_type, content from files where sha256 = :key and media_type like 'image/%'", key)
                        .map(file -> keep(key, side, photos.smaller(file, side)));
    }

    private Optional<Photos.Shown> shown(String sql, byte[] key) {
        return jdbc.sql(sql)
                .param("key", key)
                .query((row, n) -> new Photos.Shown(row.getString(1), row.getBytes(2)))
                .optional();
    }

    private Photos.Shown keep(byte[] key, int side, Photos.Shown small) {
        jdbc.sql("""
                        insert into small_pictures (sha256, side, media_type, content) values (:key, :side, :type, :content)
                        on conflict (sha256, side) do nothing""")
                .param("key", key)
                .param("side", side)
                .param("type", small.mediaType())
                .param("content", small.content())
                .update();
        return small;
    }
}

package app.ramkeeper.field;

import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForField;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.visits.files.Photos;
import app.ramkeeper.visits.files.SmallPictures;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Base64;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;

/**
 * Gives a phone the photos and drawings that its bundle names, made small, with their hash; no others. The header is
 * Repr-Digest of RFC 9530: the phone keeps nothing that does not fit it.
 */
@Controller
@ForField
class Along {

    private final JdbcClient jdbc;
    private final SmallPictures small;
    private final Clock clock;

    Along(JdbcClient jdbc, SmallPictures small, Clock clock) {
        this.jdbc = jdbc;
        this.small = small;
        this.clock = clock;
    }

    @GetMapping("/field/pictures/{key}")
    ResponseEntity<byte[]> picture(@PathVariable String key, @AuthenticationPrincipal CurrentUser user) {
        Photos.Shown picture = jdbc.sql("select side from (" + BundleSql.PICTURES + ") p where p.key = :key limit 1")
                .param("key", key)
                .params(BundleSql.whose(user.person(), LocalDate.now(clock)))
                .query(Integer.class)
                .optional()
                .flatMap(side -> small.of(key, side))
                .orElseThrow(() -> new Missing("picture", key));
        return ResponseEntity.ok()
                .contentType(MediaType.parseMediaType(picture.mediaType()))
                .cacheControl(CacheControl.noStore())
                .header("Repr-Digest", "sha-256=:" + digest(picture.content()) + ":")
                .header("Content-Security-Policy", "default-src 'none'; sandbox")
                .body(picture.content());
    }

    private static String digest(byte[] content) {
        try {
            return Base64.getEncoder()
                    .encodeToString(MessageDigest.getInstance("SHA-256").digest(content));
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("Every Java has SHA-256", impossible);
        }
    }
}

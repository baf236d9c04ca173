package app.ramkeeper.visits.files;

import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForField;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Missing;
import java.nio.charset.StandardCharsets;
import java.util.UUID;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;

/** Serves photos: always as the kind they were made into, never as a page. */
@Controller
@ForField
class PhotoController {

    private static final int SIDE = 420;

    private final Photos photos;
    private final SmallPictures small;
    private final JdbcClient jdbc;

    PhotoController(Photos photos, SmallPictures small, JdbcClient jdbc) {
        this.photos = photos;
        this.small = small;
        this.jdbc = jdbc;
    }

    @GetMapping("/visits/photos/{id}")
    ResponseEntity<byte[]> photo(@PathVariable UUID id) {
        Photos.Shown photo = photos.ofReport(id).orElseThrow(() -> new Missing("photo", id));
        return answer(photo, name(id));
    }

    /** The same as a small picture, for pages that show several. */
    @GetMapping("/visits/photos/{id}/small")
    ResponseEntity<byte[]> small(@PathVariable UUID id) {
        return answer(
                photos.keyOf(id).flatMap(key -> small.of(key, SIDE)).orElseThrow(() -> new Missing("photo", id)),
                name(id));
    }

    @GetMapping("/visits/uploads/{sha256}")
    ResponseEntity<byte[]> upload(@PathVariable String sha256, @AuthenticationPrincipal CurrentUser user) {
        return answer(
                photos.upload(sha256, new PersonId(user.person())).orElseThrow(() -> new Missing("photo", sha256)),
                "photo");
    }

    /** Site and day: what somebody who saves it wants to read. */
    private String name(UUID photo) {
        return jdbc.sql("""
                        select s.name || ' ' || r.attended_on from photos p join visit_reports r on r.id = p.report_id
                        join sites s on s.id = r.site_id where p.id = :id""").param("id", photo).query(String.class).single();
    }

    static ResponseEntity<byte[]> answer(Photos.Shown photo, String name) {
        MediaType type = MediaType.parseMediaType(photo.mediaType());
        String ending = "." + type.getSubtype().replace("jpeg", "jpg");
        return ResponseEntity.ok()
                .contentType(type)
                .header(HttpHeaders.CONTENT_DISPOSITION, disposition(name + ending))
                .header("Content-Security-Policy", "default-src 'none'; sandbox")
                .header("X-Content-Type-Options", "nosniff")
                .body(photo.content());
    }

    static String disposition(String name) {
        String oneLine = name.replaceAll("\\p{Cntrl}", " ");
        return ContentDisposition.inline()
                .filename(oneLine, StandardCharsets.UTF_8)
                .build()
                .toString();
    }
}

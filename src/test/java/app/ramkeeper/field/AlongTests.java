package app.ramkeeper.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.SitesMerged;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.visits.PageTest;
import app.ramkeeper.visits.record.PostedForm;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import javax.imageio.ImageIO;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.http.MediaType;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import tools.jackson.databind.JsonNode;

/** Which photos and drawings a phone takes along, for whom, and the pins that ask for more. */
class AlongTests extends FromPhones {

    @Autowired
    ApplicationEventPublisher events;

    private static int colour;

    /** A picture like no other. */
    private static byte[] photo(int width, int height) {
        BufferedImage picture = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D pen = picture.createGraphics();
        for (int x = 0; x < width; x += 20) {
            pen.setColor(new Color((colour++ * 7919) & 0xFFFFFF));
            pen.fillRect(x, 0, 20, height);
        }
        pen.dispose();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            ImageIO.write(picture, "jpg", out);
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return out.toByteArray();
    }

    private MvcTestResult photograph(UUID entry, @Nullable String kind, String caption, byte[] content) {
        var request = mvc.post()
                .uri("/field/photos")
                .with(user(PageTest.As.who(ada, Role.TECHNICIAN)))
                .with(csrf())
                .header("Idempotency-Key", UUID.randomUUID())
                .param("entry", entry.toString())
                .param("hash", Intake.sha256(content))
                .param("caption", caption)
                .contentType(MediaType.APPLICATION_OCTET_STREAM)
                .content(content);
        return (kind == null ? request : request.param("kind", kind)).exchange();
    }

    private UUID visited(int photos) {
        UUID id = UUID.randomUUID();
        Map<String, Object> visit = visit(id, "As usual");
        visit.put("photos", photos);
        assertThat(send(ada, envelope(ada, visit))).hasStatusOk();
        return id;
    }

    private void draw(String kind, String caption) {
        assertThat(mvc.post()
                        .uri("/sites/{id}/pictures", site.value())
                        .multipart()
                        .file(new MockMultipartFile("picture", "works.jpg", "image/jpeg", photo(2400, 900)))
                        .param("kind", kind)
                        .param("caption", caption)
                        .with(user(PageTest.As.who(ada, Role.OFFICE)))
                        .with(csrf()))
                .hasStatus3xxRedirection();
    }

    private void planned(PersonId who, LocalDate on) {
        UUID visit = UUID.randomUUID();
        transaction.executeWithoutResult(status -> {
            jdbc.sql("insert into visits (id, site_id, kind, planned_on, minutes) values (?, ?, 'SERVICE', ?, 60)")
                    .params(visit, site.value(), on)
                    .update();
            jdbc.sql("insert into visit_people (visit_id, person_id, lead) values (?, ?, true)")
                    .params(visit, who.value())
                    .update();
        });
    }

    private JsonNode bundle(PersonId who) {
        return json.readTree(body(get(who, "/field/bundle")));
    }

    private static String body(MvcTestResult result) {
        return new String(result.getResponse().getContentAsByteArray(), java.nio.charset.StandardCharsets.UTF_8);
    }

    private MvcTestResult get(PersonId who, String path) {
        return mvc.get()
                .uri(path)
                .with(user(PageTest.As.who(who, Role.TECHNICIAN)))
                .exchange();
    }

    private static List<String> each(JsonNode list, String field) {
        List<String> all = new ArrayList<>();
        list.forEach(
                item -> all.add(item.get(field).isNull() ? "" : item.get(field).asString()));
        return all;
    }

    private MvcTestResult pins(PersonId who, @Nullable String seen, Object sites) {
        var request = mvc.put()
                .uri("/field/pins")
                .with(user(PageTest.As.who(who, Role.TECHNICIAN)))
                .with(csrf())
                .contentType(MediaType.APPLICATION_JSON)
                .content(json.writeValueAsString(Map.of("sites", sites)));
        return (seen == null ? request : request.header("If-Match", seen)).exchange();
    }

    private String tag(PersonId who) {
        return String.valueOf(get(who, "/field/pins").getResponse().getHeader("ETag"));
    }

    @Test
    void takesGateFirstThenDrawingsThenEightLastPhotosAndNoSignature() {
        UUID entry = visited(12);
        draw("DRAWING", "Delivery line");
        assertThat(photograph(entry, "GATE", "Blue gate", photo(80, 60))).hasStatusOk();
        assertThat(photograph(entry, "SIGNATURE", "Ann's hand", photo(80, 60))).hasStatusOk();
        assertThat(photograph(entry, null, "Signature of the customer", photo(80, 60)))
                .hasStatusOk();
        for (int i = 0; i < 9; i++) {
            assertThat(photograph(entry, "WORK", "Strainer " + i, photo(80, 60)))
                    .hasStatusOk();
        }
        correct(entry);
        PersonId bea = people.named("Bea");
        assertThat(bundle(bea).get("pictures")).as("nothing planned or pinned").isEmpty();
        planned(bea, LocalDate.now(clock).plusDays(7));

        JsonNode pictures = bundle(bea).get("pictures");

        assertThat(each(pictures, "kind"))
                .startsWith("GATE", "DRAWING", "VISIT")
                .hasSize(10)
                .filteredOn("VISIT"::equals)
                .hasSize(8);
        assertThat(each(pictures, "caption"))
                .startsWith("Blue gate", "Delivery line")
                .doesNotContain("Signature of the customer", "Ann's hand");
        assertThat(body(get(bea, "/sites/" + site.value() + "/sheet"))).contains("Blue gate", "2 pictures of the gate");
    }

    /** A corrected report holds its photos under new ids. */
    private void correct(UUID report) {
        var request = mvc.post()
                .uri("/sites/{id}/record", site.value())
                .with(user(PageTest.As.who(ada, Role.OFFICE)))
                .with(csrf());
        PostedForm.fields(body(get(ada, "/visits/reports/" + report + "/correct")))
                .forEach(field -> request.param(field.getKey(), field.getValue()));
        assertThat(request.exchange()).hasStatus3xxRedirection();
    }

    @Test
    @DisplayName("SEC-66 a picture is small, carries its hash, and goes only to whose bundle names it")
    void onlyToWhoGoesThere() throws IOException {
        draw("DRAWING", "Delivery line");
        planned(ada, LocalDate.now(clock));
        PersonId stranger = people.named("Cai");
        planned(stranger, LocalDate.now(clock).plusDays(8));
        String key = each(bundle(ada).get("pictures"), "key").get(0);

        for (int twice = 0; twice < 2; twice++) {
            MvcTestResult answer = get(ada, "/field/pictures/" + key);
            assertThat(answer).hasStatusOk();
            byte[] content = answer.getResponse().getContentAsByteArray();
            BufferedImage picture = ImageIO.read(new ByteArrayInputStream(content));
            assertThat(picture.getWidth()).isEqualTo(1600);
            assertThat(picture.getHeight()).isEqualTo(600);
            assertThat(answer.getResponse().getHeader("Repr-Digest"))
                    .isEqualTo("sha-256=:"
                            + java.util.Base64.getEncoder()
                                    .encodeToString(java.util.HexFormat.of().parseHex(Intake.sha256(content)))
                            + ":");
        }
        assertThat(get(stranger, "/field/pictures/" + key)).hasStatus(404);
        assertThat(get(ada, "/field/pictures/" + "0".repeat(64))).hasStatus(404);
        assertThat(get(ada, "/field/pictures/x'--")).hasStatus(404);
        assertThat(pins(stranger, tag(stranger), List.of(site.value()))).hasStatusOk();
        assertThat(get(stranger, "/field/pictures/" + key)).hasStatusOk();
    }

    @Test
    @DisplayName(
            "SYN-08 pins: no If-Match 428, an old ETag 412 and nothing changed, the present one 200 with a new ETag")
    void syn08PinsNeedTheirVersion() {
        UUID other = sites.named("Pinned " + UUID.randomUUID()).value();
        String first = tag(ada);

        assertThat(pins(ada, null, List.of(site.value()))).hasStatus(428);
        assertThat(each(bundle(ada).get("pins"), "site")).isEmpty();

        MvcTestResult set = pins(ada, first, List.of(site.value()));
        assertThat(set).hasStatusOk();
        String second = String.valueOf(set.getResponse().getHeader("ETag"));
        assertThat(second).isNotEqualTo(first).isEqualTo(tag(ada));

        assertThat(pins(ada, first, List.of(other))).hasStatus(412);
        assertThat(each(bundle(ada).get("pins"), "site")).containsExactly(site.toString());

        assertThat(pins(ada, second, List.of())).hasStatusOk();
        assertThat(each(bundle(ada).get("pins"), "site")).isEmpty();
        assertThat(jdbc.sql(
                                "select string_agg(operation, ' ' order by id) from audit_entries where table_name = 'pinned_sites' and coalesce(new_values, old_values) ->> 'person_id' = :person")
                        .param("person", ada.toString())
                        .query(String.class)
                        .single())
                .isEqualTo("insert delete");
    }

    @Test
    void twentyPinsAreTheMostInTheListAndByTheButton() {
        List<UUID> many = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            many.add(sites.named("Pinned " + UUID.randomUUID()).value());
        }
        assertThat(pins(ada, tag(ada), many)).hasStatusOk();
        many.add(site.value());
        MvcTestResult full = pins(ada, tag(ada), many);
        assertThat(full).hasStatus(422);
        assertThat(body(full)).contains("the most a phone takes along. Unpin one first.");

        assertThat(button(true).getMvcResult().getFlashMap().get("pinRefused"))
                .asString()
                .contains("Unpin one first");
        assertThat(pins(ada, tag(ada), many.subList(1, 20))).hasStatusOk();
        assertThat(button(true).getMvcResult().getFlashMap().get("saved")).isNotNull();
        assertThat(body(get(ada, "/sites/" + site.value() + "/sheet"))).contains("20 of at most 20 sites", "Unpin");
        button(false);
        button(false);
        assertThat(each(bundle(ada).get("pins"), "site"))
                .hasSize(19)
                .doesNotContain(site.value().toString());
        assertThat(pins(ada, tag(ada), List.of(UUID.randomUUID()))).hasStatus(404);
        assertThat(pins(ada, tag(ada), "all of them")).hasStatus(422);
    }

    private MvcTestResult button(boolean pinned) {
        return mvc.post()
                .uri("/sites/{id}/pin", site.value())
                .param("pinned", String.valueOf(pinned))
                .with(user(PageTest.As.who(ada, Role.TECHNICIAN)))
                .with(csrf())
                .exchange();
    }

    @Test
    void worksAsBuiltAreInTheBundleInOrderWithoutPlainPoints() {
        InstallId install = installs.commissioned(site, LocalDate.of(2021, 3, 4));
        UUID line = UUID.randomUUID();
        transaction.executeWithoutResult(status -> {
            jdbc.sql(
                            "insert into system_elements (id, install_id, kind, name) values (?, ?, 'DELIVERY_LINE', 'Line up the hill')")
                    .params(line, install.value())
                    .update();
            jdbc.sql("""
                            insert into as_built_points (id, element_id, seq, kind, chainage_m, level_m, latitude, longitude, note) values
                            (gen_random_uuid(), :line, 3, 'AIR', 120, 31.5, -45, 168.6, 'Under the flat stone'),
                            (gen_random_uuid(), :line, 1, 'POINT', 10, 5, null, null, null),
                            (gen_random_uuid(), :line, 2, 'DRAIN', 40, 4.5, null, null, null)""").param("line", line).update();
        });
        List<JsonNode> lines = new ArrayList<>();
        bundle(ada).get("lines").forEach(lines::add);
        lines.removeIf(e -> !e.get("install").asString().equals(install.toString()));
        assertThat(lines).hasSize(1);
        JsonNode points = lines.get(0).get("points");
        assertThat(each(points, "kind")).containsExactly("DRAIN", "AIR");
        assertThat(points.get(1).get("note").asString()).isEqualTo("Under the flat stone");
        assertThat(points.get(1).get("at").asDouble()).isEqualTo(120);
        assertThat(points.get(1).get("lat").asDouble()).isEqualTo(-45);
    }

    @Test
    void pinsAndPicturesFollowAMergedSite() {
        draw("GATE", "Iron gate");
        assertThat(pins(ada, tag(ada), List.of(site.value()))).hasStatusOk();
        SiteId kept = sites.named("Kept " + UUID.randomUUID());

        transaction.executeWithoutResult(status -> events.publishEvent(new SitesMerged(site, kept)));

        JsonNode bundle = bundle(ada);
        assertThat(each(bundle.get("pins"), "site")).containsExactly(kept.toString());
        assertThat(each(bundle.get("pictures"), "site")).containsExactly(kept.toString());
    }

    @Test
    void theSiteSheetShowsTheGateAndCountsThePictures() {
        draw("DRAWING", "Line up the hill");
        draw("GATE", "Iron gate");
        UUID gate = jdbc.sql("select id from site_pictures where site_id = :site and kind = 'GATE'")
                .param("site", site.value())
                .query(UUID.class)
                .single();

        assertThat(body(get(ada, "/sites/" + site + "/sheet")))
                .contains("src=\"/site-pictures/" + gate, "Iron gate", "2 pictures of the gate");
    }

    @Test
    void aRefusedPictureKeepsTheWordsAndSaysWhy() {
        MvcTestResult wrong = mvc.post()
                .uri("/sites/{id}/pictures", site.value())
                .multipart()
                .file(new MockMultipartFile(
                        "picture",
                        "works.pdf",
                        "application/pdf",
                        "%PDF-1.7".getBytes(java.nio.charset.StandardCharsets.US_ASCII)))
                .param("kind", "DRAWING")
                .param("caption", "Line up the hill")
                .with(user(PageTest.As.who(ada, Role.TECHNICIAN)))
                .with(csrf())
                .exchange();
        assertThat(wrong).hasStatus(415);
        assertThat(body(wrong)).contains("Only JPEG and PNG", "Line up the hill");
        draw("DRAWING", "Line up the hill");
        UUID picture = jdbc.sql("select id from site_pictures where site_id = :site")
                .param("site", site.value())
                .query(UUID.class)
                .single();
        assertThat(get(ada, "/site-pictures/" + picture)).hasStatusOk();
        assertThat(mvc.post()
                        .uri("/site-pictures/{id}/remove", picture)
                        .with(user(PageTest.As.who(ada, Role.TECHNICIAN)))
                        .with(csrf()))
                .hasStatus3xxRedirection();
        assertThat(get(ada, "/site-pictures/" + picture)).hasStatus(404);
    }
}

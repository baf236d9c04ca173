package app.ramkeeper.visits.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.Sites;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.visits.FieldPeople;
import app.ramkeeper.visits.PageTest;
import app.ramkeeper.visits.RecordVisit;
import app.ramkeeper.visits.Reports;
import app.ramkeeper.visits.VisitRecorder;
import com.drew.imaging.ImageMetadataReader;
import com.drew.metadata.Directory;
import com.drew.metadata.exif.ExifDirectoryBase;
import com.drew.metadata.exif.GpsDirectory;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.LocalDate;
import java.util.UUID;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;

/** What is kept of a picture that somebody sends, and what is not. */
@PageTest
class PhotoTests {

    private static final String SCRIPT = "<script>alert(1)</script>";
    private static final String SERIAL = "CAM-4711-SECRET";

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Photos photos;

    @Autowired
    VisitRecorder recorder;

    @Autowired
    Sites sites;

    @Autowired
    FieldPeople people;

    @Autowired
    JdbcClient jdbc;

    private PersonId ada;

    @BeforeEach
    void somebody() {
        ada = people.named("Ada Fell");
    }

    @ParameterizedTest
    @ValueSource(strings = {"a;sleep 5.jpg", "$(sleep 5).jpg", "`sleep 5`.jpg", "| sleep 5 .jpg"})
    @DisplayName("SEC-05 a name that looks like a command is only a name, and is not kept")
    void sec05NameIsNoCommand(String name) throws IOException {
        long from = System.nanoTime();
        String sha = photos.keep(picture("jpg"), name, "image/jpeg", ada).sha256();

        assertThat(Duration.ofNanos(System.nanoTime() - from)).isLessThan(Duration.ofSeconds(4));
        assertThat(jdbc.sql("select count(*) from file_uploads f where f::text like '%sleep%'")
                        .query(Long.class)
                        .single())
                .isZero();
        assertThat(upload(sha).getResponse().getHeader(HttpHeaders.CONTENT_DISPOSITION))
                .doesNotContain("sleep");
    }

    @ParameterizedTest
    @CsvSource({"drawing.svg,image/svg+xml", "drawing.png,image/png", "drawing.jpg,image/jpeg"})
    @DisplayName("SEC-08 a drawing that can hold scripts is refused under any name")
    void sec08RefusesScriptableDrawing(String name, String type) {
        byte[] drawing =
                ("<svg xmlns=\"http://www.w3.org/2000/svg\">" + SCRIPT + "</svg>").getBytes(StandardCharsets.UTF_8);

        refused(drawing, name, type, HttpStatus.UNSUPPORTED_MEDIA_TYPE);
    }

    @Test
    @DisplayName("SEC-39 a photo of the limit is taken, one byte more is refused with the limit named")
    void sec39LimitIsNamed() throws IOException {
        int limit = 15 * 1024 * 1024;

        assertThat(photos.keep(padded(picture("jpg"), limit), "gate.jpg", "image/jpeg", ada)
                        .sha256())
                .hasSize(64);
        assertThatExceptionOfType(PhotoRefused.class)
                .isThrownBy(() -> photos.keep(padded(picture("jpg"), limit + 1), "gate.jpg", "image/jpeg", ada))
                .satisfies(e -> assertThat(e.status()).isEqualTo(HttpStatus.CONTENT_TOO_LARGE))
                .withMessageContaining("15 MB");
    }

    @Test
    @DisplayName("SEC-39 a picture that would unpack into all the memory is refused by its size in pixels")
    void sec39RefusesTooManyPixels() {
        byte[] header = ByteBuffer.allocate(33)
                .put(new byte[] {(byte) 0x89, 'P', 'N', 'G', 13, 10, 26, 10, 0, 0, 0, 13, 'I', 'H', 'D', 'R'})
                .putInt(60_000)
                .putInt(60_000)
                .put(new byte[] {8, 2, 0, 0, 0})
                .array();

        refused(header, "huge.png", "image/png", HttpStatus.CONTENT_TOO_LARGE);
    }

    @ParameterizedTest
    @CsvSource({
        "page.jpg,image/jpeg,html",
        "sheet.xlsx,application/vnd.ms-excel,png",
        "a.jpg.html,text/html,jpg",
        "a.jpg.html,image/jpeg,jpg",
        "a.jpg.,image/jpeg,jpg",
        "a.jpg,image/png,jpg",
        "a.png,image/png,jpg",
        "a,image/jpeg,jpg",
        "a.gif,image/gif,gif"
    })
    @DisplayName("SEC-40 name, declared type and content of a photo must agree")
    void sec40RefusesDisagreement(String name, String type, String content) throws IOException {
        byte[] bytes = content.equals("html") ? SCRIPT.getBytes(StandardCharsets.UTF_8) : picture(content);

        refused(bytes, name, type, HttpStatus.UNSUPPORTED_MEDIA_TYPE);
    }

    @Test
    @DisplayName("SEC-40 a photo is made anew: other bytes, the same picture; capitals in its name do no harm")
    void sec40MakesThePictureAnew() throws IOException {
        byte[] sent = withSegment(picture("jpg"), 0xFE, "by hand".getBytes(StandardCharsets.UTF_8));
        byte[] kept = kept(photos.keep(sent, "GATE.JPG", "image/jpeg", ada).sha256());

        assertThat(kept).isNotEqualTo(sent);
        BufferedImage before = ImageIO.read(new ByteArrayInputStream(sent));
        BufferedImage after = ImageIO.read(new ByteArrayInputStream(kept));
        for (int x : new int[] {8, 32}) {
            for (int y : new int[] {6, 24}) {
                assertThat(difference(before.getRGB(x, y), after.getRGB(x, y))).isLessThan(24);
            }
        }
    }

    @Test
    @DisplayName("SEC-42 a photo's name from a hostile site name is one header line in UTF-8")
    void sec42EncodesTheName() throws IOException {
        SiteId site = sites.named("Bühl \"x\"\r\nSet-Cookie: a=b \uD83D\uDC0F".replace("\r\n", " "));
        String header = dispositionOfPhotoAt(site);

        assertThat(header)
                .startsWith("inline; ")
                .contains("filename*=UTF-8''B%C3%BChl%20%22x%22")
                .contains("%F0%9F%90%8F")
                .doesNotContain("\r", "\n", "ü");
        assertThat(PhotoController.disposition("a\r\nSet-Cookie: b=c")).doesNotContain("\r", "\n");
    }

    @Test
    @DisplayName("SEC-44 who has brought a day's share is told so with 429, and others can still bring photos")
    void sec44OneCannotFillTheStore() throws IOException {
        byte[] picture = picture("png");
        String sha = photos.keep(picture, "gate.png", "image/png", ada).sha256();
        jdbc.sql("""
                        insert into file_uploads (id, sha256, person_id, size, at)
                        select gen_random_uuid(), decode(:sha, 'hex'), :by, 1, now() from generate_series(1, 299)""").param("sha", sha).param("by", ada.value()).update();

        refused(picture, "gate.png", "image/png", HttpStatus.TOO_MANY_REQUESTS);
        assertThat(photos.keep(picture, "gate.png", "image/png", people.named("Jonty Brack"))
                        .sha256())
                .isEqualTo(sha);
    }

    @Test
    @DisplayName("SEC-40 SEC-44 what was typed stays on the form when its photo is refused")
    void keepsTheFormWhenThePhotoIsRefused() {
        SiteId site = sites.named("Tarn block");
        MvcTestResult answer = mvc.post()
                .uri("/sites/{id}/record", site.value())
                .multipart()
                .file(new MockMultipartFile(
                        "photoFiles", "x.svg", "image/svg+xml", SCRIPT.getBytes(StandardCharsets.UTF_8)))
                .param("note", "Strainer cleared by hand")
                .with(user(PageTest.As.who(ada, Role.TECHNICIAN)))
                .with(csrf())
                .exchange();

        assertThat(answer).hasStatus(422).bodyText().contains("Strainer cleared by hand", "Only JPEG and PNG photos");
    }

    @Test
    @DisplayName("FLT-23 nothing but the picture is left of a file that is two things at once")
    void flt23KeepsOnlyThePicture() throws IOException {
        byte[] zip = {'P', 'K', 3, 4, 'e', 'v', 'i', 'l', '.', 'z', 'i', 'p'};
        byte[] both = joined(picture("png"), zip);
        byte[] comment = withSegment(picture("jpg"), 0xFE, SCRIPT.getBytes(StandardCharsets.UTF_8));

        assertThat(text(kept(photos.keep(both, "a.png", "image/png", ada).sha256())))
                .doesNotContain("evil.zip");
        assertThat(text(kept(photos.keep(comment, "a.jpg", "image/jpeg", ada).sha256())))
                .doesNotContain("script", "alert");
        refused(
                joined("GIF89a/*".getBytes(StandardCharsets.US_ASCII), SCRIPT.getBytes(StandardCharsets.UTF_8)),
                "a.jpg",
                "image/jpeg",
                HttpStatus.UNSUPPORTED_MEDIA_TYPE);
    }

    @Test
    @DisplayName("FLT-23 half a picture is refused in words")
    void flt23RefusesHalfAPicture() throws IOException {
        byte[] whole = picture("png");

        refused(
                java.util.Arrays.copyOf(whole, whole.length / 2),
                "a.png",
                "image/png",
                HttpStatus.UNPROCESSABLE_CONTENT);
        refused(
                new byte[] {(byte) 0xFF, (byte) 0xD8, (byte) 0xFF},
                "a.jpg",
                "image/jpeg",
                HttpStatus.UNPROCESSABLE_CONTENT);
    }

    @Test
    @DisplayName("FLT-24 a photo with position, serial number and orientation 6 is kept upright and without them")
    void flt24DropsPositionAndSerial() throws Exception {
        byte[] sent = withSegment(picture("jpg"), 0xE1, exif());
        assertThat(directories(sent)).anyMatch(GpsDirectory.class::isInstance);
        assertThat(text(sent)).contains(SERIAL);

        String sha = photos.keep(sent, "gate.jpg", "image/jpeg", ada).sha256();
        byte[] served = upload(sha).getResponse().getContentAsByteArray();

        assertThat(served).isEqualTo(kept(sha));
        assertThat(directories(served)).noneMatch(d -> d instanceof GpsDirectory || d instanceof ExifDirectoryBase);
        assertThat(text(served)).doesNotContain(SERIAL, "Exif");
        BufferedImage upright = ImageIO.read(new ByteArrayInputStream(served));
        assertThat(upright.getWidth()).isEqualTo(30);
        assertThat(upright.getHeight()).isEqualTo(40);
        // the left upper corner of the sent picture is red; turned upright it is on the right
        assertThat(new Color(upright.getRGB(25, 5)).getRed()).isGreaterThan(200);
        assertThat(new Color(upright.getRGB(5, 35)).getRed()).isLessThan(100);
    }

    private static int difference(int one, int other) {
        Color a = new Color(one);
        Color b = new Color(other);
        return Math.max(
                Math.abs(a.getRed() - b.getRed()),
                Math.max(Math.abs(a.getGreen() - b.getGreen()), Math.abs(a.getBlue() - b.getBlue())));
    }

    private String dispositionOfPhotoAt(SiteId site) throws IOException {
        String sha = photos.keep(picture("png"), "gate.png", "image/png", ada).sha256();
        RecordVisit report = Reports.service(site, ada, LocalDate.of(2026, 5, 6))
                .photo(new RecordVisit.Photo(sha, "Gate", null))
                .build();
        recorder.record(report, ada);
        UUID photo = jdbc.sql("select id from photos where report_id = :id")
                .param("id", report.id().value())
                .query(UUID.class)
                .single();
        return String.valueOf(mvc.get()
                .uri("/visits/photos/{id}", photo)
                .with(user(PageTest.As.who(ada, Role.TECHNICIAN)))
                .exchange()
                .getResponse()
                .getHeader(HttpHeaders.CONTENT_DISPOSITION));
    }

    private void refused(byte[] content, String name, String type, HttpStatus status) {
        assertThatExceptionOfType(PhotoRefused.class)
                .isThrownBy(() -> photos.keep(content, name, type, ada))
                .satisfies(e -> assertThat(e.status()).isEqualTo(status));
    }

    private MvcTestResult upload(String sha) {
        MvcTestResult answer = mvc.get()
                .uri("/visits/uploads/{sha}", sha)
                .with(user(PageTest.As.who(ada, Role.TECHNICIAN)))
                .exchange();
        assertThat(answer).hasStatusOk();
        return answer;
    }

    private byte[] kept(String sha) {
        return jdbc.sql("select content from files where sha256 = decode(:sha, 'hex')")
                .param("sha", sha)
                .query(byte[].class)
                .single();
    }

    /** 40 by 30 pixels, the left upper quarter red on blue. */
    private static byte[] picture(String format) throws IOException {
        BufferedImage pixels = new BufferedImage(40, 30, BufferedImage.TYPE_INT_RGB);
        Graphics2D pen = pixels.createGraphics();
        pen.setColor(Color.BLUE);
        pen.fillRect(0, 0, 40, 30);
        pen.setColor(Color.RED);
        pen.fillRect(0, 0, 20, 15);
        pen.dispose();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(pixels, format, out);
        return out.toByteArray();
    }

    /** With zeros behind its end up to this size. */
    private static byte[] padded(byte[] picture, int size) {
        return java.util.Arrays.copyOf(picture, size);
    }

    private static byte[] joined(byte[] one, byte[] other) {
        return ByteBuffer.allocate(one.length + other.length)
                .put(one)
                .put(other)
                .array();
    }

    /** A JPEG with one more segment behind its first two bytes. */
    private static byte[] withSegment(byte[] jpeg, int marker, byte[] content) {
        return ByteBuffer.allocate(jpeg.length + 4 + content.length)
                .put(jpeg, 0, 2)
                .put((byte) 0xFF)
                .put((byte) marker)
                .putShort((short) (content.length + 2))
                .put(content)
                .put(jpeg, 2, jpeg.length - 2)
                .array();
    }

    /** Exif by CIPA DC-008: orientation 6, a body serial number, a position 45° S. */
    private static byte[] exif() {
        byte[] serial = (SERIAL + "\0").getBytes(StandardCharsets.US_ASCII);
        int text = 8 + 2 + 3 * 12 + 4;
        int gps = text + serial.length;
        ByteBuffer tiff = ByteBuffer.allocate(gps + 2 + 2 * 12 + 4 + 24);
        tiff.put(new byte[] {'M', 'M', 0, 42}).putInt(8).putShort((short) 3);
        entry(tiff, 0x0112, 3, 1).putShort((short) 6).putShort((short) 0);
        entry(tiff, 0x8825, 4, 1).putInt(gps);
        entry(tiff, 0xA431, 2, serial.length).putInt(text);
        tiff.putInt(0).put(serial).putShort((short) 2);
        entry(tiff, 1, 2, 2).put(new byte[] {'S', 0, 0, 0});
        entry(tiff, 2, 5, 3).putInt(gps + 2 + 24 + 4);
        tiff.putInt(0).putInt(45).putInt(1).putInt(1).putInt(1).putInt(30).putInt(1);
        return joined(new byte[] {'E', 'x', 'i', 'f', 0, 0}, tiff.array());
    }

    private static ByteBuffer entry(ByteBuffer tiff, int tag, int type, int count) {
        return tiff.putShort((short) tag).putShort((short) type).putInt(count);
    }

    private static Iterable<Directory> directories(byte[] picture) throws Exception {
        return ImageMetadataReader.readMetadata(new ByteArrayInputStream(picture))
                .getDirectories();
    }

    private static String text(byte[] bytes) {
        return new String(bytes, StandardCharsets.ISO_8859_1);
    }
}

package app.ramkeeper.visits.files;

import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;

/** The two kinds of picture that are taken, each known by name, declared type and first bytes: all three must agree. */
enum PhotoKind {
    JPEG("image/jpeg", List.of("jpg", "jpeg"), 0xFF, 0xD8, 0xFF),
    PNG("image/png", List.of("png"), 0x89, 'P', 'N', 'G', 0x0D, 0x0A, 0x1A, 0x0A);

    private final String mediaType;
    private final List<String> extensions;
    private final int[] firstBytes;

    PhotoKind(String mediaType, List<String> extensions, int... firstBytes) {
        this.mediaType = mediaType;
        this.extensions = extensions;
        this.firstBytes = firstBytes;
    }

    String mediaType() {
        return mediaType;
    }

    /** The name ImageIO knows it by. */
    String format() {
        return extensions.get(0);
    }

    /**
     * Tells the kind of a file as it was sent.
     *
     * @throws PhotoRefused if it is another kind, or name, declared type and content disagree
     */
    static PhotoKind of(@Nullable String fileName, @Nullable String declared, byte[] content) {
        String name = fileName == null ? "" : fileName;
        String extension = name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
        String type = declared == null
                ? ""
                : declared.toLowerCase(Locale.ROOT).split(";", 2)[0].strip();
        for (PhotoKind kind : values()) {
            if (kind.extensions.contains(extension) && kind.mediaType.equals(type) && kind.begins(content)) {
                return kind;
            }
        }
        throw new PhotoRefused(
                HttpStatus.UNSUPPORTED_MEDIA_TYPE,
                "Only JPEG and PNG photos can be kept (.jpg, .jpeg or .png, and really of that kind).");
    }

    /** The kind of a picture that is kept. */
    static PhotoKind ofType(String mediaType) {
        return JPEG.mediaType.equals(mediaType) ? JPEG : PNG;
    }

    private boolean begins(byte[] content) {
        for (int i = 0; i < firstBytes.length; i++) {
            if (i >= content.length || (content[i] & 0xFF) != firstBytes[i]) {
                return false;
            }
        }
        return true;
    }
}

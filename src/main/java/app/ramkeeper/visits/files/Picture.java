package app.ramkeeper.visits.files;

import com.drew.imaging.ImageMetadataReader;
import com.drew.imaging.ImageProcessingException;
import com.drew.metadata.Metadata;
import com.drew.metadata.MetadataException;
import com.drew.metadata.exif.ExifIFD0Directory;
import com.drew.metadata.exif.ExifSubIFDDirectory;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Date;
import java.util.TimeZone;
import org.jspecify.annotations.Nullable;

/**
 * What a photo's own notes say that is worth keeping; all else, position and serial numbers, is dropped.
 *
 * @param orientation 1 to 8 as in the Exif standard (CIPA DC-008), tag 0x0112
 * @param takenAt by the camera's clock, read in the company's zone
 */
record Picture(int orientation, @Nullable Instant takenAt) {

    static Picture read(byte[] content, ZoneId zone) {
        try {
            Metadata notes = ImageMetadataReader.readMetadata(new ByteArrayInputStream(content));
            return new Picture(orientation(notes), takenAt(notes, zone));
        } catch (ImageProcessingException | IOException | RuntimeException unreadable) {
            // Broken notes are no reason to refuse a good picture.
            return new Picture(1, null);
        }
    }

    private static int orientation(Metadata notes) {
        ExifIFD0Directory directory = notes.getFirstDirectoryOfType(ExifIFD0Directory.class);
        try {
            int value = directory != null && directory.containsTag(ExifIFD0Directory.TAG_ORIENTATION)
                    ? directory.getInt(ExifIFD0Directory.TAG_ORIENTATION)
                    : 1;
            return value >= 1 && value <= 8 ? value : 1;
        } catch (MetadataException unreadable) {
            return 1;
        }
    }

    private static @Nullable Instant takenAt(Metadata notes, ZoneId zone) {
        ExifSubIFDDirectory directory = notes.getFirstDirectoryOfType(ExifSubIFDDirectory.class);
        Date taken = directory == null ? null : directory.getDateOriginal(TimeZone.getTimeZone(zone));
        return taken == null ? null : taken.toInstant();
    }
}

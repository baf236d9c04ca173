package app.ramkeeper.visits.files;

import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;
import org.springframework.util.unit.DataSize;

/**
 * Limits on photos.
 *
 * @param maxSize of one photo as sent
 * @param maxMegapixels of one photo, so that a small file cannot unpack into all the memory
 * @param longestSide to which a larger photo is scaled down, in pixels
 * @param perDay how many photos one person may bring in 24 hours
 * @param bytesPerDay how much one person may bring in 24 hours
 */
@ConfigurationProperties("ramkeeper.photos")
record PhotoSettings(
        @DefaultValue("15MB") DataSize maxSize,
        @DefaultValue("60") int maxMegapixels,
        @DefaultValue("2048") int longestSide,
        @DefaultValue("300") int perDay,
        @DefaultValue("1GB") DataSize bytesPerDay) {}

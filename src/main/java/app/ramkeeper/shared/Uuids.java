package app.ramkeeper.shared;

import java.security.SecureRandom;
import java.util.UUID;

/** Makes identifiers of UUID version 7 (RFC 9562): time first, so that new rows sit side by side in an index. */
public final class Uuids {

    private static final SecureRandom RANDOM = new SecureRandom();

    private Uuids() {}

    /** Returns a new identifier. Never sort business data by it: clocks of phones differ. */
    public static UUID next() {
        return at(System.currentTimeMillis(), RANDOM.nextLong(), RANDOM.nextLong());
    }

    static UUID at(long epochMillis, long randomHigh, long randomLow) {
        long high = (epochMillis << 16) | 0x7000L | (randomHigh & 0x0FFFL);
        long low = (randomLow & 0x3FFF_FFFF_FFFF_FFFFL) | 0x8000_0000_0000_0000L;
        return new UUID(high, low);
    }
}

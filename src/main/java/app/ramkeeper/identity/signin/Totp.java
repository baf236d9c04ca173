package app.ramkeeper.identity.signin;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.time.Instant;
import java.util.OptionalLong;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * Codes of six digits that change every 30 seconds, by RFC 6238 (HMAC-SHA-1, as every authenticator program supports;
 * RFC 6238 section 1.2). SHA-1 as a keyed MAC is not touched by its collisions.
 */
final class Totp {

    static final int STEP_SECONDS = 30;
    private static final String ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";

    private Totp() {}

    /** The step whose code this is, among the present one and its neighbours (RFC 6238 section 5.2: clocks drift). */
    static OptionalLong matchingStep(byte[] secret, String code, Instant now) {
        long present = now.getEpochSecond() / STEP_SECONDS;
        OptionalLong found = OptionalLong.empty();
        for (long step = present - 1; step <= present + 1; step++) {
            byte[] right = code(secret, step, 6).getBytes(StandardCharsets.US_ASCII);
            if (MessageDigest.isEqual(right, code.getBytes(StandardCharsets.UTF_8))) {
                found = OptionalLong.of(step);
            }
        }
        return found;
    }

    /** The code of a step (RFC 4226 section 5.3). */
    static String code(byte[] secret, long step, int digits) {
        byte[] mac = mac(secret, ByteBuffer.allocate(8).putLong(step).array());
        int offset = mac[mac.length - 1] & 0xF;
        int binary = ByteBuffer.wrap(mac, offset, 4).getInt() & 0x7FFF_FFFF;
        int modulus = (int) Math.pow(10, digits);
        return String.format("%0" + digits + "d", binary % modulus);
    }

    /** Base 32 without padding (RFC 4648 section 6), as programs take a secret by hand. */
    static String base32(byte[] bytes) {
        StringBuilder text = new StringBuilder();
        int bits = 0;
        int held = 0;
        for (byte b : bytes) {
            held = (held << 8) | (b & 0xFF);
            bits += 8;
            while (bits >= 5) {
                bits -= 5;
                text.append(ALPHABET.charAt((held >> bits) & 31));
            }
        }
        return bits == 0
                ? text.toString()
                : text.append(ALPHABET.charAt((held << (5 - bits)) & 31)).toString();
    }

    private static byte[] mac(byte[] secret, byte[] message) {
        try {
            Mac mac = Mac.getInstance("HmacSHA1");
            mac.init(new SecretKeySpec(secret, "RAW"));
            return mac.doFinal(message);
        } catch (GeneralSecurityException impossible) {
            throw new IllegalStateException("Every Java platform has HMAC-SHA-1", impossible);
        }
    }
}

package app.ramkeeper.identity.signin;

import java.math.BigInteger;
import java.time.Instant;

/** A device that shows codes, set up by typing the secret that the page shows. */
public final class CodeDevice {

    private static final String ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";

    private final byte[] secret;

    public CodeDevice(String shown) {
        this.secret = bytes(shown.replace(" ", ""));
    }

    public String code(Instant now) {
        return Totp.code(secret, now.getEpochSecond() / Totp.STEP_SECONDS, 6);
    }

    private static byte[] bytes(String base32) {
        BigInteger number = BigInteger.ZERO;
        for (char c : base32.toCharArray()) {
            number = number.shiftLeft(5).or(BigInteger.valueOf(ALPHABET.indexOf(c)));
        }
        byte[] bytes = new byte[20];
        byte[] raw = number.toByteArray();
        int length = Math.min(raw.length, 20);
        System.arraycopy(raw, raw.length - length, bytes, 20 - length, length);
        return bytes;
    }
}

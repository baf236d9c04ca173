package app.ramkeeper.identity.signin;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Base64;

/** Secrets made at random, and the hashes that are kept of them. */
public final class Tokens {

    private static final SecureRandom RANDOM = new SecureRandom();

    private Tokens() {}

    /** 256 random bits, fit for an address. */
    public static String next() {
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes(32));
    }

    /** So many random bytes. */
    public static byte[] bytes(int count) {
        byte[] bytes = new byte[count];
        RANDOM.nextBytes(bytes);
        return bytes;
    }

    /** SHA-256; enough for secrets of full entropy, which cannot be guessed faster by a fast hash. */
    public static byte[] hash(String secret) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(secret.getBytes(StandardCharsets.UTF_8));
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("Every Java platform has SHA-256", impossible);
        }
    }

    /** A name for a secret that does not give it away. */
    static String handle(String secret) {
        return Base64.getUrlEncoder()
                .withoutPadding()
                .encodeToString(hash(secret))
                .substring(0, 22);
    }
}

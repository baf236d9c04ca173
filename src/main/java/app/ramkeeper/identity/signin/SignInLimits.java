package app.ramkeeper.identity.signin;

import app.ramkeeper.identity.signin.Attempts.Limit;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.time.Duration;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/**
 * Slows guessing without letting strangers lock a person out: the tight limit counts one account from one network, the
 * wider ones count a network over all accounts and an account over all networks.
 */
@Component
public class SignInLimits {

    private static final Limit ACCOUNT_FROM_NETWORK = new Limit(5, Duration.ofSeconds(20));
    private static final Limit NETWORK = new Limit(60, Duration.ofSeconds(5));
    private static final Limit ACCOUNT = new Limit(100, Duration.ofSeconds(5));

    private final Attempts attempts;
    private final SecurityLog log;

    SignInLimits(Attempts attempts, SecurityLog log) {
        this.attempts = attempts;
        this.log = log;
    }

    /** Takes a try at an account's secret. */
    public void take(String what, String account, @Nullable String address) {
        take(what + "|" + fold(account) + "|" + network(address), ACCOUNT_FROM_NETWORK, account, address);
        take("network|" + network(address), NETWORK, account, address);
        take(what + "|" + fold(account), ACCOUNT, account, address);
    }

    /** Takes a try that names no account, such as a passkey or a reset. */
    public void takeFromNetwork(String what, @Nullable String address) {
        take(what + "-network|" + network(address), NETWORK, "-", address);
    }

    /** The right secret was given: the person's own wrong tries no longer count. */
    public void forget(String what, String account, @Nullable String address) {
        attempts.forget(what + "|" + fold(account) + "|" + network(address));
    }

    private void take(String key, Limit limit, String account, @Nullable String address) {
        attempts.take(key, limit).ifPresent(pause -> {
            log.event("limit", "refused", account, address, key.substring(0, key.indexOf('|')));
            throw new TooManyAttempts(pause);
        });
    }

    private static String fold(String account) {
        String folded = account.strip().toLowerCase(Locale.ROOT).replaceAll("\\p{Cntrl}", "");
        return folded.length() <= 100 ? folded : folded.substring(0, 100);
    }

    /** An IPv4 address, or the /64 that one IPv6 customer commands. */
    static String network(@Nullable String address) {
        if (address == null || !address.matches("[0-9a-fA-F.:]{2,45}")) {
            return "?";
        }
        try {
            byte[] bytes = InetAddress.getByName(address).getAddress();
            return HexFormat.of().formatHex(bytes.length == 16 ? Arrays.copyOf(bytes, 8) : bytes);
        } catch (UnknownHostException odd) {
            return "?";
        }
    }
}

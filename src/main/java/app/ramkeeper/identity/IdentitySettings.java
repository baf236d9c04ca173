package app.ramkeeper.identity;

import java.net.URI;
import java.time.Duration;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * How people reach and enter the application.
 *
 * @param publicAddress where people open it; links in mails are built from it, never from a request
 * @param secondFactor whether a password alone is enough (only the trial run says so)
 * @param sessionLifetime a session ends this long after sign-in, however busy it is
 * @param inviteLifetime how long an invitation or a setup link works
 * @param resetLifetime how long a link for a new password works
 */
@ConfigurationProperties("ramkeeper")
public record IdentitySettings(
        @DefaultValue("http://localhost:8080") URI publicAddress,
        @DefaultValue("required") SecondFactor secondFactor,
        @DefaultValue("7d") Duration sessionLifetime,
        @DefaultValue("72h") Duration inviteLifetime,
        @DefaultValue("30m") Duration resetLifetime) {

    /** Whether each sign-in needs a second factor. */
    public enum SecondFactor {
        REQUIRED,
        OFF
    }

    public IdentitySettings {
        boolean loopback = "localhost".equals(publicAddress.getHost()) || "127.0.0.1".equals(publicAddress.getHost());
        if (publicAddress.getHost() == null || !(isHttps(publicAddress) || (loopback && isHttp(publicAddress)))) {
            throw new IllegalArgumentException(
                    "ramkeeper.public-address must be an https:// address (plain http:// only for localhost), not "
                            + publicAddress);
        }
    }

    /** Whether people come over TLS, which decides the cookie's name and the strict-transport header. */
    public boolean tls() {
        return isHttps(publicAddress);
    }

    public boolean needsSecondFactor() {
        return secondFactor == SecondFactor.REQUIRED;
    }

    /** Scheme, host and port, as a browser names where a page comes from. */
    public String origin() {
        return publicAddress.getScheme() + "://" + publicAddress.getRawAuthority();
    }

    /** The full address of a path of this application. */
    public String link(String path) {
        return origin() + path;
    }

    private static boolean isHttps(URI address) {
        return "https".equalsIgnoreCase(address.getScheme());
    }

    private static boolean isHttp(URI address) {
        return "http".equalsIgnoreCase(address.getScheme());
    }
}

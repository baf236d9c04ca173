package app.ramkeeper.identity.people;

import app.ramkeeper.identity.signin.LinkMail;
import app.ramkeeper.identity.signin.LinkText;
import app.ramkeeper.identity.signin.OneTimeLinks;
import app.ramkeeper.identity.signin.OneTimeLinks.Purpose;
import app.ramkeeper.identity.signin.SecurityLog;
import app.ramkeeper.identity.signin.SignInLimits;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Sends a link for a new password to somebody who asks for it by sign-in name or e-mail address. */
@Service
class Forgotten {

    private record Found(UUID id, String email) {}

    private final JdbcClient jdbc;
    private final OneTimeLinks links;
    private final LinkMail mail;
    private final SignInLimits limits;
    private final SecurityLog log;

    Forgotten(JdbcClient jdbc, OneTimeLinks links, LinkMail mail, SignInLimits limits, SecurityLog log) {
        this.jdbc = jdbc;
        this.links = links;
        this.mail = mail;
        this.limits = limits;
        this.log = log;
    }

    /** Nothing that comes back tells whether there is such an account. */
    @Transactional
    public void ask(String who, @Nullable String address) {
        limits.takeFromNetwork("reset", address);
        limits.take("reset", who, address);
        log.event("reset", "asked", who, address, "");
        if (who.length() > 200 || !mail.isConfigured()) {
            return;
        }
        jdbc.sql("""
                        select a.id, p.email from accounts a join people p on p.id = a.person_id
                        where a.disabled_at is null and a.password_hash is not null and p.email is not null
                          and (folded(a.login) = folded(:who) or lower(p.email) = lower(:who)) limit 2""")
                .param("who", who)
                .query(Found.class)
                .list()
                .forEach(found -> mail.send(
                        found.email(),
                        LinkText.SUBJECT,
                        LinkText.of(links.make(Purpose.RESET, found.id()), links.lifetime(Purpose.RESET))));
    }
}

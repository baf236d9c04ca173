package app.ramkeeper.quotes.offer;

import app.ramkeeper.audit.Actor;
import app.ramkeeper.identity.Company;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.identity.IdentitySettings;
import app.ramkeeper.identity.Open;
import app.ramkeeper.identity.signin.LinkMail;
import app.ramkeeper.identity.signin.Tokens;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Uuids;
import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import org.springframework.http.MediaType;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** A customer's secret way to one sent revision, and to nothing else. It works until the quote lapses, or is revoked. */
@Service
@Transactional
public class QuoteLinks {

    /** What stands behind a link that works. */
    record Behind(QuoteId quote, Revision revision) {}

    /** The address that was made, and whether it went out by mail. */
    public record Made(String address, @Nullable String mailedTo) {}

    private final JdbcClient jdbc;
    private final QuoteStore store;
    private final LinkMail mail;
    private final IdentitySettings settings;
    private final Company company;
    private final MessageSource messages;
    private final Clock clock;

    QuoteLinks(
            JdbcClient jdbc,
            QuoteStore store,
            LinkMail mail,
            IdentitySettings settings,
            Company company,
            MessageSource messages,
            Clock clock) {
        this.jdbc = jdbc;
        this.store = store;
        this.mail = mail;
        this.settings = settings;
        this.company = company;
        this.messages = messages;
        this.clock = clock;
    }

    /** Makes a link to the revision in force and mails it where an address and a mail server are known. Older links end. */
    @ForOffice
    public Made make(QuoteId id, String by) {
        Revision sent = store.hold(id);
        if (!sent.isOpenOn(LocalDate.now(clock))) {
            throw new Conflict("Only a quote that was sent and is still open has a link for the customer.");
        }
        end(id);
        String token = Tokens.next();
        jdbc.sql("insert into quote_links (id, revision_id, token_hash, created_at, expires_at) values (?, ?, ?, ?, ?)")
                .params(
                        Uuids.next(),
                        sent.id(),
                        Tokens.hash(token),
                        store.now(),
                        sent.validUntil()
                                .plusDays(1)
                                .atStartOfDay(clock.getZone())
                                .toOffsetDateTime())
                .update();
        String address = settings.link("/q/" + token);
        QuoteCard card = store.card(id);
        boolean mailed = mail.isConfigured() && card.email() != null;
        if (mailed && card.email() != null) {
            mail(card.email(), card, sent, address);
        }
        store.step(id, sent.revision(), Step.Kind.LINK_MADE, by, mailed ? "mailed to " + card.email() : null);
        return new Made(address, mailed ? card.email() : null);
    }

    private void mail(String to, QuoteCard card, Revision sent, String address) {
        Object[] words = {
            card.name(),
            Optional.ofNullable(company.card().name()).orElse("Ramkeeper"),
            card.customerName(),
            card.title(),
            sent.validUntil().toString(),
            address
        };
        mail.send(
                to,
                messages.getMessage("quotes.mail.subject", words, Locale.UK),
                messages.getMessage("quotes.mail.text", words, Locale.UK),
                new LinkMail.Attached(
                        card.name() + ".pdf",
                        MediaType.APPLICATION_PDF_VALUE,
                        store.paper(Objects.requireNonNull(sent.pdfSha256()))));
    }

    /** Ends all links of a quote. */
    @ForOffice
    public void revoke(QuoteId id, String by) {
        Revision last = store.hold(id);
        if (end(id) > 0) {
            store.step(id, last.revision(), Step.Kind.LINK_REVOKED, by, null);
        }
    }

    private int end(QuoteId id) {
        return jdbc.sql("update quote_links set revoked_at = ? where revoked_at is null and revision_id in"
                        + " (select id from quote_revisions where quote_id = ?)")
                .params(store.now(), id.value())
                .update();
    }

    /** Until when the present link works, if there is one. */
    @ForOffice
    @Transactional(readOnly = true)
    public Optional<OffsetDateTime> expiry(QuoteId id) {
        return jdbc.sql("select max(expires_at) from quote_links l join quote_revisions r on r.id = l.revision_id"
                        + " where r.quote_id = ? and revoked_at is null and expires_at > ?")
                .params(id.value(), store.now())
                .query((row, number) -> Optional.ofNullable(row.getObject(1, OffsetDateTime.class)))
                .single();
    }

    /** What a token leads to; nothing where it is unknown, expired or revoked: the three look alike. */
    @Open
    Optional<Behind> look(String token) {
        if (token.length() != 43) {
            return Optional.empty();
        }
        Optional<UUID> revision = jdbc.sql(
                        "select revision_id from quote_links where token_hash = ? and revoked_at is null and expires_at > ?")
                .params(Tokens.hash(token), store.now())
                .query(UUID.class)
                .optional();
        return revision.map(store::byId).map(found -> new Behind(found.quote(), found));
    }

    /** Notes the first time that somebody opened the link. */
    @Open
    void opened(String token, Behind behind) {
        int first = jdbc.sql("update quote_links set opened_at = ? where token_hash = ? and opened_at is null")
                .params(store.now(), Tokens.hash(token))
                .update();
        if (first == 1) {
            store.step(behind.quote(), behind.revision().revision(), Step.Kind.OPENED, "customer's link", null);
        }
    }

    /** The trail's name for what a customer does over a link. */
    static Actor customer() {
        return new Actor("customer", "quote link");
    }
}

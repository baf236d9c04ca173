package app.ramkeeper.quotes.offer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import app.ramkeeper.MailRun;
import app.ramkeeper.audit.Actor;
import app.ramkeeper.identity.signin.LinkMail;
import jakarta.mail.BodyPart;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import java.security.MessageDigest;
import java.util.UUID;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mail.MailException;

/** Where a mail server is configured, the customer gets the link by mail. */
class QuoteMailTests extends MailRun {

    @Autowired
    Quotes quotes;

    @Autowired
    Sending sending;

    @Autowired
    QuoteLinks links;

    @Autowired
    QuoteStore store;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    LinkMail mail;

    @Test
    void theLinkGoesToTheCustomer() throws Exception {
        Offers offers = new Offers(jdbc);
        offers.tax();

        QuoteLinks.Made made = AsOffice.run(new Actor("test", "test"), () -> {
            QuoteId id = quotes.open(Offers.whom("hemi@farms.example"), offers.priced(), "Test");
            offers.priceTheRest(id);
            sending.send(id, "Test");
            return links.make(id, "Test");
        });

        assertThat(made.mailedTo()).isEqualTo("hemi@farms.example");
        MimeMessage message = mailTo("hemi@farms.example");
        assertThat(message.getSubject()).startsWith("Quote Q");
        MimeMultipart parts = (MimeMultipart) message.getContent();
        BodyPart file = parts.getBodyPart(1);
        assertThat(file.getFileName()).matches("Q\\d{4}-\\d{4}\\.pdf");
        assertThat(file.getContentType()).startsWith("application/pdf");
        assertThat(MessageDigest.getInstance("SHA-256")
                        .digest(file.getInputStream().readAllBytes()))
                .as("the very paper that was kept")
                .isEqualTo(jdbc.sql("select pdf_sha256 from quote_revisions order by sent_at desc nulls last limit 1")
                        .query((row, number) -> row.getBytes(1))
                        .single());
        MimeMultipart words = (MimeMultipart) parts.getBodyPart(0).getContent();
        assertThat(words.getBodyPart(0).getContent().toString())
                .contains("Dear Hemi Stone", made.address(), "It holds until")
                .doesNotContain("{", "''");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"Quote\r\nBcc: hidden@elsewhere.example", "Quote\nBcc: hidden@elsewhere.example\n\nOther text"})
    @DisplayName("SEC-09 line ends in a subject make no header and no recipient")
    void sec09SubjectIsOneLine(String subject) throws Exception {
        String to = "sec09-" + UUID.randomUUID() + "@farms-" + UUID.randomUUID() + ".example";

        mail.sendNow(to, subject, "Words");

        MimeMessage message = mailTo(to);
        assertThat(message.getSubject()).startsWith("Quote Bcc: hidden@elsewhere.example");
        assertThat(message.getHeader("Bcc")).isNull();
        assertThat(message.getAllRecipients()).extracting(Object::toString).containsExactly(to);
        assertThat(message.getContent().toString().strip()).isEqualTo("Words");
    }

    @Test
    @DisplayName("SEC-09 an address with a line break is no address")
    void sec09AddressWithALineBreak() {
        assertThatExceptionOfType(MailException.class)
                .isThrownBy(() -> mail.sendNow("a@farms.example\r\nBcc: b@elsewhere.example", "Quote", "Words"));
    }
}

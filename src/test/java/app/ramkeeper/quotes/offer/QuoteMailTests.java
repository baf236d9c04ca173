package app.ramkeeper.quotes.offer;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.MailRun;
import app.ramkeeper.audit.Actor;
import jakarta.mail.BodyPart;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import java.security.MessageDigest;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;

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
}

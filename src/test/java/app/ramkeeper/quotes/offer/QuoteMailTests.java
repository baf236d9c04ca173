package app.ramkeeper.quotes.offer;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.TestDatabase;
import app.ramkeeper.audit.Actor;
import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import jakarta.mail.BodyPart;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import java.security.MessageDigest;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;

/** Where a mail server is configured, the customer gets the link by mail. */
@SpringBootTest
@Import(TestDatabase.class)
class QuoteMailTests {

    private static final GreenMail MAIL = new GreenMail(ServerSetup.SMTP.dynamicPort());

    @AfterAll
    static void stop() {
        MAIL.stop();
    }

    @DynamicPropertySource
    static void mailServer(DynamicPropertyRegistry registry) {
        MAIL.start();
        registry.add("spring.mail.host", () -> "127.0.0.1");
        registry.add("spring.mail.port", () -> MAIL.getSmtp().getPort());
        registry.add("ramkeeper.mail-from", () -> "office@longspur.example");
    }

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
        assertThat(MAIL.waitForIncomingEmail(10_000, 1)).isTrue();
        MimeMessage message = MAIL.getReceivedMessages()[0];
        assertThat(message.getAllRecipients()[0]).hasToString("hemi@farms.example");
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

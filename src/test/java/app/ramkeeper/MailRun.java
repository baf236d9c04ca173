package app.ramkeeper;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import jakarta.mail.internet.MimeMessage;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import org.awaitility.Awaitility;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.context.annotation.Import;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;

/** Runs with a mail server; all that extend it share one. */
@SpringBootTest
@Import(TestDatabase.class)
public abstract class MailRun {

    private static final GreenMail MAIL = new GreenMail(ServerSetup.SMTP.dynamicPort());

    @DynamicPropertySource
    static void mailServer(DynamicPropertyRegistry registry) {
        if (!MAIL.isRunning()) {
            MAIL.start();
        }
        registry.add("spring.mail.host", () -> "127.0.0.1");
        registry.add("spring.mail.port", () -> MAIL.getSmtp().getPort());
        registry.add("ramkeeper.mail-from", () -> "office@longspur.example");
    }

    /** The only mail to an address, waited for. */
    protected static MimeMessage mailTo(String address) {
        Awaitility.await()
                .atMost(Duration.ofSeconds(10))
                .until(() -> !mailsTo(address).isEmpty());
        List<MimeMessage> mails = mailsTo(address);
        if (mails.size() != 1) {
            throw new AssertionError(mails.size() + " mails to " + address);
        }
        return mails.get(0);
    }

    private static List<MimeMessage> mailsTo(String address) {
        return Arrays.stream(MAIL.getReceivedMessagesForDomain(address)).toList();
    }
}

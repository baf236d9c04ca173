package app.ramkeeper.identity.signin;

import jakarta.mail.internet.MimeMessage;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.core.io.ByteArrayResource;
import org.springframework.core.task.TaskExecutor;
import org.springframework.mail.MailException;
import org.springframework.mail.MailPreparationException;
import org.springframework.mail.javamail.JavaMailSender;
import org.springframework.mail.javamail.MimeMessageHelper;
import org.springframework.mail.javamail.MimeMessagePreparator;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionSynchronization;
import org.springframework.transaction.support.TransactionSynchronizationManager;

/**
 * Sends mail when a mail server is configured. Nobody waits for it; while the server is away a mail is tried again, always
 * with the same message id. What waits is in memory only: a mail may hold a link whose secret is kept nowhere.
 */
@Component
public class LinkMail {

    private static final Logger LOG = LoggerFactory.getLogger(LinkMail.class);

    private final @Nullable JavaMailSender mail;
    private final TaskExecutor background;
    private final String from;
    private final List<Duration> again;

    LinkMail(
            ObjectProvider<JavaMailSender> mail,
            @Qualifier("applicationTaskExecutor") TaskExecutor background,
            @Value("${ramkeeper.mail-from:ramkeeper@localhost}") String from,
            @Value("${ramkeeper.mail-again:1m,5m,15m,60m}") List<Duration> again) {
        this.mail = mail.getIfAvailable();
        this.background = background;
        this.from = from;
        this.again = List.copyOf(again);
    }

    /** Whether mail can be sent at all. */
    public boolean isConfigured() {
        return mail != null;
    }

    /** A file that goes with the mail. */
    public record Attached(String name, String mediaType, byte[] content) {}

    /** Sends the link once the transaction has committed, in the background: the answer's time tells nothing. */
    public void send(String to, String subject, String text) {
        send(to, subject, text, null);
    }

    /** The same with a file. */
    public void send(String to, String subject, String text, @Nullable Attached file) {
        if (mail == null) {
            return;
        }
        MimeMessagePreparator content = message(to, subject, text, file);
        Runnable later = () -> background.execute(() -> deliver(mail, written(mail, content), 0));
        if (TransactionSynchronizationManager.isSynchronizationActive()) {
            TransactionSynchronizationManager.registerSynchronization(new TransactionSynchronization() {
                @Override
                public void afterCommit() {
                    later.run();
                }
            });
        } else {
            later.run();
        }
    }

    /** Sends at once, for what must be tried again if it fails; throws {@link MailException} where it cannot be sent. */
    public void sendNow(String to, String subject, String text) {
        if (mail != null) {
            mail.send(message(to, subject, text, null));
        }
    }

    private MimeMessagePreparator message(String to, String subject, String text, @Nullable Attached file) {
        return prepared -> {
            MimeMessageHelper parts = new MimeMessageHelper(prepared, file != null, "UTF-8");
            parts.setFrom(from);
            parts.setTo(to);
            parts.setSubject(subject.replaceAll("\\s+", " "));
            parts.setText(text);
            if (file != null) {
                parts.addAttachment(file.name(), new ByteArrayResource(file.content()), file.mediaType());
            }
        };
    }

    private static MimeMessage written(JavaMailSender mail, MimeMessagePreparator content) {
        try {
            MimeMessage message = mail.createMimeMessage();
            content.prepare(message);
            message.saveChanges();
            return message;
        } catch (Exception unfit) {
            throw new MailPreparationException(unfit);
        }
    }

    private void deliver(JavaMailSender mail, MimeMessage message, int failed) {
        try {
            mail.send(message);
        } catch (MailException unable) {
            String why = unable.getClass().getSimpleName();
            if (failed == again.size()) {
                LOG.error("A mail could not be sent and is given up: {}", why);
                return;
            }
            Duration wait = again.get(failed);
            LOG.warn("A mail could not be sent and is tried again in {}: {}", wait, why);
            CompletableFuture.delayedExecutor(wait.toMillis(), TimeUnit.MILLISECONDS, background)
                    .execute(() -> deliver(mail, message, failed + 1));
        }
    }
}

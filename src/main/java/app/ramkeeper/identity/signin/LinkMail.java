package app.ramkeeper.identity.signin;

import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.core.io.ByteArrayResource;
import org.springframework.core.task.TaskExecutor;
import org.springframework.mail.MailException;
import org.springframework.mail.javamail.JavaMailSender;
import org.springframework.mail.javamail.MimeMessageHelper;
import org.springframework.mail.javamail.MimeMessagePreparator;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionSynchronization;
import org.springframework.transaction.support.TransactionSynchronizationManager;

/** Sends mail when a mail server is configured. */
@Component
public class LinkMail {

    private static final Logger LOG = LoggerFactory.getLogger(LinkMail.class);

    private final @Nullable JavaMailSender mail;
    private final TaskExecutor background;
    private final String from;

    LinkMail(
            ObjectProvider<JavaMailSender> mail,
            @Qualifier("applicationTaskExecutor") TaskExecutor background,
            @Value("${ramkeeper.mail-from:ramkeeper@localhost}") String from) {
        this.mail = mail.getIfAvailable();
        this.background = background;
        this.from = from;
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
        MimeMessagePreparator message = message(to, subject, text, file);
        Runnable later = () -> background.execute(() -> deliver(mail, message));
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

    private static void deliver(JavaMailSender mail, MimeMessagePreparator message) {
        try {
            mail.send(message);
        } catch (MailException unable) {
            LOG.error("A mail could not be sent: {}", unable.getClass().getSimpleName());
        }
    }
}

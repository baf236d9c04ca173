package app.ramkeeper.identity.signin;

import static org.assertj.core.api.Assertions.assertThat;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.time.Duration;
import java.util.List;
import java.util.Properties;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.support.StaticListableBeanFactory;
import org.springframework.core.io.ClassPathResource;
import org.springframework.core.io.support.PropertiesLoaderUtils;
import org.springframework.mail.javamail.JavaMailSender;
import org.springframework.mail.javamail.JavaMailSenderImpl;
import org.springframework.scheduling.concurrent.ThreadPoolTaskExecutor;

class LinkMailTests {

    private static final int MAILS = 20;
    private static final List<String> LIMITS =
            List.of("mail.smtp.connectiontimeout", "mail.smtp.timeout", "mail.smtp.writetimeout");

    @Test
    @DisplayName("FLT-18 nobody waits for a mail server that never answers; the mails go later, each once")
    void flt18ServerNeverAnswers() throws Exception {
        ThreadPoolTaskExecutor background = new ThreadPoolTaskExecutor();
        background.setCorePoolSize(8);
        background.initialize();
        try (ServerSocket silent = new ServerSocket(0, 50, InetAddress.getLoopbackAddress())) {
            LinkMail mail = mail(silent.getLocalPort(), background);

            long from = System.nanoTime();
            for (int i = 0; i < MAILS; i++) {
                mail.send("ann" + i + "@farms.example", "Quote", "A link");
            }
            assertThat(Duration.ofNanos(System.nanoTime() - from)).isLessThan(Duration.ofSeconds(2));
            // every mail has been given up once before the server comes back
            Awaitility.await().until(() -> background.getThreadPoolExecutor().getCompletedTaskCount() >= MAILS);

            silent.close();
            comesBack(silent.getLocalPort());
        } finally {
            background.shutdown();
        }
    }

    private static void comesBack(int port) throws InterruptedException {
        GreenMail server = new GreenMail(new ServerSetup(port, "127.0.0.1", ServerSetup.PROTOCOL_SMTP));
        server.start();
        try {
            assertThat(server.waitForIncomingEmail(60_000, MAILS)).isTrue();
            Thread.sleep(2000);
            assertThat(server.getReceivedMessages())
                    .hasSize(MAILS)
                    .extracting(message -> message.getAllRecipients()[0].toString())
                    .doesNotHaveDuplicates();
        } finally {
            server.stop();
        }
    }

    @Test
    @DisplayName("FLT-18 each wait for the mail server has a limit of some seconds")
    void flt18EachWaitHasALimit() throws IOException {
        Properties settings = PropertiesLoaderUtils.loadProperties(new ClassPathResource("application.properties"));

        assertThat(LIMITS)
                .allSatisfy(name -> assertThat(settings.getProperty("spring.mail.properties." + name))
                        .satisfies(value -> assertThat(Integer.parseInt(value)).isBetween(1000, 30_000)));
    }

    private static LinkMail mail(int port, ThreadPoolTaskExecutor background) {
        JavaMailSenderImpl sender = new JavaMailSenderImpl();
        sender.setHost("127.0.0.1");
        sender.setPort(port);
        LIMITS.forEach(name -> sender.getJavaMailProperties().setProperty(name, "500"));
        StaticListableBeanFactory beans = new StaticListableBeanFactory();
        beans.addBean("mail", sender);
        return new LinkMail(
                beans.getBeanProvider(JavaMailSender.class),
                background,
                "office@longspur.example",
                java.util.Collections.nCopies(30, Duration.ofSeconds(1)));
    }
}

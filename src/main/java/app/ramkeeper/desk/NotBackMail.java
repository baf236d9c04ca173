package app.ramkeeper.desk;

import app.ramkeeper.audit.Actor;
import app.ramkeeper.identity.Company;
import app.ramkeeper.identity.signin.LinkMail;
import app.ramkeeper.web.Say;
import com.github.kagkarlsson.scheduler.task.helper.RecurringTask;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.github.kagkarlsson.scheduler.task.schedule.FixedDelay;
import java.time.Clock;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.Locale;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.context.MessageSource;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Writes to the office who is not back, every five minutes and once for each person and time, for the evening on which
 * nobody looks at the page. A mail that could not be sent is tried again; each is a transaction of its own, so that those
 * sent before it stay sent. Without a mail server or the company's address only the page tells.
 */
@Service
public class NotBackMail {

    private final JdbcClient jdbc;
    private final LinkMail mail;
    private final Company company;
    private final MessageSource messages;
    private final Say say;
    private final TransactionTemplate transaction;
    private final Clock clock;

    NotBackMail(
            JdbcClient jdbc,
            LinkMail mail,
            Company company,
            MessageSource messages,
            Say say,
            TransactionTemplate transaction,
            Clock clock) {
        this.jdbc = jdbc;
        this.mail = mail;
        this.company = company;
        this.messages = messages;
        this.say = say;
        this.transaction = transaction;
        this.clock = clock;
    }

    /** Writes about those of whom nothing was written yet, and says how many they were. */
    public int tell() {
        String office = company.card().email();
        if (!mail.isConfigured() || office == null) {
            return 0;
        }
        int told = 0;
        for (NotBack each : NotBackQuery.all(jdbc, clock)) {
            told += Boolean.TRUE.equals(transaction.execute(status -> tell(each, office))) ? 1 : 0;
        }
        return told;
    }

    private boolean tell(NotBack each, String office) {
        boolean fresh = notYetTold(each);
        if (fresh) {
            mail.sendNow(office, words("desk.notBack.mail", each.name()), text(each));
        }
        return fresh;
    }

    private boolean notYetTold(NotBack each) {
        return jdbc.sql(
                                "insert into not_back_told (person_id, due_back_at, told_at) values (?, ?, ?) on conflict do nothing")
                        .params(
                                each.personId(),
                                each.dueBackAt().atOffset(ZoneOffset.UTC),
                                clock.instant().atOffset(ZoneOffset.UTC))
                        .update()
                == 1;
    }

    private String text(NotBack each) {
        return String.join(
                "\n",
                Stream.of(
                                line("desk.notBack.mail.text", each.name(), say.moment(each.dueBackAt())),
                                each.checkedOut() ? "" : line("desk.notBack.byPlan"),
                                line("desk.notBack.last", each.lastSite()),
                                line("desk.notBack.planned", each.stillPlanned()),
                                line("desk.notBack.vehicle", each.vehicle()),
                                line("desk.notBack.mail.phone", each.phone()),
                                each.nextOfKin() == null
                                        ? ""
                                        : words(
                                                "desk.notBack.kin",
                                                each.nextOfKin(),
                                                each.nextOfKinPhone() == null ? "" : each.nextOfKinPhone()))
                        .filter(line -> !line.isEmpty())
                        .toList());
    }

    /** A line of the letter; none where what it tells is not known. */
    private String line(String key, @Nullable String... known) {
        for (String each : known) {
            if (each == null) {
                return "";
            }
        }
        return words(key, (Object[]) known);
    }

    private String words(String key, Object... arguments) {
        return messages.getMessage(key, arguments, Locale.ENGLISH);
    }

    @Configuration(proxyBeanMethods = false)
    static class Job {

        @Bean
        RecurringTask<Void> tellWhoIsNotBack(ObjectProvider<NotBackMail> mail) {
            return Tasks.recurring("tell-who-is-not-back", FixedDelay.of(Duration.ofMinutes(5)))
                    .execute((instance, context) -> Actor.as(
                            new Actor("system", "tell-who-is-not-back"),
                            () -> mail.getObject().tell()));
        }
    }
}

package app.ramkeeper.desk;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.MailRun;
import app.ramkeeper.shared.Uuids;
import jakarta.mail.internet.MimeMessage;
import java.time.Clock;
import java.time.LocalDate;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Whoever is not back is reported to the office by mail, once. */
class NotBackMailTests extends MailRun {

    @Autowired
    NotBackMail mail;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Clock clock;

    private final UUID person = Uuids.next();

    @AfterEach
    void backAgain() {
        jdbc.sql("update field_days set back_at = now() where person_id = ?")
                .param(person)
                .update();
        jdbc.sql("update company set email = null").update();
    }

    @Test
    void tellsTheOfficeOnce() throws Exception {
        String office = "office-" + person + "@longspur.example";
        jdbc.sql("update company set email = ?").param(office).update();
        jdbc.sql("insert into people (id, name, phone, vehicle, next_of_kin, next_of_kin_phone)"
                        + " values (?, 'Jonty Late', '00 555 0101', 'the blue van', 'Ana', '00 555 0102')")
                .param(person)
                .update();
        jdbc.sql("""
                        insert into field_days (id, person_id, day, left_at, due_back_at)
                        values (?, ?, ?, now() - interval '9 hours', now() - interval '1 hour')""").params(Uuids.next(), person, LocalDate.now(clock)).update();

        assertThat(mail.tell()).isPositive();
        assertThat(mail.tell()).isZero();

        MimeMessage message = mailTo(office);
        assertThat(message.getSubject()).isEqualTo("Not back: Jonty Late");
        assertThat(message.getContent().toString())
                .contains(
                        "should have been back by",
                        "Drives the blue van.",
                        "Their phone: 00 555 0101",
                        "Next of kin: Ana, 00 555 0102")
                .doesNotContain("{", "Last known", "Never checked out");
    }
}

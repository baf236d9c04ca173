package app.ramkeeper;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.trial.DatabaseRoles;
import java.sql.Connection;
import java.time.Duration;
import java.util.List;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** Two nodes with one job: writing to the office who is not back. */
class MailDrillTests {

    private static final int LATE = 100;

    @Test
    @DisplayName("FLT-09 of two nodes one writes the 100 mails, each once")
    void flt09EachMailOnce() throws Exception {
        try (InstalledApp installed = new InstalledApp();
                SlowMailServer mails = new SlowMailServer(Duration.ofMillis(10))) {
            start(installed, mails);
            makeLate(installed);

            Awaitility.await()
                    .atMost(Duration.ofMinutes(2))
                    .until(() -> mails.taken().size() >= LATE);
            Thread.sleep(10_000);

            assertThat(subjects(mails)).hasSize(LATE).doesNotHaveDuplicates();
        }
    }

    @Test
    @DisplayName(
            "FLT-09 when the node that writes is killed the other writes the rest: none missed, at most the one in hand twice")
    void flt09KilledHalfWay() throws Exception {
        try (InstalledApp installed = new InstalledApp();
                SlowMailServer mails = new SlowMailServer(Duration.ofMillis(300))) {
            List<PackagedApp> nodes = start(installed, mails);
            makeLate(installed);
            Awaitility.await()
                    .atMost(Duration.ofMinutes(1))
                    .until(() -> mails.taken().size() >= 10);

            String writer = mails.taken().get(0).from();
            nodes.get(writer.startsWith("node0") ? 0 : 1).kill();

            assertThat(mails.taken()).hasSizeLessThan(LATE);
            Awaitility.await()
                    .atMost(Duration.ofMinutes(4))
                    .until(() -> subjects(mails).stream().distinct().count() == LATE);
            Thread.sleep(5000);
            assertThat(subjects(mails)).hasSizeBetween(LATE, LATE + 1);
            assertThat(mails.taken()).extracting(SlowMailServer.Taken::from).anyMatch(from -> !from.equals(writer));
        }
    }

    private static List<String> subjects(SlowMailServer mails) {
        return mails.taken().stream().map(SlowMailServer.Taken::subject).toList();
    }

    /** Two nodes, each with an address of its own to send from. */
    private static List<PackagedApp> start(InstalledApp installed, SlowMailServer mails) {
        List<PackagedApp> nodes = List.of(node(installed, mails, 0), node(installed, mails, 1));
        nodes.forEach(PackagedApp::awaitUp);
        return nodes;
    }

    private static PackagedApp node(InstalledApp installed, SlowMailServer mails, int number) {
        return installed.node(
                DatabaseRoles.DATABASE,
                "--spring.mail.host=127.0.0.1",
                "--spring.mail.port=" + mails.port(),
                "--ramkeeper.mail-from=node" + number + "@longspur.example");
    }

    /** So many people an hour over their time, and the job due now. */
    private static void makeLate(InstalledApp installed) throws Exception {
        try (Connection admin = installed.admin(DatabaseRoles.DATABASE)) {
            admin.setAutoCommit(false);
            InstalledApp.run(admin, "update company set email = 'office@longspur.example'");
            InstalledApp.run(
                    admin,
                    "insert into people (id, name) select gen_random_uuid(), 'Late ' || n from generate_series(1, "
                            + LATE + ") n");
            InstalledApp.run(admin, """
                    insert into field_days (id, person_id, day, left_at, due_back_at)
                    select gen_random_uuid(), id, current_date, now() - interval '9 hours', now() - interval '1 hour' from people where name like 'Late %'""");
            InstalledApp.run(
                    admin,
                    "update scheduled_tasks set execution_time = now() where task_name = 'tell-who-is-not-back'");
            admin.commit();
        }
    }
}

package app.ramkeeper.rounds.out;

import app.ramkeeper.identity.Company;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.signin.LinkMail;
import app.ramkeeper.rounds.week.Times;
import app.ramkeeper.rounds.week.WeekPlan;
import app.ramkeeper.visits.Answer;
import app.ramkeeper.visits.ContactBy;
import app.ramkeeper.visits.VisitId;
import app.ramkeeper.visits.Visits;
import app.ramkeeper.web.Say;
import java.time.Clock;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Telling customers of a published week: a list to ring or text by, and mails. What they answer is put down at the visit. */
@Service
@ForOffice
@Transactional
public class Telling {

    private final JdbcClient jdbc;
    private final Visits visits;
    private final LinkMail mail;
    private final Company company;
    private final MessageSource messages;
    private final Say say;
    private final Clock clock;

    Telling(
            JdbcClient jdbc,
            Visits visits,
            LinkMail mail,
            Company company,
            MessageSource messages,
            Say say,
            Clock clock) {
        this.jdbc = jdbc;
        this.visits = visits;
        this.mail = mail;
        this.company = company;
        this.messages = messages;
        this.say = say;
        this.clock = clock;
    }

    /** A published visit that is still to come, whom to tell, and how far that is. */
    public record ToTell(
            UUID visit,
            UUID siteId,
            String site,
            LocalDate on,
            @Nullable LocalTime from,
            @Nullable String technician,
            @Nullable String name,
            @Nullable String phone,
            @Nullable String email,
            Answer answer,
            int tries,
            boolean officeMustRing,
            @Nullable LocalDate hadAgreedOn,
            @Nullable LocalTime hadAgreedFrom) {

        /** What they had agreed to, in words, while the visit is planned otherwise and they have not been told. */
        public @Nullable String hadAgreed() {
            return hadAgreedOn == null ? null : Times.dayAndTime(hadAgreedOn, hadAgreedFrom);
        }

        /** Nobody has been told, or nobody was reached. */
        public boolean open() {
            return answer == Answer.NONE || answer == Answer.NO_ANSWER;
        }
    }

    /** Whether mails can be sent at all. */
    public boolean canMail() {
        return mail.isConfigured();
    }

    /** The visits of a published week, first those that stand otherwise than agreed, then by day and time; who lives there is told first, then who holds the key, then the owner. */
    @Transactional(readOnly = true)
    public List<ToTell> of(WeekPlan plan) {
        return jdbc.sql("""
                        select v.id as visit, v.site_id, s.name as site, v.planned_on as "on", v.planned_from as "from", t.name as technician,
                          c.name, c.phone, c.email, v.answer, v.office_must_ring,
                          case when v.answer in ('NONE', 'NO_ANSWER') then v.agreed_on end as had_agreed_on,
                          case when v.answer in ('NONE', 'NO_ANSWER') then v.agreed_from end as had_agreed_from,
                          (select count(*)::int from visit_attempts a where a.visit_id = v.id) as tries
                        from week_stops w join visits v on v.id = w.visit_id join sites s on s.id = v.site_id
                          left join people t on t.id = w.published_to
                          left join lateral (select coalesce(k.name, u.name) as name, coalesce(k.phone, u.phone) as phone, coalesce(k.email, u.email) as email
                            from site_parties p left join contacts k on k.id = p.contact_id left join customers u on u.id = p.customer_id
                            where p.site_id = v.site_id and p.part in ('OCCUPIER', 'KEY_HOLDER', 'OWNER') and (p.until_date is null or p.until_date > v.planned_on)
                            order by array_position(array['OCCUPIER', 'KEY_HOLDER', 'OWNER'], p.part), p.id limit 1) c on true
                        where w.plan_id = :plan and w.published_on is not null and v.state = 'PLANNED' and v.planned_on >= :today
                        order by v.agreed_on is null or v.answer not in ('NONE', 'NO_ANSWER'), v.planned_on, v.planned_from nulls last, v.id""")
                .param("plan", plan.id())
                .param("today", LocalDate.now(clock))
                .query(ToTell.class)
                .list();
    }

    /** What to say on the telephone or in a short message. */
    public String message(ToTell visit) {
        return messages.getMessage("rounds.tell.text", words(visit), Locale.UK);
    }

    /**
     * Mails to those of the chosen who have an address and were not told yet; each mail is a try put down at its visit.
     *
     * @return how many were mailed
     */
    public int mail(WeekPlan plan, Collection<UUID> chosen, PersonId by) {
        int sent = 0;
        for (ToTell visit : of(plan)) {
            String to = visit.email();
            if (to != null && visit.open() && chosen.contains(visit.visit())) {
                mail.send(
                        to,
                        messages.getMessage("rounds.tell.subject", words(visit), Locale.UK),
                        messages.getMessage("rounds.tell.mail", words(visit), Locale.UK));
                visits.answered(new VisitId(visit.visit()), ContactBy.MAIL, Answer.TOLD, "mailed to " + to, by);
                sent++;
            }
        }
        return sent;
    }

    private Object[] words(ToTell visit) {
        return new Object[] {
            visit.name() == null ? visit.site() : visit.name(),
            Optional.ofNullable(company.card().name()).orElse("Ramkeeper"),
            visit.site(),
            say.date(visit.on()),
            visit.from() == null
                    ? ""
                    : " " + messages.getMessage("rounds.tell.about", new Object[] {say.time(visit.from())}, Locale.UK)
        };
    }
}

package app.ramkeeper.rounds.out;

import app.ramkeeper.identity.IdentitySettings;
import app.ramkeeper.identity.Open;
import app.ramkeeper.identity.PersonId;
import java.math.BigDecimal;
import java.net.URI;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.ComponentList;
import net.fortuna.ical4j.model.ParameterList;
import net.fortuna.ical4j.model.PropertyList;
import net.fortuna.ical4j.model.component.Standard;
import net.fortuna.ical4j.model.component.VEvent;
import net.fortuna.ical4j.model.component.VTimeZone;
import net.fortuna.ical4j.model.property.Description;
import net.fortuna.ical4j.model.property.DtStamp;
import net.fortuna.ical4j.model.property.DtStart;
import net.fortuna.ical4j.model.property.Geo;
import net.fortuna.ical4j.model.property.Location;
import net.fortuna.ical4j.model.property.Name;
import net.fortuna.ical4j.model.property.ProdId;
import net.fortuna.ical4j.model.property.RefreshInterval;
import net.fortuna.ical4j.model.property.Sequence;
import net.fortuna.ical4j.model.property.TzId;
import net.fortuna.ical4j.model.property.TzOffsetFrom;
import net.fortuna.ical4j.model.property.TzOffsetTo;
import net.fortuna.ical4j.model.property.Uid;
import net.fortuna.ical4j.model.property.Url;
import net.fortuna.ical4j.model.property.immutable.ImmutableCalScale;
import net.fortuna.ical4j.model.property.immutable.ImmutableStatus;
import net.fortuna.ical4j.model.property.immutable.ImmutableVersion;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * A technician's published visits as a calendar after RFC 5545, with the calendar's name and refresh interval of RFC 7986.
 *
 * <p>It has no method, as that of RFC 5546 would want an organizer with a mail address. It leaves the house for calendars of others: it names the site, the tasks and the position. Ways in, gate codes, keys,
 * hazards and telephone numbers stay behind the sign-in, one step away by the event's address.
 */
@Service
@Open
@Transactional(readOnly = true)
public class RoundCalendar {

    private static final int DAYS_BACK = 14;
    private static final int DAYS_AHEAD = 70;
    private static final Duration REFRESH = Duration.ofHours(1);

    private final JdbcClient jdbc;
    private final IdentitySettings settings;
    private final MessageSource messages;
    private final Clock clock;

    RoundCalendar(JdbcClient jdbc, IdentitySettings settings, MessageSource messages, Clock clock) {
        this.jdbc = jdbc;
        this.settings = settings;
        this.messages = messages;
        this.clock = clock;
    }

    private record Entry(
            UUID id,
            int version,
            String kind,
            LocalDate on,
            @Nullable LocalTime from,
            int minutes,
            String answer,
            String site,
            @Nullable String locality,
            @Nullable BigDecimal latitude,
            @Nullable BigDecimal longitude,
            @Nullable String tasks) {}

    /** The calendar of a person, from two weeks ago to ten weeks ahead. */
    public byte[] of(PersonId person) {
        Calendar calendar = new Calendar();
        calendar.add(new ProdId("-//Ramkeeper//Rounds//EN"));
        calendar.add(ImmutableVersion.VERSION_2_0);
        calendar.add(ImmutableCalScale.GREGORIAN);
        calendar.add(new Name(say("rounds.calendar.name")));
        calendar.add(new RefreshInterval(new ParameterList(), REFRESH));
        LocalDate today = LocalDate.now(clock);
        jdbc.sql("""
                        select v.id, v.version, v.kind, v.planned_on as "on", v.planned_from as "from", v.minutes, v.answer, s.name as site, s.locality,
                          s.latitude::numeric as latitude, s.longitude::numeric as longitude,
                          (select string_agg(distinct k.name, ', ') from visit_tasks t join task_kinds k on k.id = t.task_kind_id where t.visit_id = v.id) as tasks
                        from visits v join visit_people p on p.visit_id = v.id join sites s on s.id = v.site_id
                        where p.person_id = :person and v.planned_on between :since and :until and v.state <> 'CANCELLED'
                        order by v.planned_on, v.planned_from, v.id""")
                .param("person", person.value())
                .param("since", today.minusDays(DAYS_BACK))
                .param("until", today.plusDays(DAYS_AHEAD))
                .query(Entry.class)
                .list()
                .forEach(entry -> calendar.add(event(entry)));
        if (calendar.getComponents().isEmpty()) {
            // a calendar must have a component, also when nothing is planned
            calendar.add(utc());
        }
        return Folding.of(calendar.toString());
    }

    private static VTimeZone utc() {
        return new VTimeZone(
                new PropertyList(List.of(new TzId("Etc/UTC"))),
                new ComponentList<>(List.of(new Standard(new PropertyList(List.of(
                        new DtStart<>(LocalDateTime.of(1970, 1, 1, 0, 0)),
                        new TzOffsetFrom(ZoneOffset.UTC),
                        new TzOffsetTo(ZoneOffset.UTC)))))));
    }

    /** An instant where the time is known, so that no zone need be explained; else the whole day. */
    private VEvent event(Entry entry) {
        String title = say("visits.kind." + entry.kind()) + ": " + entry.site();
        VEvent event;
        if (entry.from() == null) {
            event = new VEvent(entry.on(), entry.on().plusDays(1), title);
        } else {
            Instant from =
                    entry.on().atTime(entry.from()).atZone(clock.getZone()).toInstant();
            event = new VEvent(from, from.plus(entry.minutes(), ChronoUnit.MINUTES), title);
        }
        event.replace(new DtStamp(clock.instant().truncatedTo(ChronoUnit.SECONDS)));
        event.add(new Uid(entry.id().toString()));
        event.add(new Sequence(entry.version()));
        event.add(
                entry.answer().equals("CONFIRMED")
                        ? ImmutableStatus.VEVENT_CONFIRMED
                        : ImmutableStatus.VEVENT_TENTATIVE);
        event.add(new Url(URI.create(settings.link("/visits/" + entry.id()))));
        if (entry.tasks() != null) {
            event.add(new Description(entry.tasks()));
        }
        if (entry.locality() != null) {
            event.add(new Location(entry.locality()));
        }
        if (entry.latitude() != null && entry.longitude() != null) {
            event.add(new Geo(entry.latitude(), entry.longitude()));
        }
        return event;
    }

    private String say(String key) {
        return messages.getMessage(key, null, Locale.UK);
    }
}

package app.ramkeeper.quotes.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.Role;
import app.ramkeeper.shared.Uuids;
import java.io.UnsupportedEncodingException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;

/** Enquiries and surveys for tests, made through the pages as the office and the technician make them. */
public final class Surveyed {

    private final MockMvcTester mvc;
    private final JdbcClient jdbc;
    private final UUID person = Uuids.next();

    public Surveyed(MockMvcTester mvc, JdbcClient jdbc) {
        this.mvc = mvc;
        this.jdbc = jdbc;
        jdbc.sql("insert into people (id, name) values (?, 'Somebody')")
                .param(person)
                .update();
    }

    /** A survey that can be sized: 100 l/min, 5 m of fall, 30 m of lift over 300 m. */
    public static Map<String, String> complete() {
        Map<String, String> typed = new LinkedHashMap<>();
        typed.put("demandMore", "2000");
        typed.put("method", "GIVEN");
        typed.put("givenLMin", "100");
        typed.put("givenPercent", "5");
        typed.put("measuredDry", "true");
        typed.put("mustStayLMin", "0");
        typed.put("fallM", "5");
        typed.put("driveLengthM", "20");
        typed.put("liftM", "30");
        typed.put("deliveryLengthM", "300");
        return typed;
    }

    /** The address of a new enquiry. */
    public String enquiry() {
        MvcTestResult made = post(
                "/enquiries/new",
                Role.OFFICE,
                Map.of("customerName", "Ada Weir", "place", "Upper Rill", "receivedOn", "2026-01-05"));
        return Objects.requireNonNull(made.getResponse().getRedirectedUrl());
    }

    /** The address of a new survey of a new enquiry, with nothing in it. */
    public String survey() {
        return Objects.requireNonNull(post(enquiry() + "/surveys", Role.TECHNICIAN, Map.of())
                .getResponse()
                .getRedirectedUrl());
    }

    /** The address of a new survey with this in it. */
    public String survey(Map<String, String> typed) {
        String survey = survey();
        assertThat(save(survey, typed)).hasRedirectedUrl(survey);
        return survey;
    }

    /** Sends the form with the version that the survey now has. */
    public MvcTestResult save(String survey, Map<String, String> typed, String... more) {
        Map<String, String> fields = new LinkedHashMap<>(typed);
        fields.put("version", Integer.toString(version(survey)));
        for (int i = 0; i < more.length; i += 2) {
            fields.put(more[i], more[i + 1]);
        }
        return post(survey, Role.OFFICE, fields);
    }

    public int version(String survey) {
        return jdbc.sql("select version from surveys where id = ?::uuid")
                .param(survey.substring("/surveys/".length()))
                .query(Integer.class)
                .single();
    }

    public @Nullable String typed(String survey, String field) {
        return jdbc.sql("select coalesce(draft ->> :field, '') from surveys where id = :id::uuid")
                .param("field", field)
                .param("id", survey.substring("/surveys/".length()))
                .query(String.class)
                .single();
    }

    public MvcTestResult get(String path, Role role) {
        return mvc.get()
                .uri(java.net.URI.create(path))
                .with(user(somebody(role)))
                .exchange();
    }

    public MvcTestResult post(String path, Role role, Map<String, String> fields) {
        var request = mvc.post().uri(path).with(csrf()).with(user(somebody(role)));
        for (Map.Entry<String, String> field : fields.entrySet()) {
            request = request.param(field.getKey(), field.getValue());
        }
        return request.exchange();
    }

    public MvcTestResult upload(String survey, String field, String name, byte[] content, Map<String, String> fields) {
        var request = mvc.post()
                .uri(survey)
                .multipart()
                .file(new MockMultipartFile(field, name, "application/octet-stream", content));
        Map<String, String> all = new LinkedHashMap<>(fields);
        all.put("version", Integer.toString(version(survey)));
        for (Map.Entry<String, String> one : all.entrySet()) {
            request.param(one.getKey(), one.getValue());
        }
        return request.with(csrf()).with(user(somebody(Role.TECHNICIAN))).exchange();
    }

    private CurrentUser somebody(Role role) {
        return new CurrentUser(Uuids.next(), person, "somebody", "Somebody", Set.of(role), null);
    }

    public static String body(MvcTestResult page) {
        try {
            return page.getResponse().getContentAsString();
        } catch (UnsupportedEncodingException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}

package app.ramkeeper.identity.people;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.LocalDate;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** One of the company's people, with or without an account. */
@Entity
@Table(name = "people")
class Person {

    @Id
    private UUID id;

    @Version
    private @Nullable Integer version;

    private String name;
    private @Nullable String phone;
    private @Nullable String email;
    private @Nullable UUID depotId;
    private @Nullable LocalDate startedOn;
    private @Nullable LocalDate leftOn;
    private @Nullable String vehicle;
    private @Nullable String nextOfKin;
    private @Nullable String nextOfKinPhone;
    private boolean ofHistory;

    @SuppressWarnings("NullAway.Init") // for Hibernate
    protected Person() {}

    Person(UUID id, String name) {
        this.id = id;
        this.name = name;
    }

    /** Somebody whom only an imported history names; nobody is to send them anywhere. */
    static Person ofHistory(UUID id, String name) {
        Person person = new Person(id, name);
        person.ofHistory = true;
        return person;
    }

    /** Takes over everything a form holds; who is edited is one of the company's own. */
    void change(PersonForm form) {
        name = form.name();
        phone = form.phone();
        email = form.email();
        depotId = form.depotId();
        startedOn = form.startedOn();
        leftOn = form.leftOn();
        vehicle = form.vehicle();
        nextOfKin = form.nextOfKin();
        nextOfKinPhone = form.nextOfKinPhone();
        ofHistory = false;
    }

    /** Keeps the row, which reports point to, and nothing of the person. */
    void forget(String number) {
        name = number;
        phone = null;
        email = null;
        vehicle = null;
        nextOfKin = null;
        nextOfKinPhone = null;
    }

    UUID id() {
        return id;
    }

    int version() {
        return version == null ? 0 : version;
    }

    String name() {
        return name;
    }

    @Nullable
    String email() {
        return email;
    }

    PersonForm form(Set<String> skills) {
        return new PersonForm(
                name, phone, email, depotId, startedOn, leftOn, vehicle, nextOfKin, nextOfKinPhone, skills, version);
    }
}

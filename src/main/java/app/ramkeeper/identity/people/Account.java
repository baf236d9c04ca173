package app.ramkeeper.identity.people;

import app.ramkeeper.identity.Role;
import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.FetchType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.Instant;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A way in for one person. */
@Entity
@Table(name = "accounts")
class Account {

    @Id
    private UUID id;

    @Version
    private @Nullable Integer version;

    private UUID personId;
    private String login;
    private @Nullable String passwordHash;
    private @Nullable Instant disabledAt;

    @ElementCollection(fetch = FetchType.EAGER)
    @CollectionTable(name = "account_roles", joinColumns = @JoinColumn(name = "account_id"))
    @Column(name = "role")
    @Enumerated(EnumType.STRING)
    private Set<Role> roles = new HashSet<>();

    @SuppressWarnings("NullAway.Init") // for Hibernate
    protected Account() {}

    Account(UUID id, UUID personId, String login, Set<Role> roles) {
        this.id = id;
        this.personId = personId;
        this.login = login;
        this.roles = new HashSet<>(roles);
    }

    UUID id() {
        return id;
    }

    UUID personId() {
        return personId;
    }

    String login() {
        return login;
    }

    int version() {
        return version == null ? 0 : version;
    }

    Set<Role> roles() {
        return roles.isEmpty() ? EnumSet.noneOf(Role.class) : EnumSet.copyOf(roles);
    }

    boolean isDisabled() {
        return disabledAt != null;
    }

    boolean hasPassword() {
        return passwordHash != null;
    }

    void rename(String newLogin) {
        login = newLogin;
    }

    void give(Set<Role> newRoles) {
        roles.retainAll(newRoles);
        roles.addAll(newRoles);
    }

    void password(@Nullable String hash) {
        passwordHash = hash;
    }

    void disable(Instant now) {
        disabledAt = now;
    }

    void enable() {
        disabledAt = null;
    }
}

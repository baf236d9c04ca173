package app.ramkeeper.identity.people;

import app.ramkeeper.identity.Company;
import jakarta.validation.constraints.Email;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/** What the settings page posts. */
record CompanyForm(
        @Nullable @Size(max = 120) String name,
        @Nullable @Size(max = 500) String address,
        @Nullable @Size(max = 50) String phone,
        @Nullable @Email @Size(max = 200) String email,
        @Nullable @Size(max = 50) String taxNumber,
        @Nullable Integer version) {

    static CompanyForm of(Company.Card card) {
        return new CompanyForm(
                card.name(), card.address(), card.phone(), card.email(), card.taxNumber(), card.version());
    }

    Company.Card card() {
        return new Company.Card(name, address, phone, email, taxNumber, version == null ? -1 : version);
    }
}

package app.ramkeeper.fleet;

import app.ramkeeper.identity.ForRegister;
import app.ramkeeper.shared.Missing;
import java.time.LocalDate;
import java.util.Collection;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Keeps the papers of a site and a customer: consents with their expiry and service agreements. */
@Service
@ForRegister
@Transactional
public class Papers {

    private final ConsentRepository consents;
    private final AgreementRepository agreements;
    private final JdbcClient jdbc;

    Papers(ConsentRepository consents, AgreementRepository agreements, JdbcClient jdbc) {
        this.consents = consents;
        this.agreements = agreements;
        this.jdbc = jdbc;
    }

    /** Keeps a consent under an id made by the form, so that a second post of it changes nothing. */
    public void keepConsent(UUID id, SiteId site, ConsentDetails details) {
        if (!consents.existsById(id)) {
            consents.saveAndFlush(new Consent(id, site.value(), details));
        }
    }

    public void editConsent(UUID id, int version, ConsentDetails details) {
        Consent consent = consents.findById(id).orElseThrow(() -> new Missing("consent", id));
        Versions.require(consent.version, version, Consent.class, id);
        consent.details = details;
        consents.flush();
    }

    /** Keeps an agreement for installs, under an id made by the form. */
    public void keepAgreement(UUID id, CustomerId customer, AgreementDetails details, Collection<InstallId> installs) {
        if (!agreements.existsById(id)) {
            agreements.saveAndFlush(new Agreement(id, customer.value(), details));
            cover(id, installs);
        }
    }

    public void editAgreement(UUID id, int version, AgreementDetails details, Collection<InstallId> installs) {
        Agreement agreement = agreements.findById(id).orElseThrow(() -> new Missing("agreement", id));
        Versions.require(agreement.version, version, Agreement.class, id);
        agreement.details = details;
        agreements.flush();
        cover(id, installs);
    }

    /** An agreement ends for the installs of a site, from that day on: the farm has a new owner. */
    void endFor(SiteId site, CustomerId customer, LocalDate on) {
        jdbc.sql("""
                        update agreement_installs c set until_date = :on from agreements a, installs i
                        where c.agreement_id = a.id and a.customer_id = :customer and i.id = c.install_id
                          and i.site_id = :site and c.until_date is null""")
                .param("on", on)
                .param("customer", customer.value())
                .param("site", site.value())
                .update();
    }

    private void cover(UUID agreement, Collection<InstallId> installs) {
        jdbc.sql(
                        "delete from agreement_installs where agreement_id = :id and until_date is null and not install_id = any (:installs)")
                .param("id", agreement)
                .param("installs", ids(installs))
                .update();
        jdbc.sql("""
                        insert into agreement_installs (agreement_id, install_id) select :id, unnest(:installs)
                        on conflict (agreement_id, install_id) do update set until_date = null
                          where agreement_installs.until_date is not null""").param("id", agreement).param("installs", ids(installs)).update();
    }

    private static UUID[] ids(Collection<InstallId> installs) {
        return installs.stream().map(InstallId::value).toArray(UUID[]::new);
    }

    /** What an edit form shows. */
    @Transactional(readOnly = true)
    public Versioned<ConsentDetails> consent(UUID id) {
        Consent consent = consents.findById(id).orElseThrow(() -> new Missing("consent", id));
        return new Versioned<>(Versions.of(consent.version), consent.details);
    }

    /** What an edit form shows. */
    @Transactional(readOnly = true)
    public Versioned<AgreementDetails> agreement(UUID id) {
        Agreement agreement = agreements.findById(id).orElseThrow(() -> new Missing("agreement", id));
        return new Versioned<>(Versions.of(agreement.version), agreement.details);
    }
}

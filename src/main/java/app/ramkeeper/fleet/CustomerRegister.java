package app.ramkeeper.fleet;

import app.ramkeeper.identity.ForRegister;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Missing;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Keeps customers and the people outside the company. */
@Service
@ForRegister
@Transactional
public class CustomerRegister {

    private final CustomerRepository customers;
    private final ContactRepository contacts;
    private final JdbcClient jdbc;
    private final ApplicationEventPublisher events;

    CustomerRegister(
            CustomerRepository customers,
            ContactRepository contacts,
            JdbcClient jdbc,
            ApplicationEventPublisher events) {
        this.customers = customers;
        this.contacts = contacts;
        this.jdbc = jdbc;
        this.events = events;
    }

    public CustomerId register(CustomerDetails details) {
        CustomerId id = CustomerId.next();
        register(id, details);
        return id;
    }

    /** Registers under an id made by the form, so that a second post of it changes nothing. */
    public void register(CustomerId id, CustomerDetails details) {
        if (!customers.existsById(id.value())) {
            customers.saveAndFlush(new Customer(id.value(), details));
        }
    }

    /** Registers many new customers in one go, each under an id the caller made: an import. */
    public void registerCustomers(Map<CustomerId, CustomerDetails> added) {
        List<Customer> rows = new ArrayList<>();
        added.forEach((id, details) -> rows.add(new Customer(id.value(), details)));
        customers.saveAllAndFlush(rows);
    }

    /** Registers many new contacts in one go, each under an id the caller made: an import. */
    public void registerContacts(Map<ContactId, ContactDetails> added) {
        List<Contact> rows = new ArrayList<>();
        added.forEach((id, details) -> rows.add(new Contact(id.value(), details)));
        contacts.saveAllAndFlush(rows);
    }

    /**
     * Changes what is known about a customer.
     *
     * @throws org.springframework.dao.OptimisticLockingFailureException if it is no longer at that version
     */
    public void edit(CustomerId id, int version, CustomerDetails details) {
        Customer customer = customers.findById(id.value()).orElseThrow(() -> new Missing("customer", id));
        Versions.require(customer.version, version, Customer.class, id);
        customer.details = details;
        customers.flush();
    }

    public ContactId register(ContactDetails details) {
        ContactId id = ContactId.next();
        contacts.saveAndFlush(new Contact(id.value(), details));
        return id;
    }

    public void edit(ContactId id, int version, ContactDetails details) {
        Contact contact = contacts.findById(id.value()).orElseThrow(() -> new Missing("contact", id));
        Versions.require(contact.version, version, Contact.class, id);
        contact.details = details;
        contacts.flush();
    }

    /** Makes a duplicate a signpost to the kept customer, who takes over its parts and agreements. */
    public void merge(CustomerId duplicate, CustomerId kept) {
        if (duplicate.equals(kept)) {
            throw new Conflict("A customer cannot be merged into itself.");
        }
        Customer gone = live(duplicate);
        live(kept);
        gone.mergedInto = kept.value();
        customers.flush();
        jdbc.sql("update customers set merged_into = :kept where merged_into = :gone")
                .param("kept", kept.value())
                .param("gone", duplicate.value())
                .update();
        jdbc.sql("""
                        delete from site_parties d using site_parties k
                        where d.customer_id = :gone and k.customer_id = :kept and k.site_id = d.site_id and k.part = d.part
                          and daterange(k.from_date, k.until_date) && daterange(d.from_date, d.until_date)""")
                .param("kept", kept.value())
                .param("gone", duplicate.value())
                .update();
        for (String table : new String[] {"site_parties", "agreements"}) {
            jdbc.sql("update " + table + " set customer_id = :kept where customer_id = :gone")
                    .param("kept", kept.value())
                    .param("gone", duplicate.value())
                    .update();
        }
        events.publishEvent(new CustomersMerged(duplicate, kept));
    }

    /** Takes customers off the register again whom nothing refers to and nobody has changed: an import undone; answers with the others. */
    public List<UUID> removeUntouchedCustomers(Collection<UUID> ids) {
        return others(ids, """
                delete from customers c where id = any(:ids) and version = 0
                  and not exists (select from site_parties p where p.customer_id = c.id)
                  and not exists (select from agreements a where a.customer_id = c.id)
                  and not exists (select from customers m where m.merged_into = c.id) returning id""");
    }

    /** Takes contacts off the register again whom nothing refers to and nobody has changed: an import undone; answers with the others. */
    public List<UUID> removeUntouchedContacts(Collection<UUID> ids) {
        return others(ids, """
                delete from contacts c where id = any(:ids) and version = 0
                  and not exists (select from site_parties p where p.contact_id = c.id) returning id""");
    }

    private List<UUID> others(Collection<UUID> ids, String delete) {
        List<UUID> others = new ArrayList<>(ids);
        others.removeAll(new HashSet<>(jdbc.sql(delete)
                .param("ids", ids.toArray(UUID[]::new))
                .query(UUID.class)
                .list()));
        return others;
    }

    private Customer live(CustomerId id) {
        Customer customer = customers.findById(id.value()).orElseThrow(() -> new Missing("customer", id));
        if (customer.mergedInto != null) {
            throw new Conflict("That customer was already merged into another one.");
        }
        return customer;
    }

    /** What an edit form shows, private notes included. */
    @Transactional(readOnly = true)
    public Versioned<CustomerDetails> read(CustomerId id) {
        Customer customer = customers.findById(id.value()).orElseThrow(() -> new Missing("customer", id));
        return new Versioned<>(Versions.of(customer.version), customer.details);
    }

    /** What an edit form shows, private notes included. */
    @Transactional(readOnly = true)
    public Versioned<ContactDetails> read(ContactId id) {
        Contact contact = contacts.findById(id.value()).orElseThrow(() -> new Missing("contact", id));
        return new Versioned<>(Versions.of(contact.version), contact.details);
    }
}

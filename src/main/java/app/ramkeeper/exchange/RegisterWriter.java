package app.ramkeeper.exchange;

import static app.ramkeeper.exchange.RegisterFields.*;

import app.ramkeeper.catalogue.Catalogue;
import app.ramkeeper.catalogue.PumpModelCard;
import app.ramkeeper.catalogue.PumpModelId;
import app.ramkeeper.fleet.ConfigurationDetails;
import app.ramkeeper.fleet.ContactDetails;
import app.ramkeeper.fleet.ContactId;
import app.ramkeeper.fleet.CustomerDetails;
import app.ramkeeper.fleet.CustomerId;
import app.ramkeeper.fleet.CustomerRegister;
import app.ramkeeper.fleet.InstallDetails;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.InstallRegister;
import app.ramkeeper.fleet.NewParty;
import app.ramkeeper.fleet.Position;
import app.ramkeeper.fleet.PumpDetails;
import app.ramkeeper.fleet.RegisterInstall;
import app.ramkeeper.fleet.RegisterSite;
import app.ramkeeper.fleet.SiteDetails;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.SitePart;
import app.ramkeeper.fleet.SiteRegister;
import app.ramkeeper.fleet.SourceKind;
import app.ramkeeper.identity.DepotId;
import app.ramkeeper.upkeep.StatedDates;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Brings register rows in through the register's own commands; customers and sites named by several rows come once. */
@Component
class RegisterWriter {

    private final RegisterLookups lookups;
    private final CustomerRegister customers;
    private final SiteRegister sites;
    private final InstallRegister installs;
    private final StatedDates stated;
    private final Catalogue catalogue;
    private final Clock clock;

    RegisterWriter(
            RegisterLookups lookups,
            CustomerRegister customers,
            SiteRegister sites,
            InstallRegister installs,
            StatedDates stated,
            Catalogue catalogue,
            Clock clock) {
        this.lookups = lookups;
        this.customers = customers;
        this.sites = sites;
        this.installs = installs;
        this.stated = stated;
        this.catalogue = catalogue;
        this.clock = clock;
    }

    /** What was made of each line, by table. */
    static final class Made {
        private final Map<Integer, Map<String, List<UUID>>> byLine = new LinkedHashMap<>();

        void add(int line, String table, UUID id) {
            byLine.computeIfAbsent(line, l -> new LinkedHashMap<>())
                    .computeIfAbsent(table, t -> new ArrayList<>())
                    .add(id);
        }

        Map<Integer, Map<String, List<UUID>>> byLine() {
            return byLine;
        }
    }

    Made write(List<Parsed> rows) {
        Made made = new Made();
        Map<Integer, CustomerId> owners = owners(rows, made);
        Map<Integer, SiteId> places = places(rows, owners, made);
        Map<String, PumpModelId> models = catalogue.pumpModels().stream()
                .collect(Collectors.toMap(model -> Fold.of(model.name()), PumpModelCard::id, (one, other) -> one));
        List<StatedDates.Stated> days = new ArrayList<>();
        Map<InstallId, RegisterInstall> added = new LinkedHashMap<>();
        for (Parsed row : rows) {
            SiteId site = Objects.requireNonNull(places.get(row.line()));
            InstallId id = InstallId.next();
            added.put(id, install(row, site, models));
            made.add(row.line(), "installs", id.value());
            row.lastDone().forEach((kind, day) -> days.add(new StatedDates.Stated(id, kind, day)));
        }
        installs.takeOver(added, LocalDate.now(clock));
        stated.state(days);
        return made;
    }

    private Map<Integer, CustomerId> owners(List<Parsed> rows, Made made) {
        Map<String, CustomerId> byReference =
                lookups.customersByReference(asked(rows, r -> r.text(CUSTOMER_REFERENCE)));
        Map<String, CustomerId> byName = new HashMap<>();
        lookups.customersByName(asked(rows, r -> r.text(CUSTOMER)))
                .forEach((name, ids) -> byName.put(Fold.of(name), new CustomerId(ids.get(0))));
        Map<Integer, CustomerId> owners = new HashMap<>();
        Map<CustomerId, CustomerDetails> added = new LinkedHashMap<>();
        for (Parsed row : rows) {
            boolean referenced = row.has(CUSTOMER_REFERENCE);
            Map<String, CustomerId> known = referenced ? byReference : byName;
            CustomerId id =
                    known.computeIfAbsent(Fold.of(row.text(referenced ? CUSTOMER_REFERENCE : CUSTOMER)), key -> {
                        CustomerId next = CustomerId.next();
                        added.put(next, customer(row));
                        made.add(row.line(), "customers", next.value());
                        return next;
                    });
            owners.put(row.line(), id);
        }
        customers.registerCustomers(added);
        return owners;
    }

    private static CustomerDetails customer(Parsed row) {
        return new CustomerDetails(
                row.text(CUSTOMER_REFERENCE),
                String.valueOf(row.text(CUSTOMER)),
                row.text(ADDRESS),
                row.text(EMAIL),
                row.text(PHONE),
                null);
    }

    private Map<Integer, SiteId> places(List<Parsed> rows, Map<Integer, CustomerId> owners, Made made) {
        Map<String, SiteId> byReference = lookups.sitesByReference(asked(rows, r -> r.text(SITE_REFERENCE)));
        Map<String, SiteId> byName = lookups.sitesOf(Set.copyOf(owners.values()));
        Map<String, DepotId> depots = lookups.depots();
        Map<Integer, SiteId> places = new HashMap<>();
        Map<ContactId, ContactDetails> people = new LinkedHashMap<>();
        Map<SiteId, RegisterSite> added = new LinkedHashMap<>();
        for (Parsed row : rows) {
            CustomerId owner = Objects.requireNonNull(owners.get(row.line()));
            boolean referenced = row.has(SITE_REFERENCE);
            Map<String, SiteId> known = referenced ? byReference : byName;
            String key = referenced ? Fold.of(row.text(SITE_REFERENCE)) : owner + "|" + Fold.of(row.text(SITE));
            places.put(row.line(), known.computeIfAbsent(key, k -> {
                SiteId id = SiteId.next();
                added.put(id, new RegisterSite(site(row, depots), parties(row, owner, people, made)));
                made.add(row.line(), "sites", id.value());
                return id;
            }));
        }
        customers.registerContacts(people);
        sites.registerAll(added);
        return places;
    }

    private static List<NewParty> parties(
            Parsed row, CustomerId owner, Map<ContactId, ContactDetails> people, Made made) {
        List<NewParty> parties =
                new ArrayList<>(List.of(NewParty.of(SitePart.OWNER, owner), NewParty.of(SitePart.PAYER, owner)));
        String contact = row.text(CONTACT);
        if (contact != null) {
            ContactId id = ContactId.next();
            people.put(id, new ContactDetails(contact, row.text(CONTACT_PHONE), row.text(CONTACT_EMAIL), null));
            made.add(row.line(), "contacts", id.value());
            parties.add(new NewParty(SitePart.OCCUPIER, null, id, null, null));
        }
        return parties;
    }

    private static SiteDetails site(Parsed row, Map<String, DepotId> depots) {
        Double latitude = row.number(LATITUDE);
        Double longitude = row.number(LONGITUDE);
        String source = row.text(SOURCE);
        return new SiteDetails(
                row.text(SITE_REFERENCE),
                String.valueOf(row.text(SITE)),
                row.text(LOCALITY),
                null,
                depots.get(Fold.of(row.text(DEPOT))),
                latitude == null || longitude == null ? null : new Position(latitude, longitude),
                row.number(ALTITUDE),
                row.text(WAY_IN),
                row.text(GATE),
                null,
                source == null ? null : SourceKind.valueOf(source),
                row.text(WATER),
                "yes".equals(row.text(DRINKING)),
                row.text(NOTES));
    }

    private static RegisterInstall install(Parsed row, SiteId site, Map<String, PumpModelId> models) {
        String model = row.text(MODEL);
        boolean pump = model != null || row.has(SERIAL);
        return new RegisterInstall(
                site,
                new InstallDetails(
                        row.text(REFERENCE),
                        RegisterReader.names(row).get(2),
                        row.date(COMMISSIONED).orElse(null),
                        row.date(COMMISSIONED).isPresent(),
                        null),
                configuration(row),
                null,
                pump
                        ? List.of(PumpDetails.of(row.text(SERIAL), model == null ? null : models.get(Fold.of(model))))
                        : List.of());
    }

    private static ConfigurationDetails configuration(Parsed row) {
        return new ConfigurationDetails(
                row.number(FALL),
                row.number(LIFT),
                row.text(DRIVE_MATERIAL),
                row.number(DRIVE_BORE),
                row.number(DRIVE_LENGTH),
                row.text(DELIVERY_PIPE),
                row.number(DELIVERY_BORE),
                row.number(DELIVERY_LENGTH),
                row.text(SETTING),
                null,
                null,
                row.number(PRECHARGE));
    }

    private static Set<String> asked(List<Parsed> rows, Function<Parsed, @Nullable String> what) {
        return rows.stream()
                .map(what)
                .filter(Objects::nonNull)
                .map(String::valueOf)
                .collect(Collectors.toSet());
    }
}

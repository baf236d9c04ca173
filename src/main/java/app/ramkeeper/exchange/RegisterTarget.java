package app.ramkeeper.exchange;

import app.ramkeeper.fleet.ContactId;
import app.ramkeeper.fleet.CustomerId;
import app.ramkeeper.fleet.CustomerRegister;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.InstallRegister;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.SiteRegister;
import app.ramkeeper.shared.Conflict;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Predicate;
import org.springframework.stereotype.Component;

/** Rows that become customers, sites, installs and pumps. */
@Component
class RegisterTarget implements Target {

    private final RegisterFields fields;
    private final RegisterCheck check;
    private final RegisterWriter writer;
    private final RegisterLookups lookups;
    private final Changes changes;
    private final RowStore rows;
    private final CustomerRegister customers;
    private final SiteRegister sites;
    private final InstallRegister installs;
    private final Clock clock;

    RegisterTarget(
            RegisterFields fields,
            RegisterCheck check,
            RegisterWriter writer,
            RegisterLookups lookups,
            Changes changes,
            RowStore rows,
            CustomerRegister customers,
            SiteRegister sites,
            InstallRegister installs,
            Clock clock) {
        this.fields = fields;
        this.check = check;
        this.writer = writer;
        this.lookups = lookups;
        this.changes = changes;
        this.rows = rows;
        this.customers = customers;
        this.sites = sites;
        this.installs = installs;
        this.clock = clock;
    }

    @Override
    public List<Field> fields() {
        return fields.all();
    }

    @Override
    public List<Verdict> check(Import imported, List<StagedRow> batch) {
        return check.verdicts(parse(imported, batch), fields.all());
    }

    private List<Parsed> parse(Import imported, List<StagedRow> batch) {
        RegisterReader reader =
                new RegisterReader(imported, fields.all(), lookups.depotPositions(), LocalDate.now(clock));
        return batch.stream().map(reader::read).toList();
    }

    @Override
    public void refuseTwins(ImportId id) {
        rows.refuseTwins(id, "thing", RegisterFields.REFERENCE, "The install");
        rows.refuseTwins(id, "serial", RegisterFields.SERIAL, "Serial");
    }

    @Override
    public Map<Integer, Map<String, List<UUID>>> apply(Import imported, List<StagedRow> batch) {
        return writer.write(parse(imported, batch)).byLine();
    }

    @Override
    public Optional<String> whyNotUndone(ImportId id) {
        return changes.since(id);
    }

    @Override
    public void undo(Import imported, List<StagedRow> batch) {
        take(batch, "installs", id -> installs.removeUntouched(new InstallId(id)));
        take(batch, "sites", id -> sites.removeUntouched(new SiteId(id)));
        take(batch, "contacts", id -> customers.removeUntouched(new ContactId(id)));
        take(batch, "customers", id -> customers.removeUntouched(new CustomerId(id)));
    }

    private static void take(List<StagedRow> batch, String table, Predicate<UUID> remove) {
        for (StagedRow row : batch) {
            for (UUID id : row.made().getOrDefault(table, List.of())) {
                if (!remove.test(id)) {
                    throw new Conflict("Something that line " + row.line()
                            + " brought in is in use or was changed since; nothing was taken back.");
                }
            }
        }
    }
}

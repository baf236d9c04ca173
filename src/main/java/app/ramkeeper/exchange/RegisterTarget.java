package app.ramkeeper.exchange;

import app.ramkeeper.fleet.CustomerRegister;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.InstallRegister;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.SiteRegister;
import app.ramkeeper.shared.Conflict;
import java.time.Clock;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.springframework.stereotype.Component;

/** Rows that become customers, sites, installs and pumps. */
@Component
class RegisterTarget implements Target {

    private static final int AT_ONCE = 500;

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
        take(
                batch,
                "installs",
                ids -> installs.removeUntouched(ids.stream().map(InstallId::new).toList()));
        take(
                batch,
                "sites",
                ids -> sites.removeUntouched(ids.stream().map(SiteId::new).toList()));
        take(batch, "contacts", customers::removeUntouchedContacts);
        take(batch, "customers", customers::removeUntouchedCustomers);
    }

    private static void take(List<StagedRow> batch, String table, Function<List<UUID>, List<UUID>> remove) {
        Map<UUID, Integer> lines = new LinkedHashMap<>();
        batch.forEach(row -> row.made().getOrDefault(table, List.of()).forEach(id -> lines.put(id, row.line())));
        List<UUID> ids = List.copyOf(lines.keySet());
        for (int from = 0; from < ids.size(); from += AT_ONCE) {
            remove.apply(ids.subList(from, Math.min(ids.size(), from + AT_ONCE))).stream()
                    .map(lines::get)
                    .min(Integer::compare)
                    .ifPresent(line -> {
                        throw new Conflict("Something that line " + line
                                + " brought in is in use or was changed since; nothing was taken back.");
                    });
        }
    }
}

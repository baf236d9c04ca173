package app.ramkeeper.sizing.demand;

import app.ramkeeper.sizing.quantity.ImpossibleInput;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Rates of demand by kind and state; start from {@link #standard()} and put an office's own figures over it. */
public record DemandTable(List<DemandRate> rates) {

    private static final String STOCK = "New Zealand stock-water table, 2008";
    private static final String HOT = "Agriculture and Agri-Food Canada stock-water table, summer";
    private static final String USUAL = "usual";
    private static final String HOT_WEATHER = "hot weather";

    private static final DemandTable STANDARD = new DemandTable(List.of(
            new DemandRate("person", "household", 200, STOCK),
            new DemandRate("person", "all hygiene and laundry", 50, "WHO water quantity guidance, about 50 l"),
            new DemandRate("person", "least to get by", 7.5, "WHO minimum quantity"),
            new DemandRate("dairy cow", "in milk", 70, STOCK),
            new DemandRate("dairy cow", "plant washdown", 70, STOCK),
            new DemandRate("dairy cow", "in milk, hot weather", 95, HOT),
            new DemandRate("cattle", "not in milk", 45, STOCK),
            new DemandRate("cattle", "dry cow, hot weather", 55, HOT),
            new DemandRate("cattle", "finishing, hot weather", 86, HOT),
            new DemandRate("cow with calf", HOT_WEATHER, 68, HOT),
            new DemandRate("bull", HOT_WEATHER, 55, HOT),
            new DemandRate("calf", USUAL, 25, STOCK),
            new DemandRate("horse", "working", 55, STOCK),
            new DemandRate("horse", "grazing", 35, STOCK),
            new DemandRate("horse", HOT_WEATHER, 55, HOT),
            new DemandRate("sheep", USUAL, 4, STOCK),
            new DemandRate("sheep", HOT_WEATHER, 14, HOT),
            new DemandRate("lamb", USUAL, 1, STOCK),
            new DemandRate("sow", USUAL, 25, STOCK)));

    /** Refuses two rates for the same kind and state. */
    public DemandTable {
        rates = List.copyOf(rates);
        long distinct = rates.stream()
                .map(rate -> rate.kind() + "/" + rate.state())
                .distinct()
                .count();
        if (distinct != rates.size()) {
            throw new ImpossibleInput("demand table", "two rates for one kind and state", "one rate for each");
        }
    }

    /** The table as referenced: a New Zealand and a Canadian stock table and WHO's figures for people. */
    public static DemandTable standard() {
        return STANDARD;
    }

    /** The same with one rate added, or put in place of the one for its kind and state. */
    public DemandTable with(DemandRate rate) {
        List<DemandRate> all = new ArrayList<>(rates);
        all.removeIf(old -> old.isFor(rate.kind(), rate.state()));
        all.add(rate);
        return new DemandTable(all);
    }

    /** The rate for a kind and state. Worked value: 70 l/day for a dairy cow in milk. */
    public Optional<DemandRate> find(String kind, String state) {
        return rates.stream().filter(rate -> rate.isFor(kind, state)).findFirst();
    }
}

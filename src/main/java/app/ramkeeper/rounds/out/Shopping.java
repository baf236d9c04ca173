package app.ramkeeper.rounds.out;

import app.ramkeeper.rounds.out.RunSheets.Load;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** One shopping list for all vans of a week: what a depot holds is counted once, however many vans load there. */
public final class Shopping {

    private Shopping() {}

    /** What one technician's van needs, and the depot that it loads at. */
    public record Van(String name, @Nullable UUID depot, List<Load> loads) {}

    /**
     * A part over all vans.
     *
     * @param inVans what the vans that need it hold of it, as far as they need it
     * @param fromDepots what their depots can give them
     */
    public record Item(
            String part, String number, String unit, BigDecimal needed, BigDecimal inVans, BigDecimal fromDepots) {

        public BigDecimal toBuy() {
            return needed.subtract(inVans).subtract(fromDepots);
        }

        private Item plus(Load load, BigDecimal fromDepot) {
            return new Item(
                    part,
                    number,
                    unit,
                    needed.add(load.needed()),
                    inVans.add(load.inVan().max(BigDecimal.ZERO).min(load.needed())),
                    fromDepots.add(fromDepot));
        }
    }

    /** A part by its number and name. */
    private record Part(String number, String name) {
        static Part of(Load load) {
            return new Part(load.number(), load.part());
        }
    }

    /** What is left of a part at a depot. */
    private record Shelf(UUID depot, Part part) {}

    public static List<Item> of(List<Van> vans) {
        Map<Part, Item> items = new LinkedHashMap<>();
        Map<Shelf, BigDecimal> left = new HashMap<>();
        for (Van van : vans) {
            for (Load load : van.loads()) {
                Part part = Part.of(load);
                BigDecimal given = BigDecimal.ZERO;
                if (van.depot() != null) {
                    Shelf shelf = new Shelf(van.depot(), part);
                    BigDecimal there = left.getOrDefault(shelf, load.atDepot().max(BigDecimal.ZERO));
                    given = load.needed()
                            .subtract(load.inVan().max(BigDecimal.ZERO))
                            .max(BigDecimal.ZERO)
                            .min(there);
                    left.put(shelf, there.subtract(given));
                }
                Item before = items.getOrDefault(
                        part,
                        new Item(
                                load.part(),
                                load.number(),
                                load.unit(),
                                BigDecimal.ZERO,
                                BigDecimal.ZERO,
                                BigDecimal.ZERO));
                items.put(part, before.plus(load, given));
            }
        }
        List<Item> all = new ArrayList<>(items.values());
        all.sort(Comparator.comparing(Item::part).thenComparing(Item::number));
        return all;
    }
}

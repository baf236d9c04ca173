package app.ramkeeper.demo;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.random.RandomGenerator;

/** Names that nobody has: put together from parts, each used once. */
final class Names {

    static final List<String> VALLEYS =
            List.of("Sallow Burn", "Heron Gully", "Kettle Valley", "Quartz Bend", "Lark Saddle", "Withy Stream");
    private static final List<String> FIRST = List.of(
            "Alder", "Bracken", "Cold", "Dun", "Eagle", "Far", "Grey", "High", "Ivory", "Juniper", "Kestrel", "Long",
            "Moss", "North", "Otter", "Pigeon", "Quail", "Rush", "Stone", "Thistle", "Upper", "Violet", "Wether",
            "Yarrow");
    private static final List<String> LAST = List.of(
            "acre", "bank", "brae", "croft", "dale", "field", "garth", "haugh", "holm", "knowe", "lea", "moor", "rigg",
            "shaw", "side", "stead", "toft", "wick");
    private static final List<String> GIVEN = List.of(
            "Aroha", "Bryn", "Carys", "Dougal", "Edith", "Fergus", "Greta", "Hemi", "Ines", "Joss", "Kiri", "Lorne",
            "Mere", "Niall", "Orla", "Piers", "Rewi", "Sorrel", "Tam", "Una", "Vaughn", "Wyn");
    private static final List<String> FAMILY = List.of(
            "Abernook",
            "Birkmyre",
            "Caldergate",
            "Drummock",
            "Eskrigg",
            "Fallowes",
            "Garrowby",
            "Haldane-Rook",
            "Inchmore",
            "Jessop-Vale",
            "Kirkbride-Ash",
            "Lammermuir",
            "Mossgiel-Tarn",
            "Netherwood",
            "Orrock",
            "Pennistone",
            "Rushbrook",
            "Scarcliff",
            "Tarnbrook",
            "Underhay",
            "Wharram",
            "Yewdall");

    private final RandomGenerator random;
    private final Set<String> used = new HashSet<>();

    Names(RandomGenerator random) {
        this.random = random;
    }

    String farm() {
        return fresh(() -> pick(FIRST) + pick(LAST));
    }

    String person() {
        return fresh(() -> pick(GIVEN) + " " + pick(FAMILY));
    }

    <T> T pick(List<T> list) {
        return list.get(random.nextInt(list.size()));
    }

    private String fresh(java.util.function.Supplier<String> maker) {
        for (int i = 0; i < 10_000; i++) {
            String name = maker.get();
            if (used.add(name)) {
                return name;
            }
        }
        throw new IllegalStateException("The demo has run out of names");
    }
}

package app.ramkeeper.rounds.out;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.rounds.out.RunSheets.Load;
import app.ramkeeper.rounds.out.Shopping.Item;
import app.ramkeeper.rounds.out.Shopping.Van;
import java.math.BigDecimal;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;

class ShoppingTests {

    private static final UUID HILL = new UUID(1, 1);
    private static final UUID TOWN = new UUID(2, 2);

    @Test
    void whatADepotHoldsIsCountedOnce() {
        Item seals = only(
                new Van("Ana", HILL, List.of(load(3, 1, 2))),
                new Van("Ben", HILL, List.of(load(2, 0, 2))),
                new Van("Cal", TOWN, List.of(load(1, 0, 1))));
        assertThat(seals.needed()).isEqualByComparingTo("6");
        assertThat(seals.inVans()).isEqualByComparingTo("1");
        assertThat(seals.fromDepots()).as("two at one depot, one at the other").isEqualByComparingTo("3");
        assertThat(seals.toBuy()).isEqualByComparingTo("2");
    }

    @Test
    void whatOneVanHasToSpareIsNoUseToAnother() {
        Item seals = only(new Van("Ana", HILL, List.of(load(1, 9, 0))), new Van("Ben", null, List.of(load(2, -1, 5))));
        assertThat(seals.inVans()).isEqualByComparingTo("1");
        assertThat(seals.toBuy()).isEqualByComparingTo("2");
    }

    private static Item only(Van... vans) {
        List<Item> items = Shopping.of(List.of(vans));
        assertThat(items).hasSize(1);
        return items.get(0);
    }

    private static Load load(int needed, int inVan, int atDepot) {
        return new Load(
                "Seal set",
                "W-25",
                BigDecimal.valueOf(needed),
                BigDecimal.valueOf(inVan),
                BigDecimal.valueOf(atDepot),
                "PIECE");
    }
}

package app.ramkeeper.sizing.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import app.ramkeeper.sizing.line.Stretch;
import app.ramkeeper.sizing.quantity.Check;
import app.ramkeeper.sizing.quantity.Verdict;
import java.util.List;
import org.junit.jupiter.api.Test;

class DesignSearchTests {

    @Test
    void findsAFrontThatMeetsTheDemandAndTheRules() {
        DesignFront front = DesignSearch.front(Examples.task(90, 3000), Examples.small());

        assertThat(front.designs()).hasSizeGreaterThanOrEqualTo(3);
        assertThat(front.designs()).extracting(Design::cost).isSorted();
        assertThat(front.designs()).extracting(Design::delivered).isSorted();
        assertThat(front.designs()).allSatisfy(design -> {
            assertThat(design.delivered().litresPerDay()).isGreaterThanOrEqualTo(2999.9);
            assertThat(design.head().metres()).isGreaterThanOrEqualTo(42);
            assertThat(design.drive().litresPerMinute()).isLessThanOrEqualTo(90 + 1e-9);
            assertThat(design.checks()).extracting(Check::verdict).doesNotContain(Verdict.FAILS);
            assertThat(design.stretches().get(design.stretches().size() - 1).toM())
                    .isEqualTo(420);
        });
        assertThat(front.rejected()).singleElement().satisfies(rejection -> {
            assertThat(rejection.model()).isEqualTo("Three inch");
            assertThat(rejection.reason()).isEqualTo(Rejection.Reason.COST);
            assertThat(rejection.sentence()).contains("another design brings that for");
        });
    }

    @Test
    void costsWhatItsPartsCost() {
        DesignCatalogue catalogue = Examples.small();
        for (Design design :
                DesignSearch.front(Examples.task(90, 3000), catalogue).designs()) {
            double cost = design.number()
                    * (catalogue.pumps().stream()
                                    .filter(pump -> pump.model().equals(design.pump()))
                                    .findFirst()
                                    .orElseThrow()
                                    .price()
                            + 24
                                    * price(
                                            catalogue.drivePipes(),
                                            design.drivePipe().words()));
            double[] lengths = {Math.hypot(120, 8), Math.hypot(80, 4), Math.hypot(120, 21), Math.hypot(100, 15)};
            double[] ends = {120, 200, 320, 420};
            int stretch = 0;
            for (int i = 0; i < 4; i++) {
                Stretch in = design.stretches().get(stretch);
                cost += lengths[i] * price(catalogue.deliveryPipes(), in.type().words());
                stretch += in.toM() == ends[i] ? 1 : 0;
            }
            cost += 25 * (design.stretches().size() - 1);
            assertThat(design.cost()).isCloseTo(cost, within(1e-6));
        }
    }

    @Test
    void saysWhyNothingFits() {
        assertThat(reasons(90, 30_000)).containsOnly(Rejection.Reason.DEMAND);
        assertThat(reasons(10, 300)).containsOnly(Rejection.Reason.SOURCE);
        assertThat(reasons(30, 300)).contains(Rejection.Reason.SOURCE);
    }

    @Test
    void searchesALargeCatalogueInAReasonableTime() {
        DesignFront front = DesignSearch.front(Examples.longTask(), Examples.large());

        assertThat(front.designs()).isNotEmpty();
        assertThat(front.designs().size() + front.rejected().size()).isGreaterThanOrEqualTo(8);
        assertThat(front.designs()).allSatisfy(d -> assertThat(d.stretches()).hasSizeLessThan(8));
    }

    @Test
    void refusesEmptyCatalogues() {
        assertThatThrownBy(() -> new DesignCatalogue(List.of(), List.of(), List.of()))
                .hasMessageContaining("pumps is none");
    }

    private static List<Rejection.Reason> reasons(double source, double demand) {
        return DesignSearch.front(Examples.task(source, demand), Examples.small()).rejected().stream()
                .map(Rejection::reason)
                .toList();
    }

    private static double price(List<PricedPipe> pipes, String words) {
        return pipes.stream()
                .filter(pipe -> pipe.type().words().equals(words))
                .findFirst()
                .orElseThrow()
                .pricePerMetre();
    }
}

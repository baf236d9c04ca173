package app.ramkeeper.quotes.offer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.web.print.Standard;
import java.io.IOException;
import java.math.BigDecimal;
import java.security.MessageDigest;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.junit.jupiter.api.Test;
import org.springframework.dao.DataAccessException;

/** A quote from its design to the customer's answer. */
class QuoteFlowTests extends QuoteRun {

    @Test
    void linesComeFromTheDesign() {
        Revision draft = office(() -> store.latest(quotes.open(Offers.whom(null), offers.priced(), "Test")));

        // worked by hand, 5 % for off-cuts: 12 m -> 12.6 -> 3 lengths of 6 m; 415 m -> 435.75 -> 5 coils; 205 -> 215.25
        // -> 216 m
        assertThat(draft.of(LineGroup.DRIVE_PIPE).get(0).quantity()).isEqualByComparingTo("18");
        assertThat(draft.of(LineGroup.DELIVERY_PIPE))
                .extracting(line -> line.quantity().stripTrailingZeros().toPlainString())
                .containsExactly("500", "216");
        assertThat(draft.of(LineGroup.DELIVERY_PIPE).get(0).note()).contains("415 m", "5 %", "100 m");
        assertThat(draft.of(LineGroup.PUMPS)).hasSizeGreaterThanOrEqualTo(2);
        assertThat(draft.of(LineGroup.PUMPS).get(0).price()).isEqualByComparingTo("2150");
        // 3 days at the pump and 632 m by 150 m a day: 7.21 -> 7.5 days of two people
        assertThat(draft.of(LineGroup.LABOUR).get(0).quantity()).isEqualByComparingTo("15");
        assertThat(draft.lines()).allMatch(line -> line.taxPercent().compareTo(new BigDecimal("15")) == 0);
        assertThat(draft.groups()).contains(LineGroup.VESSEL, LineGroup.TANK);
    }

    @Test
    void aQuoteKeepsThePricesItWasMadeWith() {
        QuoteId id = draft();
        BigDecimal before = store.latest(id).totals().total();
        jdbc.sql("update prices set price = price * 2").update();

        assertThat(store.latest(id).totals().total()).isEqualByComparingTo(before);
        jdbc.sql("update prices set price = price / 2").update();
    }

    @Test
    void refusesToSendWhatIsNotPriced() {
        QuoteId id = office(() -> quotes.open(
                Offers.whom(null), Designs.of(Uuids.next(), Uuids.next(), Uuids.next(), Uuids.next()), "Test"));

        assertThatThrownBy(() -> office(() -> send(id)))
                .isInstanceOf(Conflict.class)
                .hasMessageContaining("no price yet", "Ram pump Heron 50");
        assertThat(store.card(id).number()).isNull();
    }

    @Test
    void numbersHaveNoGapsEvenWhereSendingFails() {
        int first = number(sent());
        QuoteId failing = draft();
        jdbc.sql("update quotes set title = ? where id = ?")
                .params("x", failing.value())
                .update();
        jdbc.sql("update quote_revisions set valid_until = '2020-01-01' where quote_id = ?")
                .param(failing.value())
                .update();
        assertThatThrownBy(() -> office(() -> send(failing))).isInstanceOf(Conflict.class);

        assertThat(number(sent())).isEqualTo(first + 1);
    }

    @Test
    void manySendersGetNumbersInARow() throws Exception {
        List<QuoteId> drafts = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            drafts.add(draft());
        }
        int before = number(sent());

        together(drafts.stream()
                .<Callable<Object>>map(id -> () -> office(() -> send(id)))
                .toList());

        assertThat(drafts.stream().map(this::number).sorted().toList())
                .containsExactly(before + 1, before + 2, before + 3, before + 4);
    }

    @Test
    void thePaperIsMadeOnceAndKept() throws Exception {
        QuoteId id = sent();
        byte[] paper = office(() -> sending.paper(id, 1));
        java.nio.file.Files.write(java.nio.file.Path.of("target", "quote.pdf"), paper);
        assertThat(Standard.broken(paper)).isEmpty();
        jdbc.sql("update quotes set title = 'Another title' where id = ?")
                .param(id.value())
                .update();

        assertThat(office(() -> sending.paper(id, 1))).isEqualTo(paper);
        assertThat(MessageDigest.getInstance("SHA-256").digest(paper))
                .isEqualTo(store.latest(id).pdfSha256());
        assertThat(text(paper))
                .contains(
                        store.card(id).number(),
                        "In a dry month you get 3 200 to 4 500 litres a day",
                        "The source gives 80 l/min in a dry month",
                        "Licence to take 4 500 l/day",
                        "ask your local water authority",
                        "Signature",
                        "16.0 bar");
    }

    @Test
    void theCustomersCopyTellsNothingInternal() throws IOException {
        QuoteId id = sent();
        String cost = store.latest(id).cost().toPlainString();

        assertThat(text(office(() -> sending.paper(id, 1))))
                .doesNotContain("Secret reason", "Margin", "margin", "cost", cost, cost.replace(".", ","));
    }

    @Test
    void theInternalSheetTellsCostMarginAndWhatWasAcceptedOfTheRules() throws IOException {
        QuoteId id = sent();
        Revision sent = store.latest(id);

        byte[] sheet = office(() -> sending.internal(id));
        java.nio.file.Files.write(java.nio.file.Path.of("target", "internal.pdf"), sheet);
        assertThat(Standard.broken(sheet)).isEmpty();
        assertThat(text(sheet).replace(" ", ""))
                .contains(
                        "Internalsheet",
                        "Secretreason",
                        sent.cost().toPlainString(),
                        sent.margin().toPlainString());
    }

    @Test
    void linesOfASentQuoteStandStill() {
        QuoteId id = sent();

        assertThatThrownBy(() -> jdbc.sql("update quote_lines set price = 1 where revision_id = ?")
                        .param(store.latest(id).id())
                        .update())
                .isInstanceOf(DataAccessException.class)
                .hasMessageContaining("never changed");
        assertThatThrownBy(() -> office(() -> {
                    quotes.removeLine(id, store.latest(id).lines().get(0).id());
                    return 0;
                }))
                .isInstanceOf(Conflict.class);
    }

    @Test
    void aRevisionReplacesWhatWasSentAndKeepsIt() {
        QuoteId id = sent();
        String number = store.card(id).number();
        office(() -> {
            quotes.revise(id, "Test");
            return send(id);
        });

        assertThat(store.latest(id).revision()).isEqualTo(2);
        assertThat(store.card(id).number()).isEqualTo(number);
        assertThat(store.revision(id, 1).state()).isEqualTo(QuoteState.REPLACED);
        assertThat(office(() -> sending.paper(id, 1))).isNotEqualTo(office(() -> sending.paper(id, 2)));
        assertThatThrownBy(() -> office(() -> accept(id, 1)))
                .isInstanceOf(Conflict.class)
                .hasMessageContaining("replaced");
    }

    @Test
    void lapsesByItself() {
        QuoteId id = sent();
        jdbc.sql("update quote_revisions set valid_until = ? where quote_id = ?")
                .params(LocalDate.now().minusDays(3), id.value())
                .update();
        assertThatThrownBy(() -> office(() -> accept(id, 1))).isInstanceOf(Conflict.class);

        assertThat(lapsing.lapse()).isGreaterThanOrEqualTo(1);

        assertThat(store.latest(id).state()).isEqualTo(QuoteState.LAPSED);
        assertThat(store.steps(id).get(0).step()).isEqualTo(Step.Kind.LAPSED);
        assertThat(lapsing.lapse()).isZero();
    }
}

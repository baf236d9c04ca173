package app.ramkeeper.quotes.offer;

import app.ramkeeper.TestDatabase;
import app.ramkeeper.audit.Actor;
import app.ramkeeper.fleet.InstallWorks;
import app.ramkeeper.quotes.job.JobQuery;
import app.ramkeeper.upkeep.Upkeep;
import java.io.IOException;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Supplier;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;

/** A price list and quotes from it. */
@SpringBootTest
@AutoConfigureMockMvc
@Import(TestDatabase.class)
abstract class QuoteRun {

    @Autowired
    Quotes quotes;

    @Autowired
    Sending sending;

    @Autowired
    Answers answers;

    @Autowired
    QuoteStore store;

    @Autowired
    Lapsing lapsing;

    @Autowired
    InstallWorks works;

    @Autowired
    Upkeep upkeep;

    @Autowired
    JobQuery jobs;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Clock clock;

    Offers offers;

    @BeforeEach
    void priceList() {
        offers = new Offers(jdbc);
        offers.tax();
    }

    QuoteId draft() {
        return office(() -> {
            QuoteId id = quotes.open(Offers.whom(null), offers.priced(), "Test");
            offers.priceTheRest(id);
            return id;
        });
    }

    QuoteId sent() {
        QuoteId id = draft();
        return office(() -> send(id));
    }

    QuoteId send(QuoteId id) {
        sending.send(id, "Test");
        return id;
    }

    QuoteId accept(QuoteId id, int revision) {
        answers.accept(id, revision, "Hemi Stone", Answered.PHONE, "price");
        return id;
    }

    int number(QuoteId id) {
        String number = java.util.Objects.requireNonNull(store.card(id).number());
        return Integer.parseInt(number.substring(number.length() - 4));
    }

    static void together(List<Callable<Object>> work) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(work.size());
        try {
            for (Future<Object> done : threads.invokeAll(work)) {
                done.get();
            }
        } finally {
            threads.shutdown();
        }
    }

    static <T> T office(Supplier<T> work) {
        return AsOffice.run(new Actor("test", "test"), work);
    }

    static String text(byte[] paper) throws IOException {
        try (PDDocument read = Loader.loadPDF(paper)) {
            PDFTextStripper reader = new PDFTextStripper();
            reader.setSortByPosition(true);
            return reader.getText(read).replace('\u00A0', ' ');
        }
    }
}

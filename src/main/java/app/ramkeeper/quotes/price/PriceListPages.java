package app.ramkeeper.quotes.price;

import app.ramkeeper.identity.ForSetup;
import app.ramkeeper.web.CsvDownload;
import app.ramkeeper.web.LostUpdate;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import jakarta.validation.Valid;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.method.annotation.StreamingResponseBody;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The price list as a file, in and out, and how quotes are reckoned. */
@Controller
@ForSetup
class PriceListPages {

    private static final long MOST_BYTES = 2_000_000;

    private final PriceImport imports;
    private final PriceBook book;
    private final Prices prices;
    private final Saving saving;

    PriceListPages(PriceImport imports, PriceBook book, Prices prices, Saving saving) {
        this.imports = imports;
        this.book = book;
        this.prices = prices;
        this.saving = saving;
    }

    @GetMapping("/prices.csv")
    ResponseEntity<StreamingResponseBody> csv() {
        return CsvDownload.of("prices.csv", PriceCsv.HEADER, imports.table().stream());
    }

    @GetMapping("/prices/import")
    String form() {
        return "prices/import";
    }

    @PostMapping("/prices/import")
    Object read(@RequestParam(required = false) @Nullable MultipartFile file, Model model, RedirectAttributes redirect)
            throws IOException {
        if (file == null || file.isEmpty()) {
            return refused(model, List.of("Choose a file first."), HttpStatus.UNPROCESSABLE_CONTENT);
        }
        if (file.getSize() > MOST_BYTES) {
            return refused(model, List.of("The file is larger than 2 MB."), HttpStatus.CONTENT_TOO_LARGE);
        }
        String text;
        try {
            text = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(file.getBytes()))
                    .toString();
        } catch (CharacterCodingException other) {
            return refused(
                    model,
                    List.of("The file is no text in UTF-8. Save it as CSV UTF-8."),
                    HttpStatus.UNPROCESSABLE_CONTENT);
        }
        PriceImport.Outcome outcome = imports.read(text);
        if (!outcome.problems().isEmpty()) {
            return refused(model, outcome.problems(), HttpStatus.UNPROCESSABLE_CONTENT);
        }
        redirect.addFlashAttribute(
                "saved", Saved.of("prices.saved.readThingsAddedPrices", outcome.things(), outcome.prices()));
        return "redirect:/prices";
    }

    private static ModelAndView refused(Model model, List<String> problems, HttpStatus status) {
        model.addAttribute("problems", problems);
        return new ModelAndView("prices/import", model.asMap(), status);
    }

    @GetMapping("/prices/settings")
    String settings(Model model) {
        model.addAttribute("form", prices.settings());
        return "prices/settings";
    }

    @PostMapping("/prices/settings")
    Object change(
            @Valid @ModelAttribute("form") @Nullable QuoteSettings form,
            BindingResult result,
            Model model,
            RedirectAttributes redirect) {
        if (form == null || result.hasErrors()) {
            return Saving.again("prices/settings", model).addObject("form", form == null ? prices.settings() : form);
        }
        QuoteSettings saved = prices.settings();
        if (!Objects.equals(saved.version(), form.version())) {
            model.addAttribute("lost", LostUpdate.between(form, saved, "prices.settings."));
            return new ModelAndView("prices/settings", model.asMap(), HttpStatus.CONFLICT);
        }
        if (!saving.did(result, () -> book.change(form))) {
            return Saving.again("prices/settings", model);
        }
        redirect.addFlashAttribute("saved", Saved.of("prices.saved.savedQuotesMadeBefore"));
        return "redirect:/prices/settings";
    }
}

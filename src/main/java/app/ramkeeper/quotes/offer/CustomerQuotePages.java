package app.ramkeeper.quotes.offer;

import app.ramkeeper.identity.Company;
import app.ramkeeper.identity.Open;
import app.ramkeeper.identity.signin.SignInLimits;
import app.ramkeeper.quotes.offer.QuoteLinks.Behind;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Missing;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.validation.Valid;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.ModelAndView;

/** The quote as the customer sees it behind a link. Looking at it answers nothing; mail programs look at links. */
@Controller
@Open
@RequestMapping("/q/{token}")
class CustomerQuotePages {

    private static final String PAGE = "quotes/customer";

    private final QuoteLinks links;
    private final QuoteStore store;
    private final Answers answers;
    private final Company company;
    private final SignInLimits limits;
    private final Clock clock;

    CustomerQuotePages(
            QuoteLinks links, QuoteStore store, Answers answers, Company company, SignInLimits limits, Clock clock) {
        this.links = links;
        this.store = store;
        this.answers = answers;
        this.company = company;
        this.limits = limits;
        this.clock = clock;
    }

    /** A search engine that got hold of a link must not keep it. */
    @ModelAttribute
    void unlisted(HttpServletResponse response) {
        response.setHeader("X-Robots-Tag", "noindex, nofollow");
    }

    @GetMapping
    ModelAndView show(@PathVariable String token, HttpServletRequest request, Model model) {
        Optional<Behind> behind = look(token, request);
        if (behind.isEmpty()) {
            return gone();
        }
        links.opened(token, behind.get());
        return page(token, behind.get(), model, new CustomerForm(null, null, null), HttpStatus.OK);
    }

    @GetMapping("/quote.pdf")
    ResponseEntity<byte[]> paper(@PathVariable String token, HttpServletRequest request) {
        Behind behind = look(token, request).orElseThrow(() -> new Missing("quote", "link"));
        return download(
                store.paper(Objects.requireNonNull(behind.revision().pdfSha256())),
                store.card(behind.quote()).name());
    }

    @PostMapping("/accept")
    ModelAndView accept(
            @PathVariable String token,
            @Valid @ModelAttribute("answer") @Nullable CustomerForm form,
            BindingResult result,
            HttpServletRequest request,
            Model model) {
        return answer(token, form, result, request, model, true);
    }

    @PostMapping("/decline")
    ModelAndView decline(
            @PathVariable String token,
            @Valid @ModelAttribute("answer") @Nullable CustomerForm form,
            BindingResult result,
            HttpServletRequest request,
            Model model) {
        return answer(token, form, result, request, model, false);
    }

    private ModelAndView answer(
            String token,
            @Nullable CustomerForm form,
            BindingResult result,
            HttpServletRequest request,
            Model model,
            boolean yes) {
        Optional<Behind> behind = look(token, request);
        if (behind.isEmpty()) {
            return gone();
        }
        CustomerForm typed = form == null ? new CustomerForm(null, null, null) : form;
        if (yes && !Boolean.TRUE.equals(typed.agreed()) && !result.hasFieldErrors("agreed")) {
            result.rejectValue("agreed", "quotes.customer.agreed.missing");
        }
        if (!result.hasErrors()) {
            try {
                record(behind.get(), typed, yes);
                return new ModelAndView("redirect:/q/" + token);
            } catch (Conflict conflict) {
                result.reject("conflict", String.valueOf(conflict.getMessage()));
            }
        }
        return page(token, behind.get(), model, typed, HttpStatus.UNPROCESSABLE_CONTENT);
    }

    private void record(Behind behind, CustomerForm form, boolean yes) {
        String name = Objects.requireNonNull(form.name());
        int revision = behind.revision().revision();
        AsOffice.run(QuoteLinks.customer(), () -> {
            if (yes) {
                answers.accept(behind.quote(), revision, name, Answered.LINK, form.reason());
            } else {
                answers.decline(behind.quote(), revision, name, Answered.LINK, form.reason());
            }
            return true;
        });
    }

    private ModelAndView page(String token, Behind behind, Model model, CustomerForm form, HttpStatus status) {
        Revision revision = store.byId(behind.revision().id());
        LocalDate sent = Objects.requireNonNull(revision.sentAt())
                .atZone(clock.getZone())
                .toLocalDate();
        model.addAttribute("token", token);
        model.addAttribute("quote", CustomerQuote.of(company.card(), store.card(behind.quote()), revision, sent));
        model.addAttribute("open", revision.isOpenOn(LocalDate.now(clock)));
        model.addAttribute("decidedBy", revision.decidedBy());
        model.addAttribute("decidedAt", revision.decidedAt());
        model.addAttribute("answer", form);
        return new ModelAndView(PAGE, model.asMap(), status);
    }

    private Optional<Behind> look(String token, HttpServletRequest request) {
        limits.takeFromNetwork("quote", request.getRemoteAddr());
        return links.look(token);
    }

    private static ModelAndView gone() {
        return new ModelAndView("quotes/gone", HttpStatus.NOT_FOUND);
    }

    static ResponseEntity<byte[]> download(byte[] paper, String name) {
        return ResponseEntity.ok()
                .contentType(MediaType.APPLICATION_PDF)
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        ContentDisposition.inline()
                                .filename(name + ".pdf")
                                .build()
                                .toString())
                .header("X-Content-Type-Options", "nosniff")
                .body(paper);
    }
}

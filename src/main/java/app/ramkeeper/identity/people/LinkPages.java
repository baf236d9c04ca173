package app.ramkeeper.identity.people;

import app.ramkeeper.identity.Open;
import app.ramkeeper.identity.signin.OneTimeLinks;
import app.ramkeeper.identity.signin.OneTimeLinks.Behind;
import app.ramkeeper.identity.signin.OneTimeLinks.Purpose;
import app.ramkeeper.identity.signin.PasswordRules;
import app.ramkeeper.web.Saving;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.validation.Valid;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.ModelAndView;

/** The page behind a one-time link. Looking at it changes nothing; mail programs look at links. */
@Controller
@Open
@RequestMapping("/link/{token}")
class LinkPages {

    private static final String VIEW = "identity/link";

    private final OneTimeLinks links;
    private final WaysIn ways;
    private final PasswordRules rules;
    private final Saving saving;

    LinkPages(OneTimeLinks links, WaysIn ways, PasswordRules rules, Saving saving) {
        this.links = links;
        this.ways = ways;
        this.rules = rules;
        this.saving = saving;
    }

    @GetMapping
    ModelAndView open(@PathVariable String token, Model model) {
        Optional<Behind> behind = links.look(token);
        if (behind.isEmpty()) {
            return gone();
        }
        fill(behind.get(), model);
        return new ModelAndView(VIEW, model.asMap()).addObject("form", new LinkForm(null, null));
    }

    @PostMapping
    ModelAndView set(
            @PathVariable String token,
            @Valid @ModelAttribute("form") LinkForm form,
            BindingResult errors,
            HttpServletRequest request,
            Model model) {
        Optional<Behind> behind = links.look(token);
        if (behind.isEmpty()) {
            return gone();
        }
        boolean setup = behind.get().purpose() == Purpose.SETUP;
        String name = text(form.name());
        String login =
                setup ? text(form.login()) : ways.loginBehind(behind.get()).orElse("");
        String password = Optional.ofNullable(request.getParameter("password")).orElse("");
        if (setup) {
            requireNames(name, login, errors);
        }
        Optional<String> objection = rules.objection(password, login);
        boolean[] works = {true};
        boolean saved = objection.isEmpty()
                && saving.did(
                        errors,
                        () -> works[0] = setup ? ways.setUp(token, name, login, password) : ways.set(token, password));
        if (!works[0]) {
            return gone();
        }
        if (saved) {
            return new ModelAndView("redirect:/sign-in?done");
        }
        fill(behind.get(), model);
        return Saving.again(VIEW, model).addObject("form", form).addObject("objection", objection.orElse(null));
    }

    private void fill(Behind behind, Model model) {
        model.addAttribute("setup", behind.purpose() == Purpose.SETUP);
        model.addAttribute("account", ways.loginBehind(behind).orElse(null));
    }

    private static void requireNames(String name, String login, BindingResult errors) {
        if (name.isEmpty()) {
            errors.rejectValue("name", "person.name.missing");
        }
        if (login.isEmpty()) {
            errors.rejectValue("login", "account.login.missing");
        }
    }

    private static String text(@Nullable String typed) {
        return typed == null ? "" : typed.strip();
    }

    private static ModelAndView gone() {
        return new ModelAndView("identity/link-gone", HttpStatus.NOT_FOUND);
    }
}

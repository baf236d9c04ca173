package app.ramkeeper.exchange;

import app.ramkeeper.exchange.reading.Reading;
import app.ramkeeper.exchange.reading.Unreadable;
import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForSetup;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.servlet.ModelAndView;

/** Takes a file in. */
@Controller
@ForSetup
class UploadController {

    private static final Map<String, Character> SEPARATORS =
            Map.of("semicolon", ';', "comma", ',', "tab", '\t', "bar", '|');
    private static final Map<String, String> CHARSETS =
            Map.of("utf-8", "UTF-8", "windows-1252", "windows-1252", "utf-16", "UTF-16LE");

    private final Imports imports;
    private final ImportSettings settings;

    UploadController(Imports imports, ImportSettings settings) {
        this.imports = imports;
        this.settings = settings;
    }

    @GetMapping("/imports/new")
    ModelAndView form(@RequestParam(defaultValue = "REGISTER") ImportKind kind) {
        return form(kind, null, HttpStatus.OK);
    }

    @PostMapping("/imports")
    Object upload(
            @RequestParam(defaultValue = "REGISTER") ImportKind kind,
            @RequestParam(required = false) @Nullable MultipartFile file,
            @RequestParam(required = false) @Nullable String charset,
            @RequestParam(required = false) @Nullable String separator,
            @AuthenticationPrincipal CurrentUser user,
            Model model)
            throws IOException {
        if (file == null || String.valueOf(file.getOriginalFilename()).isEmpty()) {
            return form(kind, "Choose a file first.", HttpStatus.UNPROCESSABLE_CONTENT);
        }
        Path kept = Files.createTempFile("ramkeeper-import", ".tmp");
        try {
            settings.limits().accept(file.getSize());
            file.transferTo(kept);
            Imports.Upload sent =
                    new Imports.Upload(kept, String.valueOf(file.getOriginalFilename()), file.getContentType());
            Reading reading = new Reading(
                    charset == null ? null : CHARSETS.get(charset),
                    separator == null ? null : SEPARATORS.get(separator));
            ImportId id = imports.stage(kind, sent, reading, user);
            return "redirect:/imports/" + id + "/columns";
        } catch (Unreadable refused) {
            return form(kind, refused.sentence(), status(refused.reason()));
        } finally {
            Files.deleteIfExists(kept);
        }
    }

    private ModelAndView form(ImportKind kind, @Nullable String problem, HttpStatus status) {
        ModelAndView page = new ModelAndView("exchange/upload");
        page.addObject("kind", kind);
        page.addObject("problem", problem);
        page.addObject("limits", settings.limits());
        page.setStatus(status);
        return page;
    }

    private static HttpStatus status(Unreadable.Reason reason) {
        return switch (reason) {
            case TOO_LARGE -> HttpStatus.CONTENT_TOO_LARGE;
            case OTHER_KIND -> HttpStatus.UNSUPPORTED_MEDIA_TYPE;
            case BROKEN -> HttpStatus.UNPROCESSABLE_CONTENT;
        };
    }
}

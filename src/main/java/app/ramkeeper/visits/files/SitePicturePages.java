package app.ramkeeper.visits.files;

import app.ramkeeper.fleet.Fleet;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForField;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.shared.Text;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.web.Saved;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** A site's gate photos and drawings: look, add, take away. */
@Controller
@ForField
class SitePicturePages {

    private static final String VIEW = "visits/pictures";

    private final SitePictures pictures;
    private final Photos photos;
    private final Fleet fleet;

    SitePicturePages(SitePictures pictures, Photos photos, Fleet fleet) {
        this.pictures = pictures;
        this.photos = photos;
        this.fleet = fleet;
    }

    @GetMapping("/sites/{id}/pictures")
    ModelAndView list(@PathVariable UUID id, Model model) {
        return page(id, model, "", "", "", HttpStatus.OK);
    }

    @PostMapping("/sites/{id}/pictures")
    ModelAndView add(
            @PathVariable UUID id,
            @RequestParam(required = false) @Nullable MultipartFile picture,
            @RequestParam(defaultValue = "") String kind,
            @RequestParam(defaultValue = "") String caption,
            Model model,
            RedirectAttributes flash,
            @AuthenticationPrincipal CurrentUser user) {
        PersonId by = new PersonId(user.person());
        try {
            SiteId site = fleet.site(new SiteId(id)).id();
            pictures.add(Uuids.next(), site, kind(kind), kept(picture, by), said(caption), by);
        } catch (PhotoRefused refused) {
            return page(id, model, kind, caption, refused.sentence(), refused.status());
        }
        flash.addFlashAttribute("saved", Saved.of("visits.saved.thePictureIsThere"));
        return new ModelAndView("redirect:/sites/" + id + "/pictures");
    }

    @PostMapping("/site-pictures/{id}/remove")
    String remove(@PathVariable UUID id, RedirectAttributes flash) {
        SiteId site = pictures.remove(id);
        flash.addFlashAttribute("saved", Saved.of("visits.saved.thePictureIsTaken"));
        return "redirect:/sites/" + site + "/pictures";
    }

    @GetMapping("/site-pictures/{id}")
    ResponseEntity<byte[]> picture(@PathVariable UUID id) {
        return PhotoController.answer(pictures.shown(id).orElseThrow(() -> new Missing("picture", id)), "picture");
    }

    private ModelAndView page(UUID id, Model model, String kind, String caption, String wrong, HttpStatus status) {
        SiteId site = new SiteId(id);
        model.addAttribute("site", fleet.site(site));
        model.addAttribute("pictures", pictures.of(site));
        model.addAttribute("kinds", Arrays.asList(PictureKind.values()));
        model.addAttribute("kind", kind);
        model.addAttribute("caption", caption);
        model.addAttribute("wrong", wrong);
        return new ModelAndView(VIEW, model.asMap(), status);
    }

    private Photos.Kept kept(@Nullable MultipartFile picture, PersonId by) {
        if (picture == null || picture.isEmpty()) {
            throw unfit("Choose a picture first.");
        }
        try {
            return photos.keep(picture.getBytes(), picture.getOriginalFilename(), picture.getContentType(), by);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private static PictureKind kind(String kind) {
        return Arrays.stream(PictureKind.values())
                .filter(known -> known.name().equals(kind))
                .findFirst()
                .orElseThrow(() -> unfit("Say what the picture shows."));
    }

    private static @Nullable String said(String caption) {
        if (caption.length() > 300) {
            throw unfit("This text is too long: at most 300 characters.");
        }
        try {
            return Optional.ofNullable(Text.clean(caption)).orElse("");
        } catch (IllegalArgumentException control) {
            throw unfit(String.valueOf(control.getMessage()));
        }
    }

    private static PhotoRefused unfit(String sentence) {
        return new PhotoRefused(HttpStatus.UNPROCESSABLE_CONTENT, sentence);
    }
}

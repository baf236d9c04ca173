package app.ramkeeper.web.print;

import com.openhtmltopdf.extend.FSSupplier;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FSFontUseCase;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.outputdevice.helper.ExternalResourceControlPriority;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder.PdfAConformance;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationContext;
import org.springframework.core.convert.ConversionService;
import org.springframework.stereotype.Component;
import org.thymeleaf.ITemplateEngine;
import org.thymeleaf.context.Context;
import org.thymeleaf.spring6.expression.ThymeleafEvaluationContext;

/**
 * Makes a PDF from a template on {@code layout/paper}: PDF/A-2a and PDF/UA-1, the fonts in it, nothing read from outside.
 *
 * <p>The template is written as XML (every element closed) and has no links into the application, grid, flex or variables;
 * the beans {@code @say} and {@code @money} and all messages are there.
 */
@Component
public class Pdf {

    static {
        // a line for each font of each paper tells nobody anything
        XRLog.setLoggingEnabled(false);
    }

    private static final byte[] COLOURS =
            ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData();

    private static final Set<FSFontUseCase> EVERYWHERE = EnumSet.allOf(FSFontUseCase.class);

    private final ITemplateEngine templates;
    private final ThymeleafEvaluationContext beans;
    private final byte[] regular = read("/fonts/SourceSans3-Regular.ttf");
    private final byte[] bold = read("/fonts/SourceSans3-Semibold.ttf");
    private final byte[] heading = read("/fonts/SourceSerif4-Semibold.ttf");

    Pdf(ITemplateEngine templates, ApplicationContext application, @Nullable ConversionService mvcConversionService) {
        this.templates = templates;
        this.beans = new ThymeleafEvaluationContext(application, mvcConversionService);
    }

    /** The template's page as it would be printed. */
    public String html(String template, Map<String, ?> model) {
        Context context = new Context(Locale.UK);
        model.forEach(context::setVariable);
        context.setVariable(ThymeleafEvaluationContext.THYMELEAF_EVALUATION_CONTEXT_CONTEXT_VARIABLE_NAME, beans);
        return templates.process(template, context);
    }

    /** The paper's bytes. */
    public byte[] make(String template, Map<String, ?> model) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(64_000);
        try (BatikSVGDrawer drawings = new BatikSVGDrawer()) {
            new PdfRendererBuilder()
                    .useFastMode()
                    .usePdfAConformance(PdfAConformance.PDFA_2_A)
                    .usePdfUaAccessibility(true)
                    .useColorProfile(COLOURS)
                    .useSVGDrawer(drawings)
                    .useFont(font(regular), "Sans", 400, FontStyle.NORMAL, true, EVERYWHERE)
                    .useFont(font(bold), "Sans", 700, FontStyle.NORMAL, true, EVERYWHERE)
                    .useFont(font(heading), "Serif", 400, FontStyle.NORMAL, true, EVERYWHERE)
                    .useFont(font(heading), "Serif", 700, FontStyle.NORMAL, true, EVERYWHERE)
                    .useExternalResourceAccessControl(
                            (address, type) -> address.startsWith("data:"),
                            ExternalResourceControlPriority.RUN_BEFORE_RESOLVING_URI)
                    .withProducer("Ramkeeper")
                    .withHtmlContent(html(template, model), null)
                    .toStream(bytes)
                    .run();
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
        return bytes.toByteArray();
    }

    private static FSSupplier<InputStream> font(byte[] bytes) {
        return () -> new ByteArrayInputStream(bytes);
    }

    private static byte[] read(String name) {
        try (InputStream in = Objects.requireNonNull(Pdf.class.getResourceAsStream(name), name)) {
            return withoutLigatures(in.readAllBytes());
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }

    /**
     * The font with its table of glyph substitutions out of sight: a drawn ligature would be no letters any more for whoever
     * selects, searches or listens. A font file begins with its directory: 16 bytes a table, the first four its name.
     */
    private static byte[] withoutLigatures(byte[] font) {
        int tables = (font[4] & 0xFF) << 8 | font[5] & 0xFF;
        for (int entry = 12; entry < 12 + 16 * tables; entry += 16) {
            if (new String(font, entry, 4, StandardCharsets.US_ASCII).equals("GSUB")) {
                font[entry] = 'x';
            }
        }
        return font;
    }
}

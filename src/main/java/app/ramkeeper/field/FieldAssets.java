package app.ramkeeper.field;

import app.ramkeeper.identity.Open;
import app.ramkeeper.shared.Missing;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;

/**
 * The phone's own pages: shell, worker, manifest and files, open to all since they hold nothing of the firm's.
 *
 * <p>The files' address carries a hash over all of them, so that a phone has the whole of one edition or the whole of
 * another. An address of an older edition gets today's file: what an old page sends is still understood.
 */
@Controller
@Open
class FieldAssets {

    private static final MediaType SCRIPT = MediaType.parseMediaType("text/javascript;charset=UTF-8");

    private static final Map<String, MediaType> TYPES = Map.of(
            "js",
            SCRIPT,
            "css",
            MediaType.parseMediaType("text/css;charset=UTF-8"),
            "svg",
            MediaType.parseMediaType("image/svg+xml"),
            "png",
            MediaType.IMAGE_PNG);

    private final Map<String, byte[]> files = new TreeMap<>();
    private final String edition;

    FieldAssets() throws IOException {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        for (Resource file : new PathMatchingResourcePatternResolver().getResources("classpath:/static/field/*.*")) {
            files.put(String.valueOf(file.getFilename()), file.getContentAsByteArray());
        }
        for (Map.Entry<String, byte[]> file : files.entrySet()) {
            all.write(file.getKey().getBytes(StandardCharsets.UTF_8));
            all.write(file.getValue());
        }
        edition = Intake.sha256(all.toByteArray()).substring(0, 32);
    }

    @GetMapping("/field")
    ResponseEntity<byte[]> shell() {
        return page("shell.html", MediaType.parseMediaType("text/html;charset=UTF-8"));
    }

    @GetMapping("/sw.js")
    ResponseEntity<byte[]> worker() {
        return page("worker.js", SCRIPT);
    }

    @GetMapping("/manifest.webmanifest")
    ResponseEntity<byte[]> manifest() {
        return page("manifest.json", MediaType.parseMediaType("application/manifest+json"));
    }

    @GetMapping("/field/app/{edition}/{file}")
    ResponseEntity<byte[]> file(@PathVariable String edition, @PathVariable String file) {
        byte[] content = files.get(file);
        MediaType type = TYPES.get(file.substring(file.lastIndexOf('.') + 1));
        if (content == null || type == null || file.equals("worker.js")) {
            throw new Missing("file", file);
        }
        return ResponseEntity.ok().contentType(type).body(content);
    }

    /** The named file with the edition and, in the worker, the names of all others put in. */
    private ResponseEntity<byte[]> page(String name, MediaType type) {
        String list = files.keySet().stream()
                .filter(file ->
                        !file.equals("worker.js") && !file.equals("shell.html") && !file.equals("manifest.json"))
                .map(file -> "'/field/app/" + edition + "/" + file + "'")
                .collect(Collectors.joining(", "));
        Map<String, String> put = new LinkedHashMap<>();
        put.put("'@files@'", list);
        put.put("@edition@", edition);
        String text = new String(files.getOrDefault(name, new byte[0]), StandardCharsets.UTF_8);
        for (Map.Entry<String, String> each : put.entrySet()) {
            text = text.replace(each.getKey(), each.getValue());
        }
        return ResponseEntity.ok().contentType(type).body(text.getBytes(StandardCharsets.UTF_8));
    }
}

package app.ramkeeper.identity.signin;

import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Says in words what a browser calls itself, so that people recognise their own devices. */
final class Device {

    private static final Map<String, String> SYSTEMS = new LinkedHashMap<>();
    private static final Map<String, String> BROWSERS = new LinkedHashMap<>();

    static {
        SYSTEMS.put("Android", "Android");
        SYSTEMS.put("iPhone", "iPhone");
        SYSTEMS.put("iPad", "iPad");
        SYSTEMS.put("Windows", "Windows");
        SYSTEMS.put("Mac OS", "Mac");
        SYSTEMS.put("Linux", "Linux");
        BROWSERS.put("Firefox/", "Firefox");
        BROWSERS.put("Edg/", "Edge");
        BROWSERS.put("Chrome/", "Chrome or a relative");
        BROWSERS.put("Safari/", "Safari");
    }

    private Device() {}

    static String describe(@Nullable String userAgent) {
        return userAgent == null
                ? "unknown device"
                : first(SYSTEMS, userAgent, "unknown system") + ", " + first(BROWSERS, userAgent, "unknown browser");
    }

    private static String first(Map<String, String> names, String userAgent, String otherwise) {
        return names.entrySet().stream()
                .filter(entry -> userAgent.contains(entry.getKey()))
                .map(Map.Entry::getValue)
                .findFirst()
                .orElse(otherwise);
    }
}

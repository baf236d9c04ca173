package app.ramkeeper.bench.pages;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.springframework.web.util.HtmlUtils;

/** The form of a visit as its page came, filled in as after an ordinary service: all as usual, the delivered flow, and of parts that nobody knows which. */
final class VisitForm {

    private static final Pattern TAG = Pattern.compile("<(input|select|option|textarea)\\b([^>]*)>");
    private static final Pattern FLOW = Pattern.compile("reading\\..*\\.DELIVERED_FLOW\\.[A-Z_]+\\.value");

    private static final Pattern WHICH_PART = Pattern.compile("task\\[[0-9]+]\\.part");

    private final String path;
    private final String page;
    private final List<String> fields = new ArrayList<>();

    private VisitForm(String path, String page) {
        this.path = path;
        this.page = page;
    }

    static VisitForm of(String site, Browser browser) throws IOException, InterruptedException {
        String path = "/sites/" + site + "/record";
        VisitForm form = new VisitForm(path, browser.get(path));
        form.fill();
        return form;
    }

    /** Fails unless the visit was recorded. */
    void send(Browser browser) throws IOException, InterruptedException {
        String where = browser.post(path, page, String.join("&", fields));
        if (!where.startsWith("/visits/reports/")) {
            throw new IllegalStateException(path + " led to " + where);
        }
    }

    private void fill() {
        String select = "";
        boolean measured = false;
        Matcher tags = TAG.matcher(page.substring(page.indexOf("<main")));
        while (tags.find()) {
            String attributes = tags.group(2);
            String name = attribute(attributes, "name");
            String value = attribute(attributes, "value");
            if (tags.group(1).equals("select")) {
                select = name == null ? "" : name;
                if (WHICH_PART.matcher(select).matches()) {
                    add(select, "UNKNOWN");
                }
            } else if (tags.group(1).equals("option")) {
                if (attributes.contains("selected")
                        && !WHICH_PART.matcher(select).matches()) {
                    add(select, value);
                }
            } else if (name != null && !measured && FLOW.matcher(name).matches()) {
                measured = true;
                add(name, "6");
            } else if (name != null && sent(name, attributes)) {
                add(name, value);
            }
        }
        if (!measured) {
            throw new IllegalStateException(path + " asks for no delivered flow");
        }
    }

    /** What a browser sends: no empty file, and of what is ticked only that. */
    private static boolean sent(String name, String attributes) {
        String type = attribute(attributes, "type");
        if ("checkbox".equals(type) || "radio".equals(type)) {
            return attributes.contains("checked") || name.equals("asUsual");
        }
        return !"file".equals(type) && !"_csrf".equals(name);
    }

    private void add(String name, @Nullable String value) {
        fields.add(Browser.encoded(name) + "=" + Browser.encoded(value == null ? "" : value));
    }

    private static @Nullable String attribute(String attributes, String name) {
        Matcher found = Pattern.compile("\\b" + name + "=\"([^\"]*)\"").matcher(attributes);
        return found.find() ? HtmlUtils.htmlUnescape(found.group(1)) : null;
    }
}

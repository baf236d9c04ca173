package app.ramkeeper.visits.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.springframework.web.util.HtmlUtils;

/** Reads the fields of a page's form as a browser sends them when nobody touches it. */
public final class PostedForm {

    private static final Pattern FIELD = Pattern.compile(
            "<input ([^>]*)>|<select ([^>]*)>(.*?)</select>|<textarea ([^>]*)>(.*?)</textarea>", Pattern.DOTALL);
    private static final Pattern OPTION = Pattern.compile("<option ([^>]*)>");

    private PostedForm() {}

    public static List<Map.Entry<String, String>> fields(String page) {
        int start = page.indexOf("enctype=\"multipart/form-data\"");
        List<Map.Entry<String, String>> fields = new ArrayList<>();
        Matcher field = FIELD.matcher(page.substring(start, page.indexOf("</form>", start)));
        while (field.find()) {
            if (field.group(1) != null) {
                input(fields, field.group(1));
            } else if (field.group(2) != null) {
                add(fields, field.group(2), chosen(field.group(3)));
            } else {
                add(fields, field.group(4), field.group(5));
            }
        }
        return fields;
    }

    private static void input(List<Map.Entry<String, String>> fields, String tag) {
        String type = attribute(tag, "type");
        boolean box = type.equals("checkbox") || type.equals("radio");
        if (!type.equals("file") && (!box || tag.contains("checked"))) {
            add(fields, tag, attribute(tag, "value"));
        }
    }

    private static String chosen(String options) {
        Matcher option = OPTION.matcher(options);
        String first = null;
        while (option.find()) {
            if (option.group(1).contains("selected")) {
                return attribute(option.group(1), "value");
            }
            first = first == null ? attribute(option.group(1), "value") : first;
        }
        return first == null ? "" : first;
    }

    private static void add(List<Map.Entry<String, String>> fields, String tag, String value) {
        String name = attribute(tag, "name");
        if (!name.isEmpty() && !name.equals("_csrf")) {
            fields.add(Map.entry(name, HtmlUtils.htmlUnescape(value)));
        }
    }

    private static String attribute(String tag, String name) {
        Matcher value = Pattern.compile("(?:^|\\s)" + name + "=\"([^\"]*)\"").matcher(tag);
        return value.find() ? HtmlUtils.htmlUnescape(value.group(1)) : "";
    }
}

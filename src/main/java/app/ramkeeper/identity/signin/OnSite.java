package app.ramkeeper.identity.signin;

import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Where to go after sign-in: only to a path of this application. */
public final class OnSite {

    /** One slash, then none and no backslash (browsers read it as a slash), and no control character anywhere. */
    private static final Pattern PATH = Pattern.compile("/(?![/\\\\])[^\\\\\\p{Cntrl}]{0,1500}");

    private OnSite() {}

    /** Returns the target if it is a path of this site that makes sense after sign-in, else the first page. */
    public static String target(@Nullable String wanted) {
        return wanted != null && PATH.matcher(wanted).matches() && !wanted.startsWith("/sign-") ? wanted : "/";
    }
}

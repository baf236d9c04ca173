package app.ramkeeper.desk;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Predicate;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.config.BeanPostProcessor;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;

/**
 * Notes each statement that this thread prepares, whichever way it is written, and each commit, except those of the web
 * session; and lets one of them fail as on a full disk.
 */
@TestConfiguration(proxyBeanMethods = false)
class CountedStatements {

    /** What was seen last, by what the test calls it. */
    static final Map<String, List<String>> SEEN = new LinkedHashMap<>();

    static final String COMMIT = "commit";

    private static final ThreadLocal<@Nullable List<String>> NOW = new ThreadLocal<>();

    private static final ThreadLocal<@Nullable Predicate<String>> FAULT = new ThreadLocal<>();

    /** What PostgreSQL says when its disk is full. */
    private static final String DISK_FULL = "53100";

    /** Does the work while each step that is so fails. */
    static void failing(Predicate<String> step, Runnable work) {
        FAULT.set(step);
        try {
            work.run();
        } finally {
            FAULT.remove();
        }
    }

    static List<String> during(String what, Runnable work) {
        List<String> seen = new ArrayList<>();
        NOW.set(seen);
        try {
            work.run();
        } finally {
            NOW.remove();
        }
        SEEN.put(what, seen);
        return seen;
    }

    @Bean
    static BeanPostProcessor countStatements() {
        return new BeanPostProcessor() {
            @Override
            public Object postProcessAfterInitialization(Object bean, String name) {
                return name.equals("dataSource") && bean instanceof DataSource real
                        ? watched(DataSource.class, real)
                        : bean;
            }
        };
    }

    private static <T> T watched(Class<T> type, T real) {
        return type.cast(Proxy.newProxyInstance(
                type.getClassLoader(), new Class<?>[] {type}, (proxy, method, values) -> {
                    String step = step(method, values);
                    if (step != null) {
                        note(step);
                    }
                    Object answer = call(real, method, values);
                    if (answer instanceof Connection connection
                            && method.getName().equals("getConnection")) {
                        return watched(Connection.class, connection);
                    }
                    return answer instanceof Statement plain && method.getName().equals("createStatement")
                            ? watched(Statement.class, plain)
                            : answer;
                }));
    }

    private static @Nullable String step(Method method, Object @Nullable [] values) {
        if (method.getName().equals("commit")) {
            return COMMIT;
        }
        boolean runs =
                method.getName().startsWith("prepare") || method.getName().startsWith("execute");
        return runs && values != null && values.length > 0 && values[0] instanceof String sql ? sql : null;
    }

    private static void note(String sql) throws SQLException {
        if (sql.toLowerCase(Locale.ROOT).contains("spring_session")) {
            return;
        }
        List<String> now = NOW.get();
        if (now != null && !sql.equals(COMMIT)) {
            now.add(sql.strip().replaceAll("\\s+", " "));
        }
        Predicate<String> fault = FAULT.get();
        if (fault != null && fault.test(sql)) {
            throw new SQLException("No space left, for the sake of this test", DISK_FULL);
        }
    }

    private static @Nullable Object call(Object real, Method method, Object @Nullable [] values) throws Throwable {
        try {
            return method.invoke(real, values);
        } catch (InvocationTargetException failure) {
            throw failure.getCause();
        }
    }
}

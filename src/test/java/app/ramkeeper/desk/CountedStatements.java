package app.ramkeeper.desk;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.sql.Connection;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.config.BeanPostProcessor;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;

/** Notes each statement that this thread prepares, whichever way it is written, except those of the web session. */
@TestConfiguration(proxyBeanMethods = false)
class CountedStatements {

    /** What was seen last, by what the test calls it. */
    static final Map<String, List<String>> SEEN = new LinkedHashMap<>();

    private static final ThreadLocal<@Nullable List<String>> NOW = new ThreadLocal<>();

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
                    Object answer = call(real, method, values);
                    if (answer instanceof Connection connection
                            && method.getName().equals("getConnection")) {
                        return watched(Connection.class, connection);
                    }
                    if (values != null && values.length > 0 && values[0] instanceof String sql && isRun(method)) {
                        note(sql);
                    }
                    return answer instanceof Statement plain && method.getName().equals("createStatement")
                            ? watched(Statement.class, plain)
                            : answer;
                }));
    }

    private static boolean isRun(Method method) {
        return method.getName().startsWith("prepare") || method.getName().startsWith("execute");
    }

    private static void note(String sql) {
        List<String> now = NOW.get();
        if (now != null && !sql.toLowerCase(Locale.ROOT).contains("spring_session")) {
            now.add(sql.strip().replaceAll("\\s+", " "));
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

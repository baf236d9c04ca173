package app.ramkeeper.fleet;

import org.jspecify.annotations.Nullable;
import org.springframework.orm.ObjectOptimisticLockingFailureException;

/** Compares the version a form was opened with to the one in the register. */
final class Versions {

    private Versions() {}

    static void require(@Nullable Integer present, int opened, Class<?> type, Object id) {
        if (present == null || present != opened) {
            throw new ObjectOptimisticLockingFailureException(type, id);
        }
    }

    static int of(@Nullable Integer version) {
        return version == null ? 0 : version;
    }
}

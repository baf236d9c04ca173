package app.ramkeeper.catalogue;

import java.util.Map;
import java.util.Set;

/** Replaces collections in place, touching only what differs, so that the audit trail shows real changes alone. */
final class Changes {

    private Changes() {}

    static <T> void replace(Set<T> kept, Set<T> wanted) {
        kept.retainAll(wanted);
        kept.addAll(wanted);
    }

    static <K, V> void replace(Map<K, V> kept, Map<K, V> wanted) {
        kept.keySet().retainAll(wanted.keySet());
        wanted.forEach((key, value) -> {
            if (!value.equals(kept.get(key))) {
                kept.put(key, value);
            }
        });
    }
}

package app.ramkeeper.shared;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;

class UuidsTests {

    @Test
    void laysOutTheTimeVersionAndVariantOfRfc9562() {
        // RFC 9562, appendix A.6: 2022-02-22 14:22:22.000 -05:00
        UUID example = Uuids.at(1_645_557_742_000L, 0xCC3L, 0x18C4DC0C0C07398FL);

        assertThat(example).hasToString("017f22e2-79b0-7cc3-98c4-dc0c0c07398f");
        assertThat(example.version()).isEqualTo(7);
        assertThat(example.variant()).isEqualTo(2);
    }

    @Test
    void neverRepeats() {
        Set<UUID> seen = new HashSet<>();
        for (int i = 0; i < 10_000; i++) {
            seen.add(Uuids.next());
        }

        assertThat(seen).hasSize(10_000);
    }
}

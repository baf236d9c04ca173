package app.ramkeeper.fleet;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A licence to take water, an easement or a discharge permit of a site.
 *
 * @param limitLDay most that may be taken
 * @param residualLMin what must stay in the stream
 * @param dueOn the next thing to do about it: apply, hear the answer, renew; what it is stands in the notes
 * @param expiresOn its last day: a due date
 */
@Embeddable
public record ConsentDetails(
        @Enumerated(EnumType.STRING) ConsentKind kind,
        @Nullable String number,
        @Column(name = "limit_l_day") @Nullable Double limitLDay,
        @Column(name = "residual_l_min") @Nullable Double residualLMin,
        @Nullable LocalDate grantedOn,
        @Nullable LocalDate dueOn,
        @Nullable LocalDate expiresOn,
        @Nullable String notes) {}

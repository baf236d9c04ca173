package app.ramkeeper.catalogue;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What sets the dates of one kind of task.
 *
 * @param interval how often, where neither model nor install says otherwise; for an event: within so many days
 * @param afterChangeDays a changed configuration makes it due within so many days; null: no matter to it
 * @param season the day of the year, for a season
 * @param drinkingWater only where people drink the water
 * @param watched a valve rubber: the manager's first list
 * @param byModel the interval for pumps of a model
 * @param byWater the factor on the interval in a class of water
 */
public record TaskTerms(
        TaskKindId id,
        String code,
        String name,
        Scope scope,
        Schedule schedule,
        Interval interval,
        Life life,
        int earlyDays,
        int lateDays,
        int graceDays,
        @Nullable Integer afterChangeDays,
        @Nullable MonthDay season,
        boolean drinkingWater,
        boolean watched,
        @Nullable LocalDate withdrawnOn,
        Map<UUID, Interval> byModel,
        Map<String, BigDecimal> byWater) {

    /** The interval for a pump of this model in this class of water; either may be unknown. */
    public Interval intervalFor(@Nullable UUID model, @Nullable String waterClass) {
        Interval base = model == null ? interval : byModel.getOrDefault(model, interval);
        BigDecimal factor = waterClass == null ? null : byWater.get(waterClass);
        return schedule == Schedule.INTERVAL && factor != null ? base.scaled(factor) : base;
    }
}

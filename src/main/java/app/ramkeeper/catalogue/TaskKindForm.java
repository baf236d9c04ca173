package app.ramkeeper.catalogue;

import jakarta.validation.Valid;
import jakarta.validation.constraints.AssertTrue;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.Digits;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.MonthDay;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What the page of a task kind posts. Schedule and scope are chosen once, when the kind is made. */
public record TaskKindForm(
        @NotBlank(message = "{taskKind.name.missing}") @Size(max = 100) @Nullable
        String name,

        @Size(max = 2000) @Nullable String description,
        @NotNull @Nullable Scope scope,
        @NotNull @Nullable Schedule schedule,
        @Min(0) @Max(600) @Nullable Integer intervalMonths,
        @Min(0) @Max(3650) @Nullable Integer intervalDays,
        @NotNull @Nullable Life life,
        @Min(1) @Max(12) @Nullable Integer seasonMonth,
        @Min(1) @Max(31) @Nullable Integer seasonDay,
        @Min(0) @Max(365) @Nullable Integer earlyDays,
        @Min(0) @Max(365) @Nullable Integer lateDays,
        @Min(0) @Max(365) @Nullable Integer graceDays,
        @Min(0) @Max(365) @Nullable Integer afterChangeDays,
        @Min(0) @Max(1440) @Nullable Integer minutes,
        @Min(1) @Max(9) @Nullable Integer crew,

        @DecimalMin("0") @DecimalMax("100") @Digits(integer = 3, fraction = 2) @Nullable
        BigDecimal weight,

        @Nullable Boolean watched,
        @Nullable Boolean drinkingWater,
        @Size(max = 200) @Nullable String skills,
        @Nullable List<UUID> includes,
        @Nullable List<@Valid ModelInterval> models,
        @Nullable List<@Valid WaterFactor> waters,
        @Nullable List<@Valid PartNeed> parts,
        @Nullable Integer version) {

    /** The interval for one pump model; both blank: as for all. */
    public record ModelInterval(
            @Nullable UUID model,
            @Min(0) @Max(600) @Nullable Integer months,
            @Min(0) @Max(3650) @Nullable Integer days) {

        boolean isSet() {
            return model != null && orZero(months) + orZero(days) > 0;
        }
    }

    /** The factor in one class of water; blank: 1. */
    public record WaterFactor(
            @Nullable String water,

            @DecimalMin("0.1") @DecimalMax("5") @Digits(integer = 1, fraction = 3) @Nullable
            BigDecimal factor) {}

    /** A part to bring; a row without a kind is left out. */
    public record PartNeed(
            @Nullable PartKind kind,
            @Size(max = 40) @Nullable String position,

            @DecimalMin(value = "0", inclusive = false) @DecimalMax("1000") @Digits(integer = 4, fraction = 2) @Nullable
            BigDecimal quantity) {}

    /** A blank form for a new kind. */
    static TaskKindForm blank() {
        return new TaskKindForm(
                null,
                null,
                Scope.INSTALL,
                Schedule.INTERVAL,
                12,
                0,
                Life.CALENDAR,
                null,
                null,
                30,
                30,
                14,
                null,
                30,
                1,
                BigDecimal.ONE,
                false,
                false,
                null,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                null);
    }

    @AssertTrue(message = "{taskKind.interval.missing}")
    public boolean isIntervalGiven() {
        return schedule != Schedule.INTERVAL || orZero(intervalMonths) + orZero(intervalDays) > 0;
    }

    @AssertTrue(message = "{taskKind.event.days}")
    public boolean isEventInDays() {
        return schedule != Schedule.EVENT || orZero(intervalMonths) == 0;
    }

    @AssertTrue(message = "{taskKind.season.missing}")
    public boolean isSeasonGiven() {
        return schedule != Schedule.SEASON || season() != null;
    }

    @Nullable
    MonthDay season() {
        try {
            return schedule != Schedule.SEASON || seasonMonth == null || seasonDay == null
                    ? null
                    : MonthDay.of(seasonMonth, seasonDay);
        } catch (DateTimeException noSuchDay) {
            return null;
        }
    }

    Interval interval() {
        return new Interval(orZero(intervalMonths), orZero(intervalDays));
    }

    /** Skills as they are typed, "LIFTING, CONFINED_SPACE". */
    List<String> skillList() {
        return skills == null
                ? List.of()
                : java.util.Arrays.stream(
                                skills.toUpperCase(java.util.Locale.ROOT).split("[,;\\s]+"))
                        .filter(skill -> !skill.isEmpty())
                        .distinct()
                        .toList();
    }

    List<UUID> includeList() {
        return includes == null
                ? List.of()
                : includes.stream().filter(Objects::nonNull).distinct().toList();
    }

    TaskKindForm withVersion(@Nullable Integer saved) {
        return new TaskKindForm(
                name,
                description,
                scope,
                schedule,
                intervalMonths,
                intervalDays,
                life,
                seasonMonth,
                seasonDay,
                earlyDays,
                lateDays,
                graceDays,
                afterChangeDays,
                minutes,
                crew,
                weight,
                watched,
                drinkingWater,
                skills,
                includes,
                models,
                waters,
                parts,
                saved);
    }

    static int orZero(@Nullable Integer number) {
        return number == null ? 0 : number;
    }
}

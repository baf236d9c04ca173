package app.ramkeeper.sizing.pipe;

import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.quantity.Noted;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.quantity.Require;
import app.ramkeeper.sizing.quantity.Temperature;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * Sizes of pipe that the standards list. An office may use its own list of {@link PipeType} instead.
 *
 * <p>Walls are from memory unless said otherwise, so check a delivery against the standard before a rating is relied on.
 */
public final class PipeCatalogue {

    /** Allowed hoop stress of PE100: 10 MPa by the design coefficient 1.25. */
    public static final double PE100_DESIGN_MPA = 8;

    /** Pressure for threaded malleable fittings (EN 10242, 25 bar to 120 degC; from memory): the thread counts. */
    public static final Pressure THREADED_STEEL = Pressure.ofBar(25);

    private static final double[] PE_SDR = {7.4, 9, 11, 13.6, 17, 21, 26};
    private static final double[] PE_BAR = {25, 20, 16, 12.5, 10, 8, 6};

    /** Outside diameter, then least wall by SDR, mm; 0 where the table has none. */
    private static final double[][] PE_WALL = {
        {20, 3.0, 2.3, 2.0, 0, 0, 0, 0},
        {25, 3.5, 3.0, 2.3, 2.0, 0, 0, 0},
        {32, 4.4, 3.6, 3.0, 2.4, 2.0, 0, 0},
        {40, 5.5, 4.5, 3.7, 3.0, 2.4, 2.0, 0},
        {50, 6.9, 5.6, 4.6, 3.7, 3.0, 2.4, 2.0},
        {63, 8.6, 7.1, 5.8, 4.7, 3.8, 3.0, 2.5},
        {75, 10.3, 8.4, 6.8, 5.6, 4.5, 3.6, 2.9},
        {90, 12.3, 10.1, 8.2, 6.7, 5.4, 4.3, 3.5},
        {110, 15.1, 12.3, 10.0, 8.1, 6.6, 5.3, 4.2},
        {125, 17.1, 14.0, 11.4, 9.2, 7.4, 6.0, 4.8},
        {160, 21.9, 17.9, 14.6, 11.8, 9.5, 7.7, 6.2}
    };

    /** DN, outside diameter, medium wall, heavy wall, mm. */
    private static final double[][] STEEL = {
        {15, 21.3, 2.6, 3.2},
        {20, 26.9, 2.6, 3.2},
        {25, 33.7, 3.2, 4.0},
        {32, 42.4, 3.2, 4.0},
        {40, 48.3, 3.2, 4.0},
        {50, 60.3, 3.6, 4.5},
        {65, 76.1, 3.6, 4.5},
        {80, 88.9, 4.0, 5.0},
        {100, 114.3, 4.5, 5.4},
        {125, 139.7, 5.0, 5.4},
        {150, 165.1, 5.0, 5.4}
    };

    /** Outside diameter, wall of PN 10, wall of PN 16, mm; to 90 mm the standard asks more wall for a rating. */
    private static final double[][] PVC_WALL = {
        {32, 1.6, 2.4},
        {40, 1.9, 3.0},
        {50, 2.4, 3.7},
        {63, 3.0, 4.7},
        {75, 3.6, 5.6},
        {90, 4.3, 6.7},
        {110, 4.2, 6.6},
        {125, 4.8, 7.4},
        {160, 6.2, 9.5}
    };

    private static final Map<PipeMaterial, List<PipeType>> ALL = Map.of(
            PipeMaterial.PE100, readPe100(),
            PipeMaterial.GALVANISED_STEEL, readSteel(),
            PipeMaterial.PVC_U, readPvcU());

    private PipeCatalogue() {}

    /** All types of a material. */
    public static List<PipeType> of(PipeMaterial material) {
        return Objects.requireNonNull(ALL.get(material));
    }

    /**
     * Nominal pressure of PE pipe from its allowed stress and SDR: PN = 20 sigma / (SDR - 1).
     *
     * <p>Source: EN 12201-1 and ISO 4427-1 (relation from memory). Worked value: 16 bar for 8 MPa and SDR 11.
     *
     * @param designStressMpa allowed hoop stress, MPa, more than 0
     * @param sdr outside diameter by wall, 3 to 60
     */
    public static Pressure nominalPressure(double designStressMpa, double sdr) {
        Require.positive("design stress", designStressMpa, "MPa");
        Require.within("SDR", sdr, 3, 60, "");
        return Pressure.ofBar(20 * designStressMpa / (sdr - 1));
    }

    /** PE100 by EN 12201-2 / ISO 4427-2: 20 to 160 mm, SDR 7.4 to 26 (PN 25 to 6). Walls from memory. */
    public static List<PipeType> pe100() {
        return of(PipeMaterial.PE100);
    }

    private static List<PipeType> readPe100() {
        List<PipeType> types = new ArrayList<>();
        for (double[] row : PE_WALL) {
            for (int i = 0; i < PE_SDR.length; i++) {
                if (row[i + 1] > 0) {
                    types.add(type(
                            "EN 12201-2", PipeMaterial.PE100, sdr(PE_SDR[i]), row[0], row[0], row[i + 1], PE_BAR[i]));
                }
            }
        }
        return List.copyOf(types);
    }

    /** Galvanised tube by EN 10255, medium and heavy, DN 15 to 150. Walls read to DN 50, from memory above. */
    public static List<PipeType> galvanisedSteel() {
        return of(PipeMaterial.GALVANISED_STEEL);
    }

    private static List<PipeType> readSteel() {
        List<PipeType> types = new ArrayList<>();
        for (double[] row : STEEL) {
            for (int i = 0; i < 2; i++) {
                types.add(type(
                        "EN 10255",
                        PipeMaterial.GALVANISED_STEEL,
                        i == 0 ? "medium" : "heavy",
                        row[0],
                        row[1],
                        row[2 + i],
                        THREADED_STEEL.bar()));
            }
        }
        return List.copyOf(types);
    }

    /** PVC-U by EN ISO 1452-2, 32 to 160 mm, PN 10 and 16. Walls from memory. */
    public static List<PipeType> pvcU() {
        return of(PipeMaterial.PVC_U);
    }

    private static List<PipeType> readPvcU() {
        List<PipeType> types = new ArrayList<>();
        for (double[] row : PVC_WALL) {
            types.add(type("EN ISO 1452-2", PipeMaterial.PVC_U, "PN 10", row[0], row[0], row[1], 10));
            types.add(type("EN ISO 1452-2", PipeMaterial.PVC_U, "PN 16", row[0], row[0], row[2], 16));
        }
        return List.copyOf(types);
    }

    /** One type by its nominal size and series, such as 63 and "SDR 11". */
    public static Optional<PipeType> find(List<PipeType> types, int nominal, String series) {
        return types.stream()
                .filter(type -> type.nominal() == nominal && type.series().equals(series))
                .findFirst();
    }

    /**
     * The weakest class of a size that still bears a pressure at a temperature.
     *
     * <p>Worked value: 9.2 bar at 20 degC in 63 mm PE100 takes SDR 17; at 35 degC SDR 13.6.
     *
     * @param types classes to choose from
     * @param nominal nominal size
     * @param highest greatest gauge pressure on it
     * @param temperature of the pipe wall
     * @return nothing if no class bears it
     */
    public static Optional<Noted<PipeType>> leastClass(
            List<PipeType> types, int nominal, Pressure highest, Temperature temperature) {
        return types.stream()
                .filter(type -> type.nominal() == nominal)
                .sorted(Comparator.comparing(PipeType::rating))
                .map(type -> new Noted<>(
                        type,
                        Derating.of(type.material()).allowed(type, temperature).notes()))
                .filter(type -> Derating.of(type.value().material())
                                .allowed(type.value(), temperature)
                                .value()
                                .compareTo(highest)
                        >= 0)
                .findFirst();
    }

    private static String sdr(double value) {
        return value == Math.rint(value) ? "SDR " + (int) value : "SDR " + value;
    }

    private static PipeType type(
            String standard,
            PipeMaterial material,
            String series,
            double nominal,
            double outsideMm,
            double wallMm,
            double bar) {
        return new PipeType(
                standard,
                material,
                series,
                (int) nominal,
                Length.ofMillimetres(outsideMm),
                Length.ofMillimetres(wallMm),
                Pressure.ofBar(bar));
    }
}

package rasterfit.gear;

import java.util.List;
import rasterfit.quantity.Rational;

/**
 * The one place where unknown facts become numbers. All are assumptions of ours, from common experience, unless a source
 * is named; every use of one is told as a finding.
 */
public final class Assumptions {
    /** 100 [50–300] MHz for a cable of up to 2 m. */
    public static final Estimate CABLE_BANDWIDTH_HZ = Estimate.assumed(50_000_000, 100_000_000, 300_000_000);

    /** Luma behind a notch: 3.0 [2.5–3.5] MHz. */
    public static final Estimate NOTCH_BANDWIDTH_HZ = Estimate.assumed(2_500_000, 3_000_000, 3_500_000);

    /** Chroma of a composite kind: 0.6 [0.5–1.3] MHz. */
    public static final Estimate CHROMA_BANDWIDTH_HZ = Estimate.assumed(500_000, 600_000, 1_300_000);

    /** 2 [1–5] ns peak to peak. */
    public static final Estimate DIGITISER_JITTER_NS = Estimate.assumed(1, 2, 5);

    /** 2 [0–10] ns peak to peak, where sync has to be found inside a video signal. */
    public static final Estimate SYNC_SEPARATOR_JITTER_NS = Estimate.assumed(0, 2, 10);

    /** A converter that does not state its delay is taken to have none beyond the lines that it must hold. */
    public static final Estimate PIPELINE_US = Estimate.assumed(0, 0, 0);

    /** 0.5 [0.05–2] s. */
    public static final Estimate CONVERTER_RESYNC_MS = Estimate.assumed(50, 500, 2000);

    /** 2 [1–5] s on a digital input. */
    public static final Estimate DIGITAL_DISPLAY_RESYNC_MS = Estimate.assumed(1000, 2000, 5000);

    /** 0.5 s on an analog input. */
    public static final Estimate ANALOG_DISPLAY_RESYNC_MS = Estimate.assumed(500, 500, 500);

    /** 0.3 s on a tube. */
    public static final Estimate TUBE_RESYNC_MS = Estimate.assumed(300, 300, 300);

    /** One line where a line repeater does not state when its first copy begins at the latest. */
    public static final Estimate LATEST_START_LINES = Estimate.assumed(1, 1, 1);

    /** 1 [0–2] field of delay where motion-adaptive deinterlacing does not state its own. */
    public static final Estimate MOTION_ADAPTIVE_FIELDS = Estimate.assumed(0, 1, 2);

    public static final Estimate NO_FIELDS = Estimate.assumed(0, 0, 0);

    /** One field where a half-height raster is taken as interlaced. */
    public static final Estimate HALF_HEIGHT_FIELDS = Estimate.assumed(1, 1, 1);

    /** Settings to tune on a converter that does not state them. */
    public static final Estimate SETTINGS_TO_TUNE = Estimate.assumed(1, 4, 12);

    /** Line rates nearer than this look the same to an input that does not state it. */
    public static final Rational LINE_RATE_RESOLUTION_PPM = Rational.of(2000);

    /** Half-height rasters are shown as they are where nothing else is stated. */
    public static final HalfHeight HALF_HEIGHT = HalfHeight.SHOWN;

    /** A line repeater that does not state what it makes of interlaced rasters takes none. */
    public static final Processing.InterlacedFields INTERLACED_REPEAT = Processing.InterlacedFields.REFUSED;

    /** Whole fields of memory of a free-running output that does not state them. */
    public static final int FIELD_STORES = 2;

    /** A panel that does not state how it resamples. */
    public static final Panel.Filter PANEL_FILTER = Panel.Filter.INTERPOLATING;

    private static final Estimate OVERSCAN_HD = Estimate.assumedTenths(0, 30, 50);
    private static final Estimate OVERSCAN_SD = Estimate.assumedTenths(0, 35, 50);
    private static final Estimate OVERSCAN_TUBE = Estimate.assumedTenths(20, 50, 80);
    private static final Estimate OVERSCAN_MONITOR = Estimate.assumed(0, 0, 0);

    private static final Estimate LAG_TUBE = Estimate.assumed(0, 0, 0);
    private static final Estimate LAG_MONITOR = Estimate.assumed(1, 3, 10);
    private static final Estimate LAG_LOW_DELAY = Estimate.assumed(3, 8, 25);
    private static final Estimate LAG_ORDINARY = Estimate.assumed(30, 60, 120);
    private static final Estimate LAG_PROJECTOR = Estimate.assumed(16, 30, 60);
    private static final Estimate LAG_SD_OR_INTERLACED = Estimate.assumed(16, 25, 60);

    private Assumptions() {}

    /**
     * Vision bandwidth of an RF channel: 4.2 MHz in system M, 5.0 MHz in B and G [up to 6.0 in D and K] (BT.470).
     *
     * @param lines525 whether the channel belongs to a 525-line standard
     */
    public static Estimate channelBandwidthHz(boolean lines525) {
        return lines525
                ? Estimate.assumed(4_200_000, 4_200_000, 4_200_000)
                : Estimate.assumed(5_000_000, 5_000_000, 6_000_000);
    }

    /** 1.5 [0.75–3] times the dot clock. */
    public static Estimate sourceBandwidthHz(Rational dotClockHz) {
        return new Estimate(
                dotClockHz.times(Rational.of(3, 4)), dotClockHz.times(Rational.of(3, 2)), dotClockHz.times(3), true);
    }

    /** A tube shows a picture over the whole of it; a grid has all controls. */
    public static List<AspectControl> aspectControls(boolean isTube) {
        return isTube ? List.of(AspectControl.FILL) : List.of(AspectControl.values());
    }

    /**
     * Percent of the active raster hidden at each edge: televisions and projectors 3 % in HD and 3.5 % in SD with the
     * menu as delivered, tubes 5 % (from memory of EBU R 95 and older action-safe areas), monitors none.
     *
     * @param standardDefinition up to 576 active lines
     */
    public static Estimate overscanPercent(DisplayClass displayClass, boolean standardDefinition) {
        return switch (displayClass) {
            case TUBE -> OVERSCAN_TUBE;
            case MONITOR -> OVERSCAN_MONITOR;
            case TELEVISION, PROJECTOR -> standardDefinition ? OVERSCAN_SD : OVERSCAN_HD;
        };
    }

    /**
     * Delay of a display at its top row in ms.
     *
     * @param lowDelay whether the picture preset is made for low delay; an unstated one is taken as ordinary
     */
    public static Estimate displayLagMs(DisplayClass displayClass, boolean lowDelay, boolean sdOrInterlaced) {
        Estimate own = switch (displayClass) {
            case TUBE -> LAG_TUBE;
            case MONITOR -> LAG_MONITOR;
            case PROJECTOR -> LAG_PROJECTOR;
            case TELEVISION -> lowDelay ? LAG_LOW_DELAY : LAG_ORDINARY;
        };
        return sdOrInterlaced && displayClass != DisplayClass.TUBE ? own.plus(LAG_SD_OR_INTERLACED) : own;
    }
}

package rasterfit.replay;

import java.util.EnumSet;
import java.util.Set;
import rasterfit.match.MatchResult.ModeSetting;
import rasterfit.match.Settings;

/** The ways in which a picture can come to a display, to count what a replay has seen. */
public enum Way {
    /** Without a converter. */
    DIRECT,
    /** The raster passes, its format changes. */
    FORMAT_ONLY,
    /** Digitised line by line, nothing else. */
    DIGITISED,
    REPEATED,
    LOCKED_SCALE,
    /** Scaled with a clock of its own and two or more field stores. */
    FREE_RUNNING,
    SINGLE_STORE,
    BOB,
    WEAVE,
    MOTION_ADAPTIVE;

    /** One way, and the deinterlacer where there is one. */
    public static Set<Way> of(ModeSetting setting) {
        Settings settings = setting.settings();
        Set<Way> ways = EnumSet.noneOf(Way.class);
        if (settings.processing() == null) {
            ways.add(DIRECT);
        } else if (settings.processing() == Settings.Kind.FORMAT_ONLY) {
            ways.add(settings.samplesPerLine() == null ? FORMAT_ONLY : DIGITISED);
        } else if (settings.processing() == Settings.Kind.LINE_REPEAT) {
            ways.add(REPEATED);
        } else {
            Integer stores = setting.measures().fieldStores();
            ways.add(stores == null ? LOCKED_SCALE : stores == 1 ? SINGLE_STORE : FREE_RUNNING);
        }
        if (settings.deinterlacer() != null) {
            ways.add(
                    switch (settings.deinterlacer()) {
                        case BOB -> BOB;
                        case WEAVE -> WEAVE;
                        case MOTION_ADAPTIVE -> MOTION_ADAPTIVE;
                    });
        }
        return ways;
    }
}

package rasterfit.match.tune;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import rasterfit.gear.Mode;
import rasterfit.gear.Window;
import rasterfit.match.Modes;
import rasterfit.quantity.Rational;
import rasterfit.timing.Scan;

/** What an input can tell apart: sync on analog inputs, the whole raster on digital ones. */
class ModeGroupsTest {
    private static final Rational PPM_2000 = Rational.of(2000);
    private static final Window ACTIVE = new Window(256, 224, 40, 20);

    /** 400 dots per line, so that the line rate is dotClock / 400. */
    private static Mode mode(String name, long dotClockHz, String linesPerField, Scan scan) {
        return Modes.as(Modes.of(String.valueOf(dotClockHz), "400", linesPerField, scan, ACTIVE), name, 1, false);
    }

    private static Mode progressive(String name, long dotClockHz) {
        return mode(name, dotClockHz, "262", Scan.PROGRESSIVE);
    }

    private static List<List<String>> analog(Mode... modes) {
        return names(ModeGroups.of(List.of(modes), false, PPM_2000));
    }

    private static List<List<String>> names(List<List<Mode>> groups) {
        List<List<String>> names = new ArrayList<>();
        groups.forEach(group -> names.add(group.stream().map(Mode::name).toList()));
        return names;
    }

    @Test
    void differentDotClocksOfOneLineRateLookAlike() {
        // 256 dots of 342 and 320 dots of 456 at one line rate of 15.6998 kHz: an analog input sees no dots.
        Mode narrow = Modes.of("59062500/11", "342", "262", Scan.PROGRESSIVE, new Window(256, 240, 64, 18));
        Mode wide = Modes.of("78750000/11", "456", "262", Scan.PROGRESSIVE, new Window(320, 240, 92, 18));

        assertThat(narrow.lineRate()).isEqualTo(wide.lineRate());
        assertThat(ModeGroups.of(List.of(narrow, wide), false, PPM_2000)).hasSize(1);
        assertThat(ModeGroups.of(List.of(narrow, wide), true, PPM_2000)).hasSize(2);
    }

    @Test
    void lineRatesTwoThousandMillionthsApartStillLookAlike() {
        assertThat(analog(progressive("a", 6_000_000), progressive("b", 6_012_000)))
                .containsExactly(List.of("a", "b"));
        assertThat(analog(progressive("a", 6_000_000), progressive("b", 6_012_001)))
                .containsExactly(List.of("a"), List.of("b"));
    }

    @Test
    void otherLineCountsAndOtherScansAreToldApart() {
        assertThat(analog(
                        progressive("262", 6_000_000),
                        mode("263", 6_000_000, "263", Scan.PROGRESSIVE),
                        mode("interlaced", 6_000_000, "525/2", Scan.INTERLACED)))
                .containsExactly(List.of("262"), List.of("263"), List.of("interlaced"));
    }

    @Test
    void likenessIsTransitive() {
        // 0, 1500 and 3000 millionths: the outer two are joined by the middle one, in whatever order they come.
        Mode a = progressive("a", 6_000_000);
        Mode b = progressive("b", 6_009_000);
        Mode c = progressive("c", 6_018_000);

        assertThat(analog(a, c)).hasSize(2);
        assertThat(analog(a, b, c)).containsExactly(List.of("a", "b", "c"));
        assertThat(analog(a, c, b)).containsExactly(List.of("a", "c", "b"));
    }

    @Test
    void aDigitalInputJoinsEqualRastersOnly() {
        Mode one = progressive("one", 6_000_000);
        Mode same = progressive("same", 6_000_000);
        Mode other = progressive("other", 6_000_001);

        assertThat(names(ModeGroups.of(List.of(one, other, same), true, PPM_2000)))
                .containsExactly(List.of("one", "same"), List.of("other"));
    }
}

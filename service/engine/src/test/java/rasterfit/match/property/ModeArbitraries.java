package rasterfit.match.property;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Tuple;
import rasterfit.gear.LineStandard;
import rasterfit.gear.Mode;
import rasterfit.gear.PictureShape;
import rasterfit.gear.Window;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Scan;

/** Random video modes on real clocks: multiples of the colour subcarrier and the square-pixel rate (DOMAIN.md §2, §3). */
final class ModeArbitraries {
    /** A raster with the most lines that it can show; about a fifth of every line is blanking. */
    private record Clock(LineStandard standard, String hz, String dots, String lines, int mostLines) {
        Scan scan() {
            return Rational.parse(lines).isWhole() ? Scan.PROGRESSIVE : Scan.INTERLACED;
        }
    }

    /** 3/2 of the 525-line subcarrier. */
    private static final Clock THREE_HALVES = new Clock(LineStandard.L525_60, "59062500/11", "341", "262", 240);

    private static final Clock WIDE = new Clock(LineStandard.L525_60, "78750000/11", "455", "262", 240);
    private static final Clock HALF_DOT = new Clock(LineStandard.L525_60, "73828125/11", "855/2", "262", 240);
    private static final Clock INTERLACED = new Clock(LineStandard.L525_60, "135000000/11", "780", "525/2", 240);
    private static final Clock FIFTY = new Clock(LineStandard.L625_50, "10640685/2", "341", "312", 288);

    private ModeArbitraries() {}

    /** One or two modes that an analog input cannot tell apart. */
    static Arbitrary<List<Mode>> lookAlike() {
        Arbitrary<List<Mode>> one = Arbitraries.of(THREE_HALVES, HALF_DOT, WIDE, INTERLACED, INTERLACED, FIFTY)
                .flatMap(ModeArbitraries::mode)
                .map(List::of);
        Arbitrary<List<Mode>> two =
                Combinators.combine(mode(THREE_HALVES), mode(WIDE)).as((a, b) -> named(List.of(a, b)));
        return Arbitraries.frequencyOf(Tuple.of(3, one), Tuple.of(1, two));
    }

    /** Two modes that every input tells apart, one of them entered during play or neither. */
    static Arbitrary<List<Mode>> apart() {
        return Combinators.combine(
                        mode(THREE_HALVES), Arbitraries.of(INTERLACED, FIFTY).flatMap(ModeArbitraries::mode))
                .as((a, b) -> named(List.of(a, b)));
    }

    private static List<Mode> named(List<Mode> modes) {
        List<Mode> named = new ArrayList<>();
        for (Mode mode : modes) {
            named.add(Altered.with(mode, "name", "mode " + (named.size() + 1)));
        }
        return named;
    }

    private static Arbitrary<Mode> mode(Clock clock) {
        int lineDots = (int) Rational.parse(clock.dots()).floor();
        return Combinators.combine(
                        Arbitraries.integers().between(lineDots * 3 / 5, lineDots * 3 / 4),
                        Arbitraries.integers().between(clock.mostLines() - 48, clock.mostLines()),
                        Arbitraries.integers().between(lineDots / 8, lineDots / 5),
                        Arbitraries.integers().between(12, 20),
                        Arbitraries.integers().between(0, 12),
                        Arbitraries.integers().between(0, 12),
                        Arbitraries.integers().between(1, 9),
                        Arbitraries.of(true, true, false))
                .as((dots, lines, firstDot, firstLine, left, above, share, duringPlay) -> {
                    Window active = new Window(dots, lines, firstDot, firstLine);
                    // What is really drawn lies off the centre, as it does with many consoles.
                    Window used = new Window(dots - 2 * left, lines - above - left, firstDot + left, firstLine + above);
                    return new Mode(
                            "mode",
                            clock.standard(),
                            Frequency.parseHz(clock.hz()),
                            Rational.parse(clock.dots()),
                            Rational.parse(clock.lines()),
                            clock.scan(),
                            Rational.of(share),
                            duringPlay,
                            active,
                            used,
                            false,
                            PictureShape.TUBE_4_3);
                });
    }
}

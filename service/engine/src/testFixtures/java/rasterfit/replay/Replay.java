package rasterfit.replay;

import static rasterfit.Fractions.fraction;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.apache.commons.numbers.fraction.BigFraction;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Converter;
import rasterfit.gear.Display;
import rasterfit.gear.Mode;
import rasterfit.gear.Variant;
import rasterfit.match.Latency;
import rasterfit.match.LatencyFigure;
import rasterfit.match.MatchResult.ModeSetting;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.Measures;
import rasterfit.quantity.Rational;

/**
 * Takes a setup of an answer with the gear that it names, sends a picture of numbered dots and lines through it, and
 * compares what arrives with what is claimed. All comparisons are exact but for one, whose tolerance stands beside it.
 */
public final class Replay {
    private static final BigFraction HUNDRED = BigFraction.of(100);

    private final Variant variant;
    private final Display display;
    private final Collection<Converter> converters;
    private final Simulated simulated = new Simulated();

    /** @param converters among them those that the answers name */
    public Replay(Variant variant, Display display, Collection<Converter> converters) {
        this.variant = variant;
        this.display = display;
        this.converters = List.copyOf(converters);
    }

    /** Every claim of every mode that was not confirmed; none if the answer is right. */
    public List<Objection> objections(RankedSetup setup) {
        Chain chain = Chain.of(setup, variant, display, converters);
        List<Objection> all = new ArrayList<>();
        for (ModeSetting setting : setup.modeSettings()) {
            Group group = Group.of(chain, variant.modes(), setting);
            for (Mode mode : group.modes()) {
                Measures claims = setting.measuresByMode().getOrDefault(mode.name(), setting.measures());
                all.addAll(new Trial(group, mode, claims, simulated).objections());
            }
        }
        return all;
    }

    /** One mode against its claims. */
    private static final class Trial {
        private final Group group;
        private final Mode mode;
        private final Measures claims;
        private final Simulated simulated;
        private final List<Objection> objections = new ArrayList<>();

        Trial(Group group, Mode mode, Measures claims, Simulated simulated) {
            this.group = group;
            this.mode = mode;
            this.claims = claims;
            this.simulated = simulated;
        }

        List<Objection> objections() {
            Picture picture = Picture.of(group, mode, simulated);
            scales(picture);
            crop(picture);
            widths(picture);
            Delay delay = Delay.of(group, mode, simulated);
            latency(delay);
            memory(delay);
            Rates.objections(group, mode, claims, simulated, objections);
            return objections;
        }

        private void scales(Picture picture) {
            BigFraction intended = DotShape.intended(mode, claims.pixelAspectConvention());
            BigFraction columns = picture.columns().scale();
            BigFraction rows = picture.rows().scale();
            BigFraction error = columns.divide(rows)
                    .divide(intended)
                    .subtract(BigFraction.ONE)
                    .multiply(HUNDRED);
            boolean hasGrid = picture.screen().hasGrid();
            Measures.Shape shape = claims.shape();
            exact("pixelAspectRatio", claims.pixelAspectRatio(), intended);
            exact("shape.verticalScale", shape.verticalScale(), hasGrid ? rows : null);
            exact("shape.horizontalScale", shape.horizontalScale(), hasGrid ? columns : null);
            exact("shape.aspectErrorPercent", shape.aspectErrorPercent(), error);
            BigFraction width =
                    picture.columns().drawn().divide(picture.screen().columns().panelColumns());
            BigFraction height =
                    picture.rows().drawn().divide(picture.screen().rows().panelColumns());
            exact("shape.coveragePercent", shape.coveragePercent(), width.multiply(height).multiply(HUNDRED));
            exact("shape.coverageHeightPercent", shape.coverageHeightPercent(), height.multiply(HUNDRED));
        }

        private void crop(Picture picture) {
            int fields = mode.scan().fieldsPerFrame();
            int usedDot = mode.used().firstDot() - mode.active().firstDot();
            int usedLine = (mode.used().firstLine() - mode.active().firstLine()) * fields;
            int usedLines = mode.used().lines() * fields;
            Axis rows = picture.rows();
            Axis columns = picture.columns();
            Measures.Shape shape = claims.shape();
            BigFraction lostLines = rows.hidden(usedLine, usedLines);
            exact("shape.croppedLines", shape.croppedLines(), rows.hidden(0, rows.count()));
            exact("shape.croppedDots", shape.croppedDots(), columns.hidden(0, columns.count()));
            exact("shape.croppedUsedLines", shape.croppedUsedLines(), lostLines);
            exact(
                    "shape.croppedUsedDots",
                    shape.croppedUsedDots(),
                    columns.hidden(usedDot, mode.used().dots()));
            exact(
                    "shape.croppedUsedLinesPercent",
                    shape.croppedUsedLinesPercent(),
                    lostLines.multiply(HUNDRED).divide(usedLines));
        }

        private void widths(Picture picture) {
            Measures.Shape shape = claims.shape();
            same("shape.leastDotWidth", shape.leastDotWidth(), picture.columns().least());
            same("shape.greatestDotWidth", shape.greatestDotWidth(), picture.columns().greatest());
            same("shape.leastLineHeight", shape.leastLineHeight(), picture.rows().least());
            same("shape.greatestLineHeight", shape.greatestLineHeight(), picture.rows().greatest());
            lit("lit columns", picture.columns(), picture.panelColumnsPerCell());
            lit("lit rows", picture.rows(), picture.panelRowsPerCell());
        }

        /**
         * Lengths come from edges, so the edges themselves are held against the pixels that show a dot. Either end of the
         * picture is rounded at every stage to half a cell: of a sample (no wider than a dot, or more than a dot where r <
         * 1), of a raster column, of the panel.
         */
        private void lit(String name, Axis axis, BigFraction panelPerRasterCell) {
            if (!axis.isCounted()) {
                return;
            }
            Measures.Sampling sampling = claims.sampling();
            BigFraction sample = sampling == null
                    ? axis.scale()
                    : axis.scale().divide(fraction(sampling.samplesPerDot())).add(axis.scale());
            BigFraction allowed = sample.add(panelPerRasterCell).add(BigFraction.ONE);
            BigFraction apart = BigFraction.of(axis.lit()).subtract(axis.drawn()).abs();
            if (apart.subtract(allowed).signum() > 0) {
                objections.add(new Objection(name, axis.drawn(), axis.lit()));
            }
        }

        private void latency(Delay delay) {
            Latency added = claims.addedLatencyMs();
            for (LatencyFigure figure : LatencyFigure.values()) {
                BigFraction measured = Objects.requireNonNull(delay.ms().get(figure));
                String name = figure.name().toLowerCase(Locale.ROOT);
                exact("addedLatencyMs." + name, added.figure(figure), measured);
                BigFraction lag = fraction(claims.displayLagMs().figure(figure));
                exact("totalLatencyMs." + name, claims.totalLatencyMs().figure(figure), measured.add(lag));
            }
            BigFraction greatest = Objects.requireNonNull(delay.ms().get(LatencyFigure.GREATEST));
            exact("addedLatencyFields", claims.addedLatencyFields(), greatest.divide(Delay.fieldMs(mode)));
        }

        private void memory(Delay delay) {
            same("bufferedLines", claims.bufferedLines(), delay.heldLines());
            same("fieldStores", claims.fieldStores(), delay.fieldStores());
            Integer claimed = claims.bufferedLines();
            if (claimed != null && claimed < delay.heldAtOnce()) {
                objections.add(new Objection("lines held at once", claimed, delay.heldAtOnce()));
            }
        }

        private void exact(String measure, @Nullable Rational claimed, @Nullable BigFraction measured) {
            same(measure, claimed == null ? null : fraction(claimed), measured);
        }

        private void same(String measure, @Nullable Object claimed, @Nullable Object measured) {
            if (!Objects.equals(claimed, measured)) {
                objections.add(new Objection(measure, claimed, measured));
            }
        }
    }
}

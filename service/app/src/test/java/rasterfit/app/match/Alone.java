package rasterfit.app.match;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import rasterfit.gear.Converter;
import rasterfit.gear.Deinterlacer;
import rasterfit.gear.Processing;
import rasterfit.gear.RateLock;

/**
 * Converters that can do one thing only, made of those that can do several, so that a ranking cannot leave out what is
 * never the best.
 */
final class Alone {
    private Alone() {}

    /** One converter for each way of processing, rate lock and deinterlacer of each. */
    static List<Converter> all(Collection<Converter> converters) {
        List<Converter> alone = new ArrayList<>();
        for (Converter converter : converters) {
            for (Processing processing : converter.processing()) {
                for (Processing one : alone(processing)) {
                    alone.add(with(converter, one, alone.size()));
                }
            }
        }
        return alone;
    }

    private static List<Processing> alone(Processing processing) {
        if (!(processing instanceof Processing.RasterScale scale)) {
            return List.of(processing);
        }
        List<Processing> alone = new ArrayList<>();
        for (RateLock lock : scale.rateLocks()) {
            if (scale.deinterlacers().isEmpty()) {
                alone.add(with(scale, List.of(), lock));
            }
            for (Deinterlacer deinterlacer : scale.deinterlacers()) {
                alone.add(with(scale, List.of(deinterlacer), lock));
            }
        }
        return alone;
    }

    private static Processing with(Processing.RasterScale scale, List<Deinterlacer> deinterlacers, RateLock lock) {
        return new Processing.RasterScale(
                scale.id(),
                scale.timings(),
                scale.vertical(),
                scale.horizontal(),
                deinterlacers,
                List.of(lock),
                scale.pipelineUs());
    }

    private static Converter with(Converter converter, Processing processing, int number) {
        return new Converter(
                converter.id() + "-" + number,
                converter.name(),
                converter.price(),
                converter.inputs(),
                List.of(processing),
                converter.outputs(),
                converter.resyncMs(),
                converter.settingsToTune());
    }
}

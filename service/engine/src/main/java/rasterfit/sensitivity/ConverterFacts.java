package rasterfit.sensitivity;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import rasterfit.gear.Assumptions;
import rasterfit.gear.Converter;
import rasterfit.gear.ConverterInput;
import rasterfit.gear.Deinterlacer;
import rasterfit.gear.Digitiser;
import rasterfit.gear.Estimate;
import rasterfit.gear.Fact;
import rasterfit.gear.HalfHeight;
import rasterfit.gear.Processing;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.MatchResult.RouteStep;

/** The uncertain facts of a converter in the way in which a setup uses it. */
final class ConverterFacts {
    private final Converter converter;
    private final RouteStep step;
    private final RankedSetup setup;
    private final boolean analog;

    /** @param analog whether what it gets is */
    ConverterFacts(Converter converter, RouteStep step, RankedSetup setup, boolean analog) {
        this.converter = converter;
        this.step = step;
        this.setup = setup;
        this.analog = analog;
    }

    void sites(Consumer<FactSite> found) {
        for (ConverterInput input : converter.inputs()) {
            if (step.port() != null && step.port().startsWith(input.id() + " ")) {
                input(input, found);
            }
        }
        for (Processing processing : converter.processing()) {
            boolean isUsed = setup.modeSettings().stream()
                    .anyMatch(
                            setting -> processing.id().equals(setting.settings().processingId()));
            if (isUsed) {
                processing(processing, found);
            }
        }
        if (FactSites.switches(setup)) {
            found.accept(site(
                    "resyncMs",
                    converter.resyncMs().orAssume(Assumptions.CONVERTER_RESYNC_MS),
                    fact -> each -> each.withResyncMs(fact)));
        }
        found.accept(site(
                "settingsToTune",
                converter.settingsToTune().orAssume(Assumptions.SETTINGS_TO_TUNE),
                fact -> each -> each.withSettingsToTune(fact)));
    }

    /** How a converter becomes one with the fact known. */
    private interface Setting {
        UnaryOperator<Converter> to(Fact fact);
    }

    private FactSite site(String of, Estimate range, Setting setting) {
        FactPath path = new FactPath(FactPath.Kind.CONVERTER, converter.id(), converter.name(), of);
        return new FactSite(
                path, range, (at, end) -> at.withConverter(converter.id(), setting.to(FactSites.known(range, end))));
    }

    private void input(ConverterInput input, Consumer<FactSite> found) {
        Digitiser digitiser = input.digitiser();
        String at = "inputs/" + input.id() + "/";
        if (digitiser != null && analog) {
            found.accept(site(
                    at + "digitiser/clockJitterNs",
                    digitiser.clockJitterNs().orAssume(Assumptions.DIGITISER_JITTER_NS),
                    fact -> withInput(input.withDigitiser(digitiser.withClockJitterNs(fact)))));
        }
        if (input.halfHeight() == HalfHeight.AS_INTERLACED) {
            found.accept(site(
                    at + "halfHeightAddedFields",
                    input.halfHeightAddedFields().orAssume(Assumptions.HALF_HEIGHT_FIELDS),
                    fact -> withInput(input.withHalfHeightAddedFields(fact))));
        }
    }

    private static UnaryOperator<Converter> withInput(ConverterInput changed) {
        return each -> each.withInputs(each.inputs().stream()
                .map(input -> input.id().equals(changed.id()) ? changed : input)
                .toList());
    }

    private void processing(Processing processing, Consumer<FactSite> found) {
        String at = "processing/" + processing.id() + "/";
        found.accept(site(
                at + "pipelineUs",
                processing.pipelineUs().orAssume(Assumptions.PIPELINE_US),
                fact -> withProcessing(processing.withPipelineUs(fact))));
        if (processing instanceof Processing.LineRepeat repeat) {
            found.accept(site(
                    at + "latestStartLines",
                    repeat.latestStartLines().orAssume(Assumptions.LATEST_START_LINES),
                    fact -> withProcessing(repeat.withLatestStartLines(fact))));
        }
        if (processing instanceof Processing.RasterScale scale) {
            scale.deinterlacers().stream()
                    .filter(this::isUsed)
                    .forEach(used -> found.accept(site(
                            at + "deinterlacers/" + used.kind() + "/addedFields",
                            used.addedFields().orAssume(assumption(used)),
                            fact -> withProcessing(with(scale, used.withAddedFields(fact))))));
        }
    }

    private boolean isUsed(Deinterlacer deinterlacer) {
        return setup.modeSettings().stream()
                .anyMatch(setting -> Optional.ofNullable(setting.settings().deinterlacer())
                        .filter(kind -> kind == deinterlacer.kind())
                        .isPresent());
    }

    private static Estimate assumption(Deinterlacer deinterlacer) {
        return deinterlacer.kind() == Deinterlacer.Kind.MOTION_ADAPTIVE
                ? Assumptions.MOTION_ADAPTIVE_FIELDS
                : Assumptions.NO_FIELDS;
    }

    private static Processing with(Processing.RasterScale scale, Deinterlacer changed) {
        List<Deinterlacer> all = scale.deinterlacers().stream()
                .map(each -> each.kind() == changed.kind() ? changed : each)
                .toList();
        return scale.withDeinterlacers(all);
    }

    private static UnaryOperator<Converter> withProcessing(Processing changed) {
        return each -> each.withProcessing(each.processing().stream()
                .map(processing -> processing.id().equals(changed.id()) ? changed : processing)
                .toList());
    }
}

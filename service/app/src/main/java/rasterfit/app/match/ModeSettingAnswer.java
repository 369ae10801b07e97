package rasterfit.app.match;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import rasterfit.app.answer.Plain;
import rasterfit.match.MatchResult.ModeSetting;
import rasterfit.match.Step;
import rasterfit.timing.Raster;
import rasterfit.timing.Scan;

/**
 * One setting, shared by all modes that the equipment cannot tell apart.
 *
 * @param measures of the mode with the greatest share
 * @param measuresByMode of every mode; absent where there is one
 * @param steps every computed step; empty unless all are asked for
 */
record ModeSettingAnswer(
        List<String> modes,
        SettingsAnswer settings,
        OutputTimingAnswer outputTiming,
        MeasuresAnswer measures,
        @Nullable List<ModeMeasuresAnswer> measuresByMode,
        List<StepAnswer> steps) {

    /**
     * The raster that reaches the display. Vertical counts are those of a frame.
     *
     * @param horizontalTotal may be a fraction on a direct route
     */
    record OutputTimingAnswer(
            String pixelClockHz,
            int horizontalActive,
            BigDecimal horizontalTotal,
            int verticalActive,
            BigDecimal verticalTotal,
            Scan scan,
            String lineRateHz,
            String fieldRateHz) {
        static OutputTimingAnswer of(Raster raster) {
            return new OutputTimingAnswer(
                    Plain.exact(raster.pixelClock()),
                    raster.horizontalActive(),
                    Plain.of(raster.horizontalTotal()),
                    raster.verticalActive(),
                    Plain.of(raster.verticalTotal()),
                    raster.scan(),
                    Plain.exact(raster.lineRate()),
                    Plain.exact(raster.fieldRate()));
        }
    }

    record ModeMeasuresAnswer(String mode, MeasuresAnswer measures) {}

    /**
     * One computed step.
     *
     * @param mode the mode for which it was computed
     * @param inputs by name, in the order of the formula, with their units
     * @param formula in plain notation
     * @param source document and clause, {@code common practice}, or {@code assumption}
     * @param result with its unit
     */
    record StepAnswer(
            String name, String mode, Map<String, String> inputs, String formula, String source, String result) {
        static StepAnswer of(Step step) {
            return new StepAnswer(
                    step.name(), step.mode(), step.inputs(), step.formula(), step.source(), step.result());
        }
    }

    static ModeSettingAnswer of(ModeSetting setting) {
        List<ModeMeasuresAnswer> byMode = setting.measuresByMode().entrySet().stream()
                .map(entry -> new ModeMeasuresAnswer(entry.getKey(), MeasuresAnswer.of(entry.getValue())))
                .toList();
        return new ModeSettingAnswer(
                setting.modes(),
                SettingsAnswer.of(setting.settings()),
                OutputTimingAnswer.of(setting.outputTiming()),
                MeasuresAnswer.of(setting.measures()),
                byMode.size() < 2 ? null : byMode,
                setting.steps().stream().map(StepAnswer::of).toList());
    }
}

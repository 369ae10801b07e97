package rasterfit.app.draft;

import java.util.List;
import java.util.Optional;

/** All templates, simple devices first. */
final class Templates {
    static final List<Template> ALL = List.of(
            new DigitalAdapterTemplate(),
            new LineRepeaterTemplate(),
            new RasterScalerTemplate(),
            new TranscoderTemplate(),
            new SwitchTemplate(),
            new TubeSetTemplate(),
            new TelevisionTemplate(),
            new MonitorTemplate());

    private Templates() {}

    static Optional<Template> find(String id) {
        return ALL.stream().filter(template -> template.id().equals(id)).findFirst();
    }
}

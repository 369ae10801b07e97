package rasterfit.app.gear;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import rasterfit.app.problem.ProblemError;
import rasterfit.gear.Converter;
import rasterfit.gear.Display;
import rasterfit.gear.Link;
import rasterfit.gear.Source;
import tools.jackson.databind.json.JsonMapper;

/** Gear read from its written form, for tests. */
final class Bodies {
    private static final JsonMapper JSON = JsonMapper.shared();

    private Bodies() {}

    static Source source(String json) {
        Faults faults = new Faults();
        return sound(faults, GearReader.source(Place.root(faults), JSON.readValue(json, SourceBody.class), "source"));
    }

    static Display display(String json) {
        Faults faults = new Faults();
        return sound(
                faults, GearReader.display(Place.root(faults), JSON.readValue(json, DisplayBody.class), "display"));
    }

    static Converter converter(String json) {
        Faults faults = new Faults();
        return sound(
                faults,
                GearReader.converter(Place.root(faults), JSON.readValue(json, ConverterBody.class), "converter"));
    }

    static Link link(String json) {
        Faults faults = new Faults();
        return sound(faults, GearReader.link(Place.root(faults), JSON.readValue(json, LinkBody.class), "link"));
    }

    /** The places of all faults of a display, in the order in which they were found. */
    static List<String> faultsOfDisplay(String json) {
        Faults faults = new Faults();
        GearReader.display(Place.root(faults), JSON.readValue(json, DisplayBody.class), "display");
        return faults.errors().stream().map(ProblemError::pointer).toList();
    }

    private static <T> T sound(Faults faults, @Nullable T gear) {
        assertThat(faults.errors()).isEmpty();
        return Objects.requireNonNull(gear);
    }
}

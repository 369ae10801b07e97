package rasterfit.app.transfer;

import rasterfit.app.catalogue.Kind;
import rasterfit.app.csv.Table;
import rasterfit.app.gear.ConverterBody;
import rasterfit.app.gear.DisplayBody;
import rasterfit.app.gear.LinkBody;
import rasterfit.app.gear.SourceBody;
import tools.jackson.databind.ObjectMapper;

/** The table of each kind of gear. */
final class Tables {
    private Tables() {}

    static Table of(Kind kind, ObjectMapper mapper) {
        return new Table(
                switch (kind) {
                    case SOURCE -> SourceBody.class;
                    case DISPLAY -> DisplayBody.class;
                    case CONVERTER -> ConverterBody.class;
                    case LINK -> LinkBody.class;
                },
                mapper);
    }
}

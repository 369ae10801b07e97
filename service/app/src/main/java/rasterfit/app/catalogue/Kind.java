package rasterfit.app.catalogue;

import java.util.Arrays;
import java.util.Optional;

/** The four kinds of gear in the catalogue. */
public enum Kind {
    SOURCE("sources", "source"),
    DISPLAY("displays", "display"),
    CONVERTER("converters", "converter"),
    LINK("links", "link");

    private final String path;
    private final String noun;

    Kind(String path, String noun) {
        this.path = path;
        this.noun = noun;
    }

    /** As it stands in addresses and in the document: {@code sources}. */
    public String path() {
        return path;
    }

    /** In sentences. */
    public String noun() {
        return noun;
    }

    /** Empty if none is written so. */
    public static Optional<Kind> ofPath(String path) {
        return Arrays.stream(values()).filter(kind -> kind.path.equals(path)).findFirst();
    }
}

package rasterfit.app.draft;

import java.util.List;
import rasterfit.app.catalogue.Kind;

/**
 * A class of device: a few questions, and the document that the answers make. A new one is a class of its own, listed in {@link
 * Templates}.
 */
interface Template {
    String id();

    /** What kind of gear it makes. */
    Kind kind();

    /** For a person who looks for the class of a device. */
    String summary();

    /** The questions that are this template's own, after those on name and price. */
    List<Ask> asks();

    /** Writes everything but the name and the price. */
    void fill(Answers answers, Part item);
}

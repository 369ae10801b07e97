package rasterfit.scenario;

/** One word of the notation and where it stands. */
record Word(String text, Place place) {
    boolean is(String other) {
        return text.equals(other);
    }

    IllegalArgumentException fault(String message) {
        return place.fault("\"" + text + "\": " + message);
    }
}

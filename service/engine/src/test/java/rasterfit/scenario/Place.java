package rasterfit.scenario;

/** A line of a scenario file, from 1. */
record Place(String file, int line) {
    IllegalArgumentException fault(String message) {
        return new IllegalArgumentException(this + ": " + message);
    }

    @Override
    public String toString() {
        return file + ":" + line;
    }
}

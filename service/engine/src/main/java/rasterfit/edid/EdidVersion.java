package rasterfit.edid;

/** The version of the EDID structure, 1.0 to 1.4, as written. */
public record EdidVersion(int version, int revision) {
    /** Whether the rules of EDID 1.{@code revision} hold; an unknown later revision keeps the rules of the last. */
    boolean isAtLeast(int revision) {
        return this.revision >= revision;
    }

    /** {@code 1.3} */
    @Override
    public String toString() {
        return version + "." + revision;
    }
}

package rasterfit.app.problem;

/**
 * A limit of its own for the bodies sent to one path; a bean of the capability that needs it.
 *
 * @param path exactly as it is sent; other spellings of it keep the ordinary limit
 */
public record BodyLimit(String path, int greatestBytes) {}

package rasterfit.gear;

/** The picture aspect for which the artwork was made. */
public enum PictureShape {
    TUBE_4_3,
    TUBE_16_9,
    SQUARE_DOTS
}

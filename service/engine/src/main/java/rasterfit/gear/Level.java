package rasterfit.gear;

/** The electrical level of sync: video level into 75 ohm, or logic level, which can harm a 75 ohm input. */
public enum Level {
    VIDEO_75_OHM,
    LOGIC_3V3,
    LOGIC_5V;

    public boolean isLogic() {
        return this != VIDEO_75_OHM;
    }
}

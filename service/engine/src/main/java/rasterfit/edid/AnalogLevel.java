package rasterfit.edid;

/** Video and sync levels in millivolts peak to peak (E-EDID table 3.11, byte 14h bits 6–5). */
public enum AnalogLevel {
    VIDEO_700_SYNC_300(700, 300),
    VIDEO_714_SYNC_286(714, 286),
    VIDEO_1000_SYNC_400(1000, 400),
    VIDEO_700_SYNC_0(700, 0);

    private final int videoMillivolts;
    private final int syncMillivolts;

    AnalogLevel(int videoMillivolts, int syncMillivolts) {
        this.videoMillivolts = videoMillivolts;
        this.syncMillivolts = syncMillivolts;
    }

    public int videoMillivolts() {
        return videoMillivolts;
    }

    public int syncMillivolts() {
        return syncMillivolts;
    }
}

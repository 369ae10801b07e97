package rasterfit.app.collection;

/** A record as it is stored. */
record RecordText(Section section, String id, long revision, String document) {}

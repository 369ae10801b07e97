package rasterfit.app.draft;

import rasterfit.gear.Assumptions;

/** What is the same for adapters and switches. */
final class LinkParts {
    private LinkParts() {}

    static void plug(Part item, String side, Answer connector) {
        item.object(side).answer("connector", connector);
    }

    static void leaveRest(Part item) {
        item.leave("delayUs", Assumptions.PIPELINE_US, "The delay of its electronics is not known.");
        item.leave(
                "bandwidthHz",
                DraftValue.exact(Assumptions.CABLE_BANDWIDTH_HZ),
                "Its bandwidth is not known; it is taken for that of a lead.");
    }
}

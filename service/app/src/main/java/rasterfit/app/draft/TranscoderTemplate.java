package rasterfit.app.draft;

import java.util.List;
import rasterfit.app.catalogue.Kind;
import rasterfit.gear.Format;
import rasterfit.gear.SyncKind;

/** An adapter between two analog formats. */
final class TranscoderTemplate implements Template {
    private static final Ask FROM_CONNECTOR =
            Ask.connector("fromConnector", "Which connector has its input?").asRequired();
    private static final Ask FROM =
            CommonAsks.format("fromFormat", "Which signal goes in?").asRequired();
    private static final Ask TO_CONNECTOR =
            Ask.connector("toConnector", "Which connector has its output?").asRequired();
    private static final Ask TO =
            CommonAsks.format("toFormat", "Which signal comes out?").asRequired();

    @Override
    public String id() {
        return "transcoder";
    }

    @Override
    public Kind kind() {
        return Kind.LINK;
    }

    @Override
    public String summary() {
        return "An adapter that makes another analog signal of one and leaves the raster as it is.";
    }

    @Override
    public List<Ask> asks() {
        return List.of(FROM_CONNECTOR, FROM, TO_CONNECTOR, TO);
    }

    @Override
    public void fill(Answers answers, Part item) {
        item.set("kind", "ADAPTER");
        LinkParts.plug(item, "from", answers.of(FROM_CONNECTOR));
        LinkParts.plug(item, "to", answers.of(TO_CONNECTOR));
        item.set("carries", List.of());
        Part conversion = item.element("converts");
        conversion.object("from").answer("format", answers.of(FROM));
        Part made = conversion.object("to");
        made.answer("format", answers.of(TO));
        Format format = Format.valueOf(answers.of(TO).text());
        if (format == Format.RGB || format == Format.YPBPR) {
            made.assume(
                    "sync",
                    format == Format.RGB ? SyncKind.COMPOSITE_SYNC : SyncKind.SYNC_ON_LUMA,
                    "Where this signal usually carries its sync; common practice.");
        }
        LinkParts.leaveRest(item);
    }
}

package rasterfit.app.display;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RestController;
import rasterfit.app.access.Requires;
import rasterfit.app.access.Scope;
import rasterfit.app.problem.Problems;
import rasterfit.edid.EdidReader;

/** Decodes EDIDs. Whatever fills whole blocks is answered with what could be read and what is wrong with it. */
@RestController
@Tag(name = "displays")
class DecodeController {
    private static final int MOST_BYTES = EdidReader.BLOCK_BYTES * EdidReader.MOST_BLOCKS;

    @Requires(Scope.READ)
    @PostMapping(
            path = "/v1/displays/decode",
            consumes = {MediaType.APPLICATION_OCTET_STREAM_VALUE, MediaType.TEXT_PLAIN_VALUE},
            produces = MediaType.APPLICATION_JSON_VALUE)
    @Operation(
            operationId = "decodeDisplay",
            summary = "Decode an EDID: accepted timings, limits, panel, and findings about defects")
    @io.swagger.v3.oas.annotations.parameters.RequestBody(
            required = true,
            content = {
                @Content(
                        mediaType = MediaType.APPLICATION_OCTET_STREAM_VALUE,
                        schema = @Schema(type = "string", format = "binary")),
                @Content(
                        mediaType = MediaType.TEXT_PLAIN_VALUE,
                        schema =
                                @Schema(
                                        type = "string",
                                        description =
                                                "Pairs of hexadecimal digits; white space may stand between them"))
            })
    DecodedDisplay decode(
            @Parameter(hidden = true) @RequestHeader(HttpHeaders.CONTENT_TYPE) MediaType type,
            @RequestBody(required = false) byte @Nullable [] body) {
        byte[] sent = body == null ? new byte[0] : body;
        byte[] edid = type.isCompatibleWith(MediaType.TEXT_PLAIN)
                ? HexText.read("", new String(sent, StandardCharsets.ISO_8859_1))
                : sent;
        if (!EdidReader.isWholeNumberOfBlocks(edid.length)) {
            throw Problems.outOfRange(
                    "",
                    "The EDID has " + edid.length + " bytes; it has to be a multiple of " + EdidReader.BLOCK_BYTES
                            + ", up to " + MOST_BYTES + ".",
                    EdidReader.BLOCK_BYTES + ".." + MOST_BYTES);
        }
        return DecodedDisplay.of(EdidReader.read(edid));
    }
}

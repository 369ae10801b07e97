package rasterfit.app.display;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RestController;
import rasterfit.app.problem.Problems;
import rasterfit.edid.EdidReader;

/** Decodes EDIDs. Whatever fills whole blocks is answered with what could be read and what is wrong with it. */
@RestController
@Tag(name = "displays")
class DecodeController {
    @PostMapping(path = "/v1/displays/decode", consumes = "application/octet-stream", produces = "application/json")
    @Operation(
            operationId = "decodeDisplay",
            summary = "Decode an EDID: accepted timings, limits, panel, and findings about defects",
            requestBody =
                    @io.swagger.v3.oas.annotations.parameters.RequestBody(
                            required = true,
                            content = {
                                @Content(
                                        mediaType = "application/octet-stream",
                                        schema = @Schema(type = "string", format = "binary")),
                                @Content(
                                        mediaType = "text/plain",
                                        schema =
                                                @Schema(
                                                        type = "string",
                                                        description = "Hexadecimal digits; white space is passed over"))
                            }))
    DecodedDisplay decode(@RequestBody(required = false) byte @Nullable [] edid) {
        byte[] bytes = edid == null ? new byte[0] : edid;
        if (!EdidReader.isWholeNumberOfBlocks(bytes.length)) {
            int most = EdidReader.BLOCK_BYTES * EdidReader.MOST_BLOCKS;
            throw Problems.outOfRange(
                    "",
                    "The EDID has " + bytes.length + " bytes; it has to be a multiple of " + EdidReader.BLOCK_BYTES
                            + " from " + EdidReader.BLOCK_BYTES + " to " + most + ".",
                    EdidReader.BLOCK_BYTES + ".." + most);
        }
        return DecodedDisplay.of(EdidReader.read(bytes));
    }

    @PostMapping(path = "/v1/displays/decode", consumes = "text/plain", produces = "application/json")
    @Operation(
            operationId = "decodeDisplay",
            summary = "Decode an EDID: accepted timings, limits, panel, and findings about defects")
    DecodedDisplay decodeHex(@RequestBody(required = false) byte @Nullable [] text) {
        return decode(HexText.read(text == null ? "" : new String(text, StandardCharsets.ISO_8859_1)));
    }
}

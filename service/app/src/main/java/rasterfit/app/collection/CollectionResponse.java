package rasterfit.app.collection;

import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** An operation that answers with a collection by itself. */
@Target(ElementType.METHOD)
@Retention(RetentionPolicy.RUNTIME)
@ApiResponse(
        responseCode = "200",
        description = "The collection, with its revision as entity tag",
        content = @Content(mediaType = "application/json", schema = @Schema(implementation = CollectionBody.class)))
@interface CollectionResponse {}

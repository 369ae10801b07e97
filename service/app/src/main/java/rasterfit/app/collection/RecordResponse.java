package rasterfit.app.collection;

import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** An operation that answers with a record as it is written, with what answers add. */
@Target(ElementType.METHOD)
@Retention(RetentionPolicy.RUNTIME)
@ApiResponse(
        responseCode = "200",
        description = "The record, with its revision as entity tag",
        content =
                @Content(
                        mediaType = "application/json",
                        schema =
                                @Schema(
                                        oneOf = {
                                            OwnItemBody.class,
                                            ConnectionBody.class,
                                            LagReadingBody.class,
                                            TestResultBody.class,
                                            ServiceNoteBody.class,
                                            DueBody.class
                                        })))
@interface RecordResponse {}

package rasterfit.app.collection;

import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** An operation that takes a record: the one of the section that its address names. */
@Target(ElementType.METHOD)
@Retention(RetentionPolicy.RUNTIME)
@RequestBody(
        required = true,
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
@interface RecordTaken {}

/**
 * Forms that several answers share: plain numbers ({@link rasterfit.app.answer.Plain}), raster timings ({@link
 * rasterfit.app.answer.TimingAnswer}) and lists ({@link rasterfit.app.answer.Items}). In every answer a member that is
 * not marked nullable is always there; one that is marked is absent rather than null.
 */
@NullMarked
package rasterfit.app.answer;

import org.jspecify.annotations.NullMarked;

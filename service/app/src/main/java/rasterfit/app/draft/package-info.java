/**
 * Gear described in a minute: {@link rasterfit.app.draft.TemplateController} lists the templates, one for each class of device,
 * and makes a whole gear document of a few answers. What was not asked is a marked assumption, or absent where the engine has
 * a default of its own. {@link rasterfit.app.draft.Draft} writes such documents, here and for displays that are made from
 * their EDIDs.
 */
@NullMarked
package rasterfit.app.draft;

import org.jspecify.annotations.NullMarked;

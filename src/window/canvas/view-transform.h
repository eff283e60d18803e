/* view-transform.h: from photo pixels to view pixels and back
 *
 * The only place of the window that turns one space into the other. Photo: pixels
 * of the upright photo, origin at its top left corner. View: logical pixels of the
 * widget, origin at its top left corner. The jeweller's quarter turns lie between
 * them, so marks stay in upright pixels however the photo is held.
 *
 * Pure computation: no widget, no state of its own.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

#include "reckon/point.h"

/* The most that is shown of one photo pixel, view px: a claw tip of ten photo pixels
 * then fills a third of a small window; more shows only the camera's grid. */
#define WM_VIEW_ZOOM_MAX 32.0

/* How far a photo's edge may be drawn into the view, view px: room for what lies under
 * the marking bar (34 px target, 12 px margins, look book section 2). */
#define WM_VIEW_SLACK 72.0

typedef struct
{
  double photo_width; /* photo px, upright */
  double photo_height;
  double view_width; /* view px */
  double view_height;
  int turns;      /* 0 to 3 quarter turns clockwise */
  double zoom;    /* view px per photo px, above 0 */
  WmPoint centre; /* the photo px at the middle of the view */
} WmViewTransform;

/* A photo of this size, whole, in a view of no size yet. */
void wm_view_transform_init (WmViewTransform *self, double photo_width,
                             double photo_height, int turns);

WmPoint wm_view_transform_to_view (const WmViewTransform *self, WmPoint photo);
WmPoint wm_view_transform_to_photo (const WmViewTransform *self, WmPoint view);

/* A step in the view as a step on the photo (no origin): for dragging and nudging. */
WmPoint wm_view_transform_step_to_photo (const WmViewTransform *self, WmPoint step_view);

/* The box in the view that a box of the photo covers: x, y, width, height, upright. */
void wm_view_transform_box_to_view (const WmViewTransform *self, const double photo[4],
                                    double view[4]);
/* The other way round; not cut to the photo. */
void wm_view_transform_box_to_photo (const WmViewTransform *self, const double view[4],
                                     double photo[4]);

/* Zoom at which the whole photo is just seen. */
double wm_view_transform_fit_zoom (const WmViewTransform *self);
/* The least zoom allowed: whole photo, or true pixels (@px view px a photo px) if that
 * is less. */
double wm_view_transform_least_zoom (const WmViewTransform *self, double px);

void wm_view_transform_fit (WmViewTransform *self);

/* Zooms so that the photo px under @anchor (view) stays there, then keeps the photo in
 * sight. @zoom is cut to @least .. WM_VIEW_ZOOM_MAX. */
void wm_view_transform_zoom_at (WmViewTransform *self, WmPoint anchor, double zoom,
                                double least);

/* Moves the photo by @dx, @dy view px, then keeps it in sight. */
void wm_view_transform_pan (WmViewTransform *self, double dx, double dy);

/* Turns about the middle of the view; @quarter is +1 clockwise or -1. */
void wm_view_transform_turn (WmViewTransform *self, int quarter);

/* A photo smaller than the view is centred; a larger one keeps its edges within
 * WM_VIEW_SLACK of the view's. */
void wm_view_transform_keep_in_sight (WmViewTransform *self);

/* The same without slack: no edge comes into the view unless it must. For pictures that
 * nobody moves. */
void wm_view_transform_fill (WmViewTransform *self);

/* Whether @view lies on the photo. */
gboolean wm_view_transform_is_on_photo (const WmViewTransform *self, WmPoint view);

/* loupe.h: a round magnifier over the photo
 *
 * Shows the photo at true pixels, or at ten times its size on the screen where the
 * photo has the pixels for that (a bench loupe is x10).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "window/canvas/tile-layer.h"

/* View px: about 55 mm on a common 96 dpi screen, a thumb's length, and still a quarter
 * of the photo's width at 1000x640. */
#define WM_LOUPE_RADIUS 104.0

#define WM_TYPE_LOUPE (wm_loupe_get_type ())
G_DECLARE_FINAL_TYPE (WmLoupe, wm_loupe, WM, LOUPE, GtkWidget)

WmLoupe *wm_loupe_new (void);

/**
 * wm_loupe_zoom:
 * @zoom: of the view, view px per photo px
 * @scale: device px per view px
 *
 * Returns: the loupe's zoom: ten times @zoom, but at least true pixels and at most
 * two device px a photo px; never under twice @zoom, so that it always enlarges
 */
double wm_loupe_zoom (double zoom, double scale);

/* What is drawn over the middle of the glass while a place is measured from. */
typedef struct
{
  enum
  {
    WM_LOUPE_PLAIN,
    WM_LOUPE_CROSS, /* a point: hairs that leave it free */
    WM_LOUPE_JAW    /* an end of a span: its face is the place */
  } kind;
  double towards; /* jaw: direction of the other end, radians clockwise from east */
} WmLoupeJaw;

/**
 * wm_loupe_measuring_zoom:
 *
 * Returns: the zoom while a place is set: ten times @zoom, but at least three and at most
 * eight device px a photo px, so that a single photo pixel can be aimed at; never under
 * twice @zoom
 */
double wm_loupe_measuring_zoom (double zoom, double scale);

/* Looks at @photo, larger, with the jaw or cross over it and how much it enlarges. */
void wm_loupe_measure_at (WmLoupe *self, WmTileLayer *layer, const WmViewTransform *view,
                          WmPoint photo, WmLoupeJaw jaw);

/* Looks at @photo (photo px) of @layer, which is shown by @view. */
void wm_loupe_look_at (WmLoupe *self, WmTileLayer *layer, const WmViewTransform *view,
                       WmPoint photo);
/* What it needs from the layer. */
const WmViewTransform *wm_loupe_get_view (WmLoupe *self);

/* mark-view.h: one mark on the photo as a widget
 *
 * A child of the canvas, so that focus, name and keyboard come from GTK. Painted by
 * the photo room into one texture, again only when its look changes; placing it costs
 * nothing. The canvas decides where the disc is and does all pointing.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "photo/mark-look.h"
#include "window/canvas/mark-value.h"

#define WM_TYPE_MARK_VIEW (wm_mark_view_get_type ())
G_DECLARE_FINAL_TYPE (WmMarkView, wm_mark_view, WM, MARK_VIEW, GtkWidget)

/* Takes a copy of @value. */
WmMarkView *wm_mark_view_new (const WmMarkValue *value);

const WmMarkValue *wm_mark_view_get_value (WmMarkView *self);
/* Sets what the mark is; the look follows with wm_mark_view_place (). */
void wm_mark_view_set_value (WmMarkView *self, const WmMarkValue *value);

/**
 * wm_mark_view_place:
 * @points: the mark's points, view px
 * @disc: middle of the disc, view px
 * @radius: R, view px
 * @state: WmMarkState together; ghost and unconfirmed are added from the value
 * @view_width, @view_height: of the canvas; nothing outside is painted
 *
 * Paints the texture again where the look changed, and says where to allocate.
 */
void
wm_mark_view_place (WmMarkView *self, const WmPoint *points, WmPoint disc, double radius,
                    guint state, double view_width, double view_height);

/* Where it is, in the canvas. */
const WmMarkLook *wm_mark_view_get_look (WmMarkView *self);
void wm_mark_view_get_allocation_box (WmMarkView *self, GtkAllocation *box);

/* mark-value.h: a mark as the canvas has it, and what a hand can do to it
 *
 * A value in photo pixels of the upright photo: it knows no record, no archive and
 * no widget. The page that owns the canvas makes it from a record and turns a
 * changed one into an edit.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

#include "reckon/point.h"
#include "reckon/severity.h"
#include "reckon/shape.h"
#include "record/id.h"

typedef struct
{
  WmId id; /* none: not in the archive yet */
  WmShape shape;
  GArray *points; /* WmPoint, photo px */
  gboolean is_pinned;
  WmPoint pin; /* photo px, of the disc's middle, when pinned */
  WmSeverity severity;
  int number;              /* 0: the mark waits for a check */
  gboolean is_ghost;       /* of an earlier visit: looked at, not moved */
  gboolean is_unconfirmed; /* carried over and not yet accepted */
  gboolean is_measuring;   /* blue: its ends are being looked at */
  gboolean is_bare;        /* no disc: the scale of the photo, not a mark */
  char *value;             /* span: what its plate says, or NULL */
  char *name;              /* for screen readers: "Mark 2, Worn end ring, repair" */
} WmMarkValue;

WmMarkValue *wm_mark_value_new (WmShape shape, const WmPoint *points, guint n_points);
WmMarkValue *wm_mark_value_copy (const WmMarkValue *self);
void wm_mark_value_free (WmMarkValue *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmMarkValue, wm_mark_value_free)

/* Same place, disc, look and name. */
gboolean wm_mark_value_equal (const WmMarkValue *a, const WmMarkValue *b);

/* Points a shape needs before it is a shape: 1, 2, 3, 2. */
guint wm_mark_value_least_points (WmShape shape);

WmPoint wm_mark_value_point (const WmMarkValue *self, guint index);

/* Moves the whole form by a step in photo px, as far as all of it stays on a photo
 * of @width by @height. A pinned disc goes with it. */
void
wm_mark_value_move (WmMarkValue *self, double dx, double dy, double width, double height);

/* Moves one point, cut to the photo. */
void wm_mark_value_move_point (WmMarkValue *self, guint index, WmPoint to, double width,
                               double height);

/* Puts a point on the edge that begins at @index. FALSE for spots and spans. */
gboolean wm_mark_value_add_point (WmMarkValue *self, guint index, WmPoint at);

/* FALSE, and nothing changed, where the shape needs all its points. */
gboolean wm_mark_value_remove_point (WmMarkValue *self, guint index);

void wm_mark_value_pin (WmMarkValue *self, WmPoint disc);
void wm_mark_value_unpin (WmMarkValue *self);

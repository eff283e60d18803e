/* layout-shape.h: distances from discs to forms, boxes and leaders
 *
 * Inside this room only. Pure geometry in view space.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/mark-layout.h"

#include <math.h>

/* Not hypot (): nothing here comes near overflow, and this is the inner loop. */
static inline double
wm_distance (WmPoint a, WmPoint b)
{
  double dx = a.x - b.x, dy = a.y - b.y;

  return sqrt (dx * dx + dy * dy);
}

double wm_segment_distance (WmPoint a, WmPoint b, WmPoint at);
gboolean wm_segments_cross (WmPoint a, WmPoint b, WmPoint c, WmPoint d);

/* 0 inside the box. */
double wm_box_distance (const WmLayoutBox *box, WmPoint at);

/* To the nearest point or stroke of the form; 0 inside an outline. */
double wm_form_distance (const WmLayoutMark *mark, WmPoint at);
WmLayoutBox wm_form_bounds (const WmLayoutMark *mark);

/* Where the leader of a disc at @disc would end. */
WmPoint wm_form_tip (const WmLayoutMark *mark, WmPoint disc);

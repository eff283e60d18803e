/* points.h: the places of a mark as text, the way SVG writes a list of points
 *
 * "812.5,300 820,311": x and y with a comma, points with a blank, in the C
 * locale. (SVG 2, attribute "points", in its plainest form.)
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

#include "reckon/point.h"

/* More than any hand draws; keeps a damaged row from asking for memory. */
#define WM_POINTS_MAX 4096

/**
 * wm_points_parse:
 *
 * Returns: (transfer full) (element-type WmPoint): a GArray of WmPoint, or NULL
 *   if @text is not a list of one to WM_POINTS_MAX finite points
 */
GArray *wm_points_parse (const char *text);

/* To a hundredth of a pixel. Returns: (transfer full) */
char *wm_points_format (const WmPoint *points, guint n_points);

/* gauge-rule.c: the one ornament: a hairline with ticks, always a scale
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/gauge-rule.h"

#include <math.h>
#include <stdlib.h>

void
wm_gauge_rule_line (GtkSnapshot *snapshot, double x0, double x1, double y,
                    const GdkRGBA *colour)
{
  graphene_rect_t line =
      GRAPHENE_RECT_INIT (floor (x0), floor (y), floor (x1) - floor (x0) + 1, 1);

  gtk_snapshot_append_color (snapshot, colour, &line);
}

void
wm_gauge_rule_tick (GtkSnapshot *snapshot, double x, double y, int length,
                    const GdkRGBA *colour)
{
  graphene_rect_t tick = GRAPHENE_RECT_INIT (
      floor (x), floor (y) + (length < 0 ? length : 0), 1, abs (length) + 1);

  gtk_snapshot_append_color (snapshot, colour, &tick);
}

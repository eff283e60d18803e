/* scale-basis.c: what a photo's scale may be taken from, and how well that is known
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/measuring/scale-basis.h"

#include <glib/gi18n.h>
#include <math.h>

/* Half width through sqrt 3 (rectangular). Steel rule: 0.1 mm (bench rules of the better
 * class, from memory); calliper and gauge block: ISO 13385-1, ISO 3650 (figures from
 * memory); paper and coins: common practice, no source. */
static const WmScaleBasis bases[] = {
  { N_ ("steel rule"), 0.06 },
  { N_ ("calliper jaws"), 0.02 },
  { N_ ("gauge block or pin"), 0.002 },
  { N_ ("part measured with a gauge"), 0.02 },
  { N_ ("printed paper or graph paper"), 0.1 },
};

/* 2 mm, the usual height of a shank's or link's edge over the rule beside it, comes first
 * unless it is chosen otherwise (common practice, no source). */
static const double depths[] = { 0, 1, 2, 5, 10 };

const WmScaleBasis *
wm_scale_bases (guint *n)
{
  *n = G_N_ELEMENTS (bases);
  return bases;
}

int
wm_scale_basis_find (const char *words)
{
  for (guint i = 0; i < G_N_ELEMENTS (bases); i++)
    if (g_strcmp0 (words, bases[i].words) == 0)
      return i;
  return -1;
}

const double *
wm_scale_depths (guint *n)
{
  *n = G_N_ELEMENTS (depths);
  return depths;
}

double
wm_scale_depth_u (guint index)
{
  return depths[MIN (index, G_N_ELEMENTS (depths) - 1)] / sqrt (3.0);
}

guint
wm_scale_depth_find (double u_mm)
{
  guint best = 2;

  if (!isfinite (u_mm))
    return best;
  for (guint i = 0; i < G_N_ELEMENTS (depths); i++)
    if (fabs (wm_scale_depth_u (i) - u_mm) < fabs (wm_scale_depth_u (best) - u_mm))
      best = i;
  return best;
}

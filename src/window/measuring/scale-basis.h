/* scale-basis.h: what a photo's scale may be taken from, and how well that is known
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

typedef struct
{
  const char *words; /* N_(): kept with the photo */
  double u_mm;       /* standard uncertainty of the known length, mm */
} WmScaleBasis;

const WmScaleBasis *wm_scale_bases (guint *n);

/* -1: words of the jeweller's own. */
int wm_scale_basis_find (const char *words);

/* How far the place may lie above or below the scale: half width, mm. */
const double *wm_scale_depths (guint *n);
/* The one nearest to a standard uncertainty as the record keeps it. */
guint wm_scale_depth_find (double u_mm);
double wm_scale_depth_u (guint index);

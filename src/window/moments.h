/* moments.h: the five moments of a visit and their pages, once
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib-object.h>

#define WM_N_MOMENTS 5

typedef struct
{
  const char *word;  /* WM_MOMENT_...: stored in visits, never changes */
  const char *title; /* N_() */
  const char *icon_name;
  GType (*get_type) (void); /* a GtkWidget that is a WmMomentPage */
} WmMomentRow;

const WmMomentRow *wm_moments (void);
/* NULL if @word is none of them. */
const WmMomentRow *wm_moments_find (const char *word);

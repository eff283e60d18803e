/* measuring-pane.h: a reading, what is left, what it points to, where it comes from
 *
 * Beside the photo in place of the checklist while a place is measured. Shows at once
 * what each field changes; nothing is kept before "Take this value" reaches the page's
 * action. Buttons reach the actions of the page.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <adwaita.h>

#include "reckon/length.h"
#include "record/kinds.h"
#include "window/measuring/wear-reading.h"

#define WM_TYPE_MEASURING_PANE (wm_measuring_pane_get_type ())
G_DECLARE_FINAL_TYPE (WmMeasuringPane, wm_measuring_pane, WM, MEASURING_PANE, AdwBin)

/* What is measured, and what is known of it. */
typedef struct
{
  const char *title, *second;
  int number;             /* of the check's disc; 0: none yet */
  WmMeasurement *kept;    /* (nullable): the check's last reading of this visit */
  WmMeasurement *earlier; /* (nullable): its last of an earlier visit */
  const WmLimits *limits; /* (nullable): outlives the pane's use of it */
  WmValue yield_mpa;
  const char *metal; /* (nullable): in words, for the newtons */
} WmMeasuringSubject;

void wm_measuring_pane_open (WmMeasuringPane *self, const WmMeasuringSubject *subject);

/* Where a length on the photo comes from, in words ready to show. */
typedef struct
{
  const char *scale, *pixel, *ends, *depth, *warning;
} WmMeasuringSource;

/* The measured length; @length NULL: not placed yet. @all_by_edge: both ends snapped. */
void
wm_measuring_pane_show_length (WmMeasuringPane *self, const WmLength *length,
                               const WmMeasuringSource *source, gboolean all_by_edge);
/* A reading that is kept, where nothing is measured anew. */
void wm_measuring_pane_show_kept (WmMeasuringPane *self, WmMeasurement *kept);
/* What to do next, or what happened. */
void wm_measuring_pane_say (WmMeasuringPane *self, const char *text);

void wm_measuring_pane_set_as_made (WmMeasuringPane *self, WmValue mm, const char *basis);
void wm_measuring_pane_set_by_gauge (WmMeasuringPane *self, gboolean by_gauge);
gboolean wm_measuring_pane_is_by_gauge (WmMeasuringPane *self);

/* Writes what the pane shows into @reading (not its check, mark and moment); FALSE: there
 * is no value yet, or a field is wrong and has the keyboard. */
gboolean wm_measuring_pane_fill (WmMeasuringPane *self, WmMeasurement *reading);
/* What it says of the check: (transfer none), until the next change. */
const WmWorn *wm_measuring_pane_get_worn (WmMeasuringPane *self);

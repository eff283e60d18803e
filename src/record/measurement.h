/* measurement.h: one measured thickness, width, length or play of a check
 *
 * On a photo the two places are the mark of shape span; by gauge there is none.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "record/record.h"

#define WM_TYPE_MEASUREMENT (wm_measurement_get_type ())
G_DECLARE_FINAL_TYPE (WmMeasurement, wm_measurement, WM, MEASUREMENT, WmRecord)

/* Members are read freely and written through the properties of the same name. */
struct _WmMeasurement
{
  WmRecord parent_instance;

  WmId check_id;
  WmId mark_id;   /* none if read off a gauge */
  char *quantity; /* "thickness", "width", "length", "play", "diameter" */
  double value_mm;
  double uncertainty_mm;
  double as_made_mm;    /* nominal, or measured at an unworn place */
  char *as_made_basis;  /* "nominal", "unworn place", "earlier visit" */
  char *method;         /* "gauge" or "photo" */
  char *moment;         /* WM_PHOTO_BEFORE or WM_PHOTO_AFTER: before or after the work */
  gint64 measured_at_s; /* UTC seconds */
  double as_made_uncertainty_mm; /* standard uncertainty */
  char *section; /* "round", "oval", "rectangle", "half-round", "d", "ring-in-ring" */
  double width_mm;
  char *readings; /* mm, C locale, separated by spaces */
  char *ends;     /* "edge" (snapped) or "hand" */
};

WmMeasurement *wm_measurement_new (void);

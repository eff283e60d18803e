/* gauge-readings.h: readings of a gauge as they are typed, and what they say together
 *
 * Pure: no widgets, no archive.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/value.h"
#include "window/form/field-check.h"

/* More than anybody takes of one place; a slip of the clipboard. */
#define WM_READINGS_MOST 20

/* A gauge one reads, and its own standard uncertainty. */
typedef struct
{
  const char *key;
  const char *name; /* N_() */
  double u_mm;
} WmGauge;

const WmGauge *wm_gauges (guint *n);

/**
 * wm_gauge_readings_parse:
 * @text: "0.61 0.59 0,60", separated by blanks or semicolons; a unit may stand behind
 * each
 *   ("24 thou")
 * @out_readings: (out) (transfer full): array of double, mm; empty for an empty text
 *
 * Odd when one is more than a fifth off their middle one: likely a slip, or another
 * place.
 */
WmFieldVerdict
wm_gauge_readings_parse (const char *text, GArray **out_readings, char **out_remark);

/**
 * wm_gauge_readings_value:
 * @n: 1 or more
 * @u_gauge_mm: of the gauge, 0 or more
 *
 * The mean; its uncertainty is that of the mean (s / sqrt n, from two readings on) and
 * the gauge's own, which repeating does not make less, in quadrature (GUM 4.2.3, 4.3;
 * clauses from memory).
 */
WmValue wm_gauge_readings_value (const double *readings, guint n, double u_gauge_mm);

/* As the record keeps them: "0.61 0.59 0.6", C locale. Caller frees. */
char *wm_gauge_readings_format (const double *readings, guint n);

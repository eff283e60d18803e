/* measurement.c: one measured thickness, width, length or play of a check
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/measurement.h"

#include <glib/gi18n.h>

static const WmField fields[] = {
  { "check_id", WM_FIELD_KEY, G_STRUCT_OFFSET (WmMeasurement, check_id), N_ ("check"),
    WM_KIND_CHECK },
  { "mark_id", WM_FIELD_KEY, G_STRUCT_OFFSET (WmMeasurement, mark_id), N_ ("mark"),
    WM_KIND_MARK },
  { "quantity", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmMeasurement, quantity),
    N_ ("quantity") },
  { "value_mm", WM_FIELD_REAL, G_STRUCT_OFFSET (WmMeasurement, value_mm), N_ ("value") },
  { "uncertainty_mm", WM_FIELD_REAL, G_STRUCT_OFFSET (WmMeasurement, uncertainty_mm),
    N_ ("standard uncertainty") },
  { "as_made_mm", WM_FIELD_REAL, G_STRUCT_OFFSET (WmMeasurement, as_made_mm),
    N_ ("as made") },
  { "as_made_basis", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmMeasurement, as_made_basis),
    N_ ("how the as-made value is known") },
  { "method", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmMeasurement, method), N_ ("method") },
  { "moment", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmMeasurement, moment), N_ ("moment") },
  { "measured_at_s", WM_FIELD_INT, G_STRUCT_OFFSET (WmMeasurement, measured_at_s),
    N_ ("measured") },
  { "as_made_uncertainty_mm", WM_FIELD_REAL,
    G_STRUCT_OFFSET (WmMeasurement, as_made_uncertainty_mm),
    N_ ("uncertainty of the as-made value") },
  { "section", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmMeasurement, section), N_ ("section") },
  { "width_mm", WM_FIELD_REAL, G_STRUCT_OFFSET (WmMeasurement, width_mm),
    N_ ("second size of the section") },
  { "readings", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmMeasurement, readings),
    N_ ("readings") },
  { "ends", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmMeasurement, ends),
    N_ ("how the ends were found") },
};

static const WmKindInfo info = { WM_KIND_MEASUREMENT, "measurement", N_ ("measurement"),
                                 fields, G_N_ELEMENTS (fields) };

WM_DEFINE_RECORD (WmMeasurement, wm_measurement, &info)

/* measure-field.h: an entry for a length, with what is wrong said under it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

/**
 * wm_measure_field_read:
 * @remark: shows what is wrong, or what another unit is in mm; hidden else
 * @out_mm: (out): NaN for an empty entry; not written on FALSE
 */
gboolean wm_measure_field_read (GtkWidget *entry, GtkLabel *remark, double *out_mm);

/* NaN empties it. To three digits behind the point, in the language's own writing. */
void wm_measure_field_set (GtkWidget *entry, double mm);

/* What a screen reader says. */
void wm_measure_field_name (GtkWidget *widget, const char *name);

/* Says @text beside @entry, or that it is right again (NULL). */
void wm_measure_field_remark (GtkWidget *entry, GtkLabel *remark, const char *text,
                              gboolean is_wrong);

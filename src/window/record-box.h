/* record-box.h: one child widget a record, kept while the record is there
 *
 * Showing a changed list moves, adds and removes as little as can be, so that focus and
 * what is being typed stay where they are.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "record/record.h"

typedef GtkWidget *(*WmRecordMake) (gpointer record, gpointer user_data);
typedef void (*WmRecordShow) (GtkWidget *child, gpointer record, gpointer user_data);

/* @box holds nothing but these children. @show is called for each, new ones too. */
void wm_record_box_show (GtkBox *box, GPtrArray *records, WmRecordMake make,
                         WmRecordShow show, gpointer user_data);

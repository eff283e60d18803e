/* template.h: giving a template widget's children back
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

/* For dispose of a widget derived from GtkWidget itself: gtk_widget_dispose_template ()
 * lets go of the children that are bound to members; GTK 4.8 leaves the others hanging on
 * the widget, which then complains when it is finalized. */
void wm_template_dispose (GtkWidget *widget, GType type);

/* template.c: giving a template widget's children back
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/template.h"

void
wm_template_dispose (GtkWidget *widget, GType type)
{
  GtkWidget *child;

  gtk_widget_dispose_template (widget, type);
  while ((child = gtk_widget_get_first_child (widget)) != NULL)
    gtk_widget_unparent (child);
}

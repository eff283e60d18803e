/* measure-field.c: an entry for a length, with what is wrong said under it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/measuring/measure-field.h"

#include <math.h>
#include <string.h>

#include "window/measuring/typed-length.h"

void
wm_measure_field_remark (GtkWidget *entry, GtkLabel *remark, const char *text,
                         gboolean is_wrong)
{
  gtk_label_set_text (remark, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (remark), text != NULL);
  if (is_wrong)
    {
      gtk_widget_add_css_class (entry, "error");
      gtk_widget_add_css_class (GTK_WIDGET (remark), "error");
    }
  else
    {
      gtk_widget_remove_css_class (entry, "error");
      gtk_widget_remove_css_class (GTK_WIDGET (remark), "error");
    }
  gtk_accessible_update_state (
      GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_STATE_INVALID,
      is_wrong ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
}

gboolean
wm_measure_field_read (GtkWidget *entry, GtkLabel *remark, double *out_mm)
{
  g_autofree char *text = NULL;
  WmFieldVerdict verdict =
      wm_typed_length (gtk_editable_get_text (GTK_EDITABLE (entry)), out_mm, &text);

  wm_measure_field_remark (entry, remark, text, verdict == WM_FIELD_WRONG);
  return verdict != WM_FIELD_WRONG;
}

void
wm_measure_field_set (GtkWidget *entry, double mm)
{
  g_autofree char *text = isfinite (mm) ? g_strdup_printf ("%.3f", mm) : g_strdup ("");

  /* "0.550" is 0.55; of "100" nothing is cut. */
  if (strpbrk (text, ".,") != NULL)
    {
      while (g_str_has_suffix (text, "0"))
        text[strlen (text) - 1] = '\0';
      if (!g_ascii_isdigit (text[strlen (text) - 1]))
        text[strlen (text) - 1] = '\0';
    }
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
}

void
wm_measure_field_name (GtkWidget *widget, const char *name)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  name, -1);
}

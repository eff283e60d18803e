/* severity-choice.c: one of the four severities, glyph over word
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/severity-choice.h"

#include "window/glyph.h"

#define N_CHOICES 4
#define GLYPH_R 7.5 /* as in the open check of the inspection */

struct _WmSeverityChoice
{
  GtkWidget parent_instance;

  GtkWidget *buttons[N_CHOICES]; /* sound to do not wear */
  gboolean filling;
};

enum
{
  CHOSEN,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (WmSeverityChoice, wm_severity_choice, GTK_TYPE_WIDGET)

static void
on_toggled (GtkToggleButton *button, WmSeverityChoice *self)
{
  int chosen = WM_SEVERITY_NOT_LOOKED_AT;

  if (self->filling)
    return;
  for (int i = 0; i < N_CHOICES; i++)
    if (GTK_WIDGET (button) == self->buttons[i] && gtk_toggle_button_get_active (button))
      chosen = WM_SEVERITY_SOUND + i;
  g_signal_emit (self, signals[CHOSEN], 0, chosen);
}

static GtkWidget *
make_button (WmSeverityChoice *self, WmSeverity severity)
{
  GtkWidget *button = gtk_toggle_button_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *glyph = wm_glyph_new (severity, GLYPH_R);
  GtkWidget *word = gtk_label_new (wm_severity_word (severity));

  gtk_widget_set_halign (glyph, GTK_ALIGN_CENTER);
  gtk_label_set_ellipsize (GTK_LABEL (word), PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (word, "choice-word");
  gtk_box_append (GTK_BOX (box), glyph);
  gtk_box_append (GTK_BOX (box), word);
  gtk_button_set_child (GTK_BUTTON (button), box);
  gtk_widget_add_css_class (button, "flat");
  gtk_widget_set_hexpand (button, TRUE);
  g_signal_connect (button, "toggled", G_CALLBACK (on_toggled), self);
  gtk_widget_set_parent (button, GTK_WIDGET (self));
  return button;
}

static void
wm_severity_choice_dispose (GObject *object)
{
  WmSeverityChoice *self = WM_SEVERITY_CHOICE (object);

  for (int i = 0; i < N_CHOICES; i++)
    g_clear_pointer (&self->buttons[i], gtk_widget_unparent);

  G_OBJECT_CLASS (wm_severity_choice_parent_class)->dispose (object);
}

static void
wm_severity_choice_class_init (WmSeverityChoiceClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_severity_choice_dispose;
  signals[CHOSEN] = g_signal_new ("chosen", WM_TYPE_SEVERITY_CHOICE, G_SIGNAL_RUN_LAST, 0,
                                  NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_INT);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_RADIO_GROUP);
}

static void
wm_severity_choice_init (WmSeverityChoice *self)
{
  gtk_box_layout_set_homogeneous (
      GTK_BOX_LAYOUT (gtk_widget_get_layout_manager (GTK_WIDGET (self))), TRUE);
  gtk_widget_add_css_class (GTK_WIDGET (self), "severity-choice");
  for (int i = 0; i < N_CHOICES; i++)
    self->buttons[i] = make_button (self, WM_SEVERITY_SOUND + i);
}

void
wm_severity_choice_show (WmSeverityChoice *self, WmSeverity severity, const char *what)
{
  self->filling = TRUE;
  for (int i = 0; i < N_CHOICES; i++)
    {
      g_autofree char *name =
          g_strdup_printf ("%s: %s", what, wm_severity_word (WM_SEVERITY_SOUND + i));

      gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->buttons[i]),
                                    (int)severity == WM_SEVERITY_SOUND + i);
      gtk_accessible_update_property (GTK_ACCESSIBLE (self->buttons[i]),
                                      GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
    }
  self->filling = FALSE;
}

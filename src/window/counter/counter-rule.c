/* counter-rule.c: the findings on the gauge rule at the foot of the counter view
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/counter/counter-rule.h"

#include <math.h>

#include "photo/mark-look.h"
#include "window/gauge-rule.h"
#include "window/glyph.h"

/* View px, as in the look book's picture 06. */
#define DISC_STEP 68
#define BUTTON 52
#define TICK_STEP 11

struct _WmCounterRule
{
  GtkWidget parent_instance;

  GPtrArray *buttons; /* GtkWidget, owned as children */
};

enum
{
  CHOSEN,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (WmCounterRule, wm_counter_rule, GTK_TYPE_WIDGET)

static int
get_first_x (WmCounterRule *self, int width)
{
  int n = self->buttons->len;

  return (width - (n - 1) * DISC_STEP) / 2;
}

static int
get_middle (WmCounterRule *self, int height)
{
  return self->buttons->len > 0 ? height / 2 : 1;
}

/* The rule goes on between the discs, with a gap round each. */
static gboolean
is_under_disc (WmCounterRule *self, int width, double x)
{
  double first = get_first_x (self, width);

  for (guint i = 0; i < self->buttons->len; i++)
    if (fabs (x - (first + i * DISC_STEP)) < BUTTON / 2.0 - 4)
      return TRUE;
  return FALSE;
}

static void
wm_counter_rule_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  WmCounterRule *self = WM_COUNTER_RULE (widget);
  int width = gtk_widget_get_width (widget), n = (width - 1) / TICK_STEP;
  int y = get_middle (self, gtk_widget_get_height (widget));
  double from = 0;
  GdkRGBA colour;

  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &colour);
  for (guint i = 0; i < self->buttons->len; i++)
    {
      double x = get_first_x (self, width) + (int)i * DISC_STEP;

      wm_gauge_rule_line (snapshot, from, x - BUTTON / 2.0 + 4, y, &colour);
      from = x + BUTTON / 2.0 - 4;
    }
  wm_gauge_rule_line (snapshot, from, width - 1, y, &colour);
  for (int i = 0; i <= n; i++)
    {
      double x = i * (width - 1.0) / n;
      int length = i % 10 == 0  ? WM_TICK_LONG
                   : i % 5 == 0 ? WM_TICK_MIDDLE
                                : WM_TICK_SHORT;

      if (!is_under_disc (self, width, x))
        wm_gauge_rule_tick (snapshot, x, y, length, &colour);
    }
  for (guint i = 0; i < self->buttons->len; i++)
    gtk_widget_snapshot_child (widget, g_ptr_array_index (self->buttons, i), snapshot);
}

static void
wm_counter_rule_measure (GtkWidget *widget, GtkOrientation orientation, int for_size,
                         int *minimum, int *natural, int *minimum_baseline,
                         int *natural_baseline)
{
  WmCounterRule *self = WM_COUNTER_RULE (widget);

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    *minimum = *natural = MAX ((int)self->buttons->len * DISC_STEP, 100);
  else
    *minimum = *natural = self->buttons->len > 0 ? BUTTON : WM_TICK_LONG + 2;
  for (guint i = 0; i < self->buttons->len; i++)
    gtk_widget_measure (g_ptr_array_index (self->buttons, i), orientation, -1, NULL, NULL,
                        NULL, NULL);
}

static void
wm_counter_rule_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  WmCounterRule *self = WM_COUNTER_RULE (widget);

  for (guint i = 0; i < self->buttons->len; i++)
    {
      GtkAllocation box = { get_first_x (self, width) + (int)i * DISC_STEP - BUTTON / 2,
                            height / 2 - BUTTON / 2, BUTTON, BUTTON };

      gtk_widget_size_allocate (g_ptr_array_index (self->buttons, i), &box, -1);
    }
}

static void
on_clicked (GtkButton *button, WmCounterRule *self)
{
  guint index;

  if (g_ptr_array_find (self->buttons, button, &index))
    g_signal_emit (self, signals[CHOSEN], 0, (int)index);
}

static void
clear (WmCounterRule *self)
{
  for (guint i = 0; i < self->buttons->len; i++)
    gtk_widget_unparent (g_ptr_array_index (self->buttons, i));
  g_ptr_array_set_size (self->buttons, 0);
}

static void
add_button (WmCounterRule *self, GtkWidget *child, const char *name, gboolean current)
{
  GtkWidget *button = gtk_button_new ();

  gtk_widget_set_halign (child, GTK_ALIGN_CENTER);
  gtk_widget_set_valign (child, GTK_ALIGN_CENTER);
  gtk_button_set_child (GTK_BUTTON (button), child);
  gtk_widget_add_css_class (button, "counter-disc");
  /* The window's own keys go from finding to finding; Space must not stay on a disc. */
  gtk_widget_set_focusable (button, FALSE);
  if (current)
    gtk_widget_add_css_class (button, "current");
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  name, -1);
  g_signal_connect (button, "clicked", G_CALLBACK (on_clicked), self);
  gtk_widget_set_parent (button, GTK_WIDGET (self));
  g_ptr_array_add (self->buttons, button);
}

static void
wm_counter_rule_dispose (GObject *object)
{
  WmCounterRule *self = WM_COUNTER_RULE (object);

  if (self->buttons != NULL)
    clear (self);
  g_clear_pointer (&self->buttons, g_ptr_array_unref);
  G_OBJECT_CLASS (wm_counter_rule_parent_class)->dispose (object);
}

static void
wm_counter_rule_class_init (WmCounterRuleClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_counter_rule_dispose;
  widget_class->snapshot = wm_counter_rule_snapshot;
  widget_class->measure = wm_counter_rule_measure;
  widget_class->size_allocate = wm_counter_rule_size_allocate;
  gtk_widget_class_set_css_name (widget_class, "counterrule");

  signals[CHOSEN] = g_signal_new ("chosen", WM_TYPE_COUNTER_RULE, G_SIGNAL_RUN_LAST, 0,
                                  NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_INT);
}

static void
wm_counter_rule_init (WmCounterRule *self)
{
  self->buttons = g_ptr_array_new ();
}

void
wm_counter_rule_set (WmCounterRule *self, GPtrArray *findings, const char *const *names,
                     guint current)
{
  clear (self);
  for (guint i = 0; i < findings->len; i++)
    {
      const WmFinding *finding = g_ptr_array_index (findings, i);
      GtkWidget *glyph = wm_glyph_new (finding->check->severity, 11);

      wm_glyph_set_number (WM_GLYPH (glyph), MAX (finding->check->number, 0));
      add_button (self, glyph, names[i], i == current);
    }
  /* The page behind the findings: what is sound. */
  add_button (self, wm_glyph_new (WM_SEVERITY_SOUND, 8), names[findings->len],
              current == findings->len);
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

void
wm_counter_rule_set_plain (WmCounterRule *self)
{
  clear (self);
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

/* visit-rule.c: the visits of a piece by date on a gauge rule
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/visit-rule.h"

#include <glib/gi18n.h>

#include "photo/mark-look.h"
#include "window/gauge-rule.h"
#include "window/glyph.h"
#include "window/labels.h"

#define BUTTON 30   /* px: disc with claws and pill */
#define RULE_Y 15   /* px from the top: the middle of the buttons */
#define LABEL_Y 30  /* px from the top: top of the years */
#define SIDE 18     /* px left and right of the rule for half a button */
#define MIN_YEARS 3 /* a rule of one visit still shows where it stands */
#define S_PER_DAY 86400.0

struct _WmVisitRule
{
  GtkWidget parent_instance;

  GPtrArray *buttons; /* (element-type GtkWidget): owned by this widget */
  GArray *days;       /* double: day of each visit since 1 January of first_year */
  int first_year;
  int n_years;
  int current;
};

enum
{
  CHOSEN,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (WmVisitRule, wm_visit_rule, GTK_TYPE_WIDGET)

static double
count_days (WmVisitRule *self, int year)
{
  g_autoptr (GDateTime) first = g_date_time_new_utc (self->first_year, 1, 1, 0, 0, 0);
  g_autoptr (GDateTime) then = g_date_time_new_utc (year, 1, 1, 0, 0, 0);

  return (g_date_time_to_unix (then) - g_date_time_to_unix (first)) / S_PER_DAY;
}

static double
find_x (WmVisitRule *self, double day)
{
  double length = gtk_widget_get_width (GTK_WIDGET (self)) - 2 * SIDE;

  return SIDE + length * day / count_days (self, self->first_year + self->n_years);
}

static void
clear_buttons (WmVisitRule *self)
{
  for (guint i = 0; i < self->buttons->len; i++)
    gtk_widget_unparent (self->buttons->pdata[i]);
  g_ptr_array_set_size (self->buttons, 0);
  g_array_set_size (self->days, 0);
}

static void
on_button_clicked (GtkButton *button, WmVisitRule *self)
{
  guint index;

  if (g_ptr_array_find (self->buttons, button, &index))
    g_signal_emit (self, signals[CHOSEN], 0, index);
}

static void
wm_visit_rule_measure (GtkWidget *widget, GtkOrientation orientation, int for_size,
                       int *minimum, int *natural, int *minimum_baseline,
                       int *natural_baseline)
{
  WmVisitRule *self = WM_VISIT_RULE (widget);
  int n = self->buttons->len;

  for (int i = 0; i < n; i++)
    gtk_widget_measure (self->buttons->pdata[i], orientation, -1, NULL, NULL, NULL, NULL);
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? MAX (200, n * BUTTON + 2 * SIDE)
                                                       : LABEL_Y + 18;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? MAX (560, *minimum) : *minimum;
}

/* Wanted places are in order; each is pushed right of the one before, then all that
 * stand out at the right are pushed back. */
static void
wm_visit_rule_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  WmVisitRule *self = WM_VISIT_RULE (widget);
  int n = self->buttons->len;
  g_autofree double *x = g_new (double, n + 1);

  for (int i = 0; i < n; i++)
    {
      x[i] = find_x (self, g_array_index (self->days, double, i));
      if (i > 0)
        x[i] = MAX (x[i], x[i - 1] + BUTTON);
    }
  x[n] = width - SIDE + BUTTON;
  for (int i = n - 1; i >= 0; i--)
    x[i] = MIN (x[i], x[i + 1] - BUTTON);

  for (int i = 0; i < n; i++)
    {
      GtkAllocation place = { (int)x[i] - BUTTON / 2, RULE_Y - BUTTON / 2, BUTTON,
                              BUTTON };

      gtk_widget_size_allocate (self->buttons->pdata[i], &place, -1);
    }
}

static void
snapshot_year (WmVisitRule *self, GtkSnapshot *snapshot, int year, const GdkRGBA *tick,
               const GdkRGBA *text)
{
  double from = find_x (self, count_days (self, year));
  double to = find_x (self, count_days (self, year + 1));
  gboolean last = year == self->first_year + self->n_years;
  g_autofree char *name = g_strdup_printf ("%d", year);
  g_autoptr (PangoLayout) layout =
      gtk_widget_create_pango_layout (GTK_WIDGET (self), name);
  int label_width;

  wm_gauge_rule_tick (snapshot, from, RULE_Y, WM_TICK_LONG, tick);
  for (int quarter = 1; quarter < 4 && !last; quarter++)
    wm_gauge_rule_tick (snapshot, from + (to - from) * quarter / 4, RULE_Y,
                        quarter == 2 ? WM_TICK_MIDDLE : WM_TICK_SHORT, tick);

  pango_layout_get_pixel_size (layout, &label_width, NULL);
  if (label_width + 8 > to - from && year % 2 != 0)
    return;
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (
      snapshot, &GRAPHENE_POINT_INIT (floorf (from - label_width / 2.0f), LABEL_Y));
  gtk_snapshot_append_layout (snapshot, layout, text);
  gtk_snapshot_restore (snapshot);
}

static void
wm_visit_rule_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  WmVisitRule *self = WM_VISIT_RULE (widget);
  GtkStyleContext *context = gtk_widget_get_style_context (widget);
  GdkRGBA tick, text;

  if (self->buttons->len == 0)
    return;

  gtk_style_context_get_color (context, &text);
  if (!gtk_style_context_lookup_color (context, "wm_tick", &tick))
    tick = text;
  wm_gauge_rule_line (snapshot, SIDE, gtk_widget_get_width (widget) - SIDE, RULE_Y,
                      &tick);
  for (int year = 0; year <= self->n_years; year++)
    snapshot_year (self, snapshot, self->first_year + year, &tick, &text);

  GTK_WIDGET_CLASS (wm_visit_rule_parent_class)->snapshot (widget, snapshot);
}

static void
wm_visit_rule_dispose (GObject *object)
{
  WmVisitRule *self = WM_VISIT_RULE (object);

  clear_buttons (self);

  G_OBJECT_CLASS (wm_visit_rule_parent_class)->dispose (object);
}

static void
wm_visit_rule_finalize (GObject *object)
{
  WmVisitRule *self = WM_VISIT_RULE (object);

  g_ptr_array_unref (self->buttons);
  g_array_unref (self->days);

  G_OBJECT_CLASS (wm_visit_rule_parent_class)->finalize (object);
}

static void
wm_visit_rule_class_init (WmVisitRuleClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_visit_rule_dispose;
  G_OBJECT_CLASS (klass)->finalize = wm_visit_rule_finalize;
  widget_class->measure = wm_visit_rule_measure;
  widget_class->size_allocate = wm_visit_rule_size_allocate;
  widget_class->snapshot = wm_visit_rule_snapshot;

  signals[CHOSEN] = g_signal_new ("chosen", WM_TYPE_VISIT_RULE, G_SIGNAL_RUN_LAST, 0,
                                  NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
  gtk_widget_class_set_css_name (widget_class, "wm-visit-rule");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
wm_visit_rule_init (WmVisitRule *self)
{
  self->buttons = g_ptr_array_new ();
  self->days = g_array_new (FALSE, FALSE, sizeof (double));
  self->first_year = 2000;
  self->n_years = 1;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Visits of this piece"), -1);
}

static void
add_button (WmVisitRule *self, WmVisit *visit, int severity, gboolean current)
{
  GtkWidget *button = gtk_button_new ();
  g_autofree char *date = wm_label_day (visit->taken_in_at_s);
  g_autofree char *label =
      g_strdup_printf (_ ("Visit of %s: %s"), date, wm_severity_word (severity));
  g_autoptr (GDateTime) first = g_date_time_new_utc (self->first_year, 1, 1, 0, 0, 0);
  double day = (visit->taken_in_at_s - g_date_time_to_unix (first)) / S_PER_DAY;

  gtk_button_set_child (GTK_BUTTON (button), wm_glyph_new (severity, WM_MARK_R_CHIP));
  gtk_widget_set_tooltip_text (button, label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  label, -1);
  gtk_widget_add_css_class (button, "flat");
  if (current)
    gtk_widget_add_css_class (button, "current");
  g_signal_connect (button, "clicked", G_CALLBACK (on_button_clicked), self);
  gtk_widget_set_parent (button, GTK_WIDGET (self));
  g_ptr_array_add (self->buttons, button);
  g_array_append_val (self->days, day);
}

void
wm_visit_rule_set_visits (WmVisitRule *self, GPtrArray *visits, const int *severities,
                          int current)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_utc ();
  int last_year = g_date_time_get_year (now);

  clear_buttons (self);
  self->current = current;
  if (visits->len > 0)
    {
      WmVisit *oldest = visits->pdata[0];
      g_autoptr (GDateTime) first = g_date_time_new_from_unix_utc (oldest->taken_in_at_s);

      self->first_year = first == NULL ? last_year : g_date_time_get_year (first);
      self->first_year = MIN (self->first_year, last_year - MIN_YEARS + 1);
      self->n_years = last_year - self->first_year + 1;
      for (guint i = 0; i < visits->len; i++)
        add_button (self, visits->pdata[i], severities[i], (int)i == current);
    }
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

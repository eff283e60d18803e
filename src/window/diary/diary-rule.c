/* diary-rule.c: the next twelve weeks on a gauge rule, a glyph for each piece due
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/diary/diary-rule.h"

#include <glib/gi18n.h>
#include <math.h>

#include "photo/mark-draw.h"
#include "window/gauge-rule.h"
#include "window/labels.h"

#define HEIGHT 112
#define RULE_Y 78
#define GLYPH_Y 38
#define SIDE 28
#define GLYPH_STEP 26 /* px: two due on one day stand beside each other */

struct _WmDiaryRule
{
  GtkWidget parent_instance;

  GArray *days;       /* int */
  GArray *severities; /* int */
};

G_DEFINE_FINAL_TYPE (WmDiaryRule, wm_diary_rule, GTK_TYPE_WIDGET)

static double
find_x (WmDiaryRule *self, int day)
{
  double length = gtk_widget_get_width (GTK_WIDGET (self)) - 2 * SIDE;

  return SIDE + length * day / (WM_DIARY_WEEKS * 7);
}

static void
append_text (WmDiaryRule *self, GtkSnapshot *snapshot, const char *text, double x,
             double y, gboolean centred, const GdkRGBA *colour)
{
  g_autoptr (PangoLayout) layout =
      gtk_widget_create_pango_layout (GTK_WIDGET (self), text);
  int width;

  pango_layout_get_pixel_size (layout, &width, NULL);
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (
      snapshot, &GRAPHENE_POINT_INIT (floor (centred ? x - width / 2.0 : x), y));
  gtk_snapshot_append_layout (snapshot, layout, colour);
  gtk_snapshot_restore (snapshot);
}

static void
snapshot_scale (WmDiaryRule *self, GtkSnapshot *snapshot, const GdkRGBA *tick,
                const GdkRGBA *text)
{
  gint64 now_s = g_get_real_time () / G_USEC_PER_SEC;
  int width = gtk_widget_get_width (GTK_WIDGET (self));
  int every = width < 900 ? 2 : 1;

  wm_gauge_rule_line (snapshot, SIDE, width - SIDE, RULE_Y, tick);
  for (int day = 0; day <= WM_DIARY_WEEKS * 7; day++)
    wm_gauge_rule_tick (snapshot, find_x (self, day), RULE_Y,
                        day % 7 == 0 ? WM_TICK_LONG : WM_TICK_SHORT, tick);
  for (int week = 0; week <= WM_DIARY_WEEKS; week += every)
    {
      g_autofree char *name =
          wm_label_week_day (now_s + week * 7 * G_GINT64_CONSTANT (86400));

      append_text (self, snapshot, name, find_x (self, week * 7), RULE_Y + 13, TRUE,
                   text);
    }
}

/* The dots of "not looked at" in the colour of the text: in the mark's own dark they
 * would be lost on a dark page. */
static void
draw_glyph (cairo_t *cr, double x, int severity, const WmMarkStyle *style,
            const GdkRGBA *text)
{
  cairo_pattern_t *dots;

  if (severity >= WM_SEVERITY_SOUND && severity <= WM_SEVERITY_NO_WEAR)
    {
      wm_mark_draw_glyph (cr, x, GLYPH_Y, WM_MARK_R_CHIP + 1, severity, 0, style);
      return;
    }
  cairo_push_group (cr);
  wm_mark_draw_glyph (cr, x, GLYPH_Y, WM_MARK_R_CHIP + 1, severity, 0, style);
  dots = cairo_pop_group (cr);
  gdk_cairo_set_source_rgba (cr, text);
  cairo_mask (cr, dots);
  cairo_pattern_destroy (dots);
}

static void
snapshot_glyphs (WmDiaryRule *self, GtkSnapshot *snapshot, const GdkRGBA *tick,
                 const GdkRGBA *text)
{
  int width = gtk_widget_get_width (GTK_WIDGET (self));
  graphene_rect_t bounds = GRAPHENE_RECT_INIT (0, 0, width, HEIGHT);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &bounds);
  WmMarkStyle style;
  double last = -GLYPH_STEP;

  wm_mark_style_init (&style);
  style.px = 1.0 / gtk_widget_get_scale_factor (GTK_WIDGET (self));
  for (guint i = 0; i < self->days->len; i++)
    {
      double place = find_x (self, MAX (0, g_array_index (self->days, int, i)));
      double x = MAX (place, last + GLYPH_STEP);

      if (x > width - GLYPH_STEP / 2.0)
        break;
      last = x;
      gdk_cairo_set_source_rgba (cr, tick);
      cairo_set_line_width (cr, 1);
      cairo_move_to (cr, x, GLYPH_Y + 16);
      cairo_line_to (cr, place, RULE_Y);
      cairo_stroke (cr);
      draw_glyph (cr, x, g_array_index (self->severities, int, i), &style, text);
    }
  cairo_destroy (cr);
}

static void
wm_diary_rule_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  WmDiaryRule *self = WM_DIARY_RULE (widget);
  GtkStyleContext *context = gtk_widget_get_style_context (widget);
  GdkRGBA tick, text, accent;
  graphene_rect_t line =
      GRAPHENE_RECT_INIT (floor (find_x (self, 0)), 16, 2, RULE_Y - 16);

  gtk_style_context_get_color (context, &text);
  if (!gtk_style_context_lookup_color (context, "wm_tick", &tick))
    tick = text;
  if (!gtk_style_context_lookup_color (context, "accent_color", &accent))
    accent = text;

  snapshot_scale (self, snapshot, &tick, &text);
  gtk_snapshot_append_color (snapshot, &accent, &line);
  append_text (self, snapshot, _ ("today"), find_x (self, 0) + 8, 6, FALSE, &accent);
  snapshot_glyphs (self, snapshot, &tick, &text);
}

static void
wm_diary_rule_measure (GtkWidget *widget, GtkOrientation orientation, int for_size,
                       int *minimum, int *natural, int *minimum_baseline,
                       int *natural_baseline)
{
  *minimum = *natural = orientation == GTK_ORIENTATION_VERTICAL ? HEIGHT : 320;
}

static void
wm_diary_rule_finalize (GObject *object)
{
  WmDiaryRule *self = WM_DIARY_RULE (object);

  g_array_unref (self->days);
  g_array_unref (self->severities);

  G_OBJECT_CLASS (wm_diary_rule_parent_class)->finalize (object);
}

static void
wm_diary_rule_class_init (WmDiaryRuleClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = wm_diary_rule_finalize;
  widget_class->measure = wm_diary_rule_measure;
  widget_class->snapshot = wm_diary_rule_snapshot;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
wm_diary_rule_init (WmDiaryRule *self)
{
  self->days = g_array_new (FALSE, FALSE, sizeof (int));
  self->severities = g_array_new (FALSE, FALSE, sizeof (int));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("The next twelve weeks"), -1);
}

void
wm_diary_rule_show (WmDiaryRule *self, const int *days, const int *severities, guint n)
{
  g_array_set_size (self->days, 0);
  g_array_set_size (self->severities, 0);
  g_array_append_vals (self->days, days, n);
  g_array_append_vals (self->severities, severities, n);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

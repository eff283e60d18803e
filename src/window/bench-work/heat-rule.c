/* heat-rule.c: the steps of a heat plan on a temperature rule
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/bench-work/heat-rule.h"

#include <glib/gi18n.h>
#include <math.h>

#include "photo/mark-draw.h"
#include "window/bench-work/plan-words.h"
#include "window/gauge-rule.h"

/* View px. */
#define SIDE 18
#define LEFT 306 /* words end, the rule begins */
#define LINE_HEIGHT 22
#define LEGEND_HEIGHT 52
#define ROW_HEIGHT 66
#define AXIS_HEIGHT 42
#define BAR_HEIGHT 20
#define GLYPH_X 52
#define TEXT_X 78

/* A line across all steps. */
typedef struct
{
  double at_c;
  char *text;
  double dash; /* 0: drawn through */
} Limit;

struct _WmHeatRule
{
  GtkWidget parent_instance;

  const WmBenchPlan *plan;
  GArray *limits; /* Limit, hottest first */
  double low_c, high_c;
};

G_DEFINE_FINAL_TYPE (WmHeatRule, wm_heat_rule, GTK_TYPE_WIDGET)

typedef struct
{
  GdkRGBA text, dim, tick, line, bar, pale;
} Colours;

static double
find_x (WmHeatRule *self, double c)
{
  double length = gtk_widget_get_width (GTK_WIDGET (self)) - LEFT - 2 * SIDE - 12;

  return LEFT + length * (c - self->low_c) / (self->high_c - self->low_c);
}

static int
find_top (WmHeatRule *self)
{
  return SIDE / 2
         + MAX (LEGEND_HEIGHT, (int)self->limits->len * LINE_HEIGHT + LINE_HEIGHT / 2);
}

static int
find_axis (WmHeatRule *self)
{
  int n = self->plan != NULL ? (int)self->plan->steps->len : 0;

  return find_top (self) + n * ROW_HEIGHT + 6;
}

/* ---- drawing ----------------------------------------------------------------------- */

typedef enum
{
  FROM_LEFT,
  CENTRED,
  FROM_RIGHT
} Side;

static PangoLayout *
make_layout (WmHeatRule *self, const char *text, gboolean bold, double size)
{
  PangoLayout *layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), text);
  PangoAttrList *attrs = pango_attr_list_new ();

  pango_attr_list_insert (attrs, pango_attr_scale_new (size));
  if (bold)
    pango_attr_list_insert (attrs, pango_attr_weight_new (PANGO_WEIGHT_BOLD));
  pango_layout_set_attributes (layout, attrs);
  pango_attr_list_unref (attrs);
  return layout;
}

/* Px that a bold label is wide. */
static int
measure (WmHeatRule *self, const char *text, double size)
{
  g_autoptr (PangoLayout) layout = make_layout (self, text, TRUE, size);
  int width;

  pango_layout_get_pixel_size (layout, &width, NULL);
  return width;
}

static void
append_text (WmHeatRule *self, GtkSnapshot *snapshot, const char *text, Side side,
             double x, double y, double width, gboolean bold, double size,
             const GdkRGBA *colour)
{
  g_autoptr (PangoLayout) layout = make_layout (self, text, bold, size);
  int taken;

  if (width > 0)
    {
      pango_layout_set_width (layout, (int)(width * PANGO_SCALE));
      pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
    }
  pango_layout_get_pixel_size (layout, &taken, NULL);
  x -= side == CENTRED ? taken / 2.0 : side == FROM_RIGHT ? taken : 0;
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT (floor (MAX (x, 4)), floor (y)));
  gtk_snapshot_append_layout (snapshot, layout, colour);
  gtk_snapshot_restore (snapshot);
}

static void
append_bar (GtkSnapshot *snapshot, double x0, double x1, double y, const GdkRGBA *colour)
{
  GskRoundedRect round;
  graphene_rect_t bounds = GRAPHENE_RECT_INIT (x0, y, MAX (x1 - x0, 2), BAR_HEIGHT);

  gsk_rounded_rect_init_from_rect (&round, &bounds, 3);
  gtk_snapshot_push_rounded_clip (snapshot, &round);
  gtk_snapshot_append_color (snapshot, colour, &bounds);
  gtk_snapshot_pop (snapshot);
}

static void
snapshot_legend (WmHeatRule *self, GtkSnapshot *snapshot, const Colours *colours)
{
  append_bar (snapshot, SIDE, SIDE + 20, 12, &colours->pale);
  append_text (self, snapshot, _ ("begins to melt, then flows"), FROM_LEFT, SIDE + 30, 12,
               LEFT - SIDE - 30, FALSE, 0.9, &colours->text);
  append_bar (snapshot, SIDE, SIDE + 20, 36, &colours->bar);
  append_text (self, snapshot, _ ("flows, up to the working heat"), FROM_LEFT, SIDE + 30,
               36, LEFT - SIDE - 30, FALSE, 0.9, &colours->text);
}

static void
snapshot_limits (WmHeatRule *self, GtkSnapshot *snapshot, const Colours *colours)
{
  int bottom = find_axis (self);

  for (guint i = 0; i < self->limits->len; i++)
    {
      const Limit *limit = &g_array_index (self->limits, Limit, i);
      double x = floor (find_x (self, limit->at_c));
      int top = SIDE / 2 + (int)i * LINE_HEIGHT;
      gboolean from_left;

      for (double y = top; y<bottom; y += limit->dash> 0 ? 2 * limit->dash : bottom)
        gtk_snapshot_append_color (
            snapshot, &colours->text,
            &GRAPHENE_RECT_INIT (
                x, y, 1, limit->dash > 0 ? MIN (limit->dash, bottom - y) : bottom - y));
      /* At the left of its line there is no other: hotter ones stand at the right, cooler
       * ones begin below. The legend may be in the way. */
      from_left = x - 6 - measure (self, limit->text, 0.86)
                  < (top < SIDE / 2 + LEGEND_HEIGHT - LINE_HEIGHT ? LEFT - 30 : 4);
      append_text (self, snapshot, limit->text, from_left ? FROM_LEFT : FROM_RIGHT,
                   from_left ? x + 6 : x - 6, top, 0, TRUE, 0.86, &colours->text);
    }
}

static void
snapshot_glyph (WmHeatRule *self, GtkSnapshot *snapshot, const WmPlanStep *step, int y)
{
  graphene_rect_t bounds = GRAPHENE_RECT_INIT (GLYPH_X - 20, y - 20, 40, 40);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &bounds);
  WmMarkStyle style;

  wm_mark_style_init (&style);
  style.px = 1.0 / gtk_widget_get_scale_factor (GTK_WIDGET (self));
  wm_mark_draw_glyph (cr, GLYPH_X, y, WM_MARK_R_ROW, step->check->severity,
                      step->check->number == WM_UNKNOWN ? 0 : (int)step->check->number,
                      &style);
  cairo_destroy (cr);
}

static void
snapshot_step (WmHeatRule *self, GtkSnapshot *snapshot, const WmPlanStep *step, int top,
               const Colours *colours)
{
  int middle = top + ROW_HEIGHT / 2;
  g_autofree char *number = g_strdup_printf ("%d", step->number);
  g_autofree char *title = wm_plan_step_title (step);
  g_autofree char *how = wm_plan_step_how (step);
  g_autofree char *heat = wm_plan_step_heat (step);

  append_text (self, snapshot, number, CENTRED, SIDE + 4, middle - 11, 0, TRUE, 1.15,
               &colours->text);
  snapshot_glyph (self, snapshot, step, middle);
  append_text (self, snapshot, title, FROM_LEFT, TEXT_X, middle - 27, LEFT - TEXT_X - 14,
               TRUE, 0.95, &colours->text);
  append_text (self, snapshot, how, FROM_LEFT, TEXT_X, middle - 8, LEFT - TEXT_X - 14,
               FALSE, 0.86, &colours->dim);
  append_text (self, snapshot, heat, FROM_LEFT, TEXT_X, middle + 9, LEFT - TEXT_X - 14,
               FALSE, 0.86, &colours->dim);
  if (step->has_heat)
    {
      double begins =
          isnan (step->flow.solidus_c) ? step->flow.flow_c : step->flow.solidus_c;

      append_bar (snapshot, find_x (self, begins), find_x (self, step->flow.flow_c),
                  middle - BAR_HEIGHT / 2, &colours->pale);
      append_bar (snapshot, find_x (self, step->flow.flow_c),
                  find_x (self, step->heat.working_c), middle - BAR_HEIGHT / 2,
                  &colours->bar);
    }
  gtk_snapshot_append_color (
      snapshot, &colours->line,
      &GRAPHENE_RECT_INIT (0, top + ROW_HEIGHT - 1,
                           gtk_widget_get_width (GTK_WIDGET (self)), 1));
}

static void
snapshot_axis (WmHeatRule *self, GtkSnapshot *snapshot, const Colours *colours)
{
  double y = find_axis (self);
  double span = self->high_c - self->low_c;
  int number_every = span > 900 ? 200 : 100;

  wm_gauge_rule_line (snapshot, LEFT, find_x (self, self->high_c), y, &colours->tick);
  for (int c = (int)self->low_c; c <= (int)self->high_c; c += span > 900 ? 50 : 10)
    wm_gauge_rule_tick (snapshot, find_x (self, c), y,
                        c % 100 == 0  ? WM_TICK_LONG
                        : c % 50 == 0 ? WM_TICK_MIDDLE
                                      : WM_TICK_SHORT,
                        &colours->tick);
  for (int c = (int)self->low_c; c <= (int)self->high_c; c += number_every)
    {
      g_autofree char *text = g_strdup_printf ("%d", c);

      append_text (self, snapshot, text, CENTRED, find_x (self, c), y + 12, 0, FALSE,
                   0.86, &colours->dim);
    }
  append_text (self, snapshot, "°C", FROM_RIGHT,
               gtk_widget_get_width (GTK_WIDGET (self)) - 8, y + 12, 0, FALSE, 0.86,
               &colours->dim);
}

static void
look_up (GtkStyleContext *context, const char *name, const GdkRGBA *otherwise,
         GdkRGBA *out)
{
  if (!gtk_style_context_lookup_color (context, name, out))
    *out = *otherwise;
}

static void
wm_heat_rule_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  WmHeatRule *self = WM_HEAT_RULE (widget);
  GtkStyleContext *context = gtk_widget_get_style_context (widget);
  Colours colours;

  if (self->plan == NULL)
    return;
  gtk_style_context_get_color (context, &colours.text);
  look_up (context, "wm_dim", &colours.text, &colours.dim);
  look_up (context, "wm_tick", &colours.text, &colours.tick);
  look_up (context, "wm_line", &colours.tick, &colours.line);
  look_up (context, "accent_bg_color", &colours.text, &colours.bar);
  colours.pale = colours.bar;
  colours.pale.alpha = 0.36f;

  snapshot_legend (self, snapshot, &colours);
  for (guint i = 0; i < self->plan->steps->len; i++)
    snapshot_step (self, snapshot, self->plan->steps->pdata[i],
                   find_top (self) + (int)i * ROW_HEIGHT, &colours);
  snapshot_limits (self, snapshot, &colours);
  snapshot_axis (self, snapshot, &colours);
}

static void
wm_heat_rule_measure (GtkWidget *widget, GtkOrientation orientation, int for_size,
                      int *minimum, int *natural, int *minimum_baseline,
                      int *natural_baseline)
{
  *minimum = *natural = orientation == GTK_ORIENTATION_VERTICAL
                            ? find_axis (WM_HEAT_RULE (widget)) + AXIS_HEIGHT
                            : LEFT + 280;
}

/* ---- what is shown ----------------------------------------------------------------- */

static void
clear_limit (gpointer data)
{
  g_free (((Limit *)data)->text);
}

static void
add_limit (WmHeatRule *self, double at_c, double dash, char *text)
{
  Limit limit = { at_c, text, dash };

  if (isnan (at_c))
    {
      g_free (text);
      return;
    }
  g_array_append_val (self->limits, limit);
  self->low_c = fmin (self->low_c, at_c);
  self->high_c = fmax (self->high_c, at_c);
}

static int
compare_limits (gconstpointer a, gconstpointer b)
{
  return ((const Limit *)a)->at_c > ((const Limit *)b)->at_c ? -1 : 1;
}

/* Each kind of stone once. */
static void
add_stones (WmHeatRule *self, const WmBenchPlan *plan)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (NULL, NULL);

  for (guint i = 0; i < plan->groups->len; i++)
    {
      WmStoneGroup *group = plan->groups->pdata[i];
      const WmStone *row = group->species != NULL
                               ? wm_trade_find_stone (plan->trade, group->species)
                               : NULL;

      if (row != NULL && !isnan (row->trouble_c.low)
          && g_hash_table_add (seen, (gpointer)row))
        add_limit (self, row->trouble_c.low, 2,
                   /* Translators: a stone and a temperature: Diamond, 700 */
                   g_strdup_printf (_ ("%s, %.0f"), wm_trade_text (row->name),
                                    row->trouble_c.low));
    }
}

void
wm_heat_rule_show (WmHeatRule *self, const WmBenchPlan *plan)
{
  g_autofree char *spoken = NULL;

  self->plan = plan;
  g_array_set_size (self->limits, 0);
  if (plan == NULL)
    return;
  self->low_c = self->high_c = plan->heat_metal.solidus_c;
  add_limit (
      self, plan->heat_metal.solidus_c, 0,
      g_strdup_printf (_ ("the metal begins to melt, %.0f"), plan->heat_metal.solidus_c));
  add_limit (self, plan->joints_hold_c, 5,
             g_strdup_printf (plan->joints_guessed
                                  ? _ ("old joints, taken for the weakest, %.0f")
                                  : _ ("old joints run, %.0f"),
                              plan->joints_hold_c));
  add_stones (self, plan);
  g_array_sort (self->limits, compare_limits);
  for (guint i = 0; i < plan->steps->len; i++)
    {
      const WmPlanStep *step = plan->steps->pdata[i];

      if (!step->has_heat)
        continue;
      self->low_c =
          fmin (self->low_c,
                isnan (step->flow.solidus_c) ? step->flow.flow_c : step->flow.solidus_c);
      self->high_c = fmax (self->high_c, step->heat.working_c);
    }
  self->low_c = fmax (0, 100 * floor ((self->low_c - 30) / 100));
  self->high_c = 50 * ceil ((self->high_c + 30) / 50);
  spoken = wm_plan_describe (plan);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  spoken, -1);
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

static void
wm_heat_rule_finalize (GObject *object)
{
  g_array_unref (WM_HEAT_RULE (object)->limits);

  G_OBJECT_CLASS (wm_heat_rule_parent_class)->finalize (object);
}

static void
wm_heat_rule_class_init (WmHeatRuleClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = wm_heat_rule_finalize;
  widget_class->measure = wm_heat_rule_measure;
  widget_class->snapshot = wm_heat_rule_snapshot;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
wm_heat_rule_init (WmHeatRule *self)
{
  self->limits = g_array_new (FALSE, FALSE, sizeof (Limit));
  g_array_set_clear_func (self->limits, clear_limit);
  self->high_c = 100;
}

GtkWidget *
wm_heat_rule_new (void)
{
  return g_object_new (WM_TYPE_HEAT_RULE, NULL);
}

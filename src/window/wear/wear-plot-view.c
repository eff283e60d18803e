/* wear-plot-view.c: the wear of one part over time, drawn
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/wear/wear-plot-view.h"

#include <adwaita.h>

#include "report/wear-plot.h"

/* Natural width; it takes what it is given. */
#define WIDTH 280
/* Letters against the widget's own (look book, section 2: second line). */
#define FONT_SHARE 0.82

struct _WmWearPlotView
{
  GtkWidget parent_instance;

  WmWear wear;
  WmLanguage *language;
  int height;
};

G_DEFINE_FINAL_TYPE (WmWearPlotView, wm_wear_plot_view, GTK_TYPE_WIDGET)

static WmPlotColour
colour_of (const GdkRGBA *rgba, double alpha)
{
  return (WmPlotColour) { rgba->red, rgba->green, rgba->blue, rgba->alpha * alpha };
}

static WmPlotColour
look_up (GtkWidget *widget, const char *name, double alpha)
{
  GdkRGBA rgba = { 0.5, 0.5, 0.5, 1 };

  gtk_style_context_lookup_color (gtk_widget_get_style_context (widget), name, &rgba);
  return colour_of (&rgba, alpha);
}

static void
wm_wear_plot_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  WmWearPlotView *self = WM_WEAR_PLOT_VIEW (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  PangoContext *context = gtk_widget_get_pango_context (widget);
  const PangoFontDescription *font = pango_context_get_font_description (context);
  double points = pango_font_description_get_size (font) / (double)PANGO_SCALE;
  double size = pango_font_description_get_size_is_absolute (font)
                    ? points
                    : points * pango_cairo_context_get_resolution (context) / 72;
  gboolean dark = adw_style_manager_get_dark (adw_style_manager_get_default ());
  GdkRGBA text;
  WmPlotLook look = { .width = width,
                      .height = height,
                      .font = size * FONT_SHARE,
                      .line = 1,
                      .context = context,
                      .language = self->language };
  cairo_t *cr = gtk_snapshot_append_cairo (
      snapshot, &GRAPHENE_RECT_INIT (0, 0, (float)width, (float)height));

  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &text);
  look.text = colour_of (&text, 1);
  look.dim = look_up (widget, "wm_dim", 1);
  look.accent = look_up (widget, "accent_color", 1);
  look.band = look_up (widget, "accent_color", dark ? 0.28 : 0.18);
  look.ground = look_up (widget, "card_bg_color", 1);
  /* Vermilion of the look book, light enough on dark (5.1 to 1 and 3.9 to 1). */
  look.limit = dark ? (WmPlotColour) { 0.96, 0.55, 0.25, 1 }
                    : (WmPlotColour) { 0.72, 0.31, 0.0, 1 };
  wm_wear_plot_draw (cr, &self->wear, &look);
  cairo_destroy (cr);
}

static void
wm_wear_plot_view_measure (GtkWidget *widget, GtkOrientation orientation, int for_size,
                           int *minimum, int *natural, int *minimum_baseline,
                           int *natural_baseline)
{
  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL
                            ? WIDTH
                            : WM_WEAR_PLOT_VIEW (widget)->height;
}

static void
wm_wear_plot_view_finalize (GObject *object)
{
  WmWearPlotView *self = WM_WEAR_PLOT_VIEW (object);

  g_clear_pointer (&self->wear.points, g_array_unref);
  wm_language_unref (self->language);

  G_OBJECT_CLASS (wm_wear_plot_view_parent_class)->finalize (object);
}

static void
wm_wear_plot_view_class_init (WmWearPlotViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = wm_wear_plot_view_finalize;
  widget_class->snapshot = wm_wear_plot_view_snapshot;
  widget_class->measure = wm_wear_plot_view_measure;
  gtk_widget_class_set_css_name (widget_class, "wearplot");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
wm_wear_plot_view_init (WmWearPlotView *self)
{
  self->language = wm_language_new (g_get_language_names ()[0]);
}

GtkWidget *
wm_wear_plot_view_new (const WmWear *wear, int height, const char *words)
{
  WmWearPlotView *self = g_object_new (WM_TYPE_WEAR_PLOT_VIEW, NULL);

  self->wear = *wear;
  self->wear.points = g_array_ref (wear->points);
  /* Not drawn, and the outlook's own. */
  self->wear.item = self->wear.title = self->wear.quantity = NULL;
  self->wear.sources = NULL;
  self->height = height;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  words, -1);
  return GTK_WIDGET (self);
}

/* glyph.c: the claw glyph of a severity as a widget
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/glyph.h"

#include <glib/gi18n.h>

#include "photo/mark-draw.h"

struct _WmGlyph
{
  GtkWidget parent_instance;

  int severity;
  int number;
  double radius;
};

enum
{
  PROP_0,
  PROP_SEVERITY,
  PROP_NUMBER,
  PROP_RADIUS,
  N_PROPS
};

static GParamSpec *props[N_PROPS];

G_DEFINE_FINAL_TYPE (WmGlyph, wm_glyph, GTK_TYPE_WIDGET)

static void
tell_severity (WmGlyph *self)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  wm_severity_word (self->severity), -1);
}

static void
wm_glyph_measure (GtkWidget *widget, GtkOrientation orientation, int for_size,
                  int *minimum, int *natural, int *minimum_baseline,
                  int *natural_baseline)
{
  WmGlyph *self = WM_GLYPH (widget);

  *minimum = *natural = (int)ceil (2 * WM_MARK_REACH * self->radius);
}

/* Whatever is drawn until the next pop keeps its shape and gets the text's colour. */
static void
push_text_colour (GtkWidget *widget, GtkSnapshot *snapshot)
{
  GdkRGBA text;
  graphene_matrix_t keep_alpha;
  graphene_vec4_t colour;

  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &text);
  graphene_matrix_init_from_float (
      &keep_alpha, (float[16]) { 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1 });
  graphene_vec4_init (&colour, text.red, text.green, text.blue, 0);
  gtk_snapshot_push_color_matrix (snapshot, &keep_alpha, &colour);
}

static void
wm_glyph_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  WmGlyph *self = WM_GLYPH (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  graphene_rect_t bounds = GRAPHENE_RECT_INIT (0, 0, width, height);
  gboolean has_stone = self->severity != WM_SEVERITY_NOT_LOOKED_AT
                       && self->severity != WM_SEVERITY_NOT_PRESENT;
  WmMarkStyle style;
  cairo_t *cr;

  /* Dots without a light ground under them take the colour of the text. */
  if (!has_stone)
    push_text_colour (widget, snapshot);
  cr = gtk_snapshot_append_cairo (snapshot, &bounds);
  wm_mark_style_init (&style);
  style.px = 1.0 / gtk_widget_get_scale_factor (widget);
  wm_mark_draw_glyph (cr, width / 2.0, height / 2.0, self->radius, self->severity,
                      self->number, &style);
  cairo_destroy (cr);
  if (!has_stone)
    gtk_snapshot_pop (snapshot);
}

static void
wm_glyph_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  WmGlyph *self = WM_GLYPH (object);

  switch (id)
    {
    case PROP_SEVERITY:
      g_value_set_int (value, self->severity);
      break;
    case PROP_NUMBER:
      g_value_set_int (value, self->number);
      break;
    case PROP_RADIUS:
      g_value_set_double (value, self->radius);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
wm_glyph_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  WmGlyph *self = WM_GLYPH (object);

  switch (id)
    {
    case PROP_SEVERITY:
      wm_glyph_set_severity (self, g_value_get_int (value));
      break;
    case PROP_NUMBER:
      wm_glyph_set_number (self, g_value_get_int (value));
      break;
    case PROP_RADIUS:
      wm_glyph_set_radius (self, g_value_get_double (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
wm_glyph_class_init (WmGlyphClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = wm_glyph_get_property;
  object_class->set_property = wm_glyph_set_property;
  widget_class->measure = wm_glyph_measure;
  widget_class->snapshot = wm_glyph_snapshot;

  props[PROP_SEVERITY] =
      g_param_spec_int ("severity", NULL, NULL, 0, WM_SEVERITY_NOT_PRESENT, 0,
                        G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  props[PROP_NUMBER] = g_param_spec_int ("number", NULL, NULL, 0, 999, 0,
                                         G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  props[PROP_RADIUS] = g_param_spec_double ("radius", NULL, NULL, 1, 100, WM_MARK_R_CHIP,
                                            G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);

  gtk_widget_class_set_css_name (widget_class, "wm-glyph");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
wm_glyph_init (WmGlyph *self)
{
  self->radius = WM_MARK_R_CHIP;
  gtk_widget_set_valign (GTK_WIDGET (self), GTK_ALIGN_CENTER);
  tell_severity (self);
}

GtkWidget *
wm_glyph_new (WmSeverity severity, double radius)
{
  return g_object_new (WM_TYPE_GLYPH, "severity", severity, "radius", radius, NULL);
}

void
wm_glyph_set_severity (WmGlyph *self, WmSeverity severity)
{
  if (self->severity == (int)severity)
    return;

  self->severity = severity;
  tell_severity (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_SEVERITY]);
}

void
wm_glyph_set_number (WmGlyph *self, int number)
{
  if (self->number == number)
    return;

  self->number = number;
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_NUMBER]);
}

void
wm_glyph_set_radius (WmGlyph *self, double radius)
{
  if (self->radius == radius)
    return;

  self->radius = radius;
  gtk_widget_queue_resize (GTK_WIDGET (self));
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_RADIUS]);
}

const char *
wm_severity_word (WmSeverity severity)
{
  switch (severity)
    {
    case WM_SEVERITY_SOUND:
      return _ ("sound");
    case WM_SEVERITY_WATCH:
      return _ ("watch");
    case WM_SEVERITY_REPAIR:
      return _ ("repair");
    case WM_SEVERITY_NO_WEAR:
      return _ ("do not wear");
    case WM_SEVERITY_NOT_PRESENT:
      return _ ("not present");
    case WM_SEVERITY_NOT_LOOKED_AT:
    default:
      return _ ("not looked at");
    }
}

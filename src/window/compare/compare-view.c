/* compare-view.c: two photos of the same piece, looked at together
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/compare/compare-view.h"

#include <glib/gi18n.h>
#include <math.h>

#include "window/action-table.h"
#include "window/compare/seam-handle.h"

/* Look book, "Motion": blink 1 s a photo. */
#define BLINK_MS 1000

/* Steps of the seam by key: a hundredth of the view, and a tenth. */
#define SEAM_STEP 0.01
#define SEAM_STEP_FAR 0.1

/* Between the photos that stand side by side, px. */
#define GAP 2

/* Where on the seam the handle is, from the top (picture 04). */
#define HANDLE_AT 0.5

struct _WmCompareView
{
  GtkWidget parent_instance;

  WmCanvas *before, *after;
  GtkWidget *handle;
  GSimpleActionGroup *actions;
  WmCompareMode mode;
  double seam;          /* 0 left edge to 1 right edge */
  gboolean shows_after; /* while blinking */
  guint blink_id;
  gboolean following;
};

static const char *const mode_words[] = { "side", "seam", "blink", "difference",
                                          "points" };

enum
{
  MODE_CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (WmCompareView, wm_compare_view, GTK_TYPE_WIDGET)

/* ---- moving together ----------------------------------------------------------- */

static void
on_view_changed (WmCanvas *canvas, WmCompareView *self)
{
  WmCanvas *other = canvas == self->before ? self->after : self->before;

  if (self->following || self->mode == WM_COMPARE_POINTS)
    return;
  self->following = TRUE;
  wm_canvas_follow (other, wm_canvas_get_view (canvas), wm_canvas_is_fit (canvas));
  self->following = FALSE;
  if (self->mode == WM_COMPARE_DIFFERENCE)
    gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* ---- what is seen ---------------------------------------------------------------- */

static void
show_blink (WmCompareView *self)
{
  gtk_widget_set_child_visible (GTK_WIDGET (self->before), !self->shows_after);
  gtk_widget_set_child_visible (GTK_WIDGET (self->after), self->shows_after);
  /* What was out of sight may have been asked to be placed again meanwhile. */
  gtk_widget_queue_allocate (GTK_WIDGET (self));
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static gboolean
on_blink (gpointer data)
{
  WmCompareView *self = data;

  self->shows_after = !self->shows_after;
  show_blink (self);
  return G_SOURCE_CONTINUE;
}

/* At an even pace, but with reduced motion only by key. */
static void
start_blink (WmCompareView *self)
{
  gboolean animations = TRUE;

  g_clear_handle_id (&self->blink_id, g_source_remove);
  if (self->mode != WM_COMPARE_BLINK || !gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;
  g_object_get (gtk_widget_get_settings (GTK_WIDGET (self)), "gtk-enable-animations",
                &animations, NULL);
  if (animations)
    self->blink_id = g_timeout_add (BLINK_MS, on_blink, self);
}

static void
place_parts (WmCompareView *self, int width)
{
  double seam = round (self->seam * width);

  if (self->mode == WM_COMPARE_SEAM)
    {
      wm_canvas_set_part (self->before, NAN, seam);
      wm_canvas_set_part (self->after, seam, NAN);
    }
  else
    {
      wm_canvas_set_part (self->before, NAN, NAN);
      wm_canvas_set_part (self->after, NAN, NAN);
    }
}

static void
show_mode (WmCompareView *self)
{
  gboolean difference = self->mode == WM_COMPARE_DIFFERENCE;

  wm_canvas_set_glass (self->after, difference);
  gtk_widget_set_visible (self->handle, self->mode == WM_COMPARE_SEAM);
  gtk_widget_set_child_visible (GTK_WIDGET (self->before), !difference);
  gtk_widget_set_child_visible (GTK_WIDGET (self->after), TRUE);
  if (self->mode == WM_COMPARE_BLINK)
    show_blink (self);
  start_blink (self);
  gtk_widget_queue_allocate (GTK_WIDGET (self));
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
move_seam (WmCompareView *self, double seam)
{
  self->seam = CLAMP (seam, 0, 1);
  wm_seam_handle_set_place (WM_SEAM_HANDLE (self->handle), self->seam);
  gtk_widget_queue_allocate (GTK_WIDGET (self));
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
on_pulled (WmSeamHandle *handle, double dx, WmCompareView *self)
{
  int width = gtk_widget_get_width (GTK_WIDGET (self));

  if (width > 0)
    move_seam (self, self->seam + dx / width);
}

/* ---- drawing ------------------------------------------------------------------------
 */

/* Luminance (ITU-R BT.709 weights) into one colour. */
static void
push_tint (GtkSnapshot *snapshot, float red, float green, float blue)
{
  graphene_matrix_t matrix;
  graphene_vec4_t offset;
  const float weights[3] = { 0.2126f, 0.7152f, 0.0722f };
  float m[16] = { 0 };

  for (int i = 0; i < 3; i++)
    {
      m[i * 4 + 0] = weights[i] * red;
      m[i * 4 + 1] = weights[i] * green;
      m[i * 4 + 2] = weights[i] * blue;
    }
  m[15] = 1;
  graphene_matrix_init_from_float (&matrix, m);
  graphene_vec4_init (&offset, 0, 0, 0, 0);
  gtk_snapshot_push_color_matrix (snapshot, &matrix, &offset);
}

static void
snapshot_tinted (WmCompareView *self, GtkSnapshot *snapshot, WmCanvas *canvas, float red,
                 float green, float blue)
{
  const GdkRGBA black = { 0, 0, 0, 1 };
  WmTileLayer *layer = wm_canvas_get_layer (canvas);
  const WmViewTransform *view = wm_canvas_get_view (canvas);

  push_tint (snapshot, red, green, blue);
  gtk_snapshot_append_color (
      snapshot, &black, &GRAPHENE_RECT_INIT (0, 0, view->view_width, view->view_height));
  if (layer != NULL)
    wm_tile_layer_snapshot (layer, snapshot, view,
                            gtk_widget_get_scale_factor (GTK_WIDGET (self)));
  gtk_snapshot_pop (snapshot);
}

/* Orange and blue that add up to grey: where both photos are as bright, there is no
 * colour; the pair is safe for colour-blind eyes. The channels do not overlap but for
 * half of green each, so screen is near enough to a sum and never clips. */
static void
snapshot_difference (WmCompareView *self, GtkSnapshot *snapshot)
{
  gtk_snapshot_push_clip (
      snapshot, &GRAPHENE_RECT_INIT (0, 0, gtk_widget_get_width (GTK_WIDGET (self)),
                                     gtk_widget_get_height (GTK_WIDGET (self))));
  gtk_snapshot_push_blend (snapshot, GSK_BLEND_MODE_SCREEN);
  snapshot_tinted (self, snapshot, self->before, 1, 0.5f, 0);
  gtk_snapshot_pop (snapshot);
  snapshot_tinted (self, snapshot, self->after, 0, 0.5f, 1);
  gtk_snapshot_pop (snapshot);
  gtk_snapshot_pop (snapshot);
}

static void
snapshot_seam (WmCompareView *self, GtkSnapshot *snapshot)
{
  const GdkRGBA edge = { 0.1, 0.1, 0.1, 1 }, light = { 1, 1, 1, 1 };
  int height = gtk_widget_get_height (GTK_WIDGET (self));
  double x = round (self->seam * gtk_widget_get_width (GTK_WIDGET (self)));

  gtk_snapshot_append_color (snapshot, &edge, &GRAPHENE_RECT_INIT (x - 2, 0, 4, height));
  gtk_snapshot_append_color (snapshot, &light, &GRAPHENE_RECT_INIT (x - 1, 0, 2, height));
}

static void
wm_compare_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  WmCompareView *self = WM_COMPARE_VIEW (widget);

  if (self->mode == WM_COMPARE_DIFFERENCE)
    snapshot_difference (self, snapshot);
  gtk_widget_snapshot_child (widget, GTK_WIDGET (self->before), snapshot);
  gtk_widget_snapshot_child (widget, GTK_WIDGET (self->after), snapshot);
  if (self->mode == WM_COMPARE_SEAM)
    snapshot_seam (self, snapshot);
  gtk_widget_snapshot_child (widget, self->handle, snapshot);
}

static void
wm_compare_view_measure (GtkWidget *widget, GtkOrientation orientation, int for_size,
                         int *minimum, int *natural, int *minimum_baseline,
                         int *natural_baseline)
{
  WmCompareView *self = WM_COMPARE_VIEW (widget);
  GtkWidget *children[] = { GTK_WIDGET (self->before), GTK_WIDGET (self->after),
                            self->handle };

  for (guint i = 0; i < G_N_ELEMENTS (children); i++)
    gtk_widget_measure (children[i], orientation, -1, NULL, NULL, NULL, NULL);
  /* Two photos of use, and the bar of the modes below. */
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? 240 : 200;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? 1000 : 600;
}

static void
wm_compare_view_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  WmCompareView *self = WM_COMPARE_VIEW (widget);
  gboolean side = self->mode == WM_COMPARE_SIDE || self->mode == WM_COMPARE_POINTS;
  int half = (width - GAP) / 2;
  GtkAllocation left = { 0, 0, side ? half : width, height };
  GtkAllocation right = { side ? width - half : 0, 0, side ? half : width, height };
  GtkAllocation handle = { round (self->seam * width) - WM_SEAM_TARGET / 2,
                           height * HANDLE_AT - WM_SEAM_TARGET / 2.0, WM_SEAM_TARGET,
                           WM_SEAM_TARGET };

  place_parts (self, width);
  self->following = TRUE;
  gtk_widget_size_allocate (GTK_WIDGET (self->before), &left, -1);
  gtk_widget_size_allocate (GTK_WIDGET (self->after), &right, -1);
  self->following = FALSE;
  if (gtk_widget_get_visible (self->handle))
    gtk_widget_size_allocate (self->handle, &handle, -1);
}

/* ---- actions
 * --------------------------------------------------------------------------- */

int
wm_compare_mode_parse (const char *word)
{
  for (int i = 0; i < WM_N_COMPARE_MODES; i++)
    if (g_strcmp0 (word, mode_words[i]) == 0)
      return i;
  return -1;
}

const char *
wm_compare_mode_word (WmCompareMode mode)
{
  return mode_words[mode];
}

static void
on_mode (GSimpleAction *action, GVariant *state, gpointer user_data)
{
  WmCompareView *self = user_data;
  int mode = wm_compare_mode_parse (g_variant_get_string (state, NULL));

  if (mode < 0)
    return;
  g_simple_action_set_state (action, state);
  self->mode = mode;
  self->shows_after = TRUE;
  show_mode (self);
  if (mode != WM_COMPARE_POINTS)
    on_view_changed (self->before, self);
  /* The seam is at hand at once, unless something is being typed. */
  if (mode == WM_COMPARE_SEAM && gtk_widget_get_mapped (GTK_WIDGET (self)))
    gtk_widget_grab_focus (self->handle);
  g_signal_emit (self, signals[MODE_CHANGED], 0);
}

static void
on_flip (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmCompareView *self = user_data;

  if (self->mode != WM_COMPARE_BLINK)
    {
      wm_compare_view_set_mode (self, WM_COMPARE_BLINK);
      return;
    }
  self->shows_after = !self->shows_after;
  show_blink (self);
  start_blink (self); /* a whole second for this one, too */
}

static void
on_seam (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmCompareView *self = user_data;
  const char *word = g_variant_get_string (parameter, NULL);
  double step = g_str_has_prefix (word, "far-") ? SEAM_STEP_FAR : SEAM_STEP;

  move_seam (self, self->seam + (g_str_has_suffix (word, "left") ? -step : step));
}

static void
on_map (GtkWidget *widget, WmCompareView *self)
{
  start_blink (self);
}

/* ---- overrides
 * ------------------------------------------------------------------------- */

static void
wm_compare_view_dispose (GObject *object)
{
  WmCompareView *self = WM_COMPARE_VIEW (object);

  g_clear_handle_id (&self->blink_id, g_source_remove);
  if (self->before != NULL)
    {
      gtk_widget_unparent (GTK_WIDGET (self->before));
      gtk_widget_unparent (GTK_WIDGET (self->after));
      gtk_widget_unparent (self->handle);
    }
  self->before = self->after = NULL;
  self->handle = NULL;
  g_clear_object (&self->actions);
  G_OBJECT_CLASS (wm_compare_view_parent_class)->dispose (object);
}

static void
wm_compare_view_class_init (WmCompareViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_compare_view_dispose;
  widget_class->snapshot = wm_compare_view_snapshot;
  widget_class->measure = wm_compare_view_measure;
  widget_class->size_allocate = wm_compare_view_size_allocate;
  gtk_widget_class_set_css_name (widget_class, "compare-view");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  signals[MODE_CHANGED] =
      g_signal_new ("mode-changed", WM_TYPE_COMPARE_VIEW, G_SIGNAL_RUN_LAST, 0, NULL,
                    NULL, NULL, G_TYPE_NONE, 0);
}

static WmCanvas *
add_canvas (WmCompareView *self)
{
  WmCanvas *canvas = wm_canvas_new ();

  wm_canvas_set_mode (canvas, WM_CANVAS_LOOKING);
  g_signal_connect (canvas, "view-changed", G_CALLBACK (on_view_changed), self);
  gtk_widget_set_parent (GTK_WIDGET (canvas), GTK_WIDGET (self));
  wm_action_add_keys (GTK_WIDGET (canvas), WM_PLACE_CANVAS);
  return canvas;
}

static void
wm_compare_view_init (WmCompareView *self)
{
  static const GActionEntry entries[] = { { "mode", NULL, "s", "'seam'", on_mode },
                                          { "flip", on_flip },
                                          { "seam", on_seam, "s" } };

  self->mode = WM_COMPARE_SEAM;
  self->seam = 0.5;
  self->shows_after = TRUE;
  self->before = add_canvas (self);
  self->after = add_canvas (self);
  self->handle = wm_seam_handle_new ();
  gtk_widget_set_parent (self->handle, GTK_WIDGET (self));
  wm_action_add_keys (self->handle, WM_PLACE_SEAM);
  g_signal_connect (self->handle, "pulled", G_CALLBACK (on_pulled), self);
  move_seam (self, self->seam);
  self->actions = g_simple_action_group_new ();
  g_action_map_add_action_entries (G_ACTION_MAP (self->actions), entries,
                                   G_N_ELEMENTS (entries), self);
  gtk_widget_insert_action_group (GTK_WIDGET (self), "compare",
                                  G_ACTION_GROUP (self->actions));
  g_signal_connect (self, "map", G_CALLBACK (on_map), self);
  g_signal_connect (self, "unmap", G_CALLBACK (on_map), self);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Before and after"), -1);
}

/* ---- public
 * ------------------------------------------------------------------------------- */

WmCanvas *
wm_compare_view_get_before (WmCompareView *self)
{
  return self->before;
}

WmCanvas *
wm_compare_view_get_after (WmCompareView *self)
{
  return self->after;
}

GActionGroup *
wm_compare_view_get_actions (WmCompareView *self)
{
  return G_ACTION_GROUP (self->actions);
}

void
wm_compare_view_set_layers (WmCompareView *self, WmTileLayer *before, int turns,
                            WmTileLayer *after, int after_turns)
{
  self->following = TRUE;
  wm_canvas_set_layer (self->before, before, turns);
  wm_canvas_set_layer (self->after, after, after_turns);
  self->following = FALSE;
  /* The difference is drawn here, not by the canvas that holds the layer. */
  if (before != NULL)
    g_signal_connect_object (before, "changed", G_CALLBACK (gtk_widget_queue_draw), self,
                             G_CONNECT_SWAPPED);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
wm_compare_view_redraw (WmCompareView *self)
{
  wm_canvas_follow (self->after, wm_canvas_get_view (self->after),
                    wm_canvas_is_fit (self->after));
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
wm_compare_view_set_mode (WmCompareView *self, WmCompareMode mode)
{
  g_action_group_change_action_state (G_ACTION_GROUP (self->actions), "mode",
                                      g_variant_new_string (mode_words[mode]));
}

WmCompareMode
wm_compare_view_get_mode (WmCompareView *self)
{
  return self->mode;
}

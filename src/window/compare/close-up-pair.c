/* close-up-pair.c: the place of a finding before and after, small, beside each other
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/compare/close-up-pair.h"

#include <glib/gi18n.h>
#include <math.h>

#include "report/growth.h"
#include "window/canvas/scale-bar.h"
#include "window/compare/close-up-show.h"

/* The box both are shown in: units of its own, in the shape of picture 04. */
#define BOX_WIDTH 640.0
#define BOX_HEIGHT 490.0

/* Height of a picture, px. */
#define HEIGHT 127

struct _WmCloseUpPair
{
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkLabel *heading, *growth;
  GtkWidget *sides[2], *bars[2];
  WmCanvas *canvases[2];
  GtkLabel *captions[2];
  double px_per_mm; /* of the box; NaN */
  char *shown;      /* what is shown, to be loaded once */
};

G_DEFINE_FINAL_TYPE (WmCloseUpPair, wm_close_up_pair, GTK_TYPE_WIDGET)

static void
on_view_changed (WmCanvas *canvas, WmCloseUpPair *self)
{
  int side = canvas == self->canvases[1];
  double px = self->px_per_mm * wm_canvas_get_view (canvas)->zoom;

  wm_scale_bar_set_px_per_mm (WM_SCALE_BAR (self->bars[side]), px);
  gtk_widget_set_visible (gtk_widget_get_parent (self->bars[side]), isfinite (px));
}

static GtkWidget *
make_side (WmCloseUpPair *self, int side)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *overlay = gtk_overlay_new ();
  GtkWidget *card = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  GtkWidget *caption = gtk_label_new (NULL);

  self->canvases[side] = wm_canvas_new ();
  wm_canvas_set_mode (self->canvases[side], WM_CANVAS_STILL);
  wm_canvas_set_radius (self->canvases[side], 9);
  gtk_accessible_update_property (
      GTK_ACCESSIBLE (self->canvases[side]), GTK_ACCESSIBLE_PROPERTY_LABEL,
      side == 0 ? _ ("Close-up before") : _ ("Close-up after"), -1);
  gtk_overlay_set_child (GTK_OVERLAY (overlay), GTK_WIDGET (self->canvases[side]));
  gtk_widget_set_size_request (overlay, 150, HEIGHT);
  gtk_widget_set_overflow (overlay, GTK_OVERFLOW_HIDDEN);
  gtk_widget_add_css_class (overlay, "close-up");
  self->bars[side] = g_object_new (WM_TYPE_SCALE_BAR, NULL);
  gtk_box_append (GTK_BOX (card), self->bars[side]);
  gtk_widget_add_css_class (card, "osd-card");
  gtk_widget_add_css_class (card, "scale-card");
  gtk_widget_add_css_class (card, "small");
  gtk_widget_set_halign (card, GTK_ALIGN_START);
  gtk_widget_set_valign (card, GTK_ALIGN_END);
  gtk_widget_set_can_target (card, FALSE);
  gtk_overlay_add_overlay (GTK_OVERLAY (overlay), card);
  g_signal_connect (self->canvases[side], "view-changed", G_CALLBACK (on_view_changed),
                    self);
  self->captions[side] = GTK_LABEL (caption);
  gtk_label_set_xalign (GTK_LABEL (caption), 0);
  gtk_label_set_ellipsize (GTK_LABEL (caption), PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (caption, "second-line");
  gtk_box_append (GTK_BOX (box), overlay);
  gtk_box_append (GTK_BOX (box), caption);
  gtk_widget_set_hexpand (box, TRUE);
  return box;
}

static WmMeasurement *
find_measurement (const WmFinding *finding, const char *moment)
{
  WmMeasurement *last = NULL;

  for (guint i = 0; i < finding->measurements->len; i++)
    {
      WmMeasurement *measurement = g_ptr_array_index (finding->measurements, i);

      if (g_strcmp0 (measurement->moment, moment) == 0
          && isfinite (measurement->value_mm))
        last = measurement;
    }
  return last;
}

static void
show_caption (WmCloseUpPair *self, int side, const WmFinding *finding)
{
  WmMeasurement *measured =
      find_measurement (finding, side == 0 ? WM_PHOTO_BEFORE : WM_PHOTO_AFTER);
  const char *word = side == 0 ? _ ("Before") : _ ("After");
  g_autofree char *text =
      measured != NULL ? g_strdup_printf (_ ("%s  %.2f mm"), word, measured->value_mm)
                       : g_strdup (word);

  gtk_label_set_text (self->captions[side], text);
}

static char *
describe (WmVisitData *data, const WmFinding *finding, const WmCloseUps *close)
{
  const WmCloseUp *both[2] = { &close->before, &close->after };
  GString *text = g_string_new (NULL);

  for (int i = 0; i < 2; i++)
    {
      const cairo_matrix_t *m = &both[i]->view.to_box;

      if (both[i]->is_there)
        g_string_append_printf (text, "%s %g %g %g %g %g %g %s;",
                                both[i]->view.photo->sha256, m->xx, m->xy, m->yx, m->yy,
                                m->x0, m->y0,
                                both[i]->mark != NULL ? both[i]->mark->points : "");
    }
  g_string_append_printf (text, "%d %d %d", (int)finding->check->number,
                          (int)finding->check->severity,
                          (int)finding->check->after_severity);
  return g_string_free (text, FALSE);
}

static void
show_heading (WmCloseUpPair *self, const WmFinding *finding, const WmCloseUps *close)
{
  g_autofree char *text = NULL;
  int number = (int)MAX (finding->check->number, 0);

  if (close->in_register)
    text = g_strdup_printf (_ ("Finding %d, same place, same scale"), number);
  else if (close->same_scale)
    text = g_strdup_printf (_ ("Finding %d, same scale"), number);
  else
    text = g_strdup_printf (_ ("Finding %d, close"), number);
  gtk_label_set_text (self->heading, text);
}

static void
show_growth (WmCloseUpPair *self, WmSession *session, WmVisitData *data,
             const WmFinding *finding)
{
  g_autofree char *words =
      wm_growth_words (wm_session_get_archive (session), data, finding->check, NULL);

  gtk_label_set_text (self->growth, words != NULL ? words : "");
  gtk_widget_set_visible (GTK_WIDGET (self->growth), words != NULL);
}

void
wm_close_up_pair_show (WmCloseUpPair *self, WmSession *session, WmVisitData *data,
                       const WmFinding *finding)
{
  const char *cache;
  WmCloseUps close;
  char *shown;

  gtk_widget_set_visible (GTK_WIDGET (self), finding != NULL);
  if (finding == NULL)
    return;
  cache = wm_archive_get_cache_folder (wm_session_get_archive (session));
  wm_close_ups_find (data, finding, BOX_WIDTH, BOX_HEIGHT, &close);
  show_heading (self, finding, &close);
  show_growth (self, session, data, finding);
  show_caption (self, 0, finding);
  show_caption (self, 1, finding);
  shown = describe (data, finding, &close);
  if (g_strcmp0 (shown, self->shown) == 0)
    {
      g_free (shown);
      return;
    }
  g_free (self->shown);
  self->shown = shown;
  self->px_per_mm =
      close.same_scale || !close.after.is_there ? wm_close_ups_px_per_mm (&close) : NAN;
  gtk_widget_set_visible (self->sides[0],
                          wm_close_up_show (self->canvases[0], data, cache, &close.before,
                                            BOX_WIDTH, BOX_HEIGHT,
                                            finding->check->severity, -1));
  gtk_widget_set_visible (self->sides[1],
                          wm_close_up_show (self->canvases[1], data, cache, &close.after,
                                            BOX_WIDTH, BOX_HEIGHT,
                                            finding->check->after_severity, -1));
  on_view_changed (self->canvases[0], self);
  on_view_changed (self->canvases[1], self);
}

static void
wm_close_up_pair_dispose (GObject *object)
{
  WmCloseUpPair *self = WM_CLOSE_UP_PAIR (object);

  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_pointer (&self->shown, g_free);
  G_OBJECT_CLASS (wm_close_up_pair_parent_class)->dispose (object);
}

static void
wm_close_up_pair_class_init (WmCloseUpPairClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_close_up_pair_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
wm_close_up_pair_init (WmCloseUpPair *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);

  self->px_per_mm = NAN;
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->heading = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_xalign (self->heading, 0);
  gtk_widget_add_css_class (GTK_WIDGET (self->heading), "group-label");
  self->growth = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_xalign (self->growth, 0);
  gtk_label_set_wrap (self->growth, TRUE);
  gtk_widget_add_css_class (GTK_WIDGET (self->growth), "fact-text");
  gtk_box_append (GTK_BOX (self->box), GTK_WIDGET (self->heading));
  gtk_box_set_homogeneous (GTK_BOX (row), TRUE);
  for (int side = 0; side < 2; side++)
    {
      self->sides[side] = make_side (self, side);
      gtk_box_append (GTK_BOX (row), self->sides[side]);
    }
  gtk_box_append (GTK_BOX (self->box), row);
  gtk_box_append (GTK_BOX (self->box), GTK_WIDGET (self->growth));
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

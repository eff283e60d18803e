/* desk-show.c: layers, cards, words over the photos
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>
#include <string.h>

#include "window/compare/desk-private.h"
#include "window/labels.h"

void
wm_desk_note (WmCompareDesk *self, const char *note)
{
  g_free (self->note);
  self->note = g_strdup (note);
}

static void
set_hint (WmCompareDesk *self, const char *text)
{
  gtk_label_set_text (self->hint, text != NULL ? text : "");
  gtk_widget_set_visible (self->hint_card, text != NULL);
}

/* ---- nothing to compare ----------------------------------------------------------- */

static gboolean
has_photo_of (WmCompareDesk *self, const char *moment)
{
  for (guint i = 0; self->data != NULL && i < self->data->photos->len; i++)
    if (g_strcmp0 (((WmPhoto *)self->data->photos->pdata[i])->moment, moment) == 0)
      return TRUE;
  return FALSE;
}

static void
show_empty (WmCompareDesk *self)
{
  gboolean before = has_photo_of (self, WM_PHOTO_BEFORE);
  gboolean after = has_photo_of (self, WM_PHOTO_AFTER);
  const char *title = _ ("No after photo yet");
  const char *text = _ ("Take it from the same side as the first.");

  if (before && after)
    {
      title = _ ("No two photos of the same view");
      text = _ ("Say in the strip of the inspection which view each photo shows, or "
                "take an after photo from the same side as the first.");
    }
  else if (after || !before)
    {
      title = after ? _ ("No before photo") : _ ("No photo yet");
      text = _ ("Photos before the work are added at take-in or inspection.");
    }
  adw_status_page_set_title (self->empty, title);
  adw_status_page_set_description (self->empty, text);
  gtk_widget_set_visible (self->empty_add, wm_desk_can_write (self));
  gtk_stack_set_visible_child_name (self->stack, "empty");
  self->shown_before = self->shown_after = WM_ID_NONE;
  g_clear_object (&self->before_layer);
  g_clear_object (&self->after_layer);
  self->is_laid = FALSE;
  wm_compare_view_set_layers (self->view, NULL, 0, NULL, 0);
}

/* ---- layers --------------------------------------------------------------------------
 */

static WmTileLayer *
load (WmCompareDesk *self, WmPhoto *photo)
{
  WmArchive *archive = wm_session_get_archive (self->session);
  g_autofree char *path = wm_archive_photo_path (archive, photo);
  g_autoptr (GError) error = NULL;
  WmTileLayer *layer = wm_tile_layer_new (path, photo->sha256,
                                          wm_archive_get_cache_folder (archive), &error);

  if (layer == NULL)
    wm_session_toast_error (self->session, error);
  return layer;
}

static gboolean
load_layers (WmCompareDesk *self, const WmPair *pair)
{
  const WmId *before_id = wm_record_get_id (WM_RECORD (pair->before));
  const WmId *after_id = wm_record_get_id (WM_RECORD (pair->after));

  if (wm_id_equal (before_id, &self->shown_before)
      && wm_id_equal (after_id, &self->shown_after))
    return FALSE;
  g_clear_object (&self->before_layer);
  g_clear_object (&self->after_layer);
  self->before_layer = load (self, pair->before);
  self->after_layer = load (self, pair->after);
  self->shown_before = *before_id;
  self->shown_after = *after_id;
  return TRUE;
}

/* The matrix that the photos are laid by, if they are. */
static gboolean
find_matrix (WmCompareDesk *self, const WmPair *pair, double matrix[9])
{
  if (self->by_hand)
    {
      memcpy (matrix, self->live, 9 * sizeof (double));
      return self->has_live && !self->wants_points;
    }
  return pair->pairing != NULL && wm_pairing_get_matrix (pair->pairing, matrix);
}

/* Lays the after photo where @matrix says; TRUE if the canvases must begin anew. */
static gboolean
lay (WmCompareDesk *self, const WmPair *pair, gboolean laid, const double matrix[9])
{
  gboolean anew = laid != self->is_laid;

  if (self->after_layer != NULL
      && !wm_tile_layer_set_frame (self->after_layer, laid ? matrix : NULL,
                                   (double)pair->before->width,
                                   (double)pair->before->height))
    laid = FALSE;
  self->is_laid = laid;
  if (laid)
    memcpy (self->matrix, matrix, sizeof self->matrix);
  return anew;
}

/* ---- words over the photos
 * --------------------------------------------------------------- */

static void
show_card (WmCompareDesk *self, WmPhoto *photo, GtkLabel *title, GtkLabel *facts,
           const char *fallback)
{
  g_autofree char *when =
      photo->taken_at_s != WM_UNKNOWN ? wm_label_moment (photo->taken_at_s) : NULL;
  g_autofree char *name = wm_desk_name_photo (self, photo);

  gtk_label_set_text (title, fallback);
  gtk_label_set_text (facts, when != NULL ? when : name);
}

static void
show_cards (WmCompareDesk *self, const WmPair *pair)
{
  gboolean same = wm_id_equal (&pair->before->visit_id, &pair->after->visit_id);
  g_autofree char *names = NULL;
  g_autofree char *before = wm_desk_name_photo (self, pair->before);

  show_card (self, pair->before, self->before_title, self->before_facts,
             same ? _ ("Before") : _ ("Last visit"));
  show_card (self, pair->after, self->after_title, self->after_facts,
             same ? _ ("After") : _ ("This visit"));
  names = g_strdup_printf (
      same ? _ ("Before and after: %s") : _ ("Last visit and this: %s"), before);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->view),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, names, -1);
  gtk_accessible_update_property (
      GTK_ACCESSIBLE (wm_compare_view_get_before (self->view)),
      GTK_ACCESSIBLE_PROPERTY_LABEL,
      same ? _ ("Photo before the work") : _ ("Photo of last visit"), -1);
  gtk_accessible_update_property (
      GTK_ACCESSIBLE (wm_compare_view_get_after (self->view)),
      GTK_ACCESSIBLE_PROPERTY_LABEL,
      same ? _ ("Photo after the work") : _ ("Photo of this visit"), -1);
}

/* What to do next with the points. */
static void
show_points_hint (WmCompareDesk *self)
{
  guint before = self->points[0]->len, after = self->points[1]->len;
  guint pairs = MIN (before, after);
  g_autofree char *text = NULL;

  if (!self->wants_points)
    {
      set_hint (self, NULL);
      return;
    }
  if (before > after)
    text = g_strdup_printf (_ ("Point %u: now the same place on the after photo."),
                            after + 1);
  else if (after > before)
    text = g_strdup_printf (_ ("Point %u: now the same place on the before photo."),
                            before + 1);
  else if (pairs < WM_POINTS_LEAST)
    text =
        g_strdup_printf (_ ("Click a place that is on both photos: point %u of %d. Far "
                            "apart is best."),
                         pairs + 1, WM_POINTS_LEAST);
  else if (!self->has_live)
    text = g_strdup (_ ("These places lie on one line, or two are exchanged. Drag one "
                        "elsewhere."));
  else if (pairs < WM_POINTS_MOST)
    text = g_strdup (_ ("Three are enough; a fourth also follows a tilt. Drag a point to "
                        "mend it."));
  set_hint (self, text);
}

static void
show_hint (WmCompareDesk *self, const WmPair *pair)
{
  if (self->by_hand)
    show_points_hint (self);
  else
    set_hint (self, NULL);
}

/* ---- all of it
 * ------------------------------------------------------------------------------ */

static void
show_canvases (WmCompareDesk *self)
{
  gboolean points = self->by_hand && self->wants_points;
  gboolean marking =
      points || (wm_desk_can_write (self) && self->is_laid && !self->by_hand);

  wm_canvas_set_mode (wm_compare_view_get_before (self->view),
                      points ? WM_CANVAS_MARKING : WM_CANVAS_LOOKING);
  wm_canvas_set_mode (wm_compare_view_get_after (self->view),
                      marking ? WM_CANVAS_MARKING : WM_CANVAS_LOOKING);
}

static void
show_modes (WmCompareDesk *self)
{
  GtkWidget *buttons[] = { self->mode_side, self->mode_seam, self->mode_blink,
                           self->mode_difference };
  gboolean can = self->is_laid || (self->by_hand && self->has_live);

  for (guint i = 0; i < G_N_ELEMENTS (buttons); i++)
    gtk_widget_set_sensitive (buttons[i], can);
}

void
wm_desk_show (WmCompareDesk *self)
{
  const WmPair *pair = wm_desk_get_pair (self);
  double matrix[9] = { 0 };
  gboolean laid, anew;
  WmCompareMode mode;

  if (pair == NULL)
    {
      show_empty (self);
      return;
    }
  self->showing = TRUE;
  laid = find_matrix (self, pair, matrix);
  anew = load_layers (self, pair);
  anew |= lay (self, pair, laid, matrix);
  mode = self->is_laid ? self->wanted_mode : WM_COMPARE_POINTS;
  if (wm_compare_view_get_mode (self->view) != mode)
    wm_compare_view_set_mode (self->view, mode);
  if (anew)
    wm_compare_view_set_layers (
        self->view, self->before_layer, (int)pair->before->quarter_turns,
        self->after_layer,
        (int)(self->is_laid ? pair->before->quarter_turns : pair->after->quarter_turns));
  else
    wm_compare_view_redraw (self->view);
  gtk_stack_set_visible_child_name (self->stack, "compare");
  show_canvases (self);
  show_modes (self);
  show_cards (self, pair);
  show_hint (self, pair);
  if (self->by_hand && self->wants_points)
    wm_desk_show_points (self);
  else
    wm_desk_show_marks (self);
  self->showing = FALSE;
}

gboolean
wm_compare_desk_get_live (WmCompareDesk *self, WmTileLayer **before, WmTileLayer **after,
                          int *turns)
{
  const WmPair *pair = wm_desk_get_pair (self);

  if (pair == NULL || !self->by_hand || !self->has_live)
    return FALSE;
  if (self->live_layers[0] == NULL)
    self->live_layers[0] = load (self, pair->before);
  if (self->live_layers[1] == NULL)
    self->live_layers[1] = load (self, pair->after);
  *before = self->live_layers[0];
  *after = self->live_layers[1];
  *turns = (int)pair->before->quarter_turns;
  return *before != NULL && *after != NULL
         && wm_tile_layer_set_frame (*after, self->live, (double)pair->before->width,
                                     (double)pair->before->height);
}

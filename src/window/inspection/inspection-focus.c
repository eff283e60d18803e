/* inspection-focus.c: is the marked place sharp, and which part of the photo is?
 *
 * A hint beside the photo's verdict and a tint over the photo, both made off the main
 * thread; neither ever stops anybody.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>
#include <math.h>

#include "photo/judge.h"
#include "photo/load.h"
#include "record/points.h"
#include "window/inspection/inspection-private.h"

/* Looked at round a place: a fortieth of the photo's longer side to each side, about a
 * claw of a ring that fills the photo (our choice). */
#define PLACE_SHARE 40.0

/* The tint is judged on a view of this size in blocks of this many of its px: 100 of them
 * along the photo, each with room for the dozen edges a verdict takes (our choice). */
#define TINT_SIDE 2400
#define TINT_BLOCK 24

/* The gauge colour of the look book, #56B4E9, so thick that gold stays gold under it. */
#define TINT_BLUE 0xE9
#define TINT_GREEN 0xB4
#define TINT_RED 0x56
#define TINT_ALPHA 0.45

/* View px: the photo's card (15 from the top, a line of text) and a gap. */
#define CARD_BOTTOM 54

typedef struct
{
  char *path;
  WmPoint place;
  double radius;
  WmId id; /* of the mark, or of the photo */
} Job;

static void
job_free (gpointer data)
{
  Job *job = data;

  g_free (job->path);
  g_free (job);
}

static Job *
make_job (WmInspectionPage *self, WmPhoto *photo, const WmId *id)
{
  Job *job = g_new0 (Job, 1);

  job->path = wm_archive_photo_path (wm_session_get_archive (self->session), photo);
  job->id = *id;
  return job;
}

/* ---- the place of a mark -------------------------------------------------------- */

/* Runs on a worker. */
static void
judge_place (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Job *job = data;
  double focus = NAN;

  /* What can not be judged says nothing. */
  if (!wm_photo_focus_at (job->path, job->place, job->radius, &focus, cancellable, NULL))
    focus = NAN;
  g_task_return_boolean (task, wm_focus_is_blurred (focus));
}

static void
say_place (WmInspectionPage *self, const char *text)
{
  gtk_label_set_text (self->place_focus, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->place_focus), text != NULL);
}

static void
on_place_judged (GObject *source, GAsyncResult *result, gpointer user_data)
{
  WmInspectionPage *self = WM_INSPECTION_PAGE (source);
  Job *job = g_task_get_task_data (G_TASK (result));
  gboolean is_blurred = g_task_propagate_boolean (G_TASK (result), NULL);

  if (self->session == NULL || !wm_id_equal (&job->id, &self->judged_mark))
    return;
  say_place (self, is_blurred ? _ ("The marked place is not sharp: rest the camera, back "
                                   "off a little and crop.")
                              : NULL);
}

void
wm_inspection_judge_place (WmInspectionPage *self, WmMark *mark)
{
  WmPhoto *photo = wm_inspection_get_photo (self);
  g_autoptr (GArray) points = mark != NULL ? wm_points_parse (mark->points) : NULL;
  g_autoptr (GTask) task = NULL;
  Job *job;

  say_place (self, NULL);
  self->judged_mark = mark != NULL ? *wm_record_get_id (WM_RECORD (mark)) : WM_ID_NONE;
  if (photo == NULL || points == NULL || points->len == 0
      || !wm_id_equal (&mark->photo_id, &self->photo_id))
    return;
  job = make_job (self, photo, &self->judged_mark);
  for (guint i = 0; i < points->len; i++)
    {
      job->place.x += g_array_index (points, WmPoint, i).x / points->len;
      job->place.y += g_array_index (points, WmPoint, i).y / points->len;
    }
  job->radius = MAX (photo->width, photo->height) / PLACE_SHARE;
  task = g_task_new (self, NULL, on_place_judged, NULL);
  g_task_set_task_data (task, job, job_free);
  g_task_run_in_thread (task, judge_place);
}

/* ---- the tint ------------------------------------------------------------------- */

/* Runs on a worker. */
static void
make_tint (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Job *job = data;
  GError *error = NULL;
  g_autoptr (WmPixels) pixels =
      wm_photo_load_fit (job->path, TINT_SIDE, TINT_SIDE, cancellable, &error);
  g_autofree guint8 *map = NULL;
  WmPixels *tint;
  int columns, rows;

  if (pixels == NULL)
    {
      g_task_return_error (task, error);
      return;
    }
  map = wm_focus_map (pixels, TINT_BLOCK, &columns, &rows);
  tint = wm_pixels_new (columns, rows);
  for (int i = 0; tint != NULL && i < columns * rows; i++)
    {
      guint8 *p = tint->data + 4 * (gsize)i;
      double alpha =
          map[i] > 0 && !wm_focus_is_soft ((map[i] - 1) / 254.0) ? TINT_ALPHA : 0;

      p[0] = (guint8)lround (TINT_BLUE * alpha);
      p[1] = (guint8)lround (TINT_GREEN * alpha);
      p[2] = (guint8)lround (TINT_RED * alpha);
      p[3] = (guint8)lround (255 * alpha);
    }
  g_task_return_pointer (task, tint, (GDestroyNotify)wm_pixels_unref);
}

static void
show_tint_words (WmInspectionPage *self)
{
  wm_inspection_hint (
      self, self->shows_tint ? _ ("Blue: sharp there. No colour: not sharp, or nothing "
                                  "to judge it by. F ends.")
                             : NULL);
}

static void
on_tint_made (GObject *source, GAsyncResult *result, gpointer user_data)
{
  WmInspectionPage *self = WM_INSPECTION_PAGE (source);
  Job *job = g_task_get_task_data (G_TASK (result));
  g_autoptr (WmPixels) tint = g_task_propagate_pointer (G_TASK (result), NULL);
  WmTileLayer *layer = wm_canvas_get_layer (self->canvas);

  if (tint == NULL || layer == NULL || !self->shows_tint
      || !wm_id_equal (&job->id, &self->photo_id))
    return;
  wm_tile_layer_set_tint (layer, tint);
}

void
wm_inspection_show_tint (WmInspectionPage *self)
{
  WmTileLayer *layer = wm_canvas_get_layer (self->canvas);
  WmPhoto *photo = wm_inspection_get_photo (self);
  g_autoptr (GTask) task = NULL;

  if (layer == NULL || photo == NULL || self->session == NULL)
    return;
  if (!self->shows_tint)
    {
      wm_tile_layer_set_tint (layer, NULL);
      return;
    }
  task = g_task_new (self, NULL, on_tint_made, NULL);
  g_task_set_task_data (task, make_job (self, photo, &self->photo_id), job_free);
  g_task_run_in_thread (task, make_tint);
}

static void
on_tint (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmInspectionPage *self = user_data;
  GVariant *state = g_variant_new_boolean (!self->shows_tint);

  self->shows_tint = !self->shows_tint;
  g_simple_action_set_state (action, state);
  wm_inspection_show_tint (self);
  show_tint_words (self);
}

void
wm_inspection_init_focus (WmInspectionPage *self)
{
  static const GActionEntry entries[] = { { "focus-tint", on_tint, NULL, "false" } };

  g_action_map_add_action_entries (G_ACTION_MAP (self->photo_actions), entries,
                                   G_N_ELEMENTS (entries), self);
  self->place_focus = GTK_LABEL (gtk_label_new (NULL));
  /* Under the photo's own card, whose facts it would squeeze. */
  gtk_widget_set_halign (GTK_WIDGET (self->place_focus), GTK_ALIGN_START);
  gtk_widget_set_valign (GTK_WIDGET (self->place_focus), GTK_ALIGN_START);
  gtk_widget_set_margin_start (GTK_WIDGET (self->place_focus), 15);
  gtk_widget_set_margin_end (GTK_WIDGET (self->place_focus), 15);
  gtk_widget_set_margin_top (GTK_WIDGET (self->place_focus), CARD_BOTTOM);
  gtk_widget_set_can_target (GTK_WIDGET (self->place_focus), FALSE);
  gtk_label_set_wrap (self->place_focus, TRUE);
  gtk_label_set_xalign (self->place_focus, 0);
  gtk_widget_add_css_class (GTK_WIDGET (self->place_focus), "osd-card");
  gtk_widget_add_css_class (GTK_WIDGET (self->place_focus), "photo-card");
  gtk_widget_set_visible (GTK_WIDGET (self->place_focus), FALSE);
  gtk_overlay_add_overlay (self->overlay, GTK_WIDGET (self->place_focus));
  wm_canvas_add_cover (self->canvas, GTK_WIDGET (self->place_focus));
}

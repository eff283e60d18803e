/* inspection-spans.c: how long a span on the photo is, and how sure its ends are
 *
 * Reckoned anew whenever the span, or the scale of its photo, changes; a reading that was
 * taken from it follows in the same edit. An end is as sure as it was found: snapped to
 * the metal, or placed by hand at the zoom of that moment.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>
#include <math.h>

#include "record/points.h"
#include "report/photo-scale.h"
#include "window/inspection/inspection-private.h"
#include "window/measuring/snap-task.h"

/* Kept points are rounded to a hundredth. */
#define SAME_PX 0.02

static gboolean
is_at (WmPoint a, WmPoint b)
{
  return fabs (a.x - b.x) <= SAME_PX && fabs (a.y - b.y) <= SAME_PX;
}

/* ---- lengths ------------------------------------------------------------------------
 */

gboolean
wm_inspection_read_span (WmMark *mark, WmPoint ends[2])
{
  g_autoptr (GArray) points = NULL;

  if (mark == NULL || g_strcmp0 (mark->shape, WM_MARK_SPAN) != 0)
    return FALSE;
  points = wm_points_parse (mark->points);
  if (points == NULL || points->len != 2)
    return FALSE;
  ends[0] = g_array_index (points, WmPoint, 0);
  ends[1] = g_array_index (points, WmPoint, 1);
  return TRUE;
}

/* How sure each end is: as it was found, or as a hand sets it. */
void
wm_inspection_get_ends (WmInspectionPage *self, WmMark *mark, const WmPoint at[2],
                        WmSpanEnds *out)
{
  const WmSpanEnds *known =
      g_hash_table_lookup (self->span_ends, wm_record_get_id (WM_RECORD (mark)));

  for (int i = 0; i < 2; i++)
    {
      out->at[i] = out->placed[i] = at[i];
      out->u_px[i] = wm_snap_hand_u_px (wm_canvas_get_pixel_zoom (self->canvas));
      out->is_snapped[i] = FALSE;
      if (known != NULL && is_at (known->at[i], at[i]))
        {
          out->u_px[i] = known->u_px[i];
          out->is_snapped[i] = known->is_snapped[i];
          out->placed[i] = known->placed[i];
        }
    }
}

/* One figure for both ends: the same sum of squares. */
double
wm_inspection_u_end_px (const WmSpanEnds *ends)
{
  return hypot (ends->u_px[0], ends->u_px[1]) / sqrt (2.0);
}

WmResult
wm_inspection_measure_span (WmInspectionPage *self, WmMark *mark, WmSpanEnds *ends,
                            WmLength *length)
{
  WmPhoto *photo = wm_inspection_find (self->photos, &mark->photo_id);
  WmPhotoScale scale;
  WmPoint at[2];

  if (photo == NULL || !wm_inspection_read_span (mark, at)
      || !wm_photo_scale_read (photo, &scale))
    return WM_MISSING;
  wm_inspection_get_ends (self, mark, at, ends);
  return wm_photo_scale_measure (&scale, wm_inspection_get_camera (self), at[0], at[1],
                                 wm_inspection_u_end_px (ends), length, NULL);
}

WmMeasurement *
wm_inspection_find_of_mark (WmInspectionPage *self, const WmId *mark_id)
{
  for (guint i = self->measurements->len; i-- > 0;)
    {
      WmMeasurement *one = g_ptr_array_index (self->measurements, i);

      if (wm_id_equal (&one->mark_id, mark_id))
        return one;
    }
  return NULL;
}

char *
wm_inspection_describe_span (WmInspectionPage *self, WmMark *mark)
{
  WmMeasurement *kept =
      wm_inspection_find_of_mark (self, wm_record_get_id (WM_RECORD (mark)));
  WmSpanEnds ends;
  WmLength length;

  if (kept != NULL)
    return wm_worn_value_text (kept->value_mm, kept->uncertainty_mm);
  if (wm_inspection_measure_span (self, mark, &ends, &length) != WM_OK)
    return NULL;
  return wm_worn_value_text (length.value_mm, length.u_mm);
}

/* ---- readings that follow ------------------------------------------------------------
 */

/* As paper prints it, after another sentence. Takes @words. */
static char *
make_sentence (char *words)
{
  g_autofree char *own = words, *initial = NULL;

  if (own == NULL)
    return NULL;
  initial = g_utf8_strup (own, g_utf8_next_char (own) - own);
  return g_strconcat (initial, g_utf8_next_char (own), ".", NULL);
}

void
wm_inspection_put_suggestion (WmInspectionPage *self, WmEdit *edit,
                              WmMeasurement *reading)
{
  WmCheck *shown = wm_inspection_find (self->checks, &reading->check_id);
  WmTrade *trade = wm_session_get_trade (self->session);
  g_autoptr (WmCheck) check = NULL;
  g_autofree char *reason = NULL;
  WmWornInput input;
  WmWorn wear;

  if (shown == NULL || g_strcmp0 (reading->moment, WM_PHOTO_AFTER) == 0)
    return;
  wm_worn_input_take (&input, reading, wm_session_get_piece (self->session), trade,
                      trade != NULL ? wm_trade_find_item (trade, shown->item) : NULL);
  wm_worn_reckon (&input, &wear);
  reason = make_sentence (wm_worn_reason (&wear));
  check = wm_session_copy (self->session, shown);
  check->suggested = wear.has_suggestion ? wear.severity : WM_SEVERITY_NOT_LOOKED_AT;
  wm_record_set_text (WM_RECORD (check), "suggested-reason", reason);
  if (self->checks_are_new || !wm_record_equal (WM_RECORD (check), WM_RECORD (shown)))
    wm_inspection_put_check (self, edit, check);
}

void
wm_inspection_remeasure (WmInspectionPage *self, WmEdit *edit, WmMark *mark)
{
  WmMeasurement *kept =
      wm_inspection_find_of_mark (self, wm_record_get_id (WM_RECORD (mark)));
  g_autoptr (WmMeasurement) now = NULL;
  WmSpanEnds ends;
  WmLength length;

  if (kept == NULL || wm_inspection_measure_span (self, mark, &ends, &length) != WM_OK)
    return;
  now = wm_session_copy (self->session, kept);
  now->value_mm = length.value_mm;
  now->uncertainty_mm = length.u_mm;
  wm_record_set_text (WM_RECORD (now), "ends",
                      ends.is_snapped[0] && ends.is_snapped[1] ? "edge" : "hand");
  if (wm_record_equal (WM_RECORD (now), WM_RECORD (kept)))
    return;
  wm_session_put (self->session, edit, now);
  wm_inspection_put_suggestion (self, edit, now);
  wm_inspection_replace (self->measurements, now);
}

void
wm_inspection_remeasure_photo (WmInspectionPage *self, WmEdit *edit, WmPhoto *photo)
{
  for (guint i = 0; i < self->marks->len; i++)
    {
      WmMark *mark = g_ptr_array_index (self->marks, i);

      if (wm_id_equal (&mark->photo_id, wm_record_get_id (WM_RECORD (photo))))
        wm_inspection_remeasure (self, edit, mark);
    }
}

/* ---- snapping
 * ------------------------------------------------------------------------------ */

typedef struct
{
  WmInspectionPage *page;
  WmId mark_id;
  WmPoint placed[2];
  gboolean is_unworn;
} Snapping;

void
wm_inspection_move_ends (WmInspectionPage *self, WmMark *shown, const WmPoint ends[2],
                         const char *label)
{
  g_autoptr (WmMark) mark = wm_session_copy (self->session, shown);
  g_autofree char *points = wm_points_format (ends, 2);
  WmEdit *edit = wm_session_begin (self->session, label);

  wm_record_set_text (WM_RECORD (mark), "points", points);
  wm_session_put (self->session, edit, mark);
  wm_inspection_replace (self->marks, mark);
  wm_inspection_remeasure (self, edit, mark);
  wm_inspection_commit (self, edit);
}

/* A width on an unworn place is what the worn one was made as. */
void
wm_inspection_take_unworn (WmInspectionPage *self, WmMark *mark)
{
  WmSpanEnds ends;
  WmLength length;

  if (wm_inspection_measure_span (self, mark, &ends, &length) == WM_OK)
    wm_measuring_pane_set_as_made (
        self->measuring_pane, wm_value (length.value_mm, length.u_mm), "unworn place");
}

static void
keep_ends (WmInspectionPage *self, Snapping *job, const WmSnappedEnd found[2])
{
  WmSpanEnds *ends = g_new0 (WmSpanEnds, 1);

  for (int i = 0; i < 2; i++)
    {
      ends->at[i] = found[i].at;
      ends->placed[i] = job->placed[i];
      ends->u_px[i] = found[i].u_px;
      ends->is_snapped[i] = found[i].is_snapped;
    }
  g_hash_table_replace (self->span_ends, g_memdup2 (&job->mark_id, sizeof (WmId)), ends);
}

static void
on_snapped (GObject *source, GAsyncResult *result, gpointer user_data)
{
  Snapping *job = user_data;
  g_autoptr (WmInspectionPage) self = job->page;
  g_autoptr (GError) error = NULL;
  WmSnappedEnd found[2];
  gboolean has = wm_snap_finish (result, found, &error);
  WmMark *mark = wm_inspection_find (self->marks, &job->mark_id);
  WmPoint now[2];

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    {
      g_free (job);
      return;
    }
  g_clear_object (&self->snapping);
  /* A late answer for a span that was moved or taken away is none. */
  if (wm_inspection_read_span (mark, now) && is_at (now[0], job->placed[0])
      && is_at (now[1], job->placed[1]) && self->session != NULL)
    {
      if (has)
        {
          WmPoint ends[2] = { found[0].at, found[1].at };

          keep_ends (self, job, found);
          if (!is_at (ends[0], now[0]) || !is_at (ends[1], now[1]))
            wm_inspection_move_ends (self, mark, ends,
                                     N_ ("Snap to the edge of the metal"));
          mark = wm_inspection_find (self->marks, &job->mark_id);
        }
      else if (error != NULL)
        wm_session_toast_error (self->session, error);
      if (job->is_unworn)
        wm_inspection_take_unworn (self, mark);
    }
  g_free (job);
  wm_inspection_show_marks (self);
  wm_inspection_show_measuring (self);
}

void
wm_inspection_snap (WmInspectionPage *self, WmMark *mark, gboolean is_unworn)
{
  WmPhoto *photo = wm_inspection_find (self->photos, &mark->photo_id);
  g_autofree char *path = NULL;
  Snapping *job;
  WmPoint ends[2];

  if (photo == NULL || !wm_inspection_read_span (mark, ends))
    return;
  if (self->snapping != NULL)
    g_cancellable_cancel (self->snapping);
  g_clear_object (&self->snapping);
  self->snapping = g_cancellable_new ();
  path = wm_archive_photo_path (wm_session_get_archive (self->session), photo);
  job = g_new0 (Snapping, 1);
  job->page = g_object_ref (self);
  job->mark_id = *wm_record_get_id (WM_RECORD (mark));
  job->placed[0] = ends[0];
  job->placed[1] = ends[1];
  job->is_unworn = is_unworn;
  wm_snap_async (path, ends[0], ends[1], wm_canvas_get_pixel_zoom (self->canvas),
                 self->snapping, on_snapped, job);
}

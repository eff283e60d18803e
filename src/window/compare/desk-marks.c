/* desk-marks.c: marks of both photos, and those carried over
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>
#include <math.h>

#include "record/points.h"
#include "window/compare/desk-private.h"
#include "window/glyph.h"
#include "window/inspection/checks.h"

static const char *const shape_words[] = {
  [WM_SHAPE_SPOT] = WM_MARK_SPOT,
  [WM_SHAPE_LINE] = WM_MARK_LINE,
  [WM_SHAPE_OUTLINE] = WM_MARK_OUTLINE,
  [WM_SHAPE_SPAN] = WM_MARK_SPAN,
};

static gboolean
is_waiting (WmMark *mark)
{
  return !mark->confirmed && !wm_id_is_none (&mark->carried_from);
}

static gboolean
is_after (WmCompareDesk *self, WmMark *mark)
{
  const WmPair *pair = wm_desk_get_pair (self);

  return pair != NULL
         && wm_id_equal (&mark->photo_id, wm_record_get_id (WM_RECORD (pair->after)));
}

static WmMark *
find_mark (WmCompareDesk *self, const WmId *id)
{
  for (guint i = 0; i < self->marks->len; i++)
    if (wm_id_equal (wm_record_get_id (self->marks->pdata[i]), id))
      return self->marks->pdata[i];
  return NULL;
}

static WmCheck *
find_check (WmCompareDesk *self, const WmId *id)
{
  for (guint i = 0; self->data != NULL && i < self->data->checks->len; i++)
    if (wm_id_equal (wm_record_get_id (self->data->checks->pdata[i]), id))
      return self->data->checks->pdata[i];
  return NULL;
}

void
wm_desk_load_marks (WmCompareDesk *self)
{
  const WmPair *pair = wm_desk_get_pair (self);
  WmPhoto *photos[2] = { pair != NULL ? pair->before : NULL,
                         pair != NULL ? pair->after : NULL };

  g_ptr_array_set_size (self->marks, 0);
  for (int i = 0; i < 2 && photos[i] != NULL; i++)
    {
      g_autoptr (GPtrArray) marks =
          wm_archive_list (wm_session_get_archive (self->session), WM_KIND_MARK,
                           "photo_id", wm_record_get_id (WM_RECORD (photos[i])), NULL);

      for (guint k = 0; marks != NULL && k < marks->len; k++)
        g_ptr_array_add (self->marks, g_object_ref (marks->pdata[k]));
    }
}

guint
wm_desk_count_waiting (WmCompareDesk *self)
{
  guint n = 0;

  for (guint i = 0; i < self->marks->len; i++)
    n += is_waiting (self->marks->pdata[i]) && is_after (self, self->marks->pdata[i]);
  return n;
}

/* ---- showing ------------------------------------------------------------------------
 */

static char *
make_name (WmCheck *check, WmSeverity severity, gboolean waiting)
{
  const char *heading = check != NULL ? wm_trade_text (wm_check_heading (check)) : NULL;

  if (heading == NULL)
    return g_strdup (waiting ? _ ("Carried mark without a check")
                             : _ ("Mark without a check"));
  if (waiting)
    return g_strdup_printf (_ ("Carried mark %d, %s, not accepted yet"),
                            (int)check->number, heading);
  return g_strdup_printf (_ ("Mark %d, %s, %s"), (int)check->number, heading,
                          wm_severity_word (severity));
}

static WmShape
parse_shape (const char *word)
{
  for (guint i = 0; i < G_N_ELEMENTS (shape_words); i++)
    if (g_strcmp0 (word, shape_words[i]) == 0)
      return i;
  return WM_SHAPE_SPOT;
}

/* The severity of a mark of the last visit is that visit's. */
static void
take_check (WmCompareDesk *self, WmMarkValue *value, WmMark *mark, gboolean after)
{
  const WmPair *pair = wm_desk_get_pair (self);
  WmPhoto *photo = after ? pair->after : pair->before;
  g_autoptr (WmCheck) other = NULL;
  WmCheck *check = find_check (self, &mark->check_id);

  if (check == NULL && !wm_id_is_none (&mark->check_id))
    check = other = wm_archive_get (wm_session_get_archive (self->session), WM_KIND_CHECK,
                                    &mark->check_id, NULL);
  if (check != NULL)
    {
      value->severity = g_strcmp0 (photo->moment, WM_PHOTO_AFTER) == 0
                            ? check->after_severity
                            : check->severity;
      value->number = (int)MAX (check->number, 0);
    }
  value->name = make_name (check, value->severity, is_waiting (mark));
}

static WmMarkValue *
make_value (WmCompareDesk *self, WmMark *mark, gboolean after)
{
  g_autoptr (GArray) points = wm_points_parse (mark->points);
  WmShape shape = parse_shape (mark->shape);
  WmMarkValue *value;

  if (points == NULL || points->len < wm_mark_value_least_points (shape))
    return NULL;
  for (guint i = 0; after && self->is_laid && i < points->len; i++)
    {
      WmPoint *point = &g_array_index (points, WmPoint, i);

      *point = wm_align_map (self->matrix, *point);
    }
  value = wm_mark_value_new (shape, (const WmPoint *)points->data, points->len);
  value->id = *wm_record_get_id (WM_RECORD (mark));
  value->is_unconfirmed = is_waiting (mark) || wm_id_is_none (&mark->check_id);
  take_check (self, value, mark, after);
  return value;
}

static void
select_mark (WmCompareDesk *self, WmCanvas *canvas, gboolean after)
{
  for (guint i = 0; i < self->marks->len; i++)
    {
      WmMark *mark = self->marks->pdata[i];

      if (is_after (self, mark) != after || wm_id_is_none (&self->check_id)
          || !wm_id_equal (&mark->check_id, &self->check_id))
        continue;
      wm_canvas_set_selected (canvas, wm_record_get_id (WM_RECORD (mark)));
      return;
    }
  wm_canvas_set_selected (canvas, NULL);
}

void
wm_desk_show_marks (WmCompareDesk *self)
{
  WmCanvas *canvases[2] = { wm_compare_view_get_before (self->view),
                            wm_compare_view_get_after (self->view) };

  for (int side = 0; side < 2; side++)
    {
      g_autoptr (GPtrArray) values =
          g_ptr_array_new_with_free_func ((GDestroyNotify)wm_mark_value_free);

      for (guint i = 0; i < self->marks->len && !self->by_hand; i++)
        {
          WmMark *mark = self->marks->pdata[i];
          WmMarkValue *value = is_after (self, mark) == (side == 1)
                                   ? make_value (self, mark, side == 1)
                                   : NULL;

          if (value != NULL)
            g_ptr_array_add (values, value);
        }
      wm_canvas_set_marks (canvases[side], values);
      select_mark (self, canvases[side], side == 1);
    }
}

/* ---- changing
 * -------------------------------------------------------------------------- */

/* Points of the frame back on the after photo. */
static gboolean
take_points (WmCompareDesk *self, WmMark *mark, const WmMarkValue *value)
{
  const WmPair *pair = wm_desk_get_pair (self);
  g_autoptr (GArray) points = g_array_copy (value->points);
  g_autofree char *text = NULL;
  double inverse[9];

  if (self->is_laid && !wm_align_invert (self->matrix, inverse))
    return FALSE;
  for (guint i = 0; i < points->len; i++)
    {
      WmPoint *point = &g_array_index (points, WmPoint, i);

      if (self->is_laid)
        *point = wm_align_map (inverse, *point);
      if (!isfinite (point->x) || !isfinite (point->y))
        return FALSE;
      point->x = CLAMP (point->x, 0, (double)pair->after->width);
      point->y = CLAMP (point->y, 0, (double)pair->after->height);
    }
  text = wm_points_format ((const WmPoint *)points->data, points->len);
  wm_record_set_text (WM_RECORD (mark), "shape", shape_words[value->shape]);
  wm_record_set_text (WM_RECORD (mark), "points", text);
  return TRUE;
}

/* A check that was called sound before the place was looked at is open again; one that
 * waits is tied to the same item of today's list. */
static void
reopen (WmCompareDesk *self, WmEdit *edit, WmMark *mark)
{
  const WmPair *pair = wm_desk_get_pair (self);
  WmCheck *shown = find_check (self, &mark->check_id);
  g_autoptr (WmCheck) check = NULL;

  if (shown == NULL || wm_id_equal (&pair->before->visit_id, &pair->after->visit_id)
      || (shown->severity != WM_SEVERITY_SOUND
          && shown->severity != WM_SEVERITY_NOT_PRESENT))
    return;
  check = wm_session_copy (self->session, shown);
  check->severity = WM_SEVERITY_NOT_LOOKED_AT;
  check->answered_at_s = WM_UNKNOWN;
  check->answered_by = WM_ID_NONE;
  wm_session_put (self->session, edit, check);
}

/* Replaces the mark at once, before it is on disk. */
static void
take_mark (WmCompareDesk *self, WmMark *mark)
{
  for (guint i = 0; i < self->marks->len; i++)
    if (wm_id_equal (wm_record_get_id (self->marks->pdata[i]),
                     wm_record_get_id (WM_RECORD (mark))))
      {
        g_object_unref (self->marks->pdata[i]);
        self->marks->pdata[i] = g_object_ref (mark);
        return;
      }
  g_ptr_array_add (self->marks, g_object_ref (mark));
}

static WmMark *
find_next_waiting (WmCompareDesk *self)
{
  const WmId *selected = wm_canvas_get_selected (wm_compare_view_get_after (self->view));
  WmMark *chosen = find_mark (self, selected);

  if (chosen != NULL && is_waiting (chosen) && is_after (self, chosen))
    return chosen;
  for (guint i = 0; i < self->marks->len; i++)
    if (is_waiting (self->marks->pdata[i]) && is_after (self, self->marks->pdata[i]))
      return self->marks->pdata[i];
  return NULL;
}

static void
go_to (WmCompareDesk *self, WmMark *mark)
{
  WmCanvas *after = wm_compare_view_get_after (self->view);

  if (mark == NULL)
    return;
  if (!wm_id_is_none (&mark->check_id))
    wm_desk_choose_finding (self, &mark->check_id);
  wm_canvas_set_selected (after, wm_record_get_id (WM_RECORD (mark)));
  wm_canvas_show_mark (after, wm_record_get_id (WM_RECORD (mark)));
}

void
wm_desk_accept (WmCompareDesk *self)
{
  WmMark *shown = find_next_waiting (self);
  g_autoptr (WmMark) mark = NULL;
  WmEdit *edit;

  if (shown == NULL)
    return;
  mark = wm_session_copy (self->session, shown);
  mark->confirmed = TRUE;
  edit = wm_session_begin (self->session, N_ ("Accept carried mark"));
  wm_session_put (self->session, edit, mark);
  reopen (self, edit, mark);
  take_mark (self, mark);
  wm_session_commit (self->session, edit);
  wm_desk_show_marks (self);
  go_to (self, find_next_waiting (self));
  wm_desk_tell (self);
}

void
wm_desk_carry (WmCompareDesk *self)
{
  const WmPair *pair = wm_desk_get_pair (self);
  WmEdit *edit;
  guint n;

  if (pair == NULL || !self->is_laid)
    return;
  edit = wm_session_begin (self->session, N_ ("Carry the marks over"));
  n = wm_pairer_put_carried (self->session, edit, pair, self->matrix);
  wm_session_commit (self->session, edit);
  if (n == 0)
    wm_session_toast (self->session, _ ("Every mark is on the other photo already."));
}

/* ---- what the hand did
 * ------------------------------------------------------------------- */

static int
side_of (WmCompareDesk *self, WmCanvas *canvas)
{
  return canvas == wm_compare_view_get_after (self->view) ? 1 : 0;
}

/* A click on the after photo shows where the chosen finding is now. */
static void
on_mark_added (WmCanvas *canvas, WmMarkValue *value, WmCompareDesk *self)
{
  const WmPair *pair = wm_desk_get_pair (self);
  g_autoptr (WmMark) mark = NULL;

  if (self->by_hand)
    {
      wm_desk_point_added (self, side_of (self, canvas), value);
      return;
    }
  if (pair == NULL || find_check (self, &self->check_id) == NULL)
    {
      wm_session_toast (self->session,
                        _ ("Choose the finding first; then click its place."));
      return;
    }
  mark = wm_mark_new ();
  mark->photo_id = *wm_record_get_id (WM_RECORD (pair->after));
  mark->check_id = self->check_id;
  mark->confirmed = TRUE;
  if (!take_points (self, mark, value))
    return;
  take_mark (self, mark);
  wm_session_keep (self->session, N_ ("Place mark"), mark);
  wm_desk_show_marks (self);
}

static void
on_mark_moving (WmCanvas *canvas, WmMarkValue *value, WmCompareDesk *self)
{
  if (self->by_hand)
    wm_desk_point_moving (self, side_of (self, canvas), value);
}

/* Moving a carried mark is accepting it at the better place. */
static void
on_mark_edited (WmCanvas *canvas, WmMarkValue *value, WmCompareDesk *self)
{
  WmMark *shown = find_mark (self, &value->id);
  g_autoptr (WmMark) mark = NULL;
  WmEdit *edit;

  if (self->by_hand)
    {
      wm_desk_point_edited (self, side_of (self, canvas), value);
      return;
    }
  if (shown == NULL || !is_after (self, shown))
    return;
  mark = wm_session_copy (self->session, shown);
  if (!take_points (self, mark, value))
    return;
  edit = wm_session_begin (self->session, is_waiting (shown)
                                              ? N_ ("Move and accept carried mark")
                                              : N_ ("Move mark"));
  if (is_waiting (shown))
    reopen (self, edit, mark);
  mark->confirmed = TRUE;
  wm_session_put (self->session, edit, mark);
  take_mark (self, mark);
  wm_session_commit (self->session, edit);
  wm_desk_show_marks (self);
  wm_desk_tell (self);
}

static void
on_mark_removed (WmCanvas *canvas, WmId *id, WmCompareDesk *self)
{
  WmMark *mark = find_mark (self, id);
  WmEdit *edit;

  if (self->by_hand)
    {
      wm_desk_point_removed (self, side_of (self, canvas), id);
      return;
    }
  if (mark == NULL || !is_after (self, mark))
    return;
  edit = wm_session_begin (self->session, is_waiting (mark) ? N_ ("Drop carried mark")
                                                            : N_ ("Delete mark"));
  wm_edit_remove (edit, mark);
  g_ptr_array_remove (self->marks, mark);
  wm_session_commit (self->session, edit);
  wm_desk_show_marks (self);
  go_to (self, find_next_waiting (self));
  wm_desk_tell (self);
}

static void
on_mark_chosen (WmCanvas *canvas, WmId *id, WmCompareDesk *self)
{
  WmMark *mark = find_mark (self, id);

  if (!self->by_hand && mark != NULL && find_check (self, &mark->check_id) != NULL)
    wm_desk_choose_finding (self, &mark->check_id);
}

void
wm_desk_init_marks (WmCompareDesk *self)
{
  WmCanvas *canvases[2] = { wm_compare_view_get_before (self->view),
                            wm_compare_view_get_after (self->view) };

  for (int i = 0; i < 2; i++)
    {
      g_signal_connect (canvases[i], "mark-added", G_CALLBACK (on_mark_added), self);
      g_signal_connect (canvases[i], "mark-moving", G_CALLBACK (on_mark_moving), self);
      g_signal_connect (canvases[i], "mark-edited", G_CALLBACK (on_mark_edited), self);
      g_signal_connect (canvases[i], "mark-removed", G_CALLBACK (on_mark_removed), self);
      g_signal_connect (canvases[i], "mark-chosen", G_CALLBACK (on_mark_chosen), self);
    }
}

/* inspection-marks.c: marks of the shown photo, and tying them to checks
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>
#include <math.h>

#include "record/points.h"
#include "window/glyph.h"
#include "window/inspection/inspection-private.h"

static const char *const shape_words[] = {
  [WM_SHAPE_SPOT] = WM_MARK_SPOT,
  [WM_SHAPE_LINE] = WM_MARK_LINE,
  [WM_SHAPE_OUTLINE] = WM_MARK_OUTLINE,
  [WM_SHAPE_SPAN] = WM_MARK_SPAN,
};

/* ---- records and values -------------------------------------------------------------
 */

static WmShape
parse_shape (const char *word)
{
  for (guint i = 0; i < G_N_ELEMENTS (shape_words); i++)
    if (g_strcmp0 (word, shape_words[i]) == 0)
      return i;
  return WM_SHAPE_SPOT;
}

/* What the disc shows: on an after photo, how it is now. */
static WmSeverity
get_shown_severity (WmCheck *check, WmPhoto *photo)
{
  if (g_strcmp0 (photo->moment, WM_PHOTO_AFTER) == 0)
    return check->after_severity;
  return check->severity;
}

static char *
make_name (WmCheck *check, WmSeverity severity)
{
  if (check == NULL)
    return g_strdup (_ ("Mark without a check"));
  if (severity == WM_SEVERITY_NOT_LOOKED_AT)
    return g_strdup_printf (_ ("Mark %d, %s, not looked at"), (int)check->number,
                            wm_trade_text (wm_check_heading (check)));
  return g_strdup_printf (_ ("Mark %d, %s, %s"), (int)check->number,
                          wm_trade_text (wm_check_heading (check)),
                          wm_severity_word (severity));
}

static char *
make_carried_name (WmInspectionPage *self, WmMark *mark)
{
  int index = wm_inspection_find_carried_check (self, mark);
  WmCheck *check = index >= 0 ? g_ptr_array_index (self->checks, index) : NULL;

  return g_strdup_printf (_ ("Carried mark, %s, not accepted yet"),
                          check != NULL ? wm_trade_text (wm_check_heading (check))
                                        : _ ("without a check"));
}

/* NULL for a mark whose places can not be read or are too few. */
static WmMarkValue *
make_value (WmInspectionPage *self, WmMark *mark, WmPhoto *photo)
{
  g_autoptr (GArray) points = wm_points_parse (mark->points);
  WmCheck *check = wm_id_is_none (&mark->check_id)
                       ? NULL
                       : wm_inspection_find (self->checks, &mark->check_id);
  WmShape shape = parse_shape (mark->shape);
  WmMarkValue *value;

  if (points == NULL || points->len < wm_mark_value_least_points (shape))
    return NULL;
  value = wm_mark_value_new (shape, (const WmPoint *)points->data, points->len);
  value->id = *wm_record_get_id (WM_RECORD (mark));
  value->is_pinned = isfinite (mark->disc_x) && isfinite (mark->disc_y);
  if (value->is_pinned)
    value->pin = (WmPoint) { mark->disc_x, mark->disc_y };
  if (check != NULL)
    {
      value->severity = get_shown_severity (check, photo);
      value->number = check->number > 0 ? check->number : 0;
    }
  value->is_unconfirmed = !mark->confirmed || check == NULL;
  value->name = wm_inspection_is_carried (mark) ? make_carried_name (self, mark)
                                                : make_name (check, value->severity);
  /* What lies where it was in the last visit is measured once it is accepted. */
  if (shape == WM_SHAPE_SPAN && !wm_inspection_is_carried (mark))
    {
      value->value = wm_inspection_describe_span (self, mark);
      value->is_measuring = self->beside == WM_BESIDE_MEASURING
                            && wm_id_equal (&value->id, &self->measured_id);
    }
  if (value->value != NULL)
    {
      g_autofree char *name = g_steal_pointer (&value->name);

      value->name = g_strdup_printf ("%s, %s", name, value->value);
    }
  return value;
}

static void
take_value (WmMark *mark, const WmMarkValue *value)
{
  g_autofree char *points =
      wm_points_format ((const WmPoint *)value->points->data, value->points->len);

  wm_record_set_text (WM_RECORD (mark), "shape", shape_words[value->shape]);
  wm_record_set_text (WM_RECORD (mark), "points", points);
  mark->disc_x = value->is_pinned ? value->pin.x : NAN;
  mark->disc_y = value->is_pinned ? value->pin.y : NAN;
}

/* ---- showing --------------------------------------------------------------------------
 */

static int
compare_numbers (gconstpointer a, gconstpointer b)
{
  const WmMarkValue *first = *(WmMarkValue *const *)a;
  const WmMarkValue *second = *(WmMarkValue *const *)b;

  if (first->number != second->number)
    return first->number < second->number ? -1 : 1;
  return wm_id_compare (&first->id, &second->id);
}

void
wm_inspection_show_marks (WmInspectionPage *self)
{
  WmPhoto *photo = wm_inspection_get_photo (self);
  g_autoptr (GPtrArray) values =
      g_ptr_array_new_with_free_func ((GDestroyNotify)wm_mark_value_free);
  WmMarkValue *scale;

  for (guint i = 0; photo != NULL && i < self->marks->len; i++)
    {
      WmMark *mark = g_ptr_array_index (self->marks, i);
      WmMarkValue *value;

      if (!wm_id_equal (&mark->photo_id, &self->photo_id))
        continue;
      value = make_value (self, mark, photo);
      if (value != NULL)
        g_ptr_array_add (values, value);
    }
  g_ptr_array_sort (values, compare_numbers);
  scale = photo != NULL ? wm_inspection_make_scale_value (self) : NULL;
  if (scale != NULL)
    g_ptr_array_add (values, scale);
  wm_canvas_set_marks (self->canvas, values);
}

static guint
count_marks (WmInspectionPage *self, gsize offset, const WmId *id)
{
  guint n = 0;

  for (guint i = 0; i < self->marks->len; i++)
    if (wm_id_equal (G_STRUCT_MEMBER_P (g_ptr_array_index (self->marks, i), offset), id))
      n++;
  return n;
}

guint
wm_inspection_count_marks_of_check (WmInspectionPage *self, const WmId *check_id)
{
  return count_marks (self, G_STRUCT_OFFSET (WmMark, check_id), check_id);
}

guint
wm_inspection_count_marks_of_photo (WmInspectionPage *self, const WmId *photo_id)
{
  return count_marks (self, G_STRUCT_OFFSET (WmMark, photo_id), photo_id);
}

void
wm_inspection_select_mark_of_open (WmInspectionPage *self)
{
  const WmId *selected = wm_canvas_get_selected (self->canvas);
  WmMark *mark = wm_inspection_find (self->marks, selected);

  if (!wm_id_is_none (&self->tying))
    {
      wm_canvas_set_selected (self->canvas, &self->tying);
      return;
    }
  /* One of its several marks may be selected already. */
  if (mark != NULL && wm_id_equal (&mark->check_id, &self->open_id)
      && wm_id_equal (&mark->photo_id, &self->photo_id))
    return;
  mark = NULL;
  for (guint i = 0; i < self->marks->len && mark == NULL; i++)
    {
      WmMark *candidate = g_ptr_array_index (self->marks, i);

      if (!wm_id_is_none (&self->open_id)
          && wm_id_equal (&candidate->check_id, &self->open_id)
          && wm_id_equal (&candidate->photo_id, &self->photo_id))
        mark = candidate;
    }
  wm_canvas_set_selected (self->canvas,
                          mark != NULL ? wm_record_get_id (WM_RECORD (mark)) : NULL);
  if (mark != NULL)
    wm_canvas_show_mark (self->canvas, wm_record_get_id (WM_RECORD (mark)));
}

/* ---- tying ----------------------------------------------------------------------------
 */

void
wm_inspection_wait_for_check (WmInspectionPage *self, const WmId *mark_id)
{
  self->tying = *mark_id;
  wm_canvas_set_selected (self->canvas, mark_id);
  wm_inspection_hint (self, _ ("Choose the check this mark belongs to. Escape leaves it "
                               "without one."));
}

void
wm_inspection_stop_waiting (WmInspectionPage *self)
{
  if (!wm_id_is_none (&self->tying))
    wm_inspection_hint (self, NULL);
  self->tying = WM_ID_NONE;
}

/* Ties @mark to the check at @index within @edit; gives the check its number. */
static void
tie (WmInspectionPage *self, WmEdit *edit, WmMark *mark, int index)
{
  WmRecord *shown = g_ptr_array_index (self->checks, index);
  g_autoptr (WmCheck) check = wm_session_copy (self->session, shown);
  gboolean has_new_number =
      wm_check_give_number (check, wm_checks_next_number (self->checks));

  /* The checks go in first: a mark may only name one that is there. */
  if (has_new_number || self->checks_are_new)
    wm_inspection_put_check (self, edit, check);
  mark->check_id = *wm_record_get_id (WM_RECORD (check));
}

gboolean
wm_inspection_tie_waiting (WmInspectionPage *self, int check_index)
{
  WmMark *shown = wm_inspection_find (self->marks, &self->tying);
  g_autoptr (WmMark) mark = NULL;
  WmEdit *edit;

  if (wm_id_is_none (&self->tying))
    return FALSE;
  wm_inspection_stop_waiting (self);
  if (shown == NULL)
    return FALSE;
  mark = wm_session_copy (self->session, shown);
  edit = wm_session_begin (self->session, N_ ("Tie mark to check"));
  tie (self, edit, mark, check_index);
  mark->confirmed = TRUE;
  wm_session_put (self->session, edit, mark);
  wm_inspection_replace (self->marks, mark);
  wm_inspection_commit (self, edit);
  wm_canvas_set_selected (self->canvas, wm_record_get_id (WM_RECORD (mark)));
  wm_checklist_pane_set_checks (self->pane, self->checks);
  wm_inspection_tied (self, mark, g_ptr_array_index (self->checks, check_index));
  wm_inspection_show_marks (self);
  return TRUE;
}

/* ---- what the hand did on the canvas
 * ---------------------------------------------------- */

static void
on_mark_added (WmCanvas *canvas, WmMarkValue *value, WmInspectionPage *self)
{
  g_autoptr (WmMark) mark = NULL;
  int open = wm_checks_find (self->checks, &self->open_id);
  WmEdit *edit;

  if (value->is_bare)
    {
      wm_inspection_scale_placed (self, value);
      return;
    }
  mark = wm_mark_new ();
  edit = wm_session_begin (self->session, N_ ("Place mark"));
  mark->photo_id = self->photo_id;
  mark->confirmed = TRUE;
  take_value (mark, value);
  if (open >= 0)
    tie (self, edit, mark, open);
  wm_session_put (self->session, edit, mark);
  wm_inspection_replace (self->marks, mark);
  wm_inspection_commit (self, edit);

  wm_inspection_stop_waiting (self);
  wm_canvas_set_selected (self->canvas, wm_record_get_id (WM_RECORD (mark)));
  wm_inspection_show (self);
  wm_inspection_judge_place (self, mark);
  if (value->shape == WM_SHAPE_SPAN)
    wm_inspection_span_placed (self, mark);
  /* A measured place is tied when its value is taken. */
  else if (open < 0)
    wm_inspection_wait_for_check (self, wm_record_get_id (WM_RECORD (mark)));
}

static void
on_mark_edited (WmCanvas *canvas, WmMarkValue *value, WmInspectionPage *self)
{
  WmMark *shown = wm_inspection_find (self->marks, &value->id);
  g_autoptr (WmMark) mark = NULL;
  gboolean carried = shown != NULL && wm_inspection_is_carried (shown);
  WmEdit *edit;

  if (value->is_bare)
    wm_inspection_scale_placed (self, value);
  if (shown == NULL)
    return;
  mark = wm_session_copy (self->session, shown);
  take_value (mark, value);
  edit = wm_session_begin (self->session, N_ ("Move mark"));
  /* Put where it belongs it is accepted. */
  if (carried)
    wm_inspection_put_accepted (self, edit, mark);
  wm_session_put (self->session, edit, mark);
  wm_inspection_replace (self->marks, mark);
  wm_inspection_remeasure (self, edit, mark);
  wm_inspection_commit (self, edit);
  wm_inspection_judge_place (self, mark);
  if (carried)
    wm_inspection_show (self);
  wm_inspection_span_chosen (self, mark);
}

static void
on_mark_removed (WmCanvas *canvas, WmId *id, WmInspectionPage *self)
{
  WmMark *mark = wm_inspection_find (self->marks, id);
  WmEdit *edit;

  if (self->beside == WM_BESIDE_SCALE && wm_id_equal (id, &self->photo_id))
    wm_inspection_scale_removed (self);
  if (mark == NULL)
    return;
  edit = wm_session_begin (self->session, N_ ("Delete mark"));
  wm_edit_remove (edit, mark);
  wm_inspection_commit (self, edit);
  if (wm_id_equal (id, &self->tying))
    wm_inspection_stop_waiting (self);
  g_ptr_array_remove (self->marks, mark);
  wm_inspection_show (self);
}

static void
on_mark_chosen (WmCanvas *canvas, WmId *id, WmInspectionPage *self)
{
  WmMark *mark = wm_inspection_find (self->marks, id);
  int index;

  wm_inspection_stop_waiting (self);
  if (mark == NULL)
    return;
  wm_inspection_judge_place (self, mark);
  if (wm_inspection_is_carried (mark))
    {
      wm_inspection_choose_carried (self, mark);
      return;
    }
  if (wm_id_is_none (&mark->check_id) && self->beside == WM_BESIDE_CHECKLIST)
    {
      wm_inspection_wait_for_check (self, id);
      return;
    }
  wm_inspection_span_chosen (self, mark);
  index = wm_checks_find (self->checks, &mark->check_id);
  if (index >= 0)
    wm_inspection_open_check (self, index, FALSE);
}

static void
on_mark_menu (WmCanvas *canvas, WmId *id, double x, double y, WmInspectionPage *self)
{
  gtk_popover_set_pointing_to (GTK_POPOVER (self->mark_menu),
                               &(GdkRectangle) { x, y, 1, 1 });
  gtk_popover_popup (GTK_POPOVER (self->mark_menu));
}

static void
on_re_tie (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmInspectionPage *self = user_data;
  const WmId *selected = wm_canvas_get_selected (self->canvas);

  if (wm_inspection_find (self->marks, selected) != NULL)
    wm_inspection_wait_for_check (self, selected);
}

static void
on_tool_changed (GActionGroup *group, const char *name, GVariant *state,
                 WmInspectionPage *self)
{
  const char *tool = g_variant_get_string (state, NULL);

  wm_inspection_tool_chosen (self, tool);
  if (self->beside != WM_BESIDE_CHECKLIST)
    return;
  if (wm_id_is_none (&self->tying))
    wm_inspection_hint (self, g_str_equal (tool, "spot")
                                  ? NULL
                                  : _ ("Click the points; a double click or Enter ends, "
                                       "Escape cancels."));
}

void
wm_inspection_init_marks (WmInspectionPage *self)
{
  static const GActionEntry entries[] = { { "re-tie", on_re_tie } };
  g_autoptr (GMenu) menu = g_menu_new ();

  g_action_map_add_action_entries (G_ACTION_MAP (self->actions), entries,
                                   G_N_ELEMENTS (entries), self);
  g_menu_append (menu, _ ("Tie to another check"), "inspection.re-tie");
  g_menu_append (menu, _ ("Let the disc find its place"), "canvas.unpin");
  g_menu_append (menu, _ ("Delete mark"), "canvas.remove");
  self->mark_menu = gtk_popover_menu_new_from_model (G_MENU_MODEL (menu));
  gtk_widget_set_parent (self->mark_menu, GTK_WIDGET (self->overlay));
  gtk_popover_set_has_arrow (GTK_POPOVER (self->mark_menu), TRUE);

  wm_inspection_init_carried (self);
  g_signal_connect (self->canvas, "mark-added", G_CALLBACK (on_mark_added), self);
  g_signal_connect (self->canvas, "mark-edited", G_CALLBACK (on_mark_edited), self);
  g_signal_connect (self->canvas, "mark-removed", G_CALLBACK (on_mark_removed), self);
  g_signal_connect (self->canvas, "mark-chosen", G_CALLBACK (on_mark_chosen), self);
  g_signal_connect (self->canvas, "mark-menu", G_CALLBACK (on_mark_menu), self);
  g_signal_connect (wm_canvas_get_actions (self->canvas), "action-state-changed::tool",
                    G_CALLBACK (on_tool_changed), self);
}

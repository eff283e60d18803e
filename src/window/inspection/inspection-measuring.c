/* inspection-measuring.c: a span on the photo: snapped, measured, taken as a reading
 *
 * The tool of the canvas is the mode: "span" measures, "ruler" and "corners" set the
 * scale, every other shows the checklist.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>
#include <math.h>

#include "report/photo-scale.h"
#include "window/inspection/inspection-private.h"

/* ---- showing
 * ---------------------------------------------------------------------------- */

static const char *
describe_warning (unsigned warnings)
{
  if (warnings & WM_LENGTH_FAR_OUTSIDE)
    return _ ("An end lies far outside the rectangle of the scale: less sure than it "
              "says.");
  if (warnings & WM_LENGTH_REFERENCE_ROUGH)
    return _ ("The length of the scale itself is known to worse than 5 %.");
  return NULL;
}

static char *
describe_scale (WmPhoto *photo, const WmPhotoScale *scale)
{
  const char *basis = photo->scale_basis != NULL ? _ (photo->scale_basis) : _ ("scale");

  if (scale->is_plane)
    return g_strdup_printf (_ ("%s, %g × %g mm, tilt taken out"), basis,
                            photo->scale_width_mm, photo->scale_height_mm);
  return g_strdup_printf (_ ("%s, %g mm"), basis, photo->scale_mm);
}

static void
show_length (WmInspectionPage *self, WmMark *mark)
{
  WmPhoto *photo = wm_inspection_get_photo (self);
  g_autofree char *scale_text = NULL, *pixel = NULL, *ends_text = NULL, *depth = NULL;
  WmMeasuringSource source = { "–", "–", "–", "–", NULL };
  gboolean by_edge = FALSE;
  WmPhotoScale scale;
  WmLength length;
  WmSpanEnds ends;
  WmResult result =
      mark != NULL ? wm_inspection_measure_span (self, mark, &ends, &length) : WM_MISSING;

  if (photo != NULL && wm_photo_scale_read (photo, &scale))
    {
      source.scale = scale_text = describe_scale (photo, &scale);
      source.pixel = pixel =
          g_strdup_printf (_ ("%.4f mm"), wm_photo_scale_mm_per_px (&scale));
    }
  if (result == WM_OK)
    {
      by_edge = ends.is_snapped[0] && ends.is_snapped[1];
      source.ends = ends_text =
          g_strdup_printf (by_edge ? _ ("edge of the metal, ± %.1f pixels each")
                                   : _ ("placed by hand, ± %.1f pixels each"),
                           WM_COVERAGE_FACTOR * wm_inspection_u_end_px (&ends));
      source.depth = depth = wm_worn_expanded_text (0, MAX (length.from_depth_mm, 1e-4));
      source.warning = describe_warning (length.warnings);
    }
  else if (mark != NULL && result != WM_MISSING)
    source.warning = _ (wm_result_text (result));
  wm_measuring_pane_show_length (self->measuring_pane, result == WM_OK ? &length : NULL,
                                 &source, by_edge);
}

/* What to do next on the photo. */
static const char *
describe_next (WmInspectionPage *self, WmMark *mark)
{
  WmSpanEnds ends;
  WmPoint at[2];

  if (self->unworn_next)
    return _ ("Click one edge of the metal where it is not worn, then the other.");
  if (!wm_inspection_read_span (mark, at))
    return _ ("Click one edge of the metal at the thinnest place, then the other.");
  if (self->snapping != NULL)
    return _ ("Looking for the edges of the metal…");
  wm_inspection_get_ends (self, mark, at, &ends);
  if (ends.is_snapped[0] && ends.is_snapped[1])
    return _ ("Both ends lie on the edge of the metal. Drag an end to overrule that.");
  if (ends.is_snapped[0] || ends.is_snapped[1])
    return _ (
        "One end found no clear edge and stays as it was placed. Look at it through "
        "the loupe.");
  return _ (
      "The ends are where they were placed: no clear edge, or overruled. E looks for "
      "the edge again.");
}

static WmMark *
get_measured (WmInspectionPage *self)
{
  WmMark *mark = wm_inspection_find (self->marks, &self->measured_id);

  return mark != NULL && wm_id_equal (&mark->photo_id, &self->photo_id) ? mark : NULL;
}

void
wm_inspection_show_measuring (WmInspectionPage *self)
{
  WmMark *mark = get_measured (self);
  const char *next;

  if (self->beside != WM_BESIDE_MEASURING)
    return;
  next = describe_next (self, mark);
  show_length (self, mark);
  wm_measuring_pane_say (self->measuring_pane,
                         wm_measuring_pane_is_by_gauge (self->measuring_pane)
                             ? _ ("Type what the gauge reads, several times if you can.")
                             : next);
  wm_inspection_hint (self,
                      (mark == NULL || self->unworn_next)
                              && !wm_measuring_pane_is_by_gauge (self->measuring_pane)
                          ? next
                          : NULL);
}

/* ---- what is measured
 * ------------------------------------------------------------------- */

/* The last reading of the same check in an earlier visit. */
static WmMeasurement *
find_earlier (WmInspectionPage *self, WmCheck *check)
{
  WmArchive *archive = wm_session_get_archive (self->session);
  WmPiece *piece = wm_session_get_piece (self->session);
  g_autoptr (GPtrArray) visits = wm_archive_list (
      archive, WM_KIND_VISIT, "piece_id", wm_record_get_id (WM_RECORD (piece)), NULL);
  WmMeasurement *found = NULL;

  for (guint v = 0; visits != NULL && v < visits->len; v++)
    {
      const WmId *id = wm_record_get_id (g_ptr_array_index (visits, v));
      g_autoptr (GPtrArray) checks = NULL, readings = NULL;

      if (wm_id_equal (id, &self->visit_id))
        break;
      checks = wm_archive_list_of_visit (archive, WM_KIND_CHECK, id, NULL);
      readings = wm_archive_list_of_visit (archive, WM_KIND_MEASUREMENT, id, NULL);
      for (guint i = 0; checks != NULL && readings != NULL && i < readings->len; i++)
        {
          WmMeasurement *one = g_ptr_array_index (readings, i);
          WmCheck *of = wm_inspection_find (checks, &one->check_id);

          if (of != NULL && g_strcmp0 (of->item, check->item) == 0
              && g_strcmp0 (one->moment, WM_PHOTO_AFTER) != 0 && one->as_made_mm > 0)
            g_set_object (&found, one);
        }
    }
  return found;
}

static WmCheck *
get_subject (WmInspectionPage *self)
{
  WmMark *mark = get_measured (self);
  const WmId *id =
      mark != NULL && !wm_id_is_none (&mark->check_id) ? &mark->check_id : &self->open_id;

  return wm_inspection_find (self->checks, id);
}

static void
open_subject (WmInspectionPage *self)
{
  WmTrade *trade = wm_session_get_trade (self->session);
  WmPiece *piece = wm_session_get_piece (self->session);
  WmCheck *check = get_subject (self);
  const WmChecklistItem *item =
      check != NULL && trade != NULL ? wm_trade_find_item (trade, check->item) : NULL;
  const WmMetal *metal = piece != NULL && piece->metal != NULL && trade != NULL
                             ? wm_trade_find_metal (trade, piece->metal)
                             : NULL;
  g_autoptr (WmMeasurement) earlier = check != NULL ? find_earlier (self, check) : NULL;
  WmMeasuringSubject subject = {
    .title = check != NULL ? wm_trade_text (wm_check_heading (check)) : _ ("Measuring"),
    .second = check != NULL ? wm_trade_text (check->look)
                            : _ ("The check is chosen when the value is taken"),
    .number = check != NULL ? MAX (check->number, 0) : 0,
    .kept = check != NULL
                ? wm_inspection_find_reading (self, wm_record_get_id (WM_RECORD (check)))
                : NULL,
    .earlier = earlier,
    .limits = item != NULL ? &item->limits : NULL,
    .yield_mpa = wm_worn_yield (trade, piece != NULL ? piece->metal : NULL),
    .metal = metal != NULL ? wm_trade_text (metal->name) : NULL,
  };

  self->subject_id = check != NULL ? *wm_record_get_id (WM_RECORD (check)) : WM_ID_NONE;
  wm_measuring_pane_open (self->measuring_pane, &subject);
}

/* The span of the open check on this photo that was measured, or placed last. */
static void
choose_measured (WmInspectionPage *self)
{
  WmMark *selected =
      wm_inspection_find (self->marks, wm_canvas_get_selected (self->canvas));
  WmPoint ends[2];

  self->measured_id = WM_ID_NONE;
  for (guint i = 0; i < self->marks->len; i++)
    {
      WmMark *mark = g_ptr_array_index (self->marks, i);
      const WmId *id = wm_record_get_id (WM_RECORD (mark));

      if (!wm_id_equal (&mark->photo_id, &self->photo_id)
          || !wm_inspection_read_span (mark, ends) || wm_id_is_none (&self->open_id)
          || !wm_id_equal (&mark->check_id, &self->open_id))
        continue;
      if (wm_id_is_none (&self->measured_id)
          || wm_inspection_find_of_mark (self, id) != NULL)
        self->measured_id = *id;
    }
  if (selected != NULL && wm_inspection_read_span (selected, ends))
    self->measured_id = *wm_record_get_id (WM_RECORD (selected));
}

void
wm_inspection_open_measuring (WmInspectionPage *self, gboolean by_gauge)
{
  gboolean is_open = self->beside == WM_BESIDE_MEASURING;

  self->unworn_next = FALSE;
  choose_measured (self);
  wm_inspection_set_beside (self, WM_BESIDE_MEASURING);
  /* What was typed stays while only the way of measuring changes. */
  if (!is_open)
    open_subject (self);
  wm_measuring_pane_set_by_gauge (self->measuring_pane, by_gauge);
  wm_inspection_show_marks (self);
  wm_inspection_show_measuring (self);
}

void
wm_inspection_span_chosen (WmInspectionPage *self, WmMark *mark)
{
  WmCheck *subject;
  WmPoint ends[2];

  if (self->beside != WM_BESIDE_MEASURING || !wm_inspection_read_span (mark, ends))
    return;
  self->measured_id = *wm_record_get_id (WM_RECORD (mark));
  subject = get_subject (self);
  if (subject != NULL
      && !wm_id_equal (wm_record_get_id (WM_RECORD (subject)), &self->subject_id))
    open_subject (self);
  wm_inspection_show_marks (self);
  wm_inspection_show_measuring (self);
}

/* ---- placing -------------------------------------------------------------------------
 */

void
wm_inspection_span_placed (WmInspectionPage *self, WmMark *mark)
{
  gboolean is_unworn = self->unworn_next;

  if (is_unworn)
    self->unworn_next = FALSE;
  else
    self->measured_id = *wm_record_get_id (WM_RECORD (mark));
  if (self->snaps)
    wm_inspection_snap (self, mark, is_unworn);
  else if (is_unworn)
    wm_inspection_take_unworn (self, mark);
  wm_inspection_show_marks (self);
  wm_inspection_show_measuring (self);
}

static void
on_snap_state (GSimpleAction *action, GVariant *state, gpointer user_data)
{
  WmInspectionPage *self = user_data;
  WmMark *mark = get_measured (self);
  WmSpanEnds ends;
  WmPoint at[2];

  self->snaps = g_variant_get_boolean (state);
  g_simple_action_set_state (action, state);
  if (self->beside != WM_BESIDE_MEASURING || !wm_inspection_read_span (mark, at)
      || wm_session_is_read_only (self->session))
    return;
  wm_inspection_get_ends (self, mark, at, &ends);
  if (self->snaps)
    wm_inspection_snap (self, mark, FALSE);
  else if (ends.is_snapped[0] || ends.is_snapped[1])
    wm_inspection_move_ends (self, mark, ends.placed,
                             N_ ("Ends back where they were placed"));
  wm_inspection_show_marks (self);
  wm_inspection_show_measuring (self);
}

/* ---- taking
 * ---------------------------------------------------------------------------------- */

static WmMeasurement *
find_to_replace (WmInspectionPage *self, const WmId *check_id, const WmId *mark_id,
                 const char *moment)
{
  for (guint i = self->measurements->len; i-- > 0;)
    {
      WmMeasurement *one = g_ptr_array_index (self->measurements, i);

      if (wm_id_equal (&one->check_id, check_id) && wm_id_equal (&one->mark_id, mark_id)
          && g_strcmp0 (one->moment, moment) == 0)
        return one;
    }
  return NULL;
}

static void
take_for_check (WmInspectionPage *self, WmCheck *check)
{
  gboolean by_gauge = wm_measuring_pane_is_by_gauge (self->measuring_pane);
  WmMark *mark = by_gauge ? NULL : get_measured (self);
  WmPhoto *photo = wm_inspection_get_photo (self);
  WmId mark_id = mark != NULL ? *wm_record_get_id (WM_RECORD (mark)) : WM_ID_NONE;
  WmId check_id = *wm_record_get_id (WM_RECORD (check));
  gboolean is_after =
      mark != NULL && photo != NULL && g_strcmp0 (photo->moment, WM_PHOTO_AFTER) == 0;
  const char *moment = is_after ? WM_PHOTO_AFTER : WM_PHOTO_BEFORE;
  WmMeasurement *old = find_to_replace (self, &check_id, &mark_id, moment);
  g_autoptr (WmMeasurement) reading =
      old != NULL ? wm_session_copy (self->session, old) : wm_measurement_new ();
  WmEdit *edit;

  if (!wm_measuring_pane_fill (self->measuring_pane, reading))
    {
      wm_session_toast (self->session, _ ("There is no value to take yet."));
      return;
    }
  reading->check_id = check_id;
  reading->mark_id = mark_id;
  reading->measured_at_s = g_get_real_time () / G_USEC_PER_SEC;
  wm_record_set_text (WM_RECORD (reading), "moment", moment);
  edit = wm_session_begin (self->session, N_ ("Take measurement"));
  if (self->checks_are_new)
    wm_inspection_put_check (self, edit, check);
  wm_inspection_put_suggestion (self, edit, reading);
  wm_session_put (self->session, edit, reading);
  /* The last one counts: it goes to the end. */
  if (old != NULL)
    g_ptr_array_remove (self->measurements, old);
  wm_inspection_replace (self->measurements, reading);
  wm_inspection_commit (self, edit);
  wm_inspection_leave_measuring (self);
  wm_inspection_open_check (self, wm_checks_find (self->checks, &check_id), TRUE);
  wm_inspection_show (self);
}

void
wm_inspection_take_value (WmInspectionPage *self)
{
  WmCheck *check;
  WmMark *mark;

  if (self->beside != WM_BESIDE_MEASURING || self->session == NULL
      || wm_session_is_read_only (self->session))
    return;
  check = get_subject (self);
  mark = get_measured (self);
  if (check != NULL)
    take_for_check (self, check);
  else if (mark != NULL)
    {
      self->take_when_tied = TRUE;
      wm_inspection_leave_measuring (self);
      wm_inspection_wait_for_check (self, wm_record_get_id (WM_RECORD (mark)));
    }
  else
    wm_session_toast (self->session,
                      _ ("Choose a check first, or press Enter for the next one."));
}

void
wm_inspection_tied (WmInspectionPage *self, WmMark *mark, WmCheck *check)
{
  if (!self->take_when_tied)
    return;
  self->take_when_tied = FALSE;
  if (!wm_id_equal (wm_record_get_id (WM_RECORD (mark)), &self->measured_id))
    return;
  take_for_check (self, check);
}

/* ---- actions
 * ----------------------------------------------------------------------------------- */

void
wm_inspection_set_beside (WmInspectionPage *self, WmBeside beside)
{
  static const char *const names[] = { "checklist", "scale", "measuring" };
  gboolean had_focus = gtk_widget_get_focus_child (GTK_WIDGET (self->panes)) != NULL
                       && self->beside != beside;

  if (self->beside == WM_BESIDE_CHECKLIST && beside != WM_BESIDE_CHECKLIST)
    wm_checklist_pane_leave (self->pane);
  self->beside = beside;
  gtk_stack_set_visible_child_name (self->panes, names[beside]);
  /* Keys of the pane that went would be lost. */
  if (had_focus && beside != WM_BESIDE_CHECKLIST)
    gtk_widget_grab_focus (GTK_WIDGET (self->canvas));
  wm_inspection_update_actions (self);
}

void
wm_inspection_leave_measuring (WmInspectionPage *self)
{
  gboolean was_away = self->beside != WM_BESIDE_CHECKLIST;

  self->unworn_next = FALSE;
  wm_inspection_set_beside (self, WM_BESIDE_CHECKLIST);
  if (was_away)
    {
      g_action_group_change_action_state (wm_canvas_get_actions (self->canvas), "tool",
                                          g_variant_new_string ("spot"));
      wm_inspection_hint (self, NULL);
      wm_inspection_show_marks (self);
      wm_checklist_pane_show_row (
          self->pane, MAX (wm_checks_find (self->checks, &self->open_id), 0), TRUE);
    }
}

void
wm_inspection_tool_chosen (WmInspectionPage *self, const char *tool)
{
  WmPhoto *photo = wm_inspection_get_photo (self);
  WmPhotoScale scale;

  if (g_str_equal (tool, "ruler") || g_str_equal (tool, "corners"))
    wm_inspection_open_scale (self, g_str_equal (tool, "corners"));
  else if (g_str_equal (tool, "span"))
    {
      if (photo != NULL && !wm_photo_scale_read (photo, &scale))
        /* First things first: a length needs a scale. */
        g_action_group_change_action_state (wm_canvas_get_actions (self->canvas), "tool",
                                            g_variant_new_string ("ruler"));
      else
        wm_inspection_open_measuring (self, FALSE);
    }
  else if (self->beside != WM_BESIDE_CHECKLIST
           && !(self->beside == WM_BESIDE_MEASURING
                && wm_measuring_pane_is_by_gauge (self->measuring_pane)))
    wm_inspection_leave_measuring (self);
}

static void
on_leave (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  wm_inspection_leave_measuring (user_data);
}

static void
on_use_scale (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  wm_inspection_use_scale (user_data);
}

static void
on_find_sheet (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  wm_inspection_find_sheet (user_data);
}

static void
on_remove_scale (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  wm_inspection_scale_removed (user_data);
}

static void
on_take_value (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  wm_inspection_take_value (user_data);
}

static void
on_by_gauge (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmInspectionPage *self = user_data;
  gboolean is_by_gauge = self->beside == WM_BESIDE_MEASURING
                         && wm_measuring_pane_is_by_gauge (self->measuring_pane);

  if (is_by_gauge)
    {
      wm_measuring_pane_set_by_gauge (self->measuring_pane, FALSE);
      g_action_group_change_action_state (wm_canvas_get_actions (self->canvas), "tool",
                                          g_variant_new_string ("span"));
      wm_inspection_show_measuring (self);
      return;
    }
  if (self->beside == WM_BESIDE_MEASURING)
    wm_measuring_pane_set_by_gauge (self->measuring_pane, TRUE);
  else
    wm_inspection_open_measuring (self, TRUE);
  g_action_group_change_action_state (wm_canvas_get_actions (self->canvas), "tool",
                                      g_variant_new_string ("spot"));
  wm_inspection_show_measuring (self);
}

static void
on_unworn (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmInspectionPage *self = user_data;

  if (self->beside != WM_BESIDE_MEASURING)
    return;
  self->unworn_next = TRUE;
  gtk_widget_grab_focus (GTK_WIDGET (self->canvas));
  wm_inspection_show_measuring (self);
}

static const GActionEntry entries[] = {
  { "leave-measuring", on_leave }, { "use-scale", on_use_scale },
  { "find-sheet", on_find_sheet }, { "remove-scale", on_remove_scale },
  { "take-value", on_take_value }, { "by-gauge", on_by_gauge },
  { "unworn", on_unworn },         { "snap", NULL, NULL, "true", on_snap_state },
};

void
wm_inspection_init_measuring (WmInspectionPage *self)
{
  self->span_ends = g_hash_table_new_full (wm_id_hash, wm_id_equal_func, g_free, g_free);
  self->snaps = TRUE;
  g_action_map_add_action_entries (G_ACTION_MAP (self->actions), entries,
                                   G_N_ELEMENTS (entries), self);
}

void
wm_inspection_dispose_measuring (WmInspectionPage *self)
{
  if (self->snapping != NULL)
    g_cancellable_cancel (self->snapping);
  g_clear_object (&self->snapping);
  g_clear_pointer (&self->span_ends, g_hash_table_unref);
}

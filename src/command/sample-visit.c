/* sample-visit.c: a stay of a sample piece: photos, answers, marks, repairs, proofs
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>
#include <math.h>

#include "command/sample.h"
#include "photo/photo-error.h"
#include "reckon/severity.h"
#include "record/make-checks.h"
#include "record/points.h"
#include "report/take-photo.h"

typedef struct
{
  WmSample *sample;
  JsonObject *object;
  WmVisit *visit;
  WmEdit *edit;
  GHashTable *photos; /* name in the file -> WmPhoto */
  gint64 n_findings;
} Stay;

/* ---- photos ------------------------------------------------------------- */

static void
set_scale (WmPhoto *photo, JsonObject *scale)
{
  photo->scale_x1 = wm_sample_get_real (scale, "x1");
  photo->scale_y1 = wm_sample_get_real (scale, "y1");
  photo->scale_x2 = wm_sample_get_real (scale, "x2");
  photo->scale_y2 = wm_sample_get_real (scale, "y2");
  photo->scale_mm = wm_sample_get_real (scale, "mm");
}

static gboolean
put_photo (Stay *stay, JsonObject *object, gint64 position, GError **error)
{
  const char *name = wm_sample_get_text (object, "file");
  g_autofree char *path = g_build_filename (stay->sample->folder, name, NULL);
  g_autoptr (GError) problem = NULL;
  WmPhoto *photo = wm_take_photo (stay->sample->archive, path,
                                  wm_record_get_id (WM_RECORD (stay->visit)),
                                  wm_sample_get_text (object, "moment"), NULL, &problem);

  /* The record without it is better than none. */
  if (g_error_matches (problem, WM_PHOTO_ERROR, WM_PHOTO_ERROR_NOT_FOUND))
    {
      wm_call_fail (stay->sample->call, _ ("The photo %s is not there and is left out."),
                    name);
      stay->sample->n_left_out++;
      return TRUE;
    }
  if (photo == NULL)
    {
      g_propagate_error (error, g_steal_pointer (&problem));
      return FALSE;
    }
  photo->position = position;
  wm_record_set_text (WM_RECORD (photo), "view", wm_sample_get_text (object, "view"));
  wm_record_set_text (WM_RECORD (photo), "caption",
                      wm_sample_get_text (object, "caption"));
  if (json_object_has_member (object, "scale"))
    set_scale (photo, json_object_get_object_member (object, "scale"));
  wm_edit_put (stay->edit, photo);
  g_hash_table_insert (stay->photos, (gpointer)name, photo);
  return TRUE;
}

static gboolean
put_photos (Stay *stay, GError **error)
{
  static const char *const moments[] = { WM_PHOTO_BEFORE, WM_PHOTO_DURING,
                                         WM_PHOTO_AFTER };
  JsonArray *photos = wm_sample_get_list (stay->object, "photos");

  for (guint m = 0; m < G_N_ELEMENTS (moments); m++)
    {
      gint64 position = 0;

      for (guint i = 0; photos != NULL && i < json_array_get_length (photos); i++)
        {
          JsonObject *object = json_array_get_object_element (photos, i);

          if (g_strcmp0 (wm_sample_get_text (object, "moment"), moments[m]) == 0
              && !put_photo (stay, object, position++, error))
            return FALSE;
        }
    }
  return TRUE;
}

/* ---- one check ---------------------------------------------------------- */

static gint64
get_severity (JsonObject *object, const char *key)
{
  static const char *const words[] = {
    [WM_SEVERITY_NOT_LOOKED_AT] = "not_looked_at",
    [WM_SEVERITY_SOUND] = "sound",
    [WM_SEVERITY_WATCH] = "watch",
    [WM_SEVERITY_REPAIR] = "repair",
    [WM_SEVERITY_NO_WEAR] = "no_wear",
    [WM_SEVERITY_NOT_PRESENT] = "not_present",
  };
  const char *text = wm_sample_get_text (object, key);

  for (guint i = 0; text != NULL && i < G_N_ELEMENTS (words); i++)
    if (g_str_equal (text, words[i]))
      return i;
  return WM_SEVERITY_NOT_LOOKED_AT;
}

static char *
format_points (JsonArray *list)
{
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (WmPoint));

  for (guint i = 0; i < json_array_get_length (list); i++)
    {
      JsonArray *pair = json_array_get_array_element (list, i);
      WmPoint point = { json_array_get_double_element (pair, 0),
                        json_array_get_double_element (pair, 1) };

      g_array_append_val (points, point);
    }
  return wm_points_format ((const WmPoint *)points->data, points->len);
}

/* The first mark of the check on a photo of this moment, for its measurement. */
static void
put_marks (Stay *stay, WmCheck *check, JsonArray *places, WmId *out_before,
           WmId *out_after)
{
  for (guint i = 0; places != NULL && i < json_array_get_length (places); i++)
    {
      JsonObject *object = json_array_get_object_element (places, i);
      JsonArray *list = wm_sample_get_list (object, "points");
      WmPhoto *photo =
          g_hash_table_lookup (stay->photos, wm_sample_get_text (object, "photo"));
      g_autoptr (WmMark) mark = wm_mark_new ();
      g_autofree char *points = NULL;
      WmId *first;

      if (photo == NULL || list == NULL || json_array_get_length (list) == 0)
        continue;
      points = format_points (list);
      mark->photo_id = *wm_record_get_id (WM_RECORD (photo));
      mark->check_id = *wm_record_get_id (WM_RECORD (check));
      mark->confirmed = TRUE;
      wm_record_set_text (WM_RECORD (mark), "shape",
                          wm_sample_get_text (object, "shape"));
      wm_record_set_text (WM_RECORD (mark), "points", points);
      wm_edit_put (stay->edit, mark);
      first = g_strcmp0 (photo->moment, WM_PHOTO_AFTER) == 0 ? out_after : out_before;
      if (wm_id_is_none (first) && g_strcmp0 (mark->shape, WM_MARK_SPOT) != 0)
        *first = *wm_record_get_id (WM_RECORD (mark));
    }
}

static void
put_measurement (Stay *stay, WmCheck *check, JsonObject *object, const char *value_key,
                 const char *moment, const WmId *mark_id)
{
  g_autoptr (WmMeasurement) measured = wm_measurement_new ();

  measured->check_id = *wm_record_get_id (WM_RECORD (check));
  measured->value_mm = wm_sample_get_real (object, value_key);
  if (!isfinite (measured->value_mm))
    return;
  measured->mark_id = *mark_id;
  measured->uncertainty_mm = wm_sample_get_real (object, "standard_uncertainty_mm");
  measured->as_made_mm = wm_sample_get_real (object, "as_made_mm");
  measured->measured_at_s = check->answered_at_s;
  wm_record_set_text (WM_RECORD (measured), "quantity",
                      wm_sample_get_text (object, "quantity"));
  wm_record_set_text (WM_RECORD (measured), "method",
                      wm_sample_get_text (object, "method"));
  wm_record_set_text (WM_RECORD (measured), "as-made-basis",
                      wm_sample_get_text (object, "as_made_basis"));
  wm_record_set_text (WM_RECORD (measured), "section",
                      wm_sample_get_text (object, "section"));
  measured->width_mm = wm_sample_get_real (object, "width_mm");
  wm_record_set_text (WM_RECORD (measured), "moment", moment);
  wm_edit_put (stay->edit, measured);
}

static void
put_repair (Stay *stay, WmCheck *check, JsonObject *object)
{
  gint64 back_at_s = stay->visit->handed_back_at_s;
  gint64 done_at_s = back_at_s != WM_UNKNOWN ? back_at_s : check->answered_at_s;

  if (wm_sample_get_text (object, "remedy") != NULL)
    {
      g_autoptr (WmRemedy) remedy = wm_remedy_new ();

      remedy->check_id = *wm_record_get_id (WM_RECORD (check));
      remedy->done_at_s = done_at_s;
      remedy->done_by = check->answered_by;
      wm_record_set_text (WM_RECORD (remedy), "what",
                          wm_sample_get_text (object, "remedy"));
      wm_record_set_text (WM_RECORD (remedy), "answer", "agreed");
      wm_edit_put (stay->edit, remedy);
    }
  if (wm_sample_get_text (object, "proof") != NULL)
    {
      g_autoptr (WmProof) proof = wm_proof_new ();

      proof->visit_id = *wm_record_get_id (WM_RECORD (stay->visit));
      proof->check_id = *wm_record_get_id (WM_RECORD (check));
      proof->passed = get_severity (object, "after") == WM_SEVERITY_SOUND;
      proof->tested_at_s = done_at_s;
      proof->tested_by = check->answered_by;
      wm_record_set_text (WM_RECORD (proof), "test",
                          wm_sample_get_text (object, "proof"));
      wm_edit_put (stay->edit, proof);
    }
}

static void
answer_check (Stay *stay, WmCheck *check, JsonObject *object)
{
  WmId before = WM_ID_NONE;
  WmId after = WM_ID_NONE;
  gint64 inspected_at_s = stay->visit->inspected_at_s;

  check->severity = get_severity (object, "severity");
  check->after_severity = get_severity (object, "after");
  check->answered_at_s =
      inspected_at_s != WM_UNKNOWN ? inspected_at_s : stay->visit->taken_in_at_s;
  check->answered_by = wm_id_is_none (&stay->visit->inspected_by)
                           ? stay->visit->taken_in_by
                           : stay->visit->inspected_by;
  wm_record_set_text (WM_RECORD (check), "note", wm_sample_get_text (object, "note"));
  if (wm_severity_is_finding ((WmSeverity)check->severity))
    check->number = ++stay->n_findings;

  put_marks (stay, check, wm_sample_get_list (object, "place"), &before, &after);
  if (json_object_has_member (object, "measured"))
    {
      JsonObject *measured = json_object_get_object_member (object, "measured");

      put_measurement (stay, check, measured, "value_mm", WM_PHOTO_BEFORE, &before);
      put_measurement (stay, check, measured, "after_value_mm", WM_PHOTO_AFTER, &after);
    }
  put_repair (stay, check, object);
}

static JsonObject *
find_answer (JsonArray *answers, const char *item)
{
  for (guint i = 0; answers != NULL && i < json_array_get_length (answers); i++)
    {
      JsonObject *object = json_array_get_object_element (answers, i);

      if (g_strcmp0 (wm_sample_get_text (object, "item"), item) == 0)
        return object;
    }
  return NULL;
}

static gboolean
has_check (GPtrArray *checks, const char *item)
{
  for (guint i = 0; i < checks->len; i++)
    if (g_strcmp0 (((WmCheck *)checks->pdata[i])->item, item) == 0)
      return TRUE;
  return FALSE;
}

/* Answers to items that only some pieces of the type have. */
static gboolean
add_further_checks (Stay *stay, GPtrArray *checks, JsonArray *answers, GError **error)
{
  for (guint i = 0; answers != NULL && i < json_array_get_length (answers); i++)
    {
      const char *key =
          wm_sample_get_text (json_array_get_object_element (answers, i), "item");
      const WmChecklistItem *item = wm_trade_find_item (stay->sample->trade, key);

      if (has_check (checks, key))
        continue;
      if (item == NULL)
        {
          g_set_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_REFUSED,
                       "a sample visit answers “%s”, which is in no table", key);
          return FALSE;
        }
      g_ptr_array_add (checks, wm_make_check (stay->sample->trade, item,
                                              wm_record_get_id (WM_RECORD (stay->visit)),
                                              checks->len));
    }
  return TRUE;
}

static gboolean
put_checks (Stay *stay, WmPiece *piece, GError **error)
{
  JsonArray *answers = wm_sample_get_list (stay->object, "checks");
  g_autoptr (GPtrArray) checks = wm_make_checks (
      stay->sample->trade, piece->type, wm_record_get_id (WM_RECORD (stay->visit)));

  if (!add_further_checks (stay, checks, answers, error))
    return FALSE;
  for (guint i = 0; i < checks->len; i++)
    {
      WmCheck *check = checks->pdata[i];
      JsonObject *answer = find_answer (answers, check->item);

      if (answer != NULL)
        answer_check (stay, check, answer);
      wm_edit_put (stay->edit, check);
    }
  return TRUE;
}

/* ---- the visit ---------------------------------------------------------- */

static const WmId *
find_person (Stay *stay, const char *key)
{
  return wm_sample_find_person (stay->sample, wm_sample_get_text (stay->object, key));
}

static gint64
get_milligrams (JsonObject *object, const char *key)
{
  double grams = wm_sample_get_real (object, key);

  return isfinite (grams) ? (gint64)llround (grams * 1000) : WM_UNKNOWN;
}

static char *
join_lines (JsonArray *list)
{
  GString *lines = g_string_new (NULL);

  for (guint i = 0; list != NULL && i < json_array_get_length (list); i++)
    g_string_append_printf (lines, "%s%s", i > 0 ? "\n" : "",
                            json_array_get_string_element (list, i));
  return g_string_free (lines, FALSE);
}

static gboolean
has_work (JsonArray *checks)
{
  for (guint i = 0; checks != NULL && i < json_array_get_length (checks); i++)
    if (json_object_has_member (json_array_get_object_element (checks, i), "after"))
      return TRUE;
  return FALSE;
}

static const char *
get_moment (Stay *stay)
{
  if (stay->visit->handed_back_at_s != WM_UNKNOWN)
    return WM_MOMENT_HAND_BACK;
  if (has_work (wm_sample_get_list (stay->object, "checks")))
    return WM_MOMENT_PROOF;
  return stay->visit->inspected_at_s != WM_UNKNOWN ? WM_MOMENT_INSPECTION
                                                   : WM_MOMENT_TAKE_IN;
}

static void
fill_visit (Stay *stay, WmPiece *piece)
{
  static const char *const keys[] = { "promised_on",       "wishes",
                                      "open_reason",       "next_check_on",
                                      "next_check_reason", "shop_note" };
  JsonObject *object = stay->object;
  g_autofree char *condition = join_lines (wm_sample_get_list (object, "condition"));

  g_object_set (stay->visit, "piece-id", wm_record_get_id (WM_RECORD (piece)),
                "taken-in-at-s", wm_sample_get_time (object, "taken_in"), "taken-in-by",
                find_person (stay, "by"), "inspected-at-s",
                wm_sample_get_time (object, "inspected_at"), "inspected-by",
                find_person (stay, "inspected_by"), "handed-back-at-s",
                wm_sample_get_time (object, "handed_back_at"), "handed-back-by",
                find_person (stay, "handed_back_by"), "mass-in-mg",
                get_milligrams (object, "mass_in_g"), "mass-out-mg",
                get_milligrams (object, "mass_out_g"), "condition", condition, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    {
      g_autofree char *property = g_strdelimit (g_strdup (keys[i]), "_", '-');

      wm_record_set_text (WM_RECORD (stay->visit), property,
                          wm_sample_get_text (object, keys[i]));
    }
  wm_record_set_text (WM_RECORD (stay->visit), "moment", get_moment (stay));
}

static gboolean
commit_step (Stay *stay, WmPiece *piece, const char *next_label, const WmId *next_by,
             GError **error)
{
  if (!wm_archive_commit (stay->sample->archive, stay->edit, error))
    return FALSE;
  g_clear_pointer (&stay->edit, wm_edit_unref);
  if (next_label != NULL)
    stay->edit = wm_edit_new (next_label, wm_record_get_id (WM_RECORD (piece)), next_by);
  return TRUE;
}

gboolean
wm_sample_add_visit (WmSample *sample, WmPiece *piece, JsonObject *object, GError **error)
{
  g_autoptr (WmVisit) visit = wm_visit_new ();
  g_autoptr (GHashTable) photos =
      g_hash_table_new_full (g_str_hash, g_str_equal, NULL, g_object_unref);
  Stay stay = { .sample = sample, .object = object, .visit = visit, .photos = photos };
  const WmId *by = find_person (&stay, "by");
  const WmId *inspector = find_person (&stay, "inspected_by");
  gboolean is_done;

  fill_visit (&stay, piece);
  stay.edit =
      wm_edit_new (N_ ("Begin a visit"), wm_record_get_id (WM_RECORD (piece)), by);
  wm_edit_put (stay.edit, visit);
  is_done = commit_step (&stay, piece, N_ ("Add photos"), by, error)
            && put_photos (&stay, error)
            && commit_step (&stay, piece, N_ ("Answer checks"), inspector, error)
            && put_checks (&stay, piece, error)
            && commit_step (&stay, piece, NULL, NULL, error);
  g_clear_pointer (&stay.edit, wm_edit_unref);
  return is_done;
}

/* sample-piece.c: a sample piece with its owner and stones
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#include "command/sample.h"

/* ---- reading members ---------------------------------------------------- */

static JsonNode *
find_value (JsonObject *object, const char *key)
{
  JsonNode *node = json_object_get_member (object, key);

  return node != NULL && JSON_NODE_HOLDS_VALUE (node) ? node : NULL;
}

const char *
wm_sample_get_text (JsonObject *object, const char *key)
{
  JsonNode *node = find_value (object, key);

  return node != NULL ? json_node_get_string (node) : NULL;
}

double
wm_sample_get_real (JsonObject *object, const char *key)
{
  JsonNode *node = find_value (object, key);

  return node != NULL ? json_node_get_double (node) : NAN;
}

gint64
wm_sample_get_int (JsonObject *object, const char *key)
{
  JsonNode *node = find_value (object, key);

  return node != NULL ? json_node_get_int (node) : WM_UNKNOWN;
}

gint64
wm_sample_get_time (JsonObject *object, const char *key)
{
  const char *text = wm_sample_get_text (object, key);
  g_autoptr (GString) whole = g_string_new (text);
  g_autoptr (GDateTime) time = NULL;

  /* "2026-11-23T09:52+01:00" lacks the seconds that GLib asks for. */
  if (whole->len > 16 && whole->str[16] != ':')
    g_string_insert (whole, 16, ":00");
  time = text != NULL ? g_date_time_new_from_iso8601 (whole->str, NULL) : NULL;
  return time != NULL ? g_date_time_to_unix (time) : WM_UNKNOWN;
}

JsonArray *
wm_sample_get_list (JsonObject *object, const char *key)
{
  JsonNode *node = json_object_get_member (object, key);

  return node != NULL && JSON_NODE_HOLDS_ARRAY (node) ? json_node_get_array (node) : NULL;
}

const WmId *
wm_sample_find_person (WmSample *sample, const char *initials)
{
  return initials != NULL ? g_hash_table_lookup (sample->people, initials) : NULL;
}

/* ---- the piece ---------------------------------------------------------- */

static WmPerson *
make_owner (JsonObject *object)
{
  static const char *const keys[] = { "name",       "phone",    "email", "address",
                                      "letters_by", "language", "note" };
  WmPerson *owner = wm_person_new ();

  wm_record_set_text (WM_RECORD (owner), "role", WM_ROLE_OWNER);
  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    {
      g_autofree char *property = g_strdelimit (g_strdup (keys[i]), "_", '-');

      wm_record_set_text (WM_RECORD (owner), property,
                          wm_sample_get_text (object, keys[i]));
    }
  return owner;
}

static void
set_declared (WmPiece *piece, JsonObject *object)
{
  double value = wm_sample_get_real (object, "value");

  /* All currencies of the sample pieces have hundredths (ISO 4217). */
  if (isfinite (value))
    piece->declared_minor = (gint64)llround (value * 100);
  wm_record_set_text (WM_RECORD (piece), "currency",
                      wm_sample_get_text (object, "currency"));
  wm_record_set_text (WM_RECORD (piece), "declared-basis",
                      wm_sample_get_text (object, "basis"));
}

static WmPiece *
make_piece (JsonObject *object, const char *number, const WmId *owner_id)
{
  static const char *const keys[] = { "type",   "metal", "fineness_basis", "description",
                                      "unlike", "worn",  "size",           "shop_note" };
  WmPiece *piece = wm_piece_new ();

  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    {
      g_autofree char *property = g_strdelimit (g_strdup (keys[i]), "_", '-');

      wm_record_set_text (WM_RECORD (piece), property,
                          wm_sample_get_text (object, keys[i]));
    }
  wm_record_set_text (WM_RECORD (piece), "number", number);
  piece->owner_id = *owner_id;
  piece->fineness = wm_sample_get_int (object, "fineness");
  piece->length_mm = wm_sample_get_real (object, "length_mm");
  if (json_object_has_member (object, "declared"))
    set_declared (piece, json_object_get_object_member (object, "declared"));
  return piece;
}

static void
put_stones (WmEdit *edit, WmPiece *piece, JsonArray *stones)
{
  static const char *const keys[] = { "species", "cut", "basis", "note" };

  for (guint i = 0; stones != NULL && i < json_array_get_length (stones); i++)
    {
      JsonObject *object = json_array_get_object_element (stones, i);
      g_autoptr (WmStoneGroup) group = wm_stone_group_new ();

      group->piece_id = *wm_record_get_id (WM_RECORD (piece));
      group->position = i;
      for (guint j = 0; j < G_N_ELEMENTS (keys); j++)
        wm_record_set_text (WM_RECORD (group), keys[j],
                            wm_sample_get_text (object, keys[j]));
      group->count = wm_sample_get_int (object, "count");
      group->length_mm = wm_sample_get_real (object, "length_mm");
      group->width_mm = wm_sample_get_real (object, "width_mm");
      group->depth_mm = wm_sample_get_real (object, "depth_mm");
      wm_edit_put (edit, group);
    }
}

/* The year of the first visit, so that old pieces have old numbers. */
static int
get_year (JsonArray *visits)
{
  JsonObject *first = json_array_get_object_element (visits, 0);
  g_autoptr (GDateTime) time =
      g_date_time_new_from_unix_utc (wm_sample_get_time (first, "taken_in"));

  return time != NULL ? g_date_time_get_year (time) : 0;
}

gboolean
wm_sample_add_piece (WmSample *sample, JsonObject *object, GError **error)
{
  JsonArray *visits = wm_sample_get_list (object, "visits");
  g_autofree char *number = NULL;
  g_autoptr (WmPerson) owner = NULL;
  g_autoptr (WmPiece) piece = NULL;
  g_autoptr (WmEdit) edit = NULL;
  const WmId *by;

  if (visits == NULL || json_array_get_length (visits) == 0
      || !json_object_has_member (object, "owner"))
    {
      g_set_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_REFUSED,
                   "a sample piece needs an owner and a visit");
      return FALSE;
    }
  number = wm_archive_take_number (sample->archive, get_year (visits), error);
  if (number == NULL)
    return FALSE;

  owner = make_owner (json_object_get_object_member (object, "owner"));
  piece = make_piece (object, number, wm_record_get_id (WM_RECORD (owner)));
  by = wm_sample_find_person (
      sample, wm_sample_get_text (json_array_get_object_element (visits, 0), "by"));
  edit = wm_edit_new (N_ ("Take in a piece"), wm_record_get_id (WM_RECORD (piece)), by);
  wm_edit_put (edit, owner);
  wm_edit_put (edit, piece);
  put_stones (edit, piece, wm_sample_get_list (object, "stones"));
  if (!wm_archive_commit (sample->archive, edit, error))
    return FALSE;

  for (guint i = 0; i < json_array_get_length (visits); i++)
    if (!wm_sample_add_visit (sample, piece, json_array_get_object_element (visits, i),
                              error))
      return FALSE;
  return TRUE;
}

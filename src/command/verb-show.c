/* verb-show.c: show NUMBER: one piece whole
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>

#include "command/choose-visit.h"
#include "command/json-out.h"
#include "command/severity-words.h"
#include "command/verbs.h"

/* One visit with everything that belongs to it. */
typedef struct
{
  WmVisit *visit; /* of the list of visits */
  GPtrArray *photos;
  GPtrArray *checks;
  GPtrArray *marks;
  GPtrArray *measurements;
  GPtrArray *remedies;
  GPtrArray *materials;
  GPtrArray *proofs;
  GPtrArray *pairings;
} Stay;

static void
stay_clear (Stay *stay)
{
  GPtrArray **lists[] = { &stay->photos,       &stay->checks,   &stay->marks,
                          &stay->measurements, &stay->remedies, &stay->materials,
                          &stay->proofs,       &stay->pairings };

  for (guint i = 0; i < G_N_ELEMENTS (lists); i++)
    g_clear_pointer (lists[i], g_ptr_array_unref);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Stay, stay_clear)

static gboolean
load_stay (WmArchive *archive, WmVisit *visit, Stay *stay, GError **error)
{
  const struct
  {
    WmKind kind;
    GPtrArray **list;
  } parts[] = {
    { WM_KIND_PHOTO, &stay->photos },     { WM_KIND_CHECK, &stay->checks },
    { WM_KIND_MARK, &stay->marks },       { WM_KIND_MEASUREMENT, &stay->measurements },
    { WM_KIND_REMEDY, &stay->remedies },  { WM_KIND_PROOF, &stay->proofs },
    { WM_KIND_PAIRING, &stay->pairings }, { WM_KIND_MATERIAL, &stay->materials }
  };

  stay->visit = visit;
  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      const WmId *id = wm_record_get_id (WM_RECORD (visit));

      *parts[i].list = parts[i].kind == WM_KIND_PHOTO
                           ? wm_list_photos (archive, id, error)
                           : wm_archive_list_of_visit (archive, parts[i].kind, id, error);
      if (*parts[i].list == NULL)
        return FALSE;
    }
  return TRUE;
}

/* ---- JSON --------------------------------------------------------------- */

/* The rows of @list whose key @field is @id; NULL: all. */
static void
add_list (JsonBuilder *builder, const char *key, GPtrArray *list, const char *field,
          const WmId *id)
{
  json_builder_set_member_name (builder, key);
  json_builder_begin_array (builder);
  for (guint i = 0; i < list->len; i++)
    {
      WmRecord *record = list->pdata[i];

      if (field != NULL
          && !wm_id_equal (
              wm_record_get_member (
                  record, wm_kind_find_field (wm_record_get_kind (record), field)),
              id))
        continue;
      json_builder_begin_object (builder);
      wm_json_add_fields (builder, record);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
}

static void
add_photos (JsonBuilder *builder, WmArchive *archive, const Stay *stay)
{
  json_builder_set_member_name (builder, "photos");
  json_builder_begin_array (builder);
  for (guint i = 0; i < stay->photos->len; i++)
    {
      WmPhoto *photo = stay->photos->pdata[i];
      g_autofree char *path = wm_archive_photo_path (archive, photo);
      g_autofree char *shown = wm_shown_path (path);

      json_builder_begin_object (builder);
      wm_json_add_fields (builder, photo);
      wm_json_add_text (builder, "file", shown);
      add_list (builder, "marks", stay->marks, "photo_id",
                wm_record_get_id (WM_RECORD (photo)));
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
}

/* The remedies of a check, each with what it takes. */
static void
add_work (JsonBuilder *builder, const Stay *stay, const WmId *check_id)
{
  json_builder_set_member_name (builder, "work");
  json_builder_begin_array (builder);
  for (guint i = 0; i < stay->remedies->len; i++)
    {
      WmRemedy *remedy = stay->remedies->pdata[i];

      if (!wm_id_equal (&remedy->check_id, check_id))
        continue;
      json_builder_begin_object (builder);
      wm_json_add_fields (builder, remedy);
      add_list (builder, "materials", stay->materials, "remedy_id",
                wm_record_get_id (WM_RECORD (remedy)));
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
}

static void
add_checks (JsonBuilder *builder, const Stay *stay)
{
  json_builder_set_member_name (builder, "checks");
  json_builder_begin_array (builder);
  for (guint i = 0; i < stay->checks->len; i++)
    {
      WmRecord *check = stay->checks->pdata[i];
      const WmId *id = wm_record_get_id (check);

      json_builder_begin_object (builder);
      wm_json_add_fields (builder, check);
      add_list (builder, "measurements", stay->measurements, "check_id", id);
      add_work (builder, stay, id);
      add_list (builder, "proofs", stay->proofs, "check_id", id);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
}

static void
add_stay (JsonBuilder *builder, WmArchive *archive, const Stay *stay)
{
  static const WmId none = WM_ID_NONE;

  json_builder_begin_object (builder);
  wm_json_add_fields (builder, stay->visit);
  add_photos (builder, archive, stay);
  add_checks (builder, stay);
  add_list (builder, "final_tests", stay->proofs, "check_id", &none);
  add_list (builder, "pairings", stay->pairings, NULL, NULL);
  json_builder_end_object (builder);
}

static gboolean
add_visits (JsonBuilder *builder, WmArchive *archive, GPtrArray *visits, GError **error)
{
  json_builder_set_member_name (builder, "visits");
  json_builder_begin_array (builder);
  for (guint i = 0; i < visits->len; i++)
    {
      g_auto (Stay) stay = { NULL };

      if (!load_stay (archive, visits->pdata[i], &stay, error))
        return FALSE;
      add_stay (builder, archive, &stay);
    }
  json_builder_end_array (builder);
  return TRUE;
}

static void
add_events (JsonBuilder *builder, GPtrArray *events)
{
  json_builder_set_member_name (builder, "history");
  json_builder_begin_array (builder);
  for (guint i = 0; i < events->len; i++)
    {
      const WmEvent *event = events->pdata[i];

      json_builder_begin_object (builder);
      wm_json_add_time (builder, "at", event->at_us / G_USEC_PER_SEC);
      wm_json_add_text (builder, "by", event->by_name);
      wm_json_add_text (builder, "what", event->label);
      wm_json_add_flag (builder, "undone", event->undone);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
}

static WmPerson *
load_owner (WmArchive *archive, WmPiece *piece)
{
  return wm_id_is_none (&piece->owner_id)
             ? NULL
             : wm_archive_get (archive, WM_KIND_PERSON, &piece->owner_id, NULL);
}

static gboolean
print_json (WmCall *call, WmArchive *archive, WmPiece *piece, GPtrArray *visits,
            GError **error)
{
  const WmId *id = wm_record_get_id (WM_RECORD (piece));
  g_autoptr (JsonBuilder) builder = json_builder_new ();
  g_autoptr (WmPerson) owner = load_owner (archive, piece);
  g_autoptr (GPtrArray) stones =
      wm_archive_list (archive, WM_KIND_STONE_GROUP, "piece_id", id, error);
  g_autoptr (GPtrArray) events = NULL;

  if (stones == NULL)
    return FALSE;
  json_builder_begin_object (builder);
  wm_json_add_fields (builder, piece);
  json_builder_set_member_name (builder, "owner");
  if (owner != NULL)
    {
      json_builder_begin_object (builder);
      wm_json_add_fields (builder, owner);
      json_builder_end_object (builder);
    }
  else
    {
      json_builder_add_null_value (builder);
    }
  add_list (builder, "stones", stones, NULL, NULL);
  if (!add_visits (builder, archive, visits, error))
    return FALSE;
  events = wm_archive_list_events (archive, id, error);
  if (events == NULL)
    return FALSE;
  add_events (builder, events);
  json_builder_end_object (builder);
  wm_call_print_json (call, json_builder_get_root (builder));
  return TRUE;
}

/* ---- text --------------------------------------------------------------- */

static char *
format_day (gint64 time_s)
{
  g_autoptr (GDateTime) time =
      time_s != WM_UNKNOWN ? g_date_time_new_from_unix_local (time_s) : NULL;

  return time != NULL ? g_date_time_format (time, "%Y-%m-%d") : g_strdup ("–");
}

static void
print_line (WmCall *call, const char *name, const char *text)
{
  if (text != NULL)
    wm_call_print (call, "%s: %s\n", name, text);
}

static void
print_stay (WmCall *call, const Stay *stay)
{
  g_autofree char *in = format_day (stay->visit->taken_in_at_s);
  g_autofree char *back = format_day (stay->visit->handed_back_at_s);
  guint looked_at = 0;

  wm_call_print (call, "\n%s %s – %s\n", _ ("Visit"), in, back);
  for (guint i = 0; i < stay->checks->len; i++)
    {
      const WmCheck *check = stay->checks->pdata[i];

      looked_at += check->severity != WM_SEVERITY_NOT_LOOKED_AT;
      if (!wm_severity_is_finding ((WmSeverity)check->severity))
        continue;
      wm_call_print (call, "  %s: %s", wm_severity_words (check->severity),
                     wm_trade_text (check->fault != NULL ? check->fault : check->title));
      if (check->note != NULL)
        wm_call_print (call, ". %s", check->note);
      if (check->after_severity != WM_SEVERITY_NOT_LOOKED_AT)
        wm_call_print (call, " → %s", wm_severity_words (check->after_severity));
      wm_call_print (call, "\n");
    }
  wm_call_print (call, _ ("  %u photos, %u marks, %u of %u checks answered\n"),
                 stay->photos->len, stay->marks->len, looked_at, stay->checks->len);
  if (stay->visit->next_check_on != NULL)
    wm_call_print (call, "  %s %s\n", _ ("Next check:"), stay->visit->next_check_on);
}

static gboolean
print_text (WmCall *call, WmArchive *archive, WmPiece *piece, GPtrArray *visits,
            GError **error)
{
  g_autoptr (WmPerson) owner = load_owner (archive, piece);
  WmTrade *trade = wm_call_get_trade (call);
  const WmPieceType *type =
      trade != NULL ? wm_trade_find_piece_type (trade, piece->type) : NULL;
  const WmMetal *metal = trade != NULL ? wm_trade_find_metal (trade, piece->metal) : NULL;

  wm_call_print (call, "%s\n", piece->number);
  print_line (call, _ ("Kind"), type != NULL ? wm_trade_text (type->name) : piece->type);
  print_line (call, _ ("Owner"), owner != NULL ? owner->name : NULL);
  print_line (call, _ ("Metal"),
              metal != NULL ? wm_trade_text (metal->name) : piece->metal);
  print_line (call, _ ("Description"), piece->description);
  print_line (call, _ ("Unlike its twins"), piece->unlike);
  for (guint i = 0; i < visits->len; i++)
    {
      g_auto (Stay) stay = { NULL };

      if (!load_stay (archive, visits->pdata[i], &stay, error))
        return FALSE;
      print_stay (call, &stay);
    }
  return TRUE;
}

static WmExit
run (WmCall *call)
{
  g_autoptr (WmArchive) archive = wm_call_look_at_archive (call);
  g_autoptr (WmPiece) piece = NULL;
  g_autoptr (GPtrArray) visits = NULL;
  g_autoptr (GError) error = NULL;

  if (archive != NULL)
    piece = wm_call_find_piece (call, archive, wm_call_get_operand (call, 0));
  if (piece == NULL)
    return WM_EXIT_FAILED;
  visits = wm_archive_list (archive, WM_KIND_VISIT, "piece_id",
                            wm_record_get_id (WM_RECORD (piece)), &error);
  if (visits == NULL
      || !(wm_call_wants_json (call) ? print_json (call, archive, piece, visits, &error)
                                     : print_text (call, archive, piece, visits, &error)))
    return wm_call_fail_with (call, error);
  return WM_EXIT_DONE;
}

const WmVerb wm_verb_show = {
  .name = "show",
  .operands = N_ ("NUMBER"),
  .min_operands = 1,
  .max_operands = 1,
  .summary = N_ ("show one piece whole: visits, photos, marks, checks"),
  .run = run,
};

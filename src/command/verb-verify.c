/* verb-verify.c: verify: prove the archive, database and photos
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>

#include "command/verbs.h"

/* For --json; never change. */
static const char *
get_code (WmArchiveError code)
{
  switch (code)
    {
    case WM_ARCHIVE_ERROR_PHOTO_MISSING:
      return "photo-missing";
    case WM_ARCHIVE_ERROR_PHOTO_CHANGED:
      return "photo-changed";
    case WM_ARCHIVE_ERROR_DAMAGED:
      return "damaged";
    default:
      return "unreadable";
    }
}

static void
print_json (WmCall *call, const WmAudit *audit)
{
  const struct
  {
    const char *key;
    gint64 n;
  } counts[] = { { "pieces", audit->n_pieces },
                 { "photos", audit->n_photos },
                 { "edits", audit->n_edits },
                 { "bytes", audit->n_bytes },
                 { "unnamed_files", audit->n_strays } };
  g_autoptr (JsonBuilder) builder = json_builder_new ();

  json_builder_begin_object (builder);
  json_builder_set_member_name (builder, "sound");
  json_builder_add_boolean_value (builder, audit->problems->len == 0);
  for (guint i = 0; i < G_N_ELEMENTS (counts); i++)
    {
      json_builder_set_member_name (builder, counts[i].key);
      json_builder_add_int_value (builder, counts[i].n);
    }
  json_builder_set_member_name (builder, "problems");
  json_builder_begin_array (builder);
  for (guint i = 0; i < audit->problems->len; i++)
    {
      const WmProblem *problem = audit->problems->pdata[i];

      json_builder_begin_object (builder);
      json_builder_set_member_name (builder, "code");
      json_builder_add_string_value (builder, get_code (problem->code));
      json_builder_set_member_name (builder, "text");
      json_builder_add_string_value (builder, problem->text);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
  json_builder_end_object (builder);
  wm_call_print_json (call, json_builder_get_root (builder));
}

static void
print_text (WmCall *call, const WmAudit *audit)
{
  for (guint i = 0; i < audit->problems->len; i++)
    wm_call_print (call, "%s\n", ((WmProblem *)audit->problems->pdata[i])->text);
  wm_call_print (call,
                 _ ("Looked at %" G_GINT64_FORMAT " pieces, %" G_GINT64_FORMAT
                    " edits and %" G_GINT64_FORMAT " photos (%" G_GINT64_FORMAT
                    " bytes).\n"),
                 audit->n_pieces, audit->n_edits, audit->n_photos, audit->n_bytes);
  if (audit->n_strays > 0)
    wm_call_print (call,
                   _ ("%" G_GINT64_FORMAT
                      " files in the photos folder belong to no record"
                      " (an import that was cut short leaves such files; they do no"
                      " harm).\n"),
                   audit->n_strays);
  if (audit->problems->len == 0)
    wm_call_print (call, "%s\n", _ ("Everything is as it was stored."));
}

static WmExit
run (WmCall *call)
{
  g_autoptr (WmArchive) archive = wm_call_look_at_archive (call);
  g_autoptr (WmAudit) audit = NULL;
  g_autoptr (GError) error = NULL;

  if (archive == NULL)
    return WM_EXIT_FAILED;
  audit = wm_archive_verify (archive, NULL, NULL, NULL, &error);
  if (audit == NULL)
    return wm_call_fail_with (call, error);
  if (wm_call_wants_json (call))
    print_json (call, audit);
  else
    print_text (call, audit);
  if (audit->problems->len == 0)
    return WM_EXIT_DONE;
  return wm_call_fail (
      call,
      ngettext ("%u problem found. Copy the folder to a safe place, then"
                " bring back what is listed from your last backup.",
                "%u problems found. Copy the folder to a safe place, then"
                " bring back what is listed from your last backup.",
                audit->problems->len),
      audit->problems->len);
}

const WmVerb wm_verb_verify = {
  .name = "verify",
  .operands = "",
  .summary = N_ ("prove the archive: database, log of edits, every photo"),
  .run = run,
};

/* verb-sample.c: sample: fill an empty archive with the sample pieces
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>

#include "command/sample.h"
#include "command/verbs.h"
#include "wearmark-config.h"

/* Where pieces.json is: WM_SAMPLES, where it was installed, the source tree. */
static char *
find_folder (void)
{
  const char *named = g_getenv ("WM_SAMPLES");
  const char *folders[] = { named, WM_SAMPLES_DIR, WM_SAMPLES_SOURCE_DIR };

  for (guint i = 0; i < G_N_ELEMENTS (folders); i++)
    {
      g_autofree char *file = NULL;

      if (folders[i] == NULL)
        continue;
      file = g_build_filename (folders[i], "pieces.json", NULL);
      if (g_file_test (file, G_FILE_TEST_IS_REGULAR))
        return g_strdup (folders[i]);
      if (folders[i] == named)
        return NULL; /* named, so nothing else is meant */
    }
  return NULL;
}

static gboolean
put_setting (WmSample *sample, WmEdit *edit, const char *name, const char *value,
             GError **error)
{
  return value == NULL
         || wm_archive_put_setting (sample->archive, edit, name, value, error);
}

static void
put_people (WmSample *sample, WmEdit *edit, JsonArray *people)
{
  for (guint i = 0; people != NULL && i < json_array_get_length (people); i++)
    {
      JsonObject *object = json_array_get_object_element (people, i);
      const char *initials = wm_sample_get_text (object, "initials");
      g_autoptr (WmPerson) person = wm_person_new ();

      g_object_set (person, "role", WM_ROLE_WORKER, "name",
                    wm_sample_get_text (object, "name"), "initials", initials, NULL);
      wm_edit_put (edit, person);
      if (initials != NULL)
        g_hash_table_insert (
            sample->people, g_strdup (initials),
            g_memdup2 (wm_record_get_id (WM_RECORD (person)), sizeof (WmId)));
    }
}

static gboolean
add_shop (WmSample *sample, JsonObject *shop, GError **error)
{
  g_autoptr (WmEdit) edit = wm_edit_new (N_ ("Set up the shop"), NULL, NULL);
  const char *phone = wm_sample_get_text (shop, "phone");
  const char *email = wm_sample_get_text (shop, "email");
  g_autofree char *contact = g_strdup_printf ("%s%s%s", phone != NULL ? phone : "",
                                              phone != NULL && email != NULL ? ", " : "",
                                              email != NULL ? email : "");

  put_people (sample, edit, wm_sample_get_list (shop, "people"));
  return put_setting (sample, edit, WM_SETTING_SHOP_NAME,
                      wm_sample_get_text (shop, "name"), error)
         && put_setting (sample, edit, WM_SETTING_SHOP_ADDRESS,
                         wm_sample_get_text (shop, "address"), error)
         && put_setting (sample, edit, WM_SETTING_SHOP_CONTACT, contact, error)
         && put_setting (sample, edit, WM_SETTING_CURRENCY,
                         wm_sample_get_text (shop, "currency"), error)
         && wm_archive_commit (sample->archive, edit, error);
}

static gboolean
add_all (WmSample *sample, JsonObject *root, GError **error)
{
  JsonArray *pieces = wm_sample_get_list (root, "pieces");

  if (pieces == NULL || !json_object_has_member (root, "shop"))
    {
      g_set_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_REFUSED,
                   "pieces.json has no shop or no pieces");
      return FALSE;
    }
  if (!add_shop (sample, json_object_get_object_member (root, "shop"), error))
    return FALSE;
  for (guint i = 0; i < json_array_get_length (pieces); i++)
    {
      if (!wm_sample_add_piece (sample, json_array_get_object_element (pieces, i), error))
        return FALSE;
      if (!wm_call_wants_json (sample->call))
        wm_call_print (sample->call, _ ("Piece %u of %u is in.\n"), i + 1,
                       json_array_get_length (pieces));
    }
  return TRUE;
}

static gboolean
is_empty (WmArchive *archive)
{
  g_autoptr (GPtrArray) people =
      wm_archive_list (archive, WM_KIND_PERSON, NULL, NULL, NULL);

  return wm_archive_count (archive, WM_PIECES_ALL, NULL) == 0 && people != NULL
         && people->len == 0;
}

static void
print_result (WmCall *call, WmArchive *archive)
{
  g_autoptr (JsonBuilder) builder = NULL;
  g_autofree char *shown = NULL;

  if (!wm_call_wants_json (call))
    {
      shown = wm_shown_path (wm_archive_get_folder (archive));
      wm_call_print (call, _ ("The sample pieces are in %s.\n"), shown);
      return;
    }
  builder = json_builder_new ();
  json_builder_begin_object (builder);
  json_builder_set_member_name (builder, "pieces");
  json_builder_add_int_value (builder, wm_archive_count (archive, WM_PIECES_ALL, NULL));
  json_builder_end_object (builder);
  wm_call_print_json (call, json_builder_get_root (builder));
}

static WmExit
fill (WmCall *call, const char *folder, JsonObject *root, WmTrade *trade)
{
  g_autoptr (WmArchive) archive = wm_call_open_archive (call, WM_ARCHIVE_CREATE);
  g_autoptr (GHashTable) people =
      g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  g_autoptr (GError) error = NULL;
  WmSample sample = { call, archive, trade, folder, people, 0 };

  if (archive == NULL)
    return WM_EXIT_FAILED;
  if (!is_empty (archive))
    {
      error = g_error_new (WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_NOT_EMPTY, "%s",
                           wm_archive_get_folder (archive));
      return wm_call_fail_with (call, error);
    }
  wm_archive_set_trade (archive, trade);
  if (!add_all (&sample, root, &error))
    return wm_call_fail_with (call, error);
  print_result (call, archive);
  return sample.n_left_out == 0 ? WM_EXIT_DONE : WM_EXIT_FAILED;
}

static WmExit
run (WmCall *call)
{
  g_autofree char *folder = find_folder ();
  g_autofree char *file = NULL;
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_autoptr (GError) error = NULL;
  WmTrade *trade = wm_call_get_trade (call);
  JsonNode *root;

  if (trade == NULL)
    return WM_EXIT_FAILED;
  if (folder == NULL)
    return wm_call_fail (call, _ ("The sample pieces are not on this machine. Name their"
                                  " folder in the environment's WM_SAMPLES."));
  file = g_build_filename (folder, "pieces.json", NULL);
  if (!json_parser_load_from_file (parser, file, &error))
    return wm_call_fail (call, _ ("The sample pieces can not be read: %s"),
                         error->message);
  root = json_parser_get_root (parser);
  if (root == NULL || !JSON_NODE_HOLDS_OBJECT (root))
    return wm_call_fail (call, _ ("The sample pieces can not be read: %s"), file);
  return fill (call, folder, json_node_get_object (root), trade);
}

const WmVerb wm_verb_sample = {
  .name = "sample",
  .operands = "",
  .summary = N_ ("fill an empty archive with the sample pieces"),
  .run = run,
};

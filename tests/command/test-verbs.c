/* test-verbs.c: the program itself, called as a person or a script calls it
 *
 * Without a display; standard output, standard error and the exit code are looked at.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gstdio.h>
#include <json-glib/json-glib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "../archive/fixture.h"
#include "photo/jpeg-out.h"
#include "photo/pixels.h"
#include "reckon/point.h"

typedef struct
{
  int code;
  char *out;
  char *err;
  JsonParser *parser;
  JsonNode *json; /* of out, or NULL */
} Run;

static void
run_clear (Run *run)
{
  g_free (run->out);
  g_free (run->err);
  g_clear_object (&run->parser);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Run, run_clear)

static Run
call (Fixture *f, ...)
{
  g_autoptr (GPtrArray) argv = g_ptr_array_new ();
  g_auto (GStrv) env = g_get_environ ();
  g_autofree char *program =
      g_build_filename (g_getenv ("WM_BUILD_DIR"), "src", "wearmark", NULL);
  g_autoptr (GError) error = NULL;
  Run run = { 0 };
  int status = 0;
  const char *word;
  va_list words;

  env = g_environ_unsetenv (env, "DISPLAY");
  env = g_environ_unsetenv (env, "WAYLAND_DISPLAY");
  g_ptr_array_add (argv, program);
  if (f != NULL)
    {
      g_ptr_array_add (argv, (gpointer) "--archive");
      g_ptr_array_add (argv, f->folder);
    }
  va_start (words, f);
  while ((word = va_arg (words, const char *)) != NULL)
    g_ptr_array_add (argv, (gpointer)word);
  va_end (words);
  g_ptr_array_add (argv, NULL);
  g_spawn_sync (NULL, (char **)argv->pdata, env, G_SPAWN_DEFAULT, NULL, NULL, &run.out,
                &run.err, &status, &error);
  g_assert_no_error (error);
  g_assert_true (WIFEXITED (status));
  run.code = WEXITSTATUS (status);
  run.parser = json_parser_new ();
  if (json_parser_load_from_data (run.parser, run.out, -1, NULL))
    run.json = json_parser_get_root (run.parser);
  return run;
}

static void
assert_code (const Run *run, int code)
{
  if (run->code != code)
    g_test_message ("out: %s\nerr: %s", run->out, run->err);
  g_assert_cmpint (run->code, ==, code);
  /* A reason when it did not work, silence when it did. */
  if (code == 0)
    g_assert_cmpstr (run->err, ==, "");
  else
    g_assert_true (g_str_has_prefix (run->err, "wearmark"));
}

/* The fixture's own archive is closed, so that the program can have it. */
static void
add_known_piece (Fixture *f)
{
  g_autoptr (WmPerson) owner = fixture_add_person (f, "Zoë Müller");
  g_autoptr (WmPiece) piece = fixture_add_piece (f, "2026-0151-Q", "Ring with a crown");
  g_autoptr (WmVisit) visit = fixture_add_visit (f, piece, 1700000000);
  g_autoptr (WmCheck) check = fixture_add_check (f, visit, "Worn claw", 3);

  g_object_set (piece, "owner-id", fixture_id (owner), NULL);
  fixture_put (f, "Owner", fixture_id (piece), piece);
  g_object_unref (fixture_add_piece (f, "2026-0152-R", "Brooch"));
  g_clear_object (&f->archive);
}

/* A JPEG of the given size with edges to judge focus by. Caller frees the path. */
static char *
write_jpeg (Fixture *f, const char *name, int width, int height)
{
  g_autoptr (WmPixels) pixels = wm_pixels_new (width, height);
  g_autoptr (GBytes) bytes = NULL;
  char *path = fixture_path (f, name);
  gsize n = 0;
  const char *data;

  for (int y = 0; y < height; y++)
    for (int x = 0; x < width; x++)
      {
        guint8 *pixel = pixels->data + (gsize)y * pixels->stride + 4 * (gsize)x;

        pixel[0] = pixel[1] = pixel[2] = (x / 40 + y / 40) % 2 == 0 ? 60 : 190;
        pixel[3] = 255;
      }
  bytes = wm_jpeg_encode (pixels, 90, NULL);
  data = g_bytes_get_data (bytes, &n);
  g_assert_true (g_file_set_contents (path, data, (gssize)n, NULL));
  return path;
}

static JsonObject *
get_object (const Run *run)
{
  g_assert_nonnull (run->json);
  g_assert_true (JSON_NODE_HOLDS_OBJECT (run->json));
  return json_node_get_object (run->json);
}

/* ---- calling ------------------------------------------------------------ */

static void
test_help (void)
{
  static const char *const verbs[] = { "sample", "pieces", "show",  "report",  "picture",
                                       "verify", "photo",  "align", "measure", "reckon" };
  g_auto (Run) help = call (NULL, "--help", NULL);
  g_auto (Run) version = call (NULL, "--version", NULL);
  g_auto (Run) verb = call (NULL, "picture", "-h", NULL);

  assert_code (&help, 0);
  for (guint i = 0; i < G_N_ELEMENTS (verbs); i++)
    g_assert_nonnull (strstr (help.out, verbs[i]));
  assert_code (&version, 0);
  g_assert_true (g_str_has_prefix (version.out, "wearmark "));
  assert_code (&verb, 0);
  g_assert_nonnull (strstr (verb.out, "--photo N"));
}

static void
test_wrong_usage (void)
{
  g_auto (Run) no_verb = call (NULL, "polish", NULL);
  g_auto (Run) no_option = call (NULL, "pieces", "--shiny", NULL);
  g_auto (Run) no_value = call (NULL, "pieces", "--archive", NULL);
  g_auto (Run) empty_value = call (NULL, "pieces", "--archive", "", NULL);
  g_auto (Run) empty_too = call (NULL, "pieces", "--archive=", NULL);
  g_auto (Run) flag_value = call (NULL, "pieces", "--json=yes", NULL);
  g_auto (Run) too_few = call (NULL, "show", NULL);
  g_auto (Run) too_many = call (NULL, "verify", "x", NULL);
  g_auto (Run) no_output = call (NULL, "picture", "2026-0151-Q", "--photo", "1", NULL);
  g_auto (Run) not_utf8 = call (NULL, "\xff\xfe", NULL);
  const Run *all[] = { &no_verb,    &no_option, &no_value, &empty_value, &empty_too,
                       &flag_value, &too_few,   &too_many, &no_output,   &not_utf8 };

  for (guint i = 0; i < G_N_ELEMENTS (all); i++)
    {
      assert_code (all[i], 2);
      g_assert_cmpstr (all[i]->out, ==, "");
      g_assert_true (g_utf8_validate (all[i]->err, -1, NULL));
    }
}

/* An answer that nobody got is no success. */
static void
test_full_output (void)
{
  g_autofree char *program =
      g_build_filename (g_getenv ("WM_BUILD_DIR"), "src", "wearmark", NULL);
  const char *argv[] = { "/bin/sh", "-c", "exec \"$0\" --json reckon >/dev/full", program,
                         NULL };
  g_autofree char *err = NULL;
  int status = 0;

  g_assert_true (g_spawn_sync (NULL, (char **)argv, NULL, G_SPAWN_DEFAULT, NULL, NULL,
                               NULL, &err, &status, NULL));
  g_assert_true (WIFEXITED (status));
  g_assert_cmpint (WEXITSTATUS (status), ==, 1);
  g_assert_true (g_str_has_prefix (err, "wearmark reckon: The answer"));
}

static void
test_no_archive (Fixture *f, gconstpointer unused)
{
  g_autofree char *absent = fixture_path (f, "absent");
  g_auto (Run) run = call (NULL, "--archive", absent, "pieces", NULL);

  assert_code (&run, 1);
  g_assert_nonnull (strstr (run.err, "There is no archive in this folder"));
  g_assert_false (g_file_test (absent, G_FILE_TEST_EXISTS));
}

/* ---- pieces and show ---------------------------------------------------- */

static void
test_pieces (Fixture *f, gconstpointer unused)
{
  g_auto (Run) all = { 0 };
  g_auto (Run) some = { 0 };
  g_auto (Run) none = { 0 };
  g_auto (Run) text = { 0 };
  JsonObject *piece;

  add_known_piece (f);
  all = call (f, "pieces", "--json", NULL);
  assert_code (&all, 0);
  g_assert_cmpuint (json_array_get_length (json_node_get_array (all.json)), ==, 2);
  some = call (f, "--json", "pieces", "crown", "mull", NULL);
  assert_code (&some, 0);
  g_assert_cmpuint (json_array_get_length (json_node_get_array (some.json)), ==, 1);
  piece = json_array_get_object_element (json_node_get_array (some.json), 0);
  g_assert_cmpstr (json_object_get_string_member (piece, "number"), ==, "2026-0151-Q");
  g_assert_cmpstr (json_object_get_string_member (piece, "type"), ==, "ring_claw");
  g_assert_cmpstr (json_object_get_string_member (piece, "owner"), ==, "Zoë Müller");
  g_assert_cmpstr (json_object_get_string_member (piece, "severity"), ==, "repair");
  g_assert_cmpstr (json_object_get_string_member (piece, "taken_in_at"), ==,
                   "2023-11-14T22:13:20Z");
  none = call (f, "pieces", "--json", "sapphire", NULL);
  assert_code (&none, 0);
  g_assert_cmpuint (json_array_get_length (json_node_get_array (none.json)), ==, 0);
  text = call (f, "pieces", NULL);
  assert_code (&text, 0);
  g_assert_nonnull (strstr (text.out, "Zoë Müller"));
}

static void
test_show (Fixture *f, gconstpointer unused)
{
  g_auto (Run) run = { 0 };
  g_auto (Run) text = { 0 };
  g_auto (Run) wrong = { 0 };
  JsonObject *piece;
  JsonObject *visit;
  JsonObject *check;

  add_known_piece (f);
  run = call (f, "show", "20260151q", "--json", NULL);
  assert_code (&run, 0);
  piece = get_object (&run);
  g_assert_cmpstr (json_object_get_string_member (piece, "description"), ==,
                   "Ring with a crown");
  g_assert_true (json_object_get_null_member (piece, "length_mm"));
  g_assert_cmpstr (json_object_get_string_member (
                       json_object_get_object_member (piece, "owner"), "name"),
                   ==, "Zoë Müller");
  visit =
      json_array_get_object_element (json_object_get_array_member (piece, "visits"), 0);
  g_assert_cmpstr (json_object_get_string_member (visit, "taken_in_at"), ==,
                   "2023-11-14T22:13:20Z");
  check =
      json_array_get_object_element (json_object_get_array_member (visit, "checks"), 0);
  g_assert_cmpstr (json_object_get_string_member (check, "severity"), ==, "repair");
  g_assert_cmpuint (
      json_array_get_length (json_object_get_array_member (piece, "history")), ==, 4);
  text = call (f, "show", "2026-0151-Q", NULL);
  assert_code (&text, 0);
  g_assert_nonnull (strstr (text.out, "Worn claw"));
  wrong = call (f, "show", "2026-0999-0", NULL);
  assert_code (&wrong, 1);
  g_assert_nonnull (strstr (wrong.err, "2026-0999-0"));
}

/* ---- quote -------------------------------------------------------------- */

/* 30 minutes at 65.00 an hour are 32.50; 0.500 g at 68.00 are 34.00; 19 % of the 66.50
 * are 12.635, 12.64 (half to even); together 79.14. */
static void
test_quote (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmPiece) piece = fixture_add_piece (f, "2026-0151-Q", "Ring");
  g_autoptr (WmVisit) visit = fixture_add_visit (f, piece, 1700000000);
  g_autoptr (WmCheck) check = fixture_add_check (f, visit, "Worn claw", 3);
  g_autoptr (WmRemedy) remedy = wm_remedy_new ();
  g_autoptr (WmMaterial) material = wm_material_new ();
  g_autoptr (WmEdit) edit = wm_edit_new ("Prices", NULL, NULL);
  g_autofree char *pdf = fixture_path (f, "quote.pdf");
  g_auto (Run) shown = { 0 }, made = { 0 }, nowhere = { 0 }, unwritten = { 0 };
  JsonObject *all, *row;

  g_object_set (remedy, "check-id", fixture_id (check), "what", "new claw", "minutes",
                (gint64)30, NULL);
  fixture_put (f, "Remedy", fixture_id (piece), remedy);
  g_object_set (material, "remedy-id", fixture_id (remedy), "what", "wire", "metal",
                "au750y", "mass-mg", (gint64)500, "gram-price-minor", (gint64)6800, NULL);
  fixture_put (f, "Material", fixture_id (piece), material);
  wm_archive_put_setting (f->archive, edit, WM_SETTING_HOURLY_RATE, "6500 EUR", NULL);
  wm_archive_put_setting (f->archive, edit, WM_SETTING_TAX_BP, "1900", NULL);
  g_assert_true (wm_archive_commit (f->archive, edit, NULL));
  g_clear_object (&f->archive);

  made = call (f, "--json", "quote", "2026-0151-Q", "-o", pdf, NULL);
  assert_code (&made, 0);
  g_assert_true (g_file_test (pdf, G_FILE_TEST_EXISTS));
  all = json_object_get_object_member (get_object (&made), "all");
  g_assert_cmpint (json_object_get_int_member (all, "net_minor"), ==, 6650);
  g_assert_cmpint (json_object_get_int_member (all, "tax_minor"), ==, 1264);
  g_assert_cmpint (json_object_get_int_member (all, "total_minor"), ==, 7914);
  shown = call (f, "--json", "show", "2026-0151-Q", NULL);
  assert_code (&shown, 0);
  row = json_array_get_object_element (
      json_object_get_array_member (get_object (&shown), "visits"), 0);
  row = json_array_get_object_element (json_object_get_array_member (row, "checks"), 0);
  row = json_array_get_object_element (json_object_get_array_member (row, "work"), 0);
  row =
      json_array_get_object_element (json_object_get_array_member (row, "materials"), 0);
  g_assert_cmpstr (json_object_get_string_member (row, "what"), ==, "wire");
  g_assert_cmpint (json_object_get_int_member (row, "mass_mg"), ==, 500);

  nowhere = call (f, "quote", "2026-0151-Q", NULL);
  assert_code (&nowhere, 2);
  unwritten = call (f, "quote", "2026-0151-Q", "-o", "/nowhere/at/all.pdf", NULL);
  assert_code (&unwritten, 1);
}

/* ---- verify ------------------------------------------------------------- */

static void
test_verify (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmPiece) piece = fixture_add_piece (f, "2026-0151-Q", "Ring");
  g_autoptr (WmVisit) visit = fixture_add_visit (f, piece, 1000);
  g_autoptr (WmPhoto) photo = fixture_add_photo (f, visit, 1);
  g_autofree char *path = wm_archive_photo_path (f->archive, photo);
  g_auto (Run) sound = { 0 };
  g_auto (Run) broken = { 0 };
  JsonArray *problems;

  /* Also while it is open here. */
  sound = call (f, "verify", "--json", NULL);
  assert_code (&sound, 0);
  g_assert_true (json_object_get_boolean_member (get_object (&sound), "sound"));
  g_assert_cmpint (json_object_get_int_member (get_object (&sound), "photos"), ==, 1);
  g_unlink (path);
  broken = call (f, "verify", "--json", NULL);
  assert_code (&broken, 1);
  problems = json_object_get_array_member (get_object (&broken), "problems");
  g_assert_cmpuint (json_array_get_length (problems), ==, 1);
  g_assert_cmpstr (
      json_object_get_string_member (json_array_get_object_element (problems, 0), "code"),
      ==, "photo-missing");
}

/* ---- photos ------------------------------------------------------------- */

static void
test_photo (Fixture *f, gconstpointer unused)
{
  static const char *const keys[] = { "format",       "width",   "height",
                                      "orientation",  "focus",   "clipped_bright",
                                      "clipped_dark", "verdict", "reasons" };
  g_autofree char *path = write_jpeg (f, "- a\n.jpg", 1600, 1000);
  g_autofree char *png = fixture_path (f, "upright.png");
  g_autofree char *empty = fixture_path (f, "empty.jpg");
  g_autofree char *bytes = NULL;
  gsize n = 0;
  g_auto (Run) run = call (NULL, "photo", "--json", "-o", png, "--", path, NULL);
  g_auto (Run) refused = { 0 };

  assert_code (&run, 0);
  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    g_assert_true (json_object_has_member (get_object (&run), keys[i]));
  g_assert_cmpuint (json_object_get_size (get_object (&run)), ==, G_N_ELEMENTS (keys));
  g_assert_cmpstr (json_object_get_string_member (get_object (&run), "format"), ==,
                   "jpeg");
  g_assert_cmpint (json_object_get_int_member (get_object (&run), "width"), ==, 1600);
  g_assert_true (g_file_get_contents (png, &bytes, &n, NULL));
  g_assert_cmpmem (bytes, 8, "\x89PNG\r\n\x1a\n", 8);

  g_file_set_contents (empty, "", 0, NULL);
  refused = call (NULL, "photo", empty, NULL);
  assert_code (&refused, 1);
  g_assert_nonnull (strstr (refused.err, "empty.jpg"));
}

/* An original is never written over, also not under another name of it. */
static void
test_original_is_spared (Fixture *f, gconstpointer unused)
{
  g_autofree char *path = write_jpeg (f, "ring.jpg", 400, 300);
  g_autofree char *link = fixture_path (f, "link.jpg");
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;
  gsize n_before = 0;
  gsize n_after = 0;
  g_auto (Run) photo = { 0 };
  g_auto (Run) align = { 0 };

  g_assert_true (g_file_get_contents (path, &before, &n_before, NULL));
  g_assert_cmpint (symlink (path, link), ==, 0);
  photo = call (NULL, "photo", path, "-o", link, NULL);
  align = call (NULL, "align", path, path, "-o", path, NULL);
  assert_code (&photo, 1);
  assert_code (&align, 1);
  g_assert_true (g_file_get_contents (path, &after, &n_after, NULL));
  g_assert_cmpmem (before, n_before, after, n_after);
}

/* Read back by pngcheck, which is not ours. */
static void
test_picture (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmPiece) piece = fixture_add_piece (f, "2026-0151-Q", "Ring");
  g_autoptr (WmVisit) visit = fixture_add_visit (f, piece, 1000);
  g_autoptr (WmCheck) check = fixture_add_check (f, visit, "Worn claw", 3);
  g_autoptr (WmPhoto) photo = wm_photo_new ();
  g_autoptr (WmMark) mark = NULL;
  g_autofree char *path = write_jpeg (f, "ring.jpg", 800, 600);
  g_autofree char *png = fixture_path (f, "out.png");
  g_autofree char *sha256 = NULL;
  g_autofree char *facts = NULL;
  g_auto (Run) run = { 0 };
  g_auto (Run) beyond = { 0 };
  gint64 byte_size = 0;
  const char *argv[] = { "pngcheck", "-ct7v", png, NULL };

  wm_archive_store_photo (f->archive, path, "jpeg", NULL, &sha256, &byte_size, NULL);
  g_object_set (photo, "visit-id", fixture_id (visit), "moment", WM_PHOTO_BEFORE,
                "sha256", sha256, "format", "jpeg", "width", (gint64)800, "height",
                (gint64)600, "caption", "From above", "taken-at-s", (gint64)1700000000,
                "scale-x1", 100.0, "scale-y1", 100.0, "scale-x2", 500.0, "scale-y2",
                100.0, "scale-mm", 20.0, NULL);
  fixture_put (f, "Photo", fixture_id (piece), photo);
  mark = fixture_add_mark (f, photo, check);
  g_clear_object (&f->archive);

  run = call (f, "picture", "2026-0151-Q", "--photo", "1", "-o", png, NULL);
  assert_code (&run, 0);
  if (g_spawn_sync (NULL, (char **)argv, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &facts,
                    NULL, NULL, NULL))
    {
      static const char *const wanted[] = {
        "2026-0151-Q", "From above", "Worn claw", "2023-11-14", "Wearmark",
        /* 20 mm over 400 px is 20 px a mm: 20000 a metre. */
        "20000x20000 pixels/meter", "800 x 600"
      };

      for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
        {
          if (strstr (facts, wanted[i]) == NULL)
            g_test_message ("%s is not in\n%s", wanted[i], facts);
          g_assert_nonnull (strstr (facts, wanted[i]));
        }
    }
  else
    {
      g_test_skip ("pngcheck is not installed");
    }
  beyond = call (f, "picture", "2026-0151-Q", "--photo", "2", "-o", png, NULL);
  assert_code (&beyond, 1);
}

/* The place of a finding, before only: one close-up, and the size of a pixel. */
static void
test_picture_finding (Fixture *f, gconstpointer unused)
{
  g_autoptr (WmPiece) piece = fixture_add_piece (f, "2026-0151-Q", "Ring");
  g_autoptr (WmVisit) visit = fixture_add_visit (f, piece, 1000);
  g_autoptr (WmCheck) check = fixture_add_check (f, visit, "Worn claw", 3);
  g_autoptr (WmCheck) unmarked = fixture_add_check (f, visit, "Thin shank", 2);
  g_autoptr (WmPhoto) photo = wm_photo_new ();
  g_autoptr (WmMark) mark = NULL;
  g_autofree char *path = write_jpeg (f, "ring.jpg", 800, 600);
  g_autofree char *png = fixture_path (f, "finding.png");
  g_autofree char *sha256 = NULL;
  g_autofree char *facts = NULL;
  g_auto (Run) run = { 0 };
  g_auto (Run) no_such = { 0 };
  g_auto (Run) nowhere = { 0 };
  g_auto (Run) both = { 0 };
  g_auto (Run) no_number = { 0 };
  gint64 byte_size = 0;
  const char *argv[] = { "pngcheck", "-t7v", png, NULL };

  wm_archive_store_photo (f->archive, path, "jpeg", NULL, &sha256, &byte_size, NULL);
  g_object_set (photo, "visit-id", fixture_id (visit), "moment", WM_PHOTO_BEFORE,
                "sha256", sha256, "format", "jpeg", "width", (gint64)800, "height",
                (gint64)600, "scale-x1", 100.0, "scale-y1", 100.0, "scale-x2", 500.0,
                "scale-y2", 100.0, "scale-mm", 20.0, NULL);
  fixture_put (f, "Photo", fixture_id (piece), photo);
  g_object_set (check, "number", (gint64)7, NULL);
  fixture_put (f, "Number", fixture_id (piece), check);
  g_object_set (unmarked, "number", (gint64)8, NULL);
  fixture_put (f, "Number", fixture_id (piece), unmarked);
  mark = fixture_add_mark (f, photo, check);
  g_clear_object (&f->archive);

  no_such = call (f, "picture", "2026-0151-Q", "--finding", "3", "-o", png, NULL);
  assert_code (&no_such, 1);
  nowhere = call (f, "picture", "2026-0151-Q", "--finding", "8", "-o", png, NULL);
  assert_code (&nowhere, 1);
  g_assert_false (g_file_test (png, G_FILE_TEST_EXISTS));
  both = call (f, "picture", "2026-0151-Q", "--finding", "7", "--photo", "1", "-o", png,
               NULL);
  assert_code (&both, 2);
  no_number = call (f, "picture", "2026-0151-Q", "--finding", "x", "-o", png, NULL);
  assert_code (&no_number, 2);

  run = call (f, "picture", "2026-0151-Q", "--finding", "7", "-o", png, NULL);
  assert_code (&run, 0);
  if (!g_spawn_sync (NULL, (char **)argv, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &facts,
                     NULL, NULL, NULL))
    {
      g_test_skip ("pngcheck is not installed");
      return;
    }
  /* 12 true mm (240 px of 20 px a mm) fill the box of 85 mm at 12 px a mm: 85 px a true
   * mm, 85000 a metre. Twice 85 mm, 4 between, 5 at each edge: 184 mm, 2208 px. */
  g_assert_nonnull (strstr (facts, "2208 x"));
  g_assert_nonnull (strstr (facts, "85000x85000 pixels/meter"));
  g_assert_nonnull (strstr (facts, "2026-0151-Q"));
}

/* ---- sample ------------------------------------------------------------- */

static const char pieces_json[] =
    "{\"shop\": {\"name\": \"Lanternhouse\", \"people\": [{\"initials\": \"MH\","
    " \"name\": \"Maren Holt\"}]}, \"pieces\": [{\"owner\": {\"name\": \"Orla\"},"
    " \"type\": \"ring_claw\", \"metal\": \"au750y\", \"fineness\": 750,"
    " \"declared\": {\"value\": 4200, \"currency\": \"GBP\"}, \"stones\": [{\"species\":"
    " \"sapphire\", \"count\": 1}], \"visits\": [{\"taken_in\": "
    "\"2025-11-23T09:52+01:00\","
    " \"by\": \"MH\", \"mass_in_g\": 5.84, \"photos\": [{\"file\": \"ring.jpg\","
    " \"moment\": \"before\", \"view\": \"top\"}], \"checks\": [{\"item\": \"cl01\","
    " \"severity\": \"no_wear\", \"place\": [{\"photo\": \"ring.jpg\", \"shape\": "
    "\"spot\","
    " \"points\": [[10.5, 20]]}], \"measured\": {\"value_mm\": 0.35, \"quantity\":"
    " \"thickness\", \"after_value_mm\": 0.9}, \"remedy\": \"Built up\", \"proof\":"
    " \"Loupe\", \"after\": \"sound\"}]}]}]}";

static char *
sample_path (const char *name)
{
  return g_build_filename (g_getenv ("WM_SOURCE_DIR"), "sample-pieces", "photos", name,
                           NULL);
}

/* Where a named place of the scene falls on a sample photo: POV-Ray's own camera. */
static WmPoint
read_truth (const char *name, const char *place)
{
  g_autofree char *path = sample_path (name);
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonObject *places;
  JsonArray *px;

  g_assert_true (json_parser_load_from_file (parser, path, NULL));
  places = json_object_get_object_member (
      json_node_get_object (json_parser_get_root (parser)), "places");
  px = json_object_get_array_member (json_object_get_object_member (places, place), "px");
  return (WmPoint) { json_array_get_double_element (px, 0),
                     json_array_get_double_element (px, 1) };
}

/* The brooch from the front, mended and put back by hand: what was not mended, and
 * does not lie behind the rest, lies within 3 pixels. Two pieces: a plain no. */
static void
test_align (void)
{
  static const char *const places[] = { "garnet_5", "garnet_6", "horn_left",
                                        "horn_right" };
  g_autofree char *before = sample_path ("brooch/before-front.jpg");
  g_autofree char *after = sample_path ("brooch/after-front.jpg");
  g_autofree char *other = sample_path ("strand/after-whole.jpg");
  g_auto (Run) found = call (NULL, "align", "--json", before, after, NULL);
  g_auto (Run) no = call (NULL, "align", "--json", before, other, NULL);
  g_auto (Run) missing = call (NULL, "align", before, "/no/such/photo.jpg", NULL);
  g_auto (Run) one = call (NULL, "align", before, NULL);
  JsonArray *matrix;
  double m[9];

  assert_code (&found, 0);
  g_assert_true (json_object_get_boolean_member (get_object (&found), "aligned"));
  matrix = json_object_get_array_member (get_object (&found), "matrix");
  g_assert_cmpuint (json_array_get_length (matrix), ==, 9);
  for (guint i = 0; i < 9; i++)
    m[i] = json_array_get_double_element (matrix, i);
  for (guint i = 0; i < G_N_ELEMENTS (places); i++)
    {
      WmPoint a = read_truth ("brooch/after-front.truth.json", places[i]);
      WmPoint b = read_truth ("brooch/before-front.truth.json", places[i]);
      double w = m[6] * a.x + m[7] * a.y + m[8];

      g_assert_cmpfloat_with_epsilon ((m[0] * a.x + m[1] * a.y + m[2]) / w, b.x, 3.0);
      g_assert_cmpfloat_with_epsilon ((m[3] * a.x + m[4] * a.y + m[5]) / w, b.y, 3.0);
    }

  assert_code (&no, 0);
  g_assert_false (json_object_get_boolean_member (get_object (&no), "aligned"));
  assert_code (&missing, 1);
  g_assert_nonnull (strstr (missing.err, "photo.jpg"));
  assert_code (&one, 2);
}

static void
test_sample (Fixture *f, gconstpointer unused)
{
  g_autofree char *photo = write_jpeg (f, "ring.jpg", 1600, 1000);
  g_autofree char *json = fixture_path (f, "pieces.json");
  g_autofree char *folder = g_path_get_dirname (json);
  g_auto (Run) filled = { 0 };
  g_auto (Run) again = { 0 };
  g_auto (Run) sound = { 0 };
  g_autoptr (GPtrArray) rows = NULL;
  g_autoptr (WmPiece) piece = NULL;
  g_autoptr (GPtrArray) visits = NULL;
  g_autoptr (GPtrArray) marks = NULL;
  g_autoptr (GPtrArray) measured = NULL;
  const WmPieceRow *row;

  g_assert_true (g_file_set_contents (json, pieces_json, -1, NULL));
  g_setenv ("WM_SAMPLES", folder, TRUE);
  g_clear_object (&f->archive);
  filled = call (f, "sample", "--json", NULL);
  assert_code (&filled, 0);
  g_assert_cmpint (json_object_get_int_member (get_object (&filled), "pieces"), ==, 1);
  again = call (f, "sample", NULL);
  assert_code (&again, 1);
  g_assert_nonnull (strstr (again.err, "already has pieces"));
  sound = call (f, "verify", NULL);
  assert_code (&sound, 0);
  g_unsetenv ("WM_SAMPLES");

  fixture_reopen (f);
  rows = wm_archive_search (f->archive, "sapphire ring", WM_PIECES_ON_BENCH, NULL, 0, 10,
                            NULL);
  g_assert_cmpuint (rows->len, ==, 1);
  row = rows->pdata[0];
  g_assert_true (g_str_has_prefix (row->number, "2025-0001-"));
  g_assert_cmpstr (row->moment, ==, WM_MOMENT_PROOF);
  piece = wm_archive_get (f->archive, WM_KIND_PIECE, &row->piece_id, NULL);
  g_assert_cmpint (piece->declared_minor, ==, 420000);
  visits =
      wm_archive_list (f->archive, WM_KIND_VISIT, "piece_id", fixture_id (piece), NULL);
  g_assert_cmpint (((WmVisit *)visits->pdata[0])->taken_in_at_s, ==, 1763887920);
  g_assert_cmpint (((WmVisit *)visits->pdata[0])->mass_in_mg, ==, 5840);
  marks = wm_archive_list_of_visit (f->archive, WM_KIND_MARK,
                                    fixture_id (visits->pdata[0]), NULL);
  g_assert_cmpuint (marks->len, ==, 1);
  g_assert_cmpstr (((WmMark *)marks->pdata[0])->points, ==, "10.5,20");
  measured = wm_archive_list_of_visit (f->archive, WM_KIND_MEASUREMENT,
                                       fixture_id (visits->pdata[0]), NULL);
  g_assert_cmpuint (measured->len, ==, 2);
}

/* Told of, and everything else is in. */
static void
test_sample_without_photo (Fixture *f, gconstpointer unused)
{
  g_autofree char *json = fixture_path (f, "pieces.json");
  g_autofree char *folder = g_path_get_dirname (json);
  g_auto (Run) filled = { 0 };
  g_auto (Run) sound = { 0 };
  g_auto (Run) pieces = { 0 };

  g_assert_true (g_file_set_contents (json, pieces_json, -1, NULL));
  g_setenv ("WM_SAMPLES", folder, TRUE);
  g_clear_object (&f->archive);
  filled = call (f, "sample", "--json", NULL);
  g_unsetenv ("WM_SAMPLES");
  assert_code (&filled, 1);
  g_assert_nonnull (strstr (filled.err, "ring.jpg is not there"));
  sound = call (f, "verify", NULL);
  assert_code (&sound, 0);
  pieces = call (f, "pieces", "--json", "orla", NULL);
  g_assert_cmpuint (json_array_get_length (json_node_get_array (pieces.json)), ==, 1);
}

/* The sheet to be printed, rendered by poppler as a flat photo of 200 dots an inch, is a
 * scale: the large field's marks stand 160 mm apart from 25 mm (ISO 216 paper, 7 mm from
 * the text area's edge of 18) and 40 mm. */
static void
test_sheet (Fixture *f, gconstpointer unused)
{
  g_autofree char *pdf = fixture_path (f, "sheet.pdf");
  g_autofree char *stem = fixture_path (f, "page");
  g_autofree char *page = fixture_path (f, "page.jpg");
  g_autofree char *plain = write_jpeg (f, "plain.jpg", 400, 300);
  const char *argv[] = {
    "pdftoppm", "-r", "200", "-jpeg", "-singlefile", pdf, stem, NULL
  };
  /* 200 dots an inch: 7.874 px a mm. */
  const char span[] = "196.85,314.96,1456.69,314.96";
  g_auto (Run) made = call (NULL, "sheet", "-o", pdf, NULL);
  g_auto (Run) nowhere = call (NULL, "sheet", NULL);
  g_auto (Run) unwritten = call (NULL, "sheet", "-o", "/nowhere/at/all.pdf", NULL);
  g_auto (Run) none =
      call (NULL, "measure", plain, "--sheet", "--span", "10,10,200,200", NULL);
  g_auto (Run) two = call (NULL, "measure", plain, "--sheet", "--scale", "1,1,200,1,10",
                           "--span", "10,10,200,200", NULL);
  g_autoptr (GError) error = NULL;
  JsonObject *length;

  assert_code (&made, 0);
  assert_code (&nowhere, 2);
  assert_code (&unwritten, 1);
  assert_code (&none, 1);
  g_assert_nonnull (strstr (none.err, "No scale sheet is seen"));
  assert_code (&two, 2);
  g_spawn_sync (NULL, (char **)argv, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, NULL, NULL,
                NULL, &error);
  g_assert_no_error (error);
  {
    g_auto (Run) full =
        call (NULL, "--json", "measure", page, "--sheet", "--span", span, NULL);
    g_auto (Run) small = call (NULL, "--json", "measure", page, "--sheet",
                               "--sheet-check", "97", "--span", span, NULL);

    assert_code (&full, 0);
    assert_code (&small, 0);
    length = json_node_get_object (full.json);
    g_assert_cmpfloat_with_epsilon (json_object_get_double_member (length, "value_mm"),
                                    160.0, 0.05);
    length = json_node_get_object (small.json);
    g_assert_cmpfloat_with_epsilon (json_object_get_double_member (length, "value_mm"),
                                    155.2, 0.05);
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/command/help", test_help);
  g_test_add_func ("/command/wrong-usage", test_wrong_usage);
  g_test_add_func ("/command/full-output", test_full_output);
  fixture_add ("/command/no-archive", test_no_archive);
  fixture_add ("/command/pieces", test_pieces);
  fixture_add ("/command/show", test_show);
  fixture_add ("/command/quote", test_quote);
  fixture_add ("/command/verify", test_verify);
  fixture_add ("/command/photo", test_photo);
  fixture_add ("/command/original-is-spared", test_original_is_spared);
  fixture_add ("/command/picture", test_picture);
  fixture_add ("/command/picture/finding", test_picture_finding);
  g_test_add_func ("/command/align", test_align);
  fixture_add ("/command/sheet", test_sheet);
  fixture_add ("/command/sample/whole", test_sample);
  fixture_add ("/command/sample/without-photo", test_sample_without_photo);
  return g_test_run ();
}

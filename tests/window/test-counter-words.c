/* test-counter-words.c: what the customer is told, and what never gets in
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/counter/counter-photo.h"
#include "window/counter/counter-words.h"

#include <math.h>
#include <string.h>

/* Words that must never be read at the counter. */
#define SECRET "SECRETWORD"

typedef struct
{
  WmArchive *archive;
  WmTrade *trade;
  WmVisitData *data;
  WmLanguage *language;
  char *folder;
  WmId visit_id;
} Fixture;

static WmCheck *
put_check (WmEdit *edit, const WmId *visit_id, gint64 number, WmSeverity severity,
           WmSeverity after)
{
  WmCheck *check = wm_check_new ();
  WmRecord *record = WM_RECORD (check);

  check->visit_id = *visit_id;
  check->position = number;
  check->number = number;
  check->severity = severity;
  check->after_severity = after;
  wm_record_set_text (record, "item", "bx08");
  wm_record_set_text (record, "part", "Clasp");
  wm_record_set_text (record, "title", "End ring");
  wm_record_set_text (record, "fault", "Worn end ring");
  wm_record_set_text (record, "customer", "The ring that joins the clasp was worn thin");
  wm_record_set_text (record, "if-left", "The piece can be lost");
  wm_record_set_text (record, "remedies", "new ring, round, soldered\nrefill");
  wm_edit_put (edit, check);
  return check;
}

static void
put_work (WmEdit *edit, WmCheck *check)
{
  g_autoptr (WmMeasurement) measurement = wm_measurement_new ();
  g_autoptr (WmRemedy) remedy = wm_remedy_new ();
  g_autoptr (WmProof) proof = wm_proof_new ();
  WmId check_id = *wm_record_get_id (WM_RECORD (check));

  measurement->check_id = remedy->check_id = proof->check_id = check_id;
  wm_record_set_text (WM_RECORD (measurement), "quantity", "thickness");
  wm_record_set_text (WM_RECORD (measurement), "method", "gauge");
  wm_record_set_text (WM_RECORD (measurement), "moment", WM_PHOTO_BEFORE);
  measurement->value_mm = 0.52;
  measurement->as_made_mm = 0.90;
  wm_record_set_text (WM_RECORD (remedy), "what", "New round ring, soldered shut");
  remedy->done_at_s = 1795683600;
  remedy->price_minor = 987654;
  proof->visit_id = check->visit_id;
  wm_record_set_text (WM_RECORD (proof), "test", "Pulled by hand in line");
  wm_record_set_text (WM_RECORD (proof), "reading", "15 N");
  proof->passed = TRUE;
  wm_edit_put (edit, measurement);
  wm_edit_put (edit, remedy);
  wm_edit_put (edit, proof);
}

static void
set_up (Fixture *f, gconstpointer unused)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (WmPiece) piece = wm_piece_new ();
  g_autoptr (WmPerson) owner = wm_person_new ();
  g_autoptr (WmVisit) visit = wm_visit_new ();
  g_autoptr (WmCheck) mended = NULL, found = NULL, open = NULL;
  WmId piece_id = *wm_record_get_id (WM_RECORD (piece));
  g_autoptr (WmEdit) edit = wm_edit_new ("Take in", &piece_id, NULL);

  f->folder = g_dir_make_tmp ("wm-counter-XXXXXX", &error);
  g_assert_no_error (error);
  f->archive = wm_archive_open (f->folder, WM_ARCHIVE_CREATE, &error);
  g_assert_no_error (error);
  f->trade = wm_trade_new_with_shop (g_getenv ("WEARMARK_TABLES"), NULL, &error);
  g_assert_no_error (error);

  wm_record_set_text (WM_RECORD (owner), "role", WM_ROLE_OWNER);
  wm_record_set_text (WM_RECORD (owner), "name", SECRET);
  wm_record_set_text (WM_RECORD (owner), "note", SECRET);
  wm_record_set_text (WM_RECORD (piece), "number", "2026-0001-H");
  wm_record_set_text (WM_RECORD (piece), "type", "line_bracelet");
  wm_record_set_text (WM_RECORD (piece), "shop-note", SECRET);
  wm_record_set_text (WM_RECORD (piece), "declared-basis", SECRET);
  piece->owner_id = *wm_record_get_id (WM_RECORD (owner));
  visit->piece_id = piece_id;
  wm_record_set_text (WM_RECORD (visit), "moment", WM_MOMENT_PROOF);
  wm_record_set_text (WM_RECORD (visit), "shop-note", SECRET);
  wm_record_set_text (WM_RECORD (visit), "next-check-on", "2027-03-03");
  f->visit_id = *wm_record_get_id (WM_RECORD (visit));
  wm_edit_put (edit, owner);
  wm_edit_put (edit, piece);
  wm_edit_put (edit, visit);
  mended = put_check (edit, &f->visit_id, 1, WM_SEVERITY_REPAIR, WM_SEVERITY_SOUND);
  found =
      put_check (edit, &f->visit_id, 2, WM_SEVERITY_NO_WEAR, WM_SEVERITY_NOT_LOOKED_AT);
  open = put_check (edit, &f->visit_id, WM_UNKNOWN, WM_SEVERITY_NOT_LOOKED_AT,
                    WM_SEVERITY_NOT_LOOKED_AT);
  put_work (edit, mended);
  g_assert_true (wm_archive_commit (f->archive, edit, &error));
  g_assert_no_error (error);

  f->data = wm_visit_data_load (f->archive, f->trade, &f->visit_id, &error);
  g_assert_no_error (error);
  f->language = wm_language_new ("en");
  g_assert_cmpuint (f->data->findings->len, ==, 2);
}

static void
remove_folder (const char *folder)
{
  g_autofree char *quoted = g_shell_quote (folder);
  g_autofree char *command = g_strdup_printf ("rm -rf %s", quoted);

  g_assert_true (g_spawn_command_line_sync (command, NULL, NULL, NULL, NULL));
}

static void
tear_down (Fixture *f, gconstpointer unused)
{
  wm_visit_data_unref (f->data);
  wm_language_unref (f->language);
  wm_trade_unref (f->trade);
  wm_archive_close (f->archive);
  g_object_unref (f->archive);
  remove_folder (f->folder);
  g_free (f->folder);
}

static const WmFinding *
find (Fixture *f, gint64 number)
{
  for (guint i = 0; i < f->data->findings->len; i++)
    {
      const WmFinding *finding = g_ptr_array_index (f->data->findings, i);

      if (finding->check->number == number)
        return finding;
    }
  g_assert_not_reached ();
}

static void
test_mended (Fixture *f, gconstpointer unused)
{
  const WmFinding *finding = find (f, 1);
  g_autofree char *state = wm_counter_state (f->language, finding);
  g_autofree char *story = wm_counter_story (f->language, f->data, finding);
  g_autofree char *tests = wm_counter_tests (f->language, finding);
  g_autofree char *back = wm_counter_come_back (f->language, f->data);

  g_assert_true (wm_counter_has_after (finding));
  g_assert_cmpstr (state, ==, "Mended. Wear it as usual.");
  /* 0.52 of 0.90 mm is 58 %. */
  g_assert_cmpfloat_with_epsilon (wm_counter_ratio (finding, WM_PHOTO_BEFORE),
                                  0.52 / 0.90, 1e-12);
  g_assert_true (isnan (wm_counter_ratio (finding, WM_PHOTO_AFTER)));
  g_assert_nonnull (strstr (story, "A little more than half of the metal was left."));
  g_assert_nonnull (strstr (story, "Had it given way, the piece could have been lost."));
  g_assert_nonnull (strstr (story, "New round ring, soldered shut."));
  g_assert_cmpstr (tests, ==, "Pulled by hand in line, 15 N");
  g_assert_cmpstr (back, ==, "Come back by 3 March 2027");
}

static void
test_not_mended_yet (Fixture *f, gconstpointer unused)
{
  const WmFinding *finding = find (f, 2);
  g_autofree char *state = wm_counter_state (f->language, finding);
  g_autofree char *story = wm_counter_story (f->language, f->data, finding);
  g_autofree char *tests = wm_counter_tests (f->language, finding);

  g_assert_false (wm_counter_has_after (finding));
  g_assert_cmpstr (state, ==, "Keep it off until it is mended.");
  g_assert_nonnull (strstr (story, "If it is left as it is: The piece can be lost."));
  g_assert_nonnull (strstr (story, "What helps: new ring, round, soldered."));
  g_assert_null (strstr (story, "refill"));
  g_assert_cmpstr (tests, ==, "");
}

static void
test_rest (Fixture *f, gconstpointer unused)
{
  g_autofree char *title = wm_counter_rest_title (f->language, f->data);
  g_autofree char *open = wm_counter_rest_open (f->language, f->data);
  g_autofree char *sound = wm_counter_rest_sound (f->language, f->data);

  /* Nothing is claimed that was not looked at. */
  g_assert_cmpstr (title, ==, "Nothing else was looked at yet");
  g_assert_cmpstr (open, ==, "End ring");
  g_assert_cmpstr (sound, ==, "");
}

/* Neither a name, a note of the shop nor a price is in anything that is shown. */
static void
test_nothing_of_the_shop (Fixture *f, gconstpointer unused)
{
  GString *all = g_string_new (NULL);

  for (guint i = 0; i < f->data->findings->len; i++)
    {
      const WmFinding *finding = g_ptr_array_index (f->data->findings, i);
      g_autofree char *a = wm_counter_state (f->language, finding);
      g_autofree char *b = wm_counter_story (f->language, f->data, finding);
      g_autofree char *c = wm_counter_tests (f->language, finding);

      g_string_append_printf (all, "%s\n%s\n%s\n", a, b, c);
    }
  {
    g_autofree char *a = wm_counter_piece (f->language, f->data);
    g_autofree char *b = wm_counter_come_back (f->language, f->data);
    g_autofree char *c = wm_counter_rest_title (f->language, f->data);
    g_autofree char *d = wm_counter_rest_sound (f->language, f->data);
    g_autofree char *e = wm_counter_rest_open (f->language, f->data);

    g_string_append_printf (all, "%s\n%s\n%s\n%s\n%s\n", a, b, c, d, e);
  }
  g_assert_nonnull (strstr (all->str, "Your line bracelet"));
  g_assert_null (strstr (all->str, SECRET));
  g_assert_null (strstr (all->str, "9876"));
  g_assert_null (strstr (all->str, "9 876"));
  g_string_free (all, TRUE);
}

static void
test_close_up_box (void)
{
  static const WmPoint middle[] = { { 2000, 1500 } };
  static const WmPoint corner[] = { { 10, 2990 } };
  static const WmPoint long_line[] = { { 1000, 1500 }, { 2600, 1500 } };
  double box[4];

  wm_counter_photo_box (middle, 1, 4000, 3000, box);
  g_assert_cmpfloat_with_epsilon (box[2], 0.36 * 3000, 1e-9);
  g_assert_cmpfloat_with_epsilon (box[0] + box[2] / 2, 2000, 1e-9);
  g_assert_cmpfloat_with_epsilon (box[1] + box[3] / 2, 1500, 1e-9);

  /* At a corner it stays on the photo, with the place in it. */
  wm_counter_photo_box (corner, 1, 4000, 3000, box);
  g_assert_cmpfloat (box[0], ==, 0);
  g_assert_cmpfloat_with_epsilon (box[1] + box[3], 3000, 1e-9);

  /* A long form is shown whole, with room on both sides. */
  wm_counter_photo_box (long_line, 2, 4000, 3000, box);
  g_assert_cmpfloat (box[0], <, 1000);
  g_assert_cmpfloat (box[0] + box[2], >, 2600);
  g_assert_cmpfloat (box[2], <=, 3000);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
#define ADD(path, function)                                                              \
  g_test_add ("/window/counter/" path, Fixture, NULL, set_up, function, tear_down)
  ADD ("mended", test_mended);
  ADD ("not-mended", test_not_mended_yet);
  ADD ("rest", test_rest);
  ADD ("nothing-of-the-shop", test_nothing_of_the_shop);
  g_test_add_func ("/window/counter/box", test_close_up_box);
  return g_test_run ();
}

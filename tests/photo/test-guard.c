/* test-guard.c: a reader that dies takes the file with it, not the program
 *
 * The real reader stands behind a script that can be told to crash, hang or talk
 * nonsense by the name of the file.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/load.h"
#include "photo/photo-start.h"

#include "corpus.h"

#include <glib/gstdio.h>
#include <locale.h>
#include <string.h>

static gboolean
check (const char *name, GError **error)
{
  return wm_photo_check_whole (corpus_path (name), NULL, error);
}

static void
test_good (void)
{
  g_autoptr (GError) error = NULL;

  corpus_make_scene ("good photo.jpg", 200, 150, "");
  corpus_make_scene ("good.png", 200, 150, "");
  g_assert_true (check ("good photo.jpg", &error));
  g_assert_no_error (error);
  g_assert_true (check ("good.png", &error));

  /* It was really asked: the script keeps a list. */
  corpus_run ("grep -q 'good photo.jpg' asked && grep -q good.png asked");
}

static void
test_refused (void)
{
  static const struct
  {
    const char *name;
    WmPhotoErrorCode code;
  } cases[] = { { "cut.jpg", WM_PHOTO_ERROR_TRUNCATED },
                { "gone.jpg", WM_PHOTO_ERROR_NOT_FOUND },
                { "words.jpg", WM_PHOTO_ERROR_NOT_A_PICTURE } };

  corpus_make_scene ("whole.jpg", 200, 150, "");
  corpus_run ("head -c 3000 whole.jpg > cut.jpg; echo words > words.jpg");
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_false (check (cases[i].name, &error));
      g_assert_error (error, WM_PHOTO_ERROR, (int)cases[i].code);
      g_assert_nonnull (strstr (error->message, cases[i].name));
    }
}

static void
test_reader_dies (void)
{
  static const char *const names[] = { "crash.jpg", "nonsense.jpg", "silent.jpg" };

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autoptr (GError) error = NULL;

      corpus_make_scene (names[i], 60, 40, "");
      g_assert_false (check (names[i], &error));
      g_assert_error (error, WM_PHOTO_ERROR, WM_PHOTO_ERROR_LYING);
      g_assert_nonnull (strstr (error->message, names[i]));
    }
}

static gpointer
cancel_soon (gpointer cancellable)
{
  g_usleep (200000);
  g_cancellable_cancel (cancellable);
  return NULL;
}

static void
test_cancelled (void)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GError) error = NULL;
  GThread *thread = g_thread_new ("cancel", cancel_soon, cancellable);

  corpus_make_scene ("hang.jpg", 60, 40, "");
  g_assert_false (wm_photo_check_whole (corpus_path ("hang.jpg"), cancellable, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
  g_thread_join (thread);
}

int
main (int argc, char **argv)
{
  int result;

  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_assert_cmpint (argc, ==, 2);
  wm_photo_start ();
  corpus_begin ();
  corpus_run ("cat > reader << 'END'\n"
              "#!/bin/sh\n"
              "echo \"$1\" >> \"$(dirname \"$0\")/asked\"\n"
              "case \"$1\" in\n"
              "  *crash*) kill -SEGV $$ ;;\n"
              "  *hang*) exec sleep 20 ;;\n"
              "  *nonsense*) echo rubbish; exit 3 ;;\n"
              "  *silent*) exit 3 ;;\n"
              "esac\n"
              "exec '%s' \"$1\"\n"
              "END\n"
              "chmod +x reader",
              argv[1]);
  g_setenv ("WEARMARK_PHOTO_READER", corpus_path ("reader"), TRUE);

  g_test_add_func ("/photo/guard/good", test_good);
  g_test_add_func ("/photo/guard/refused", test_refused);
  g_test_add_func ("/photo/guard/reader-dies", test_reader_dies);
  g_test_add_func ("/photo/guard/cancelled", test_cancelled);

  result = g_test_run ();
  corpus_end ();
  wm_photo_stop ();
  return result;
}

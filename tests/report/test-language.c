/* test-language.c: catalogues in the customer's language, and damaged ones
 *
 * The catalogues are made by GNU gettext's own msgfmt.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gstdio.h>
#include <string.h>

#include "report/language.h"

static const char po[] = "msgid \"\"\nmsgstr \"Content-Type: text/plain; charset=UTF-8\\n"
                         "Plural-Forms: nplurals=2; plural=(n != 1);\\n\"\n"
                         "msgid \"sound\"\nmsgstr \"heil\"\n"
                         "msgid \"watch\"\nmsgstr \"\"\n"
                         "msgid \"%d mark\"\nmsgid_plural \"%d marks\"\n"
                         "msgstr[0] \"%d Zeichen hier\"\nmsgstr[1] \"%d Zeichen\"\n";

typedef struct
{
  char *folder;
  GBytes *catalogue;
} Fixture;

static void
set_up (Fixture *f, gconstpointer endian)
{
  g_autofree char *po_path = NULL;
  g_autofree char *mo_path = NULL;
  g_autofree char *order = g_strdup_printf ("--endianness=%s", (const char *)endian);
  g_autoptr (GError) error = NULL;
  char *contents;
  gsize size;
  int status;

  f->folder = g_dir_make_tmp ("wm-language-XXXXXX", &error);
  g_assert_no_error (error);
  po_path = g_build_filename (f->folder, "de.po", NULL);
  mo_path = g_build_filename (f->folder, "de.mo", NULL);
  g_assert_true (g_file_set_contents (po_path, po, -1, NULL));
  {
    const char *argv[] = { "msgfmt", order, "-o", mo_path, po_path, NULL };

    g_assert_true (g_spawn_sync (NULL, (char **)argv, NULL, G_SPAWN_SEARCH_PATH, NULL,
                                 NULL, NULL, NULL, &status, NULL));
  }
  g_assert_cmpint (status, ==, 0);
  g_assert_true (g_file_get_contents (mo_path, &contents, &size, NULL));
  f->catalogue = g_bytes_new_take (contents, size);
  g_unlink (po_path);
  g_unlink (mo_path);
}

static void
tear_down (Fixture *f, gconstpointer endian)
{
  g_rmdir (f->folder);
  g_free (f->folder);
  g_bytes_unref (f->catalogue);
}

static void
test_says (Fixture *f, gconstpointer endian)
{
  g_autoptr (WmLanguage) german = wm_language_new_from_bytes ("de", f->catalogue);

  g_assert_cmpstr (wm_say (german, "sound"), ==, "heil");
  g_assert_cmpstr (wm_say (german, "watch"), ==, "watch");
  g_assert_cmpstr (wm_say (german, "never heard"), ==, "never heard");
  g_assert_cmpstr (wm_say (german, NULL), ==, "");
  g_assert_cmpstr (wm_say (german, ""), ==, "");
  g_assert_cmpstr (wm_say_n (german, "%d mark", "%d marks", 1), ==, "%d Zeichen hier");
  g_assert_cmpstr (wm_say_n (german, "%d mark", "%d marks", 2), ==, "%d Zeichen");
  g_assert_cmpstr (wm_say_n (german, "%d leaf", "%d leaves", 0), ==, "%d leaves");
}

/* Every truncation, and every byte turned over, speaks some language and reads no
 * memory that is not its own (the sanitizer watches). */
static void
test_damaged (Fixture *f, gconstpointer endian)
{
  gsize size;
  const guint8 *data = g_bytes_get_data (f->catalogue, &size);

  for (gsize i = 0; i < size; i++)
    {
      g_autofree guint8 *turned = g_memdup2 (data, size);
      g_autoptr (GBytes) shorter = g_bytes_new (data, i);
      g_autoptr (GBytes) wrong = NULL;
      g_autoptr (WmLanguage) a = wm_language_new_from_bytes ("de", shorter);
      g_autoptr (WmLanguage) b = NULL;

      turned[i] ^= 0xff;
      wrong = g_bytes_new (turned, size);
      b = wm_language_new_from_bytes ("de", wrong);
      g_assert_cmpuint (strlen (wm_say (a, "sound")), >=, 4);
      g_assert_true (g_utf8_validate (wm_say (b, "sound"), -1, NULL));
      g_assert_nonnull (wm_say_n (b, "%d mark", "%d marks", 2));
      /* Half a catalogue is none. */
      if (i < size - 1)
        g_assert_cmpstr (wm_say (a, "sound"), ==, "sound");
    }
}

static void
test_hostile_tag (void)
{
  g_autoptr (WmLanguage) outside = wm_language_new ("../../../etc/passwd");
  g_autoptr (WmLanguage) none = wm_language_new (NULL);

  g_assert_cmpstr (wm_say (outside, "sound"), ==, "sound");
  g_assert_cmpstr (wm_language_get_tag (none), ==, "en");
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/report/language/says", Fixture, "little", set_up, test_says, tear_down);
  g_test_add ("/report/language/says-swapped", Fixture, "big", set_up, test_says,
              tear_down);
  g_test_add ("/report/language/damaged", Fixture, "little", set_up, test_damaged,
              tear_down);
  g_test_add_func ("/report/language/hostile-tag", test_hostile_tag);
  return g_test_run ();
}

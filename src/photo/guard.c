/* guard.c: a foreign file is first read whole by another process
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/guard.h"

#include "photo/source.h"

#include <glib/gi18n-lib.h>
#include <stdlib.h>
#include <string.h>

#define READER "wearmark-photo-reader"

/* Beside the running program (installed by hand), in the build folder below it, or
 * where it is installed. WEARMARK_PHOTO_READER is for tests. */
static char *
find_reader (void)
{
  const char *told = g_getenv ("WEARMARK_PHOTO_READER");
  g_autofree char *self = g_file_read_link ("/proc/self/exe", NULL);
  g_autofree char *folder = self != NULL ? g_path_get_dirname (self) : g_strdup (".");
  char *candidates[] = { g_strdup (told), g_build_filename (folder, READER, NULL),
                         g_build_filename (folder, "photo", READER, NULL),
                         g_strdup (WM_PHOTO_READER) };
  char *found = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (candidates); i++)
    {
      if (found == NULL && candidates[i] != NULL
          && g_file_test (candidates[i], G_FILE_TEST_IS_EXECUTABLE))
        found = g_steal_pointer (&candidates[i]);
      g_free (candidates[i]);
    }

  return found;
}

static const char *
get_reader (void)
{
  static gsize once;
  static char *reader;

  if (g_once_init_enter (&once))
    {
      reader = find_reader ();
      g_once_init_leave (&once, 1);
    }

  return reader;
}

/* "CODE\nMESSAGE" of a reader that refused. */
static gboolean
take_refusal (const char *said, GError **error)
{
  char *message = NULL;
  guint64 code;

  if (said == NULL)
    return FALSE;
  code = g_ascii_strtoull (said, &message, 10);
  if (message == said || *message != '\n' || message[1] == '\0'
      || code > WM_PHOTO_ERROR_IO || !g_utf8_validate (message, -1, NULL))
    return FALSE;

  g_set_error_literal (error, WM_PHOTO_ERROR, (int)code, message + 1);
  return TRUE;
}

gboolean
wm_guard_check (const char *path, gboolean *was_read, GCancellable *cancellable,
                GError **error)
{
  const char *argv[] = { get_reader (), path, NULL };
  g_autoptr (GSubprocess) process = NULL;
  g_autofree char *name = wm_photo_display_name (path);
  g_autoptr (GBytes) output = NULL;
  g_autofree char *said = NULL;
  gsize length = 0;
  const char *data;

  *was_read = FALSE;
  if (argv[0] == NULL)
    return FALSE;
  process = g_subprocess_newv (
      argv, G_SUBPROCESS_FLAGS_STDOUT_PIPE | G_SUBPROCESS_FLAGS_STDERR_SILENCE, NULL);
  if (process == NULL)
    return FALSE;

  *was_read = TRUE;
  if (!g_subprocess_communicate (process, NULL, cancellable, &output, NULL, error))
    {
      g_subprocess_force_exit (process);
      return FALSE;
    }

  if (g_subprocess_get_successful (process))
    return TRUE;

  data = output != NULL ? g_bytes_get_data (output, &length) : NULL;
  said = data != NULL ? g_strndup (data, length) : NULL;
  if (!g_subprocess_get_if_exited (process)
      || g_subprocess_get_exit_status (process) != WM_GUARD_REFUSED
      || !take_refusal (said, error))
    wm_photo_set_error (error, WM_PHOTO_ERROR_LYING, name,
                        _ ("reading it made the picture reader stop"));
  return FALSE;
}

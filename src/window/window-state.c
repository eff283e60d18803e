/* window-state.c: size of the window, who works, what was open: between two starts
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/window-state.h"

#define GROUP_WINDOW "window"

static char *
get_path (void)
{
  return g_build_filename (g_get_user_state_dir (), "wearmark", "window.ini", NULL);
}

/* Several archives keep their own person and piece. */
static char *
get_archive_group (WmSession *session)
{
  return g_strdup_printf ("archive %s",
                          wm_archive_get_folder (wm_session_get_archive (session)));
}

static void
save_id (GKeyFile *file, const char *group, const char *key, const WmId *id)
{
  g_autofree char *text = id == NULL ? NULL : wm_id_to_string (id);

  if (text != NULL)
    g_key_file_set_string (file, group, key, text);
  else
    g_key_file_remove_key (file, group, key, NULL);
}

static gboolean
load_id (GKeyFile *file, const char *group, const char *key, WmId *id)
{
  g_autofree char *text = g_key_file_get_string (file, group, key, NULL);

  return text != NULL && wm_id_from_string (text, id);
}

void
wm_window_state_save (GtkWindow *window, WmSession *session)
{
  g_autoptr (GKeyFile) file = g_key_file_new ();
  g_autofree char *path = get_path ();
  g_autofree char *folder = g_path_get_dirname (path);
  g_autofree char *group = get_archive_group (session);
  WmPiece *piece = wm_session_get_piece (session);
  int width, height;

  g_key_file_load_from_file (file, path, G_KEY_FILE_KEEP_COMMENTS, NULL);
  gtk_window_get_default_size (window, &width, &height);
  g_key_file_set_integer (file, GROUP_WINDOW, "width", width);
  g_key_file_set_integer (file, GROUP_WINDOW, "height", height);
  g_key_file_set_boolean (file, GROUP_WINDOW, "maximized",
                          gtk_window_is_maximized (window));
  save_id (file, group, "person", wm_session_get_by (session));
  save_id (file, group, "piece",
           piece == NULL ? NULL : wm_record_get_id (WM_RECORD (piece)));

  /* A state folder that can not be written costs the size of the window, no more. */
  if (g_mkdir_with_parents (folder, 0700) == 0)
    g_key_file_save_to_file (file, path, NULL);
}

void
wm_window_state_restore (GtkWindow *window, WmSession *session)
{
  g_autoptr (GKeyFile) file = g_key_file_new ();
  g_autofree char *path = get_path ();
  g_autofree char *group = get_archive_group (session);
  g_autoptr (WmPerson) person = NULL;
  g_autoptr (WmPiece) piece = NULL;
  int width, height;
  WmId id;

  if (!g_key_file_load_from_file (file, path, G_KEY_FILE_NONE, NULL))
    return;

  width = g_key_file_get_integer (file, GROUP_WINDOW, "width", NULL);
  height = g_key_file_get_integer (file, GROUP_WINDOW, "height", NULL);
  if (width >= 600 && height >= 400)
    gtk_window_set_default_size (window, width, height);
  if (g_key_file_get_boolean (file, GROUP_WINDOW, "maximized", NULL))
    gtk_window_maximize (window);

  if (load_id (file, group, "person", &id))
    person = wm_archive_get (wm_session_get_archive (session), WM_KIND_PERSON, &id, NULL);
  if (person != NULL && !person->retired)
    wm_session_set_person (session, person);
  if (load_id (file, group, "piece", &id))
    piece = wm_archive_get (wm_session_get_archive (session), WM_KIND_PIECE, &id, NULL);
  if (piece != NULL)
    wm_session_open_piece (session, &id, NULL);
}

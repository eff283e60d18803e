/* take-stack.c: from the frames of a focus stack to one photo of a visit
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "report/take-stack.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>

#include "photo/photo-error.h"
#include "report/take-photo.h"

static WmPhoto *
take_result (WmArchive *archive, WmPhoto *first, const char *path,
             GCancellable *cancellable, GError **error)
{
  WmPhoto *photo =
      wm_take_photo (archive, path, &first->visit_id, first->moment, cancellable, error);
  g_autofree char *name = NULL;

  if (photo == NULL)
    return NULL;
  name = g_strdup_printf ("%s, stack.jpg",
                          first->original_name != NULL ? first->original_name : "");
  g_object_set (photo, "made-from", "stack", "original-name", name, "view", first->view,
                "caption", first->caption, "taken-at-s", first->taken_at_s,
                "quarter-turns", first->quarter_turns, NULL);
  return photo;
}

WmPhoto *
wm_take_stack (WmArchive *archive, GPtrArray *frames, WmStackProgress progress,
               gpointer user_data, GCancellable *cancellable, GError **error)
{
  g_autofree char *folder =
      g_build_filename (wm_archive_get_cache_folder (archive), "merged", NULL);
  g_autofree char *unique = g_uuid_string_random ();
  g_autofree char *file = g_strconcat (unique, ".jpg", NULL);
  g_autofree char *path = g_build_filename (folder, file, NULL);
  g_autoptr (GPtrArray) paths = g_ptr_array_new_with_free_func (g_free);
  WmPhoto *photo = NULL;

  if (g_mkdir_with_parents (folder, 0700) != 0)
    {
      g_set_error_literal (error, G_IO_ERROR, g_io_error_from_errno (errno),
                           _ ("The merged photo could not be written to the disk. Make "
                              "room and merge again; the frames are kept."));
      return NULL;
    }
  for (guint i = 0; i < frames->len; i++)
    g_ptr_array_add (paths,
                     wm_archive_photo_path (archive, g_ptr_array_index (frames, i)));
  if (wm_photo_stack ((const char *const *)paths->pdata, (int)paths->len, path, NULL,
                      progress, user_data, cancellable, error))
    photo =
        take_result (archive, g_ptr_array_index (frames, 0), path, cancellable, error);
  g_unlink (path);
  return photo;
}

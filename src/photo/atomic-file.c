/* atomic-file.c: a file that is there whole or not at all
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/atomic-file.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <sys/stat.h>
#include <unistd.h>

/* A place that does not take a file is another thing than a file that is not there. */
static void
set_error (GError **error, int error_number, const char *name)
{
  if (error_number == ENOENT || error_number == ENOTDIR || error_number == EISDIR
      || error_number == EACCES || error_number == EPERM || error_number == EROFS)
    wm_photo_set_error (error, WM_PHOTO_ERROR_NO_PLACE, name, g_strerror (error_number));
  else
    wm_photo_set_errno (error, error_number, name);
}

WmAtomicFile *
wm_atomic_file_new (const char *path, GError **error)
{
  g_autoptr (WmAtomicFile) self = g_new0 (WmAtomicFile, 1);
  int fd;

  self->path = g_strdup (path);
  self->name = wm_photo_display_name (path);

  /* The name of the result is not part of the temporary one: it may already be as
   * long as a name can be. */
  {
    g_autofree char *folder = g_path_get_dirname (path);

    self->temporary = g_build_filename (folder, ".wearmark-XXXXXX", NULL);
  }

  /* 0666 less the user's mask, as any program's new file. */
  fd = g_mkstemp_full (self->temporary, O_RDWR | O_CLOEXEC, 0666);
  if (fd < 0)
    {
      set_error (error, errno, self->name);
      g_clear_pointer (&self->temporary, g_free);
      return NULL;
    }

  self->stream = fdopen (fd, "wb");
  if (self->stream == NULL)
    {
      set_error (error, errno, self->name);
      close (fd);
      return NULL;
    }

  return g_steal_pointer (&self);
}

static void
sync_folder (const char *path)
{
  g_autofree char *folder = g_path_get_dirname (path);
  int fd = open (folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);

  /* Some file systems can not sync a folder; the file itself is synced already. */
  if (fd < 0)
    return;
  fsync (fd);
  close (fd);
}

gboolean
wm_atomic_file_commit (WmAtomicFile *self, gboolean is_durable, GError **error)
{
  gboolean failed = fflush (self->stream) != 0;
  int why = errno;

  if (!failed && is_durable && fsync (fileno (self->stream)) != 0)
    {
      failed = TRUE;
      why = errno;
    }
  if (fclose (g_steal_pointer (&self->stream)) != 0 && !failed)
    {
      failed = TRUE;
      why = errno;
    }
  if (!failed && g_rename (self->temporary, self->path) != 0)
    {
      failed = TRUE;
      why = errno;
    }
  if (failed)
    {
      set_error (error, why, self->name);
      return FALSE;
    }

  g_clear_pointer (&self->temporary, g_free);
  if (is_durable)
    sync_folder (self->path);
  return TRUE;
}

void
wm_atomic_file_free (WmAtomicFile *self)
{
  if (self == NULL)
    return;
  if (self->stream != NULL)
    fclose (self->stream);
  if (self->temporary != NULL)
    {
      g_unlink (self->temporary);
      g_free (self->temporary);
    }
  g_free (self->path);
  g_free (self->name);
  g_free (self);
}

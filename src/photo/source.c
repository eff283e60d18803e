/* source.c: where foreign bytes come from
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/source.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

WmSource *
wm_source_open (const char *path, GError **error)
{
  g_autoptr (WmSource) self = g_new0 (WmSource, 1);
  struct stat status;

  self->name = wm_photo_display_name (path);

  /* O_NONBLOCK: a named pipe would otherwise wait for its writer for ever. */
  self->fd = open (path, O_RDONLY | O_CLOEXEC | O_NONBLOCK | O_NOCTTY);
  if (self->fd < 0 || fstat (self->fd, &status) < 0)
    {
      wm_photo_set_errno (error, errno, self->name);
      return NULL;
    }

  if (!S_ISREG (status.st_mode))
    {
      wm_photo_set_error (error, WM_PHOTO_ERROR_WRONG_KIND, self->name,
                          S_ISDIR (status.st_mode) ? _ ("it is a folder")
                                                   : _ ("it is a device or a pipe"));
      return NULL;
    }

  self->size = status.st_size;
  if (self->size == 0)
    {
      wm_photo_set_error (error, WM_PHOTO_ERROR_EMPTY, self->name, NULL);
      return NULL;
    }

  return g_steal_pointer (&self);
}

WmSource *
wm_source_new_bytes (GBytes *bytes, const char *name, GError **error)
{
  g_autoptr (WmSource) self = g_new0 (WmSource, 1);

  self->fd = -1;
  self->name = wm_photo_display_name (name);
  self->bytes = g_bytes_ref (bytes);
  self->size = g_bytes_get_size (bytes);
  if (self->size == 0)
    {
      wm_photo_set_error (error, WM_PHOTO_ERROR_EMPTY, self->name, NULL);
      return NULL;
    }

  return g_steal_pointer (&self);
}

void
wm_source_free (WmSource *self)
{
  if (self == NULL)
    return;
  if (self->fd >= 0)
    close (self->fd);
  g_clear_pointer (&self->bytes, g_bytes_unref);
  g_free (self->name);
  g_free (self);
}

gsize
wm_source_read (WmSource *self, gint64 offset, void *buffer, gsize length)
{
  gsize done = 0;

  if (offset < 0 || offset >= self->size)
    return 0;
  length = MIN (length, (gsize)(self->size - offset));

  if (self->bytes != NULL)
    {
      const guint8 *data = g_bytes_get_data (self->bytes, NULL);

      memcpy (buffer, data + offset, length);
      return length;
    }

  while (done < length)
    {
      ssize_t got =
          pread (self->fd, (guint8 *)buffer + done, length - done, offset + (gint64)done);

      if (got < 0 && errno == EINTR)
        continue;
      if (got <= 0)
        break;
      done += got;
    }

  return done;
}

gboolean
wm_source_read_exactly (WmSource *self, gint64 offset, void *buffer, gsize length)
{
  return wm_source_read (self, offset, buffer, length) == length;
}

VipsSource *
wm_source_to_vips (WmSource *self)
{
  if (self->bytes != NULL)
    {
      VipsBlob *blob = vips_blob_copy (g_bytes_get_data (self->bytes, NULL),
                                       g_bytes_get_size (self->bytes));
      VipsSource *source = vips_source_new_from_blob (blob);

      vips_area_unref (VIPS_AREA (blob));
      return source;
    }

  /* libvips duplicates the descriptor, and the duplicate shares its position: ours
   * is never used (pread), so the two do not disturb one another. */
  lseek (self->fd, 0, SEEK_SET);
  return vips_source_new_from_descriptor (self->fd);
}

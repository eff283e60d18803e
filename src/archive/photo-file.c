/* photo-file.c: the files of photos, named by what is in them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "archive/photo-file.h"

#include <errno.h>
#include <fcntl.h>
#include <gcrypt.h>
#include <glib/gstdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "archive/archive-private.h"
#include "archive/folder.h"

/* As much as one read and one hash share in the processor's cache. */
#define WM_CHUNK_BYTES (256 * 1024)
#define WM_SHA256_BYTES 32

static gcry_md_hd_t
open_hash (GError **error)
{
  static gsize ready;
  gcry_md_hd_t hash = NULL;

  if (g_once_init_enter (&ready))
    {
      gcry_check_version (NULL);
      gcry_control (GCRYCTL_DISABLE_SECMEM, 0);
      gcry_control (GCRYCTL_INITIALIZATION_FINISHED, 0);
      g_once_init_leave (&ready, 1);
    }
  if (gcry_md_open (&hash, GCRY_MD_SHA256, 0) != 0)
    g_set_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_IO, "SHA-256 does not start");
  return hash;
}

static char *
read_hash (gcry_md_hd_t hash)
{
  const guint8 *bytes = gcry_md_read (hash, GCRY_MD_SHA256);
  GString *text = g_string_sized_new (2 * WM_SHA256_BYTES);

  for (int i = 0; i < WM_SHA256_BYTES; i++)
    g_string_append_printf (text, "%02x", bytes[i]);
  return g_string_free (text, FALSE);
}

static gboolean
write_all (int fd, const guint8 *bytes, gsize n, GError **error)
{
  while (n > 0)
    {
      gssize written = write (fd, bytes, n);

      if (written < 0 && errno == EINTR)
        continue;
      if (written <= 0)
        {
          wm_folder_set_error (error, errno, "photo");
          return FALSE;
        }
      bytes += written;
      n -= written;
    }
  return TRUE;
}

/* Reads @from to its end, hashing, and writes it to @to unless that is -1. */
static gboolean
pass_through (int from, int to, gcry_md_hd_t hash, gint64 *out_byte_size,
              GCancellable *cancellable, GError **error)
{
  g_autofree guint8 *chunk = g_malloc (WM_CHUNK_BYTES);

  *out_byte_size = 0;
  for (;;)
    {
      gssize n = read (from, chunk, WM_CHUNK_BYTES);

      if (n == 0)
        return TRUE;
      if (n < 0 && errno == EINTR)
        continue;
      if (n < 0)
        {
          g_set_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_IO, "reading: %s",
                       g_strerror (errno));
          return FALSE;
        }
      if (g_cancellable_set_error_if_cancelled (cancellable, error))
        return FALSE;
      gcry_md_write (hash, chunk, n);
      *out_byte_size += n;
      if (to >= 0 && !write_all (to, chunk, n, error))
        return FALSE;
    }
}

static int
open_source (const char *path, GError **error)
{
  struct stat stat_buf;
  /* Not blocking, so that a pipe put in a photo's place does not hold us for ever. */
  int fd = open (path, O_RDONLY | O_CLOEXEC | O_NONBLOCK);

  if (fd >= 0 && fstat (fd, &stat_buf) == 0 && S_ISREG (stat_buf.st_mode))
    return fd;
  g_set_error (error, WM_ARCHIVE_ERROR,
               fd < 0 && errno == ENOENT ? WM_ARCHIVE_ERROR_PHOTO_MISSING
                                         : WM_ARCHIVE_ERROR_IO,
               "%s", fd < 0 ? g_strerror (errno) : "not a file");
  if (fd >= 0)
    close (fd);
  return -1;
}

char *
wm_photo_file_hash (const char *path, gint64 *out_byte_size, GCancellable *cancellable,
                    GError **error)
{
  int fd = open_source (path, error);
  gcry_md_hd_t hash = fd >= 0 ? open_hash (error) : NULL;
  char *sha256 = NULL;

  if (hash != NULL && pass_through (fd, -1, hash, out_byte_size, cancellable, error))
    sha256 = read_hash (hash);
  gcry_md_close (hash);
  if (fd >= 0)
    close (fd);
  return sha256;
}

/* ---- storing ------------------------------------------------------------ */

/* Lets nothing out of the photos folder. */
static gboolean
is_plain (const char *text, gsize max)
{
  gsize n = text != NULL ? strspn (text, "0123456789abcdefghijklmnopqrstuvwxyz") : 0;

  return n > 0 && n <= max && text[n] == '\0';
}

char *
wm_archive_photo_path_for (WmArchive *self, const char *sha256, const char *format)
{
  char folder[3] = "";
  g_autofree char *name = NULL;

  if (!is_plain (sha256, 64) || strlen (sha256) != 64 || !is_plain (format, 8))
    return g_build_filename (self->photos_folder, "unnamed", NULL);
  memcpy (folder, sha256, 2);
  name = g_strconcat (sha256, ".", strcmp (format, "jpeg") == 0 ? "jpg" : format, NULL);
  return g_build_filename (self->photos_folder, folder, name, NULL);
}

char *
wm_archive_photo_path (WmArchive *self, WmPhoto *photo)
{
  return wm_archive_photo_path_for (self, photo->sha256, photo->format);
}

/* The photo is whole and on the disk under @incoming: gives it its name. */
static gboolean
give_name (WmArchive *self, const char *incoming, const char *path, gint64 byte_size,
           GError **error)
{
  g_autofree char *folder = g_path_get_dirname (path);
  GStatBuf stat_buf;

  /* The same photo again; only if its file was cut short is it replaced. */
  if (g_stat (path, &stat_buf) == 0 && stat_buf.st_size == byte_size)
    {
      g_unlink (incoming);
      return TRUE;
    }
  if (g_mkdir (folder, 0700) != 0 && errno != EEXIST)
    {
      wm_folder_set_error (error, errno, folder);
      return FALSE;
    }
  if (g_rename (incoming, path) != 0)
    {
      wm_folder_set_error (error, errno, path);
      return FALSE;
    }
  return wm_folder_sync (folder, error) && wm_folder_sync (self->photos_folder, error);
}

static gboolean
copy_in (int from, int to, char **out_sha256, gint64 *out_byte_size,
         GCancellable *cancellable, GError **error)
{
  gcry_md_hd_t hash = open_hash (error);
  gboolean is_done =
      hash != NULL && pass_through (from, to, hash, out_byte_size, cancellable, error);

  if (is_done && fsync (to) != 0)
    {
      wm_folder_set_error (error, errno, "photo");
      is_done = FALSE;
    }
  if (is_done)
    *out_sha256 = read_hash (hash);
  gcry_md_close (hash);
  return is_done;
}

static gboolean
store (WmArchive *self, int from, const char *format, GCancellable *cancellable,
       char **out_sha256, gint64 *out_byte_size, GError **error)
{
  g_autofree char *incoming =
      g_build_filename (self->photos_folder, WM_INCOMING_PREFIX "XXXXXX", NULL);
  g_autofree char *sha256 = NULL;
  g_autofree char *path = NULL;
  gint64 byte_size = 0;
  int to = g_mkstemp_full (incoming, O_WRONLY | O_CLOEXEC, 0600);
  gboolean is_done;

  if (to < 0)
    {
      wm_folder_set_error (error, errno, incoming);
      return FALSE;
    }
  is_done = copy_in (from, to, &sha256, &byte_size, cancellable, error);
  close (to);
  if (is_done)
    {
      path = wm_archive_photo_path_for (self, sha256, format);
      is_done = give_name (self, incoming, path, byte_size, error);
    }
  if (!is_done)
    {
      g_unlink (incoming);
      return FALSE;
    }
  *out_sha256 = g_steal_pointer (&sha256);
  *out_byte_size = byte_size;
  return TRUE;
}

gboolean
wm_archive_store_photo (WmArchive *self, const char *path, const char *format,
                        GCancellable *cancellable, char **out_sha256,
                        gint64 *out_byte_size, GError **error)
{
  gboolean is_done;
  int from;

  g_return_val_if_fail (is_plain (format, 8), FALSE);
  if (self->is_read_only)
    {
      g_set_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_READ_ONLY,
                   "%s: opened only to look at", self->folder);
      return FALSE;
    }
  from = open_source (path, error);
  if (from < 0)
    {
      g_prefix_error (error, "%s: ", path);
      return FALSE;
    }
  is_done = store (self, from, format, cancellable, out_sha256, out_byte_size, error);
  close (from);
  return is_done;
}

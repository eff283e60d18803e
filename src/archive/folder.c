/* folder.c: the folder of an archive: whose it is, and who has it open
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#define _GNU_SOURCE /* F_OFD_SETLK */
#include "archive/folder.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>

#include "archive/schema.h"

/* SQLite's file format, section 1.3 "The database header". */
#define WM_HEADER_BYTES 100
#define WM_USER_VERSION_AT 60
#define WM_APPLICATION_ID_AT 68

void
wm_folder_set_error (GError **error, int system_errno, const char *text)
{
  WmArchiveError code = WM_ARCHIVE_ERROR_IO;

  if (system_errno == ENOSPC || system_errno == EDQUOT || system_errno == EFBIG)
    code = WM_ARCHIVE_ERROR_FULL;
  else if (system_errno == EROFS || system_errno == EACCES || system_errno == EPERM)
    code = WM_ARCHIVE_ERROR_READ_ONLY;
  else if (system_errno == ENOENT)
    code = WM_ARCHIVE_ERROR_NOT_THERE;
  else if (system_errno == ENOTDIR)
    code = WM_ARCHIVE_ERROR_FOREIGN;
  g_set_error (error, WM_ARCHIVE_ERROR, code, "%s: %s", text, g_strerror (system_errno));
}

static guint32
read_uint32 (const guint8 *bytes)
{
  return (guint32)bytes[0] << 24 | (guint32)bytes[1] << 16 | (guint32)bytes[2] << 8
         | bytes[3];
}

/* Before SQLite opens the file: opening may already write. */
static gboolean
look_at_header (const char *path, GError **error)
{
  guint8 header[WM_HEADER_BYTES] = { 0 };
  int fd = open (path, O_RDONLY | O_CLOEXEC | O_NONBLOCK);
  gssize n;

  if (fd < 0)
    {
      wm_folder_set_error (error, errno, path);
      return FALSE;
    }
  n = read (fd, header, sizeof header);
  close (fd);

  if (n < (gssize)sizeof header || memcmp (header, "SQLite format 3", 16) != 0)
    g_set_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_DAMAGED,
                 "%s: the file does not begin as a database does", path);
  else if (read_uint32 (header + WM_APPLICATION_ID_AT) != WM_ARCHIVE_APPLICATION_ID)
    g_set_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_FOREIGN,
                 "%s: a database of another program", path);
  else if (read_uint32 (header + WM_USER_VERSION_AT) > wm_schema_get_version ())
    g_set_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_NEWER,
                 "%s: version %u, this program knows up to %u", path,
                 read_uint32 (header + WM_USER_VERSION_AT), wm_schema_get_version ());
  else
    return TRUE;
  return FALSE;
}

/* What a making that was cut short leaves does not make a folder somebody's. */
static gboolean
is_free (GDir *dir)
{
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL)
    if (!g_str_equal (name, WM_LOCK_NAME) && !g_str_equal (name, WM_PHOTOS_NAME)
        && !g_str_equal (name, WM_CACHE_NAME) && !g_str_equal (name, "lost+found")
        && !g_str_has_prefix (name, WM_NEW_DATABASE_NAME))
      return FALSE;
  return TRUE;
}

gboolean
wm_folder_look (const char *folder, WmArchiveMode mode, gboolean *out_is_new,
                GError **error)
{
  g_autofree char *path = g_build_filename (folder, WM_DATABASE_NAME, NULL);
  g_autoptr (GDir) dir = NULL;
  GStatBuf stat_buf;

  *out_is_new = FALSE;
  if (g_stat (path, &stat_buf) == 0)
    return look_at_header (path, error);
  if (errno != ENOENT || (g_stat (folder, &stat_buf) != 0 && errno != ENOENT))
    {
      wm_folder_set_error (error, errno, folder);
      return FALSE;
    }
  if (mode != WM_ARCHIVE_CREATE)
    {
      g_set_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_NOT_THERE,
                   "%s: no archive in this folder", folder);
      return FALSE;
    }

  *out_is_new = TRUE;
  dir = g_dir_open (folder, 0, NULL);
  if (dir == NULL || is_free (dir))
    return TRUE;
  g_set_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_FOREIGN,
               "%s: the folder has other things in it and no archive", folder);
  return FALSE;
}

int
wm_folder_lock (const char *folder, GError **error)
{
  g_autofree char *path = g_build_filename (folder, WM_LOCK_NAME, NULL);
  struct flock lock = { .l_type = F_WRLCK, .l_whence = SEEK_SET };
  int fd = open (path, O_RDWR | O_CREAT | O_CLOEXEC, 0600);

  if (fd < 0)
    {
      wm_folder_set_error (error, errno, path);
      return -1;
    }
  /* Of the open file, not of the process: a second opening in this process is kept
   * out too. */
  if (fcntl (fd, F_OFD_SETLK, &lock) == 0)
    return fd;

  if (errno == EAGAIN || errno == EACCES)
    g_set_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_OPEN_ELSEWHERE,
                 "%s: another program has this archive open", folder);
  else
    wm_folder_set_error (error, errno, path);
  close (fd);
  return -1;
}

gboolean
wm_folder_is_locked (const char *folder)
{
  g_autofree char *path = g_build_filename (folder, WM_LOCK_NAME, NULL);
  struct flock lock = { .l_type = F_WRLCK, .l_whence = SEEK_SET };
  int fd = open (path, O_RDONLY | O_CLOEXEC);
  gboolean is_locked;

  if (fd < 0)
    return FALSE;
  is_locked = fcntl (fd, F_OFD_GETLK, &lock) == 0 && lock.l_type != F_UNLCK;
  close (fd);
  return is_locked;
}

gboolean
wm_folder_sync (const char *folder, GError **error)
{
  int fd = open (folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);

  if (fd >= 0 && fsync (fd) == 0)
    {
      close (fd);
      return TRUE;
    }
  wm_folder_set_error (error, errno, folder);
  if (fd >= 0)
    close (fd);
  return FALSE;
}

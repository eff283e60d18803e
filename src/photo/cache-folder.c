/* cache-folder.c: files kept beside the archive that may vanish at any time
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/cache-folder.h"

#include "photo/atomic-file.h"
#include "photo/tiles.h"

#include <glib/gstdio.h>
#include <string.h>
#include <sys/stat.h>
#include <utime.h>
#include <zlib.h>

/* The end of a kept file: these letters and a CRC-32 of all before them. A JPEG with
 * them behind its end marker is still a JPEG. */
#define MARK "WMC1"
#define TAIL 8

/* Larger than any file kept through here. */
#define MOST_BYTES (G_GINT64_CONSTANT (1) << 30)

/* Walking the folder takes a few ms a thousand files: not at every write. */
#define TRIM_EVERY (64 * 1024 * 1024)

/* Trimmed to this share, so that the next write does not trim again. */
#define TRIM_TO 0.9

static gboolean
is_sha256 (const char *text)
{
  return text != NULL && strlen (text) == 64 && strspn (text, "0123456789abcdef") == 64;
}

char *
wm_cache_path (const char *cache_dir, const char *kind, const char *sha256,
               const char *ending)
{
  char two[3] = { 0 };
  g_autofree char *file = NULL;

  if (cache_dir == NULL || !is_sha256 (sha256))
    return NULL;

  memcpy (two, sha256, 2);
  file = g_strconcat (sha256, ending, NULL);
  return g_build_filename (cache_dir, kind, two, file, NULL);
}

void
wm_cache_touch (const char *path)
{
  /* A read-only folder keeps its old times: then it is trimmed by age of writing. */
  (void)!utime (path, NULL);
}

GBytes *
wm_cache_load (const char *path)
{
  g_autoptr (WmSource) source = NULL;
  g_autofree guint8 *data = NULL;
  gsize length;
  guint32 kept;

  if (path == NULL)
    return NULL;
  source = wm_source_open (path, NULL);
  if (source == NULL || source->size <= TAIL || source->size > MOST_BYTES)
    return NULL;

  length = (gsize)source->size;
  data = g_try_malloc (length);
  if (data == NULL || !wm_source_read_exactly (source, 0, data, length))
    return NULL;

  length -= TAIL;
  memcpy (&kept, data + length + 4, 4);
  if (memcmp (data + length, MARK, 4) != 0
      || GUINT32_FROM_LE (kept) != (guint32)crc32_z (0, data, length))
    return NULL;

  wm_cache_touch (path);
  return g_bytes_new_take (g_steal_pointer (&data), length);
}

void
wm_cache_store (const char *cache_dir, const char *path, GBytes *bytes)
{
  g_autofree char *folder = NULL;
  g_autoptr (WmAtomicFile) file = NULL;
  gsize length;
  const guint8 *data = g_bytes_get_data (bytes, &length);
  guint32 sum = GUINT32_TO_LE ((guint32)crc32_z (0, data, length));

  if (path == NULL)
    return;

  folder = g_path_get_dirname (path);
  if (g_mkdir_with_parents (folder, 0700) != 0)
    return;

  file = wm_atomic_file_new (path, NULL);
  if (file == NULL || fwrite (data, 1, length, file->stream) != length
      || fwrite (MARK, 1, 4, file->stream) != 4 || fwrite (&sum, 1, 4, file->stream) != 4
      || !wm_atomic_file_commit (file, FALSE, NULL))
    return;

  wm_cache_wrote (cache_dir, (gint64)length);
}

typedef struct
{
  char *path;
  gint64 size;
  gint64 used_s;
} Kept;

static void
free_kept (gpointer data)
{
  Kept *kept = data;

  g_free (kept->path);
  g_free (kept);
}

static int
compare_used (gconstpointer a, gconstpointer b)
{
  const Kept *const *first = a, *const *second = b;

  return ((*first)->used_s > (*second)->used_s) - ((*first)->used_s < (*second)->used_s);
}

/* Two levels of folders below: kind, and the first two letters of the hash. */
static gint64
list_kept (const char *folder, int depth, GPtrArray *out)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;
  gint64 sum = 0;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      struct stat status;

      if (g_lstat (path, &status) != 0)
        continue;
      if (S_ISDIR (status.st_mode) && depth > 0)
        sum += list_kept (path, depth - 1, out);
      else if (S_ISREG (status.st_mode))
        {
          Kept *kept = g_new0 (Kept, 1);

          kept->size = status.st_size;
          kept->used_s = status.st_mtime;
          kept->path = g_steal_pointer (&path);
          sum += kept->size;
          g_ptr_array_add (out, kept);
        }
    }

  return sum;
}

void
wm_cache_trim (const char *cache_dir, gint64 most_bytes)
{
  static const char *const kinds[] = { "preview", "thumbnail", "tiles" };
  g_autoptr (GPtrArray) all = g_ptr_array_new_with_free_func (free_kept);
  gint64 sum = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      g_autofree char *folder = g_build_filename (cache_dir, kinds[i], NULL);

      sum += list_kept (folder, 1, all);
    }
  if (sum <= most_bytes)
    return;

  g_ptr_array_sort (all, compare_used);
  for (guint i = 0; i < all->len && sum > (gint64)((double)most_bytes * TRIM_TO); i++)
    {
      Kept *kept = g_ptr_array_index (all, i);

      if (g_unlink (kept->path) == 0)
        sum -= kept->size;
    }
}

void
wm_cache_wrote (const char *cache_dir, gint64 bytes)
{
  static GMutex mutex;
  static gint64 since_trim = TRIM_EVERY; /* the first write of a run trims */
  gboolean is_due;

  g_mutex_lock (&mutex);
  since_trim += bytes;
  is_due = since_trim >= TRIM_EVERY;
  if (is_due)
    since_trim = 0;
  g_mutex_unlock (&mutex);

  if (is_due && cache_dir != NULL)
    wm_cache_trim (cache_dir, WM_TILE_DISK);
}

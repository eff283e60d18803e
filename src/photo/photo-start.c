/* photo-start.c: the picture library made ready, and made safe
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/photo-start.h"

#include <vips/vips.h>

/* Each photo is opened for one purpose and closed: a cache of operations would
 * only keep old photos open. A few stay for libvips' own inner operations. */
#define CACHED_OPERATIONS 16
#define CACHED_BYTES (32 * 1024 * 1024)

/* Decoders are serial; the few threads are for scaling. Two is what the smallest
 * machine we measure on has. */
#define THREADS 2

/* Class names of libvips' loaders, each with its file, buffer and source forms. */
static const char *const allowed_loaders[] = {
  "VipsForeignLoadJpeg", "VipsForeignLoadPng", "VipsForeignLoadTiff",
  "VipsForeignLoadWebp", "VipsForeignLoadHeif"
};

/* libvips tells GLib's log of every oddity in a foreign file; below the window
 * nothing logs, and what matters comes back as an error. */
static void
ignore_log (const char *domain, GLogLevelFlags level, const char *message,
            gpointer unused)
{
}

static gpointer
start_once (gpointer unused)
{
  g_log_set_handler ("VIPS",
                     G_LOG_LEVEL_WARNING | G_LOG_LEVEL_MESSAGE | G_LOG_LEVEL_INFO
                         | G_LOG_LEVEL_DEBUG | G_LOG_FLAG_FATAL | G_LOG_FLAG_RECURSION,
                     ignore_log, NULL);

  if (VIPS_INIT ("wearmark") != 0)
    return NULL;

  vips_cache_set_max (CACHED_OPERATIONS);
  vips_cache_set_max_mem (CACHED_BYTES);
  vips_cache_set_max_files (4);
  vips_concurrency_set (THREADS);

  vips_block_untrusted_set (TRUE);
  vips_operation_block_set ("VipsForeignLoad", TRUE);
  for (gsize i = 0; i < G_N_ELEMENTS (allowed_loaders); i++)
    vips_operation_block_set (allowed_loaders[i], FALSE);

  return NULL;
}

void
wm_photo_start (void)
{
  static GOnce once = G_ONCE_INIT;

  g_once (&once, start_once, NULL);
}

void
wm_photo_stop (void)
{
  wm_photo_start ();
  vips_shutdown ();
}

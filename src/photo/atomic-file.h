/* atomic-file.h: a file that is there whole or not at all
 *
 * Inside this room only. Written under a temporary name in the same folder, then
 * renamed over what stood there.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/source.h"

#include <stdio.h>

typedef struct
{
  char *path;
  char *temporary;
  char *name; /* fit to be shown */
  FILE *stream;
} WmAtomicFile;

WmAtomicFile *wm_atomic_file_new (const char *path, GError **error);

/* Syncs (when @is_durable), renames, syncs the folder. */
gboolean wm_atomic_file_commit (WmAtomicFile *self, gboolean is_durable, GError **error);

/* Without a commit the temporary file is removed. */
void wm_atomic_file_free (WmAtomicFile *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmAtomicFile, wm_atomic_file_free)

/* source.h: where foreign bytes come from: an open file or a block of memory
 *
 * Inside this room only. Files are read with pread () and never mapped, so that a
 * file that shrinks while it is read gives a short read and not a SIGBUS.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/photo-error.h"

#include <gio/gio.h>
#include <vips/vips.h>

typedef struct
{
  char *name;    /* fit to be shown */
  int fd;        /* -1 when bytes */
  GBytes *bytes; /* NULL when a file */
  gint64 size;
} WmSource;

/* Sets a whole sentence; @detail (may be NULL) is added in brackets. */
void wm_photo_set_error (GError **error, WmPhotoErrorCode code, const char *name,
                         const char *detail);
void wm_photo_set_errno (GError **error, int error_number, const char *name);

/* Opens a regular file of at least one byte; refuses folders, devices, pipes. */
WmSource *wm_source_open (const char *path, GError **error);
WmSource *wm_source_new_bytes (GBytes *bytes, const char *name, GError **error);
void wm_source_free (WmSource *self);

/* Reads up to @length bytes from @offset; returns how many there were, 0 at or
 * after the end or when the system refuses. */
gsize wm_source_read (WmSource *self, gint64 offset, void *buffer, gsize length);

/* Reads exactly @length bytes, or returns FALSE. */
gboolean
wm_source_read_exactly (WmSource *self, gint64 offset, void *buffer, gsize length);

/* The same bytes for libvips. (transfer full) */
VipsSource *wm_source_to_vips (WmSource *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmSource, wm_source_free)

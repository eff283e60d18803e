/* photo-import.h: photos coming in, in the background
 *
 * One import takes a list of files one after the other on a worker: each is probed,
 * stored, judged, and told as soon as it is in. A file that can not come in is kept
 * with its reason and the others still come. Main thread only.
 *
 * Signals:
 *   progress (void)        another file is done, or begun
 *   taken (WmPhoto *)      stored and judged; its position is the listener's to set,
 *                          who puts it into an edit
 *   finished (void)        nothing more comes; also after cancelling
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "archive/archive.h"

#define WM_TYPE_PHOTO_IMPORT (wm_photo_import_get_type ())
G_DECLARE_FINAL_TYPE (WmPhotoImport, wm_photo_import, WM, PHOTO_IMPORT, GObject)

typedef struct
{
  char *name;   /* fit to be shown */
  char *reason; /* whole sentences */
} WmImportFailure;

WmPhotoImport *wm_photo_import_new (WmArchive *archive);

/* Where photos belong that are added from now on: WM_PHOTO_BEFORE ... of a visit;
 * @view (nullable): the standard view that the first of them shows. */
void wm_photo_import_set_place (WmPhotoImport *self, const WmId *visit_id,
                                const char *moment, const char *view);

/* Adds files (element-type GFile) to what is coming in; those not on this machine's
 * file systems fail with a reason. May be called again while others come in. */
void wm_photo_import_add (WmPhotoImport *self, GListModel *files);

/* A picture from the clipboard, as a file of its own. */
void wm_photo_import_add_texture (WmPhotoImport *self, GdkTexture *texture);

void wm_photo_import_cancel (WmPhotoImport *self);

gboolean wm_photo_import_is_running (WmPhotoImport *self);
/* @n_done of @n_total since the last "finished"; name of the file under way, or NULL. */
const char *
wm_photo_import_get_progress (WmPhotoImport *self, guint *n_done, guint *n_total);

/* What did not come in since the import began: (element-type WmImportFailure). Valid in
 * "finished", forgotten after it. */
GPtrArray *wm_photo_import_get_failures (WmPhotoImport *self);

/* Tells which files were left out and why, over @parent. */
void
wm_photo_import_show_failures (GtkWindow *parent, GPtrArray *failures, guint n_taken);

/* A file chooser for several photos. @callback gets the files; not called when nothing
 * was chosen. */
typedef void (*WmPhotosChosen) (GListModel *files, gpointer user_data);
void wm_photo_import_choose (GtkWindow *parent, WmPhotosChosen callback,
                             gpointer user_data, GDestroyNotify destroy);

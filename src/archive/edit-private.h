/* edit-private.h: the inside of an edit, for the archive's own files
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "archive/edit.h"

typedef struct
{
  WmKind kind;
  WmId id;
  WmRecord *copy;     /* what is put; NULL: removed */
  WmRecord *original; /* of the caller, on the caller's thread only */
  gint64 revision;    /* of the original when it was put; 0: new */
} WmEditItem;

struct _WmEdit
{
  gatomicrefcount refs;
  char *label;
  WmId piece_id;
  WmId by;
  GPtrArray *items;   /* of WmEditItem, each key once, in the order of first use */
  GHashTable *by_key; /* WmId of an item -> WmEditItem */
};

/* Tells the originals the stamps their rows got (or did not get). On the thread of
 * the records, after the commit. */
void wm_edit_settle (WmEdit *self, gboolean committed);

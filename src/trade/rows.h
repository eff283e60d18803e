/* rows.h: sections turned into the rows that the other rooms read
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "trade/schema.h"
#include "trade/table-file.h"

G_BEGIN_DECLS

typedef struct
{
  GStringChunk *texts;
  GPtrArray *memory;           /* rows and lists, freed with the whole */
  GPtrArray *rows[WM_N_KINDS]; /* pointers to the structs; NULL at the end */
  guint n_rows[WM_N_KINDS];
  GHashTable *by_key[WM_N_KINDS];
} WmRows;

/* Where a mistake stands, so that a shop's file can be left out. */
typedef struct
{
  const char *file; /* belongs to the sections */
  guint line;
} WmRowPlace;

/**
 * wm_rows_build:
 * @sections: array of WmTableSection, each kind and key once
 * @out_place: (out): where the mistake is, when there is one
 */
WmRows *wm_rows_build (GPtrArray *sections, WmRowPlace *out_place, GError **error);

void wm_rows_free (WmRows *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmRows, wm_rows_free)

/* Sets @error to "FILE:LINE: ..." and @place; always FALSE. */
gboolean wm_rows_fail (WmRowPlace *place, const char *file, guint line, GError **error,
                       WmTradeError code, const char *format, ...) G_GNUC_PRINTF (6, 7);

/* Memory that lives as long as the rows, zeroed. */
gpointer wm_rows_alloc (WmRows *self, gsize size);

G_END_DECLS

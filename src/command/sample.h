/* sample.h: the sample pieces, from their file to records
 *
 * The file is sample-pieces/pieces.json; it is ours, so what is not understood in it
 * is a mistake in it and told as one.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "command/command.h"

typedef struct
{
  WmCall *call;
  WmArchive *archive;
  WmTrade *trade;
  const char *folder; /* of pieces.json; photos are named from here */
  GHashTable *people; /* initials -> WmId of who works here */
  guint n_left_out;   /* photos that were not there */
} WmSample;

/* The person of @initials, or NULL. */
const WmId *wm_sample_find_person (WmSample *sample, const char *initials);

/* Nothing said: NULL, NaN or WM_UNKNOWN. */
const char *wm_sample_get_text (JsonObject *object, const char *key);
double wm_sample_get_real (JsonObject *object, const char *key);
gint64 wm_sample_get_int (JsonObject *object, const char *key);
/* ISO 8601 with offset, seconds may be left out. */
gint64 wm_sample_get_time (JsonObject *object, const char *key);
/* NULL, or the list. */
JsonArray *wm_sample_get_list (JsonObject *object, const char *key);

/* A piece with its owner, its stones and its visits, edit by edit. */
gboolean wm_sample_add_piece (WmSample *sample, JsonObject *object, GError **error);

/* One stay of @piece. */
gboolean wm_sample_add_visit (WmSample *sample, WmPiece *piece, JsonObject *object,
                              GError **error);

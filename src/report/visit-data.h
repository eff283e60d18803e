/* visit-data.h: one visit with everything that belongs to it, for showing
 *
 * Gathered once from the archive, then independent of it: papers and the counter
 * view draw from this, on any one thread. Shop notes and people's private lines are
 * in the records but the papers never print them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "archive/archive.h"
#include "trade/trade.h"

/* A finding, or a check that had been one, with what hangs on it. The arrays own
 * nothing: their records belong to the WmVisitData. */
typedef struct
{
  WmCheck *check;
  GPtrArray *before;       /* (element-type WmMark) on before and during photos */
  GPtrArray *after;        /* (element-type WmMark) on after photos */
  GPtrArray *measurements; /* (element-type WmMeasurement) */
  GPtrArray *remedies;     /* (element-type WmRemedy) */
  GPtrArray *proofs;       /* (element-type WmProof) */
} WmFinding;

typedef struct
{
  gatomicrefcount count;
  WmTrade *trade;
  const WmPieceType *type; /* (nullable) */
  WmPiece *piece;
  WmPerson *owner; /* (nullable) */
  WmVisit *visit;
  GPtrArray *stones;
  GPtrArray *photos;
  GPtrArray *checks;
  GPtrArray *marks;
  GPtrArray *measurements;
  GPtrArray *remedies;
  GPtrArray *proofs;
  GPtrArray *pairings;
  GPtrArray *findings; /* (element-type WmFinding): worst first, then by number */
  GHashTable *people;  /* WmId -> name of those who work here */
  char *shop_name;     /* "" if the shop has not said */
  char *shop_address;
  char *shop_contact;
  char *folder;      /* of the archive, for the photos' files */
  GHashTable *paths; /* WmPhoto -> path of its file */
} WmVisitData;

/**
 * wm_visit_data_load:
 * @visit_id: NOT_FOUND if there is none
 *
 * Returns: (transfer full)
 */
WmVisitData *wm_visit_data_load (WmArchive *archive, WmTrade *trade, const WmId *visit_id,
                                 GError **error);
WmVisitData *wm_visit_data_ref (WmVisitData *self);
void wm_visit_data_unref (WmVisitData *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmVisitData, wm_visit_data_unref)

WmPhoto *wm_visit_data_find_photo (WmVisitData *self, const WmId *id);
const char *wm_visit_data_get_path (WmVisitData *self, WmPhoto *photo);

/* The first photo of a moment (WM_PHOTO_BEFORE ...), preferring those with a mark;
 * NULL if there is none. */
WmPhoto *wm_visit_data_find_overview (WmVisitData *self, const char *moment);

/* The photo and the mark that show a finding best, before or after; FALSE if no mark
 * shows it. */
gboolean
wm_visit_data_find_place (WmVisitData *self, const WmFinding *finding, const char *moment,
                          WmPhoto **out_photo, WmMark **out_mark);

/* How many checks have this severity. */
guint wm_visit_data_count (WmVisitData *self, WmSeverity severity);

/* Name of a worker, or NULL. */
const char *wm_visit_data_get_name (WmVisitData *self, const WmId *person_id);

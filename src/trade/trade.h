/* trade.h: all tables of the trade, loaded
 *
 * Loaded once at start and immutable from then on; any thread may read it. A
 * row stays valid as long as its WmTrade.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

#include "trade/advice.h"
#include "trade/checklist.h"
#include "trade/error.h"
#include "trade/material.h"

G_BEGIN_DECLS

typedef struct _WmTrade WmTrade;

/**
 * wm_trade_new:
 * @dir: (nullable): folder of the tables; NULL: the environment's
 *   WEARMARK_TABLES, else the installed folder, else the source tree
 *
 * Reads the tables, then the shop's own in "wearmark/tables" of the user's data
 * folder. A shop's section with a known key replaces the fields it names; a new
 * key adds a row. A shop's file with a mistake is left out whole and told of in
 * wm_trade_get_problems (): the shipped tables never depend on it.
 *
 * Returns: (transfer full): NULL with WM_TRADE_ERROR when the shipped tables are
 * missing or broken; the message names file, line and what to do
 */
WmTrade *wm_trade_new (const char *dir, GError **error);

/* The same with a folder of shop tables of the caller's choice; NULL: none. */
WmTrade *wm_trade_new_with_shop (const char *dir, const char *shop_dir, GError **error);

WmTrade *wm_trade_ref (WmTrade *self);
void wm_trade_unref (WmTrade *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmTrade, wm_trade_unref)

/* What was wrong with the shop's own tables: messages, NULL-terminated. */
const char *const *wm_trade_get_problems (WmTrade *self);

/* A table text in the language of the program; NULL gives NULL. Static or from
 * the table: not to be freed. */
const char *wm_trade_text (const char *text);

/* The keys of a list as translated names: "worn ring; loss of the piece". Keys
 * of one kind; the find functions below do the same for one key. */
char *wm_trade_describe_sources (WmTrade *self, const char *const *sources,
                                 const char *source_note);
char *wm_trade_describe_left (WmTrade *self, const WmChecklistItem *item);
char *wm_trade_describe_remedies (WmTrade *self, const WmChecklistItem *item);

/* One row by key, NULL when there is none. */
const WmPieceType *wm_trade_find_piece_type (WmTrade *self, const char *key);
const WmChecklistItem *wm_trade_find_item (WmTrade *self, const char *key);
const WmBlock *wm_trade_find_block (WmTrade *self, const char *key);
const WmPart *wm_trade_find_part (WmTrade *self, const char *key);
const WmView *wm_trade_find_view (WmTrade *self, const char *key);
const WmWay *wm_trade_find_way (WmTrade *self, const char *key);
const WmConsequence *wm_trade_find_consequence (WmTrade *self, const char *key);
const WmRemedyRow *wm_trade_find_remedy (WmTrade *self, const char *key);
const WmMeasure *wm_trade_find_measure (WmTrade *self, const char *key);
const WmSource *wm_trade_find_source (WmTrade *self, const char *key);
const WmMetal *wm_trade_find_metal (WmTrade *self, const char *key);
const WmTemper *wm_trade_find_temper (WmTrade *self, const char *key);
const WmSolder *wm_trade_find_solder (WmTrade *self, const char *key);
const WmStone *wm_trade_find_stone (WmTrade *self, const char *key);
const WmCut *wm_trade_find_cut (WmTrade *self, const char *key);
const WmFinenessRow *wm_trade_find_fineness (WmTrade *self, const char *key);
const WmFinalTest *wm_trade_find_test (WmTrade *self, const char *key);
const WmCaution *wm_trade_find_caution (WmTrade *self, const char *key);
const WmFault *wm_trade_find_fault (WmTrade *self, const char *key);
const WmIntervalReason *wm_trade_find_interval_reason (WmTrade *self, const char *key);
const WmAdvice *wm_trade_find_advice (WmTrade *self, const char *key);
const WmPhrase *wm_trade_find_phrase (WmTrade *self, const char *key);
const WmWord *wm_trade_find_word (WmTrade *self, const char *key);
const WmWireGauge *wm_trade_find_wire_gauge (WmTrade *self, const char *key);

/* All rows of a kind in the order of the tables, NULL-terminated; @n may be NULL. */
const WmPieceType *const *wm_trade_list_piece_types (WmTrade *self, guint *n);
const WmChecklistItem *const *wm_trade_list_items (WmTrade *self, guint *n);
const WmBlock *const *wm_trade_list_blocks (WmTrade *self, guint *n);
const WmRemedyRow *const *wm_trade_list_remedies (WmTrade *self, guint *n);
const WmSource *const *wm_trade_list_sources (WmTrade *self, guint *n);
const WmMetal *const *wm_trade_list_metals (WmTrade *self, guint *n);
const WmSolder *const *wm_trade_list_solders (WmTrade *self, guint *n);
const WmStone *const *wm_trade_list_stones (WmTrade *self, guint *n);
const WmCut *const *wm_trade_list_cuts (WmTrade *self, guint *n);
const WmFinenessRow *const *wm_trade_list_fineness (WmTrade *self, guint *n);
const WmFinalTest *const *wm_trade_list_tests (WmTrade *self, guint *n);
const WmCaution *const *wm_trade_list_cautions (WmTrade *self, guint *n);
const WmFault *const *wm_trade_list_faults (WmTrade *self, guint *n);
const WmIntervalReason *const *wm_trade_list_interval_reasons (WmTrade *self, guint *n);
const WmAdvice *const *wm_trade_list_advice (WmTrade *self, guint *n);
const WmWord *const *wm_trade_list_words (WmTrade *self, guint *n);
const WmWireGauge *const *wm_trade_list_wire_gauges (WmTrade *self, guint *n);

G_END_DECLS

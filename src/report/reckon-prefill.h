/* reckon-prefill.h: what the record says already, for the inputs of a computation
 *
 * One source per visit and check; text as wm_topic_set () reads it. No widgets.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/topics.h"
#include "report/outlook.h"

typedef struct
{
  WmTrade *trade;     /* borrowed */
  WmOutlook *outlook; /* of the shown visit */
  WmPiece *piece;
  WmCheck *check;         /* (nullable): the one that is open */
  WmMeasurement *reading; /* (nullable): its last one before the work */
  GPtrArray *stones;      /* (element-type WmStoneGroup) */
  gint64 seen, failed;    /* of the check's item in this archive; 0, 0 without a check */
} WmPrefill;

/**
 * wm_prefill_new:
 * @check_id: (nullable)
 *
 * Returns: (transfer full): NULL with the archive's error
 */
WmPrefill *wm_prefill_new (WmArchive *archive, WmTrade *trade, const WmId *visit_id,
                           const WmId *check_id, long today, GError **error);
void wm_prefill_free (WmPrefill *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmPrefill, wm_prefill_free)

/* The input's text, or NULL where the record says nothing. Caller frees. */
char *
wm_prefill_text (const WmPrefill *self, const WmTopic *topic, const WmTopicInput *input);

/* schema.h: which kinds of section the tables have, and which fields
 *
 * One row here for every field: reading, checking of references, and the list
 * of texts for translators all go by it. A new field is a member in the struct
 * of its header and a row in schema.c.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

#include "trade/checklist.h"

G_BEGIN_DECLS

typedef enum
{
  WM_KIND_SOURCE,
  WM_KIND_MEASURE,
  WM_KIND_LIMITS,
  WM_KIND_PART,
  WM_KIND_VIEW,
  WM_KIND_WAY,
  WM_KIND_CONSEQUENCE,
  WM_KIND_REMEDY,
  WM_KIND_TEST,
  WM_KIND_CAUTION,
  WM_KIND_CHECK,
  WM_KIND_BLOCK,
  WM_KIND_TYPE,
  WM_KIND_FAULT,
  WM_KIND_METAL,
  WM_KIND_TEMPER,
  WM_KIND_SOLDER,
  WM_KIND_STONE,
  WM_KIND_CUT,
  WM_KIND_FINENESS,
  WM_KIND_REASON,
  WM_KIND_ADVICE,
  WM_KIND_PHRASE,
  WM_KIND_WORD,
  WM_KIND_WIRE,
  WM_N_KINDS
} WmKind;

typedef enum
{
  WM_FIELD_TEXT,   /* const char *: translated where it is shown */
  WM_FIELD_PLAIN,  /* const char *: a name or formula that stays as it is */
  WM_FIELD_NUMBER, /* double */
  WM_FIELD_RANGE,  /* WmRange: "120" or "120 to 130" */
  WM_FIELD_FLAG,   /* gboolean: "yes" or "no" */
  WM_FIELD_LEVEL,  /* WmSeverity: "sound", "watch", "repair", "no_wear" */
  WM_FIELD_BOUND,  /* WmBound: "below 0.8" or "above 3" */
  WM_FIELD_CHOICE, /* enum: one of the words of the row, counted from 0 */
  WM_FIELD_KEY,    /* const char *: key of a section of kind ref */
  WM_FIELD_KEYS,   /* const char *const *: such keys, parted by blanks */
  WM_FIELD_WORDS,  /* const char *const *: words that are not keys */
  WM_FIELD_CHECKS  /* const char *const *: keys of blocks or of checks */
} WmFieldType;

typedef struct
{
  const char *field;
  WmFieldType type;
  gboolean is_needed;
  gsize offset;
  WmKind ref;         /* of WM_FIELD_KEY and WM_FIELD_KEYS */
  const char *choice; /* of WM_FIELD_CHOICE: "cold heat other" */
} WmFieldSpec;

typedef struct
{
  const char *word; /* as written in [word key] */
  gsize size;
  const WmFieldSpec *fields; /* ends with a field of NULL */
} WmKindSpec;

/* A row of [limits ...]: levels that checks take over by "rule". */
typedef struct
{
  const char *key;
  const char *threshold;
  WmLimits limits;
  const char *const *sources;
} WmLimitsRow;

const WmKindSpec *wm_schema_kind (WmKind kind);
gboolean wm_schema_find_kind (const char *word, WmKind *out_kind);
const WmFieldSpec *wm_schema_find_field (WmKind kind, const char *field);

G_END_DECLS

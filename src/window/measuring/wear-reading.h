/* wear-reading.h: what a reading says of a worn place
 *
 * Share left, strength, newtons and the severity it points to, with whether that holds at
 * either end of the uncertainty; and all of it in words. Pure: no widgets, no archive.
 * Words are translated; callers free them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/ring-load.h"
#include "reckon/section.h"
#include "reckon/severity.h"
#include "record/measurement.h"
#include "record/piece.h"
#include "trade/trade.h"

/* What one hard tug of a hand may bring, N: the pull that parts of toys must stand,
 * EN 71-1, part over 6 mm (source R77 of the tables). */
#define WM_HARD_TUG_N 90.0

/* A section as the record names it. */
typedef struct
{
  const char *key;         /* "round" ... */
  const char *name;        /* N_() */
  const char *height_name; /* N_(): what is measured */
  const char *width_name;  /* N_(): the second size; NULL: it has none */
} WmSectionKind;

const WmSectionKind *wm_section_kinds (guint *n);
/* The row of @key; the first for NULL or one that is not known. */
const WmSectionKind *wm_section_kind_find (const char *key);

typedef struct
{
  WmValue value_mm;   /* value NaN: not measured yet */
  WmValue as_made_mm; /* value NaN: not known */
  const char *section;
  double width_mm;      /* second size of the section; NaN: not given */
  double inside_mm;     /* inside of the ring it belongs to; NaN: no ring, or not given */
  const char *quantity; /* as the record has it; NULL: thickness */
  WmValue yield_mpa;    /* of the metal as soldering leaves it; value 0: not known */
  const WmLimits *limits; /* (nullable): of the check */
} WmWornInput;

/* All of it unknown. */
void wm_worn_input_init (WmWornInput *input);
/* From the kept reading; @item (nullable); @piece (nullable) gives the metal. */
void wm_worn_input_take (WmWornInput *input, WmMeasurement *reading, WmPiece *piece,
                         WmTrade *trade, const WmChecklistItem *item);
/* The softest state of an alloy of the tables; value 0: not known. */
WmValue wm_worn_yield (WmTrade *trade, const char *metal_key);

typedef struct
{
  WmResult result;   /* why there is no share: WM_MISSING without as made */
  const char *which; /* the input at fault, as section.h names it */
  gboolean has_left;
  WmValue thickness_left, pull_left, bending_left, stiffness_left; /* shares */
  WmValue straight_n; /* what the wire holds in a straight pull; value NaN: not known */
  gboolean has_ring;
  WmValue open_n, soldered_n; /* the ring it belongs to, pulled open; and soldered */

  gboolean has_suggestion;
  WmSeverity severity;        /* what it points to: the worse end decides */
  WmSeverity at_low, at_high; /* at either end of the expanded uncertainty */
  gboolean by_share;          /* from the share left, else from the millimetres */
  double from, to; /* the measure's bounds round that level; NaN: no end there */
} WmWorn;

void wm_worn_reckon (const WmWornInput *input, WmWorn *out);

/* "0.62 ± 0.03 mm": expanded; "0.62 mm" where @u is not known. */
char *wm_worn_value_text (double value_mm, double u_mm);
/* "± 0.03 mm" */
char *wm_worn_expanded_text (double value_mm, double u_mm);

/* "About half of the metal is gone. It holds about 21 N; a hard tug is about 90 N." "" if
 * nothing is known. */
char *wm_worn_words (const WmWornInput *input, const WmWorn *wear);
/* "40 to 60 % of the thickness left points to repair"; NULL without a suggestion. */
char *wm_worn_reason (const WmWorn *wear);
/* "At 0.03 mm either way it stays repair." or what else it may be. */
char *wm_worn_stays (const WmWornInput *input, const WmWorn *wear);
/* Why there is no share, as a sentence; NULL where there is one. */
char *wm_worn_refusal (const WmWorn *wear);

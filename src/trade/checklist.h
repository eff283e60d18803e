/* checklist.h: piece types, their checklists, and what a check speaks of
 *
 * Rows of the tables under tables/, read by trade.h. Every row belongs to its
 * WmTrade and never changes while that lives; it may be read on any thread.
 *
 * Texts are English and untranslated: show them with wm_trade_text (). Lists of
 * keys are NULL-terminated and never NULL. A number that the table does not
 * give is NAN; a text it does not give is NULL.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

#include "reckon/severity.h"

G_BEGIN_DECLS

/* From low to high, both ends included; low == high for a single value and
 * NAN for a range that is not given. */
typedef struct
{
  double low;
  double high;
} WmRange;

typedef enum
{
  WM_BOUND_NONE, /* this level does not arise from the number */
  WM_BOUND_BELOW,
  WM_BOUND_ABOVE
} WmBoundSide;

typedef struct
{
  WmBoundSide side;
  double value;
} WmBound;

/**
 * WmLimits:
 * @measure: key of the #WmMeasure that is compared, NULL when no number decides
 * @watch, @repair, @no_wear: where each level begins, in the measure's unit;
 *   the bound itself still belongs to the better level
 */
typedef struct
{
  const char *measure;
  WmBound watch;
  WmBound repair;
  WmBound no_wear;
} WmLimits;

/**
 * WmMeasure:
 * @unit: "mm", "%", "°", or "1" for shares and counts
 */
typedef struct
{
  const char *key;
  const char *name;
  const char *unit;
} WmMeasure;

/* Where a row comes from: a code of tables/sources.txt. */
typedef enum
{
  WM_SOURCE_READ,     /* R1 ...: named, and its passage was read */
  WM_SOURCE_STANDARD, /* N: a named standard or law, cited from memory */
  WM_SOURCE_PRACTICE, /* C: common practice, no source */
  WM_SOURCE_MEMORY,   /* M: from memory, unverified */
  WM_SOURCE_OURS,     /* P: our own proposal */
  WM_SOURCE_COMPUTED  /* calc */
} WmSourceKind;

/**
 * WmSource:
 * @words: what the screen and paper say for it ("common practice, no source")
 * @title: title, author and publisher of a read source; NULL for the others
 */
typedef struct
{
  const char *key;
  const char *words;
  const char *title;
  WmSourceKind kind;
} WmSource;

/* A part of a piece: the heading over a group of checks. */
typedef struct
{
  const char *key;
  const char *name;
} WmPart;

/* A standard view to photograph. */
typedef struct
{
  const char *key;
  const char *name;
} WmView;

/* A way of checking (loupe, tap test ...). */
typedef struct
{
  const char *key;
  const char *name;
  const char *how;
  const char *const *sources;
} WmWay;

/**
 * WmConsequence:
 * @name: what it leads to, short ("loss of the piece")
 * @customer: the same as a sentence for the counter ("The piece can be lost")
 * @had: the same in hindsight, after "Had it given way, " ("the piece could
 *   have been lost")
 */
typedef struct
{
  const char *key;
  const char *name;
  const char *customer;
  const char *had;
  const char *const *sources;
} WmConsequence;

typedef enum
{
  WM_REMEDY_COLD, /* no heat */
  WM_REMEDY_HEAT, /* torch, or laser where a flame may not come near */
  WM_REMEDY_OTHER /* not work on the metal: advice, cleaning, another trade */
} WmRemedyHeat;

/**
 * WmRemedyRow:
 * @name: what to do ("new ring, round, soldered")
 * @done: the same as done, for the counter ("We fitted a new ring ...")
 * @heat: whether it needs a heat plan
 * @tests: keys of the #WmFinalTest that prove it
 * @cautions: keys of the #WmCaution to show beside it
 */
typedef struct
{
  const char *key;
  const char *name;
  const char *done;
  WmRemedyHeat heat;
  const char *const *tests;
  const char *const *cautions;
  const char *const *sources;
} WmRemedyRow;

/**
 * WmChecklistItem:
 * @key: "bx08"; kept in records, never reused for another thing
 * @part: key of the #WmPart it is shown under
 * @name: the thing in sound wording ("End ring")
 * @fault: title when it is a finding ("Worn end ring")
 * @look: where and how to look, one short line
 * @customer: the fault as a plain past sentence for the counter, no full stop
 * @threshold: the levels in words
 * @ways: keys of #WmWay
 * @left: keys of #WmConsequence: what it leads to if it is left, worst first
 * @remedies: keys of #WmRemedyRow, the usual one first
 * @tests: keys of #WmFinalTest that fit the mechanism
 * @level: the level that the fault has at the least, when it is there
 * @limits: machine-readable levels, where one number decides
 * @rule: key of the named limits it takes over, or NULL
 * @sources, @source_note: where the row comes from; show both
 */
typedef struct
{
  const char *key;
  const char *part;
  const char *name;
  const char *fault;
  const char *look;
  const char *customer;
  const char *threshold;
  const char *const *ways;
  const char *const *left;
  const char *const *remedies;
  const char *const *tests;
  WmSeverity level;
  WmLimits limits;
  const char *rule;
  const char *const *sources;
  const char *source_note;
} WmChecklistItem;

/* A block of checks that several piece types share. */
typedef struct
{
  const char *key;
  const char *name;
  const char *const *checks;
  const WmChecklistItem *const *items; /* NULL-terminated, in order */
  guint n_items;
} WmBlock;

/**
 * WmPieceType:
 * @name, @your: "Line bracelet"; "Your line bracelet" for the counter
 * @icon: icon name
 * @views: keys of the standard #WmView, in order
 * @checks: as the table has it: keys of blocks and of checks
 * @items: the checklist in order, grouped by part; NULL-terminated
 * @also: keys of further #WmBlock to look at where the piece has such a part
 * @months_daily, @months_often, @months_seldom: customary months to the next
 *   check for a piece worn daily, often, now and then
 * @sources, @source_note: for the months
 */
typedef struct
{
  const char *key;
  const char *name;
  const char *your;
  const char *icon;
  const char *datum; /* how to lay the piece, so that places agree over the years */
  const char *const *views;
  const char *const *checks;
  const char *const *add;
  const char *const *also;
  const WmChecklistItem *const *items;
  guint n_items;
  WmRange months_daily;
  WmRange months_often;
  WmRange months_seldom;
  const char *const *sources;
  const char *source_note;
} WmPieceType;

/**
 * wm_limits_judge:
 * @limits: limits of a check
 * @value: the reading, in the unit of the limits' measure
 * @out_level: (out): sound to do not wear; written on success only
 *
 * What the number alone points to. A suggestion: the jeweller decides.
 *
 * Returns: FALSE when the limits have no measure or @value is no finite number
 */
gboolean wm_limits_judge (const WmLimits *limits, double value, WmSeverity *out_level);

G_END_DECLS

/* outlook.h: how the parts of a piece wear over its visits, and when it should come back
 *
 * Gathered once from the archive: the readings of the same checklist item and quantity
 * over all visits up to the shown one, fitted by reckon/forecast.h, and the next check by
 * reckon/next-check.h from that, from the customary interval of the piece type (the
 * shop's setting, else the tables') and from what shortens it. Window and report show the
 * same answer. No widgets, no clock: the day is given.
 *
 * A part that was mended or renewed starts a new series; one that was in the shown visit
 * has no say in the next check. The least thickness is where the tables' levels say "do
 * not wear" for the item.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "archive/archive.h"
#include "reckon/forecast.h"
#include "reckon/next-check.h"
#include "report/language.h"
#include "trade/trade.h"

/* Setting: "check-months-TYPE-daily", "...-often", "...-seldom": months as a number. */
#define WM_SETTING_CHECK_MONTHS "check-months-"

typedef struct
{
  long day; /* day number (reckon/day.h) */
  WmValue left_mm;
  gboolean is_after; /* measured after the work of that visit */
  gboolean is_old;   /* of a part that was mended or renewed since */
} WmWearPoint;

/* One measured place over the visits. */
typedef struct
{
  char *item;     /* of the checklist */
  char *title;    /* in the tables' English */
  char *quantity; /* as kept with the reading */
  WmId check_id;  /* of the shown visit */
  GArray *points; /* WmWearPoint, by day; at least one */
  double made_mm; /* NaN: not known */
  double minimum_mm;
  const char *const *sources; /* of the level, keys of trade sources; not NULL */
  gboolean is_renewed;        /* in the shown visit */
  int n_fit;                  /* readings of the series that the forecast is from */
  gboolean has_forecast;
  WmForecast forecast; /* years: days after 1970 / 365.2425 */
} WmWear;

typedef enum
{
  WM_WORN_UNSAID = 0, /* taken as daily: the careful side */
  WM_WORN_DAILY,
  WM_WORN_OFTEN,
  WM_WORN_SELDOM
} WmWorn;

typedef struct
{
  GPtrArray *wears; /* (element-type WmWear): the first to reach its least first */
  WmWorn worn;
  int months;            /* customary, unshortened; 0: not known for this kind of piece */
  gboolean is_shop_rule; /* the shop's setting, not the tables' */
  const char *source;    /* words for where the tables have the months from */
  GPtrArray *reasons;    /* (element-type WmIntervalReason const): what shortens */
  const WmWear *decides; /* (nullable): the part whose wear asks for the date */
  gboolean has_next;
  WmNextCheck next;
  char due_on[16]; /* "2027-05-21" */
} WmOutlook;

/**
 * wm_outlook_load:
 * @today: day number from which the next check is counted, if the piece is not yet
 *   handed back
 *
 * Returns: (transfer full): NULL with the archive's error
 */
WmOutlook *wm_outlook_load (WmArchive *archive, WmTrade *trade, const WmId *visit_id,
                            long today, GError **error);
void wm_outlook_free (WmOutlook *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmOutlook, wm_outlook_free)

/* The wear of that check of the shown visit, or NULL. */
const WmWear *wm_outlook_find (const WmOutlook *self, const WmId *check_id);

/* Customary months of a piece type: the shop's setting, else the tables'; 0 if neither.
 * @out_is_shop: (out) (optional) */
int wm_outlook_months (WmArchive *archive, const WmPieceType *type, WmWorn worn,
                       gboolean *out_is_shop);
/* The setting's name. Caller frees. */
char *wm_outlook_setting (const char *type, WmWorn worn);

/* How often a piece is worn, from the words it was described with. */
WmWorn wm_outlook_read_worn (const char *worn);

/* ---- in words; caller frees ---------------------------------------------------- */

/* "In 4 months instead of the usual 12: ...": one sentence, as the customer reads it.
 * NULL without a next check. */
char *wm_outlook_sentence (const WmOutlook *self, WmLanguage *language);
/* What the pace of one part says: "0.12 ± 0.04 mm thinner a year; ..." */
char *wm_wear_sentence (const WmWear *wear, WmLanguage *language);
/* "0.12 ± 0.06 mm less than on 20 November 2025", or NULL with one reading. */
char *wm_wear_since_last (const WmWear *wear, WmLanguage *language);
/* "2027-05-21" of a year number of the forecast. */
char *wm_wear_date (double years);

/* labels.h: dates, numbers and people in the words of the reader's language
 *
 * All return new text; the caller frees it. Main thread only (translations).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "record/kinds.h"
#include "window/session.h"

/* UTC seconds to "26 November 2026", in local time; WM_UNKNOWN gives "". */
char *wm_label_day (gint64 at_s);
/* "26 Nov"; with the year if that is not the current one. */
char *wm_label_short_day (gint64 at_s);
/* "26 Nov 2026, 09:12" */
char *wm_label_moment (gint64 at_s);
/* The same for a date "2026-12-02"; NULL or nonsense gives "". */
char *wm_label_date (const char *date);
char *wm_label_short_date (const char *date);
/* "2 Dec 2026": short, and read back by field-check.h as the same day. */
char *wm_label_long_date (const char *date);

/* "26 Nov", never with the year; for scales. */
char *wm_label_week_day (gint64 at_s);
/* "December" of a date; with the year if that is not the current one. */
char *wm_label_month (const char *date);

/* "6 800.00 EUR" from the minor unit; read back by field-check.h. */
char *wm_label_money (gint64 minor, const char *currency);

/* "18.42 g" from milligrams; WM_UNKNOWN gives "". */
char *wm_label_mass (gint64 mass_mg);
/* "178 mm"; NaN gives "". */
char *wm_label_mm (double mm);

/* "Line bracelet" for a key of the piece types, else the text as it is. */
char *wm_label_type (WmSession *session, const char *type);
/* Icon of a piece type: "wm-ring-symbolic". Static. */
const char *wm_label_type_icon (WmSession *session, const char *type);
/* "18 k yellow gold, 750" */
char *wm_label_metal (WmSession *session, WmPiece *piece);
/* "Line bracelet, 18 k yellow gold"; without a metal its description. */
char *wm_label_piece (WmSession *session, WmPiece *piece);

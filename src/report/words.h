/* words.h: dates, money, weights and severities as a customer reads them
 *
 * All return newly allocated text in the given language unless they return const.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/severity.h"
#include "report/language.h"

/* "26 November 2026". @date: "2026-11-26"; anything else comes back as it is. */
char *wm_words_date (WmLanguage *language, const char *date);

/* The day, in the clock of this workstation, of a UTC time. */
char *wm_words_day_of (WmLanguage *language, gint64 at_s);

/* "6 800.00 EUR": @minor in the minor unit of @currency (ISO 4217), grouped by thin
 * spaces as ISO 80000-1, 7.3.1 has it. */
char *wm_words_money (WmLanguage *language, gint64 minor, const char *currency);

/* Digits behind the point of a currency: ISO 4217's exponent; 2 if it is not known. */
int wm_currency_exponent (const char *currency);

/* "18.42 g" */
char *wm_words_mass (WmLanguage *language, gint64 mass_mg);

/* "2.6 mm", with up to @digits behind the point and no zeros at the end. */
char *wm_words_mm (WmLanguage *language, double mm, int digits);

/* "0.60 ± 0.03 mm": to hundredths, as a gauge reads; the uncertainty never as nothing.
 * @expanded_mm: coverage factor 2. */
char *wm_words_mm_within (WmLanguage *language, double mm, double expanded_mm);

/* Lower case, as shown beside the glyph: "do not wear". */
const char *wm_words_severity (WmLanguage *language, WmSeverity severity);

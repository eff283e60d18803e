/* field-check.h: what a person typed, checked and made into a value
 *
 * Pure: no widgets, no archive. Every check takes the text as typed, surrounding
 * blanks allowed, and returns
 *   WM_FIELD_OK      the value is written
 *   WM_FIELD_ODD     the value is written, but look again: @out_remark says why
 *   WM_FIELD_WRONG   nothing is written: @out_remark says what is wrong and what to do
 * An empty text is always OK and gives the value that says nothing (NULL, WM_UNKNOWN,
 * NaN). @out_remark is translated, new, freed by the caller; NULL when OK.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

typedef enum
{
  WM_FIELD_OK,
  WM_FIELD_ODD,
  WM_FIELD_WRONG
} WmFieldVerdict;

/**
 * wm_field_check_date:
 * @today: "2026-11-26"
 * @out_date: (out) (transfer full): "2026-12-02"
 *
 * Reads 2026-12-02, 2.12.2026, 2.12., 2 December 2026, 2 Dec (names in the language of
 * the program or English) and +14 (days from today). A date without a year is the next
 * one to come. Slashes are refused: 2/12 is not the same day everywhere. Odd: a day
 * before @today, or more than ten years off.
 */
WmFieldVerdict wm_field_check_date (const char *text, const char *today, char **out_date,
                                    char **out_remark);

/**
 * wm_field_check_money:
 * @currency: ISO 4217 code of the shop
 * @exponent: digits behind the point (wm_currency_exponent ())
 * @out_minor: (out): in the minor unit, exact
 *
 * Point or comma, groups of three with blank, thin blank, point, comma or apostrophe;
 * the shop's own code before or after. Never rounded: too many digits are wrong.
 */
WmFieldVerdict wm_field_check_money (const char *text, const char *currency, int exponent,
                                     gint64 *out_minor, char **out_remark);

/* Grams with at most three digits behind the point, to milligrams. Odd over 2 kg. */
WmFieldVerdict wm_field_check_mass (const char *text, gint64 *out_mg, char **out_remark);

/* Millimetres, above 0. Odd over 2 m. */
WmFieldVerdict wm_field_check_mm (const char *text, double *out_mm, char **out_remark);

/* A whole number from 1 to 99999. */
WmFieldVerdict
wm_field_check_count (const char *text, gint64 *out_count, char **out_remark);

/* Telephone: digits, blanks, + ( ) / - . and an extension; 15 digits at most (ITU-T
 * E.164). The text is kept as typed. */
WmFieldVerdict wm_field_check_phone (const char *text, char **out_remark);

/* name@domain within the lengths of RFC 5321, section 4.5.3.1. */
WmFieldVerdict wm_field_check_email (const char *text, char **out_remark);

/* Parts per thousand, 1 to 999, or "18 k" / "18 ct" (of 24 parts). Whether it is one of
 * the metal's usual finenesses is for the caller to say, from the table. */
WmFieldVerdict
wm_field_check_fineness (const char *text, gint64 *out_ppt, char **out_remark);

/* Currency code: three capital letters (ISO 4217); not looked up. */
WmFieldVerdict
wm_field_check_currency (const char *text, char **out_code, char **out_remark);

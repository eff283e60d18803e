/* test-field-check.c: what the fields of the window take and refuse
 *
 * Expected values are worked by hand or come from the standard named beside them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/form/field-check.h"

#include <math.h>

#include "record/record.h"

#define TODAY "2026-11-26"

typedef struct
{
  const char *text;
  WmFieldVerdict verdict;
  const char *value;
} DateRow;

static void
test_date (void)
{
  static const DateRow rows[] = {
    { "", WM_FIELD_OK, NULL },
    { "2026-12-02", WM_FIELD_OK, "2026-12-02" },
    { " 2026-12-02 ", WM_FIELD_OK, "2026-12-02" },
    { "2.12.2026", WM_FIELD_OK, "2026-12-02" },
    { "2. 12. 26", WM_FIELD_OK, "2026-12-02" },
    { "2.12.", WM_FIELD_OK, "2026-12-02" },
    { "2.1.", WM_FIELD_OK, "2027-01-02" },
    { "26.11.", WM_FIELD_OK, "2026-11-26" },
    { "2 December 2026", WM_FIELD_OK, "2026-12-02" },
    { "2 dec", WM_FIELD_OK, "2026-12-02" },
    { "31 Jan", WM_FIELD_OK, "2027-01-31" },
    { "+14", WM_FIELD_OK, "2026-12-10" },
    { "+0", WM_FIELD_OK, "2026-11-26" },
    /* 2028 is a leap year, 2027 is none (Gregorian calendar). */
    { "29 Feb 2028", WM_FIELD_OK, "2028-02-29" },
    { "29 Feb 2027", WM_FIELD_WRONG, NULL },
    { "31.11.2026", WM_FIELD_WRONG, NULL },
    { "2/12/2026", WM_FIELD_WRONG, NULL },
    { "12/2", WM_FIELD_WRONG, NULL },
    { "soon", WM_FIELD_WRONG, NULL },
    { "2", WM_FIELD_WRONG, NULL },
    { "2 de", WM_FIELD_WRONG, NULL },
    { "+", WM_FIELD_WRONG, NULL },
    { "+two", WM_FIELD_WRONG, NULL },
    { "2 12 2026 1", WM_FIELD_WRONG, NULL },
    { "2026-12-02x", WM_FIELD_WRONG, NULL },
    { "2025-12-02", WM_FIELD_ODD, "2025-12-02" },
    { "2037-01-01", WM_FIELD_ODD, "2037-01-01" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *value = NULL, *remark = NULL;
      WmFieldVerdict verdict = wm_field_check_date (rows[i].text, TODAY, &value, &remark);

      g_test_message ("%s", rows[i].text);
      g_assert_cmpint (verdict, ==, rows[i].verdict);
      g_assert_cmpstr (value, ==, rows[i].value);
      g_assert_true ((remark == NULL) == (verdict == WM_FIELD_OK));
    }
}

typedef struct
{
  const char *text;
  const char *currency;
  int exponent;
  WmFieldVerdict verdict;
  gint64 minor;
} MoneyRow;

static void
test_money (void)
{
  static const MoneyRow rows[] = {
    { "", "EUR", 2, WM_FIELD_OK, WM_UNKNOWN },
    { "6800", "EUR", 2, WM_FIELD_OK, 680000 },
    { "6800.00", "EUR", 2, WM_FIELD_OK, 680000 },
    { "6800,5", "EUR", 2, WM_FIELD_OK, 680050 },
    { "6 800.00", "EUR", 2, WM_FIELD_OK, 680000 },
    { "6\u202f800,00", "EUR", 2, WM_FIELD_OK, 680000 },
    { "6'800.05", "CHF", 2, WM_FIELD_OK, 680005 },
    { "6,800", "EUR", 2, WM_FIELD_OK, 680000 },
    { "6.800", "EUR", 2, WM_FIELD_OK, 680000 },
    { "1.234.567,89", "EUR", 2, WM_FIELD_OK, 123456789 },
    { "1,234,567.89", "GBP", 2, WM_FIELD_OK, 123456789 },
    { "EUR 12.30", "EUR", 2, WM_FIELD_OK, 1230 },
    { "12.30 eur", "EUR", 2, WM_FIELD_OK, 1230 },
    { "0.01", "EUR", 2, WM_FIELD_OK, 1 },
    { ".5", "EUR", 2, WM_FIELD_OK, 50 },
    { "0", "EUR", 2, WM_FIELD_OK, 0 },
    /* ISO 4217: the yen has no minor unit, the Kuwaiti dinar has thousandths. */
    { "12,500", "JPY", 0, WM_FIELD_OK, 12500 },
    { "12.5", "JPY", 0, WM_FIELD_WRONG, -1 },
    { "12.345", "KWD", 3, WM_FIELD_OK, 12345 },
    { "1,012.345", "KWD", 3, WM_FIELD_OK, 1012345 },
    { "12.3456", "KWD", 3, WM_FIELD_WRONG, -1 },
    { "12.345", "EUR", 2, WM_FIELD_OK, 1234500 },
    { "12.3456", "EUR", 2, WM_FIELD_WRONG, -1 },
    { "1.23.45", "EUR", 2, WM_FIELD_WRONG, -1 },
    { "12,34,567.00", "EUR", 2, WM_FIELD_WRONG, -1 },
    { "-5", "EUR", 2, WM_FIELD_WRONG, -1 },
    { "USD 5", "EUR", 2, WM_FIELD_WRONG, -1 },
    { "5 USD", "EUR", 2, WM_FIELD_WRONG, -1 },
    { "five", "EUR", 2, WM_FIELD_WRONG, -1 },
    { "1e6", "EUR", 2, WM_FIELD_WRONG, -1 },
    { "99999999999999999999", "EUR", 2, WM_FIELD_WRONG, -1 },
    { ".", "EUR", 2, WM_FIELD_WRONG, -1 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *remark = NULL;
      gint64 minor = -1;
      WmFieldVerdict verdict = wm_field_check_money (rows[i].text, rows[i].currency,
                                                     rows[i].exponent, &minor, &remark);

      g_test_message ("%s %s", rows[i].text, rows[i].currency);
      g_assert_cmpint (verdict, ==, rows[i].verdict);
      g_assert_cmpint (minor, ==, rows[i].minor);
      g_assert_true ((remark == NULL) == (verdict == WM_FIELD_OK));
    }
}

typedef struct
{
  const char *text;
  WmFieldVerdict verdict;
  gint64 value;
} IntRow;

static void
run_int_rows (const IntRow *rows, guint n_rows,
              WmFieldVerdict (*check) (const char *, gint64 *, char **))
{
  for (guint i = 0; i < n_rows; i++)
    {
      g_autofree char *remark = NULL;
      gint64 value = -1;
      WmFieldVerdict verdict = check (rows[i].text, &value, &remark);

      g_test_message ("%s", rows[i].text);
      g_assert_cmpint (verdict, ==, rows[i].verdict);
      g_assert_cmpint (value, ==, rows[i].value);
      g_assert_true ((remark == NULL) == (verdict == WM_FIELD_OK));
    }
}

static void
test_mass (void)
{
  static const IntRow rows[] = {
    { "", WM_FIELD_OK, WM_UNKNOWN },   { "18.42", WM_FIELD_OK, 18420 },
    { "18,42 g", WM_FIELD_OK, 18420 }, { "18.425", WM_FIELD_OK, 18425 },
    { "18", WM_FIELD_OK, 18000 },      { "2.88", WM_FIELD_OK, 2880 },
    { "2500", WM_FIELD_ODD, 2500000 }, { "0", WM_FIELD_WRONG, -1 },
    { "18.4255", WM_FIELD_WRONG, -1 }, { "heavy", WM_FIELD_WRONG, -1 },
    { "-3", WM_FIELD_WRONG, -1 },      { "100001", WM_FIELD_WRONG, -1 },
  };

  run_int_rows (rows, G_N_ELEMENTS (rows), wm_field_check_mass);
}

static void
test_count (void)
{
  static const IntRow rows[] = {
    { "", WM_FIELD_OK, WM_UNKNOWN }, { "34", WM_FIELD_OK, 34 },
    { "1", WM_FIELD_OK, 1 },         { "99999", WM_FIELD_OK, 99999 },
    { "0", WM_FIELD_WRONG, -1 },     { "100000", WM_FIELD_WRONG, -1 },
    { "3.5", WM_FIELD_WRONG, -1 },   { "a few", WM_FIELD_WRONG, -1 },
  };

  run_int_rows (rows, G_N_ELEMENTS (rows), wm_field_check_count);
}

static void
test_fineness (void)
{
  /* Karat is a part of 24; the marks for 8, 9, 10, 14, 18 and 22 k are those that
   * ISO 9202 lists: 333, 375, 417, 585, 750, 916. */
  static const IntRow rows[] = {
    { "", WM_FIELD_OK, WM_UNKNOWN }, { "750", WM_FIELD_OK, 750 },
    { "8 k", WM_FIELD_OK, 333 },     { "9ct", WM_FIELD_OK, 375 },
    { "10 k", WM_FIELD_OK, 417 },    { "14 kt", WM_FIELD_OK, 585 },
    { "18 k", WM_FIELD_OK, 750 },    { "22 k", WM_FIELD_OK, 916 },
    { "24 k", WM_FIELD_OK, 999 },    { "25 k", WM_FIELD_WRONG, -1 },
    { "0", WM_FIELD_WRONG, -1 },     { "1000", WM_FIELD_WRONG, -1 },
    { "gold", WM_FIELD_WRONG, -1 },  { "58.5", WM_FIELD_WRONG, -1 },
  };

  run_int_rows (rows, G_N_ELEMENTS (rows), wm_field_check_fineness);
}

static void
test_mm (void)
{
  g_autofree char *remark = NULL;
  double mm = -1;

  g_assert_cmpint (wm_field_check_mm ("2,6 mm", &mm, &remark), ==, WM_FIELD_OK);
  g_assert_cmpfloat (mm, ==, 2.6);
  g_assert_cmpint (wm_field_check_mm ("", &mm, &remark), ==, WM_FIELD_OK);
  g_assert_true (isnan (mm));
  g_assert_null (remark);
  mm = -1;
  g_assert_cmpint (wm_field_check_mm ("0", &mm, &remark), ==, WM_FIELD_WRONG);
  g_assert_cmpfloat (mm, ==, -1);
  g_assert_nonnull (remark);
  g_clear_pointer (&remark, g_free);
  g_assert_cmpint (wm_field_check_mm ("2600", &mm, &remark), ==, WM_FIELD_ODD);
  g_assert_cmpfloat (mm, ==, 2600);
}

typedef struct
{
  const char *text;
  gboolean good;
} TextRow;

static void
run_text_rows (const TextRow *rows, guint n_rows,
               WmFieldVerdict (*check) (const char *, char **))
{
  for (guint i = 0; i < n_rows; i++)
    {
      g_autofree char *remark = NULL;
      WmFieldVerdict verdict = check (rows[i].text, &remark);

      g_test_message ("%s", rows[i].text);
      g_assert_cmpint (verdict, ==, rows[i].good ? WM_FIELD_OK : WM_FIELD_WRONG);
      g_assert_true ((remark == NULL) == rows[i].good);
    }
}

static void
test_phone (void)
{
  static const TextRow rows[] = {
    { "", TRUE },
    { "0170 555 014", TRUE },
    { "+44 (0)20 5550 0143", TRUE },
    { "(555) 010-0142 ext. 12", TRUE },
    { "555-0142 x7", TRUE },
    { "112", TRUE },
    /* ITU-T E.164, 6.2.1: 15 digits at most */
    { "+123456789012345", TRUE },
    { "+1234567890123456", FALSE },
    { "12", FALSE },
    { "0170+555", FALSE },
    { "ask his wife", FALSE },
    { "0170 555 O14", FALSE },
    { "555 ext", FALSE },
  };

  run_text_rows (rows, G_N_ELEMENTS (rows), wm_field_check_phone);
}

static void
test_email (void)
{
  static const TextRow rows[] = {
    { "", TRUE },
    { "tilda@example.org", TRUE },
    { "tilda.osk+ring@mail.example.org", TRUE },
    { "o'hara@example.co", TRUE },
    { "j\u00f8rgen@example.org", TRUE },
    { "tilda@b\u00fccher.example", TRUE },
    { "tilda", FALSE },
    { "tilda@", FALSE },
    { "@example.org", FALSE },
    { "tilda@example", FALSE },
    { "tilda@@example.org", FALSE },
    { "tilda@ex ample.org", FALSE },
    { "til da@example.org", FALSE },
    { ".tilda@example.org", FALSE },
    { "tilda..osk@example.org", FALSE },
    { "tilda@-example.org", FALSE },
    { "tilda@example..org", FALSE },
    /* RFC 5321, 4.5.3.1.1: local part of 64 octets at most */
    { "a234567890123456789012345678901234567890123456789012345678901234@example.org",
      TRUE },
    { "a2345678901234567890123456789012345678901234567890123456789012345@example.org",
      FALSE },
  };

  run_text_rows (rows, G_N_ELEMENTS (rows), wm_field_check_email);
}

static void
test_currency (void)
{
  g_autofree char *code = NULL, *none = NULL, *remark = NULL;

  g_assert_cmpint (wm_field_check_currency (" eur", &code, &remark), ==, WM_FIELD_OK);
  g_assert_cmpstr (code, ==, "EUR");
  g_assert_cmpint (wm_field_check_currency ("euro", &none, &remark), ==, WM_FIELD_WRONG);
  g_assert_null (none);
  g_assert_nonnull (remark);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/window/field/date", test_date);
  g_test_add_func ("/window/field/money", test_money);
  g_test_add_func ("/window/field/mass", test_mass);
  g_test_add_func ("/window/field/count", test_count);
  g_test_add_func ("/window/field/fineness", test_fineness);
  g_test_add_func ("/window/field/mm", test_mm);
  g_test_add_func ("/window/field/phone", test_phone);
  g_test_add_func ("/window/field/email", test_email);
  g_test_add_func ("/window/field/currency", test_currency);

  return g_test_run ();
}

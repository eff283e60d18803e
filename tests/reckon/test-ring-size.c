/* test-ring-size.c: ring sizes
 *
 * Expected values: ISO size to diameter as printed, United States table of
 * circumferences, the Italian rule, letters of a trade list (D 41.5, Z 70).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/ring-size.h"

#include "near.h"

static WmRingSize
size_of (WmSizeScale scale, double size, double thickness)
{
  WmRingSize out;

  g_assert_cmpint (
      wm_ring_size (scale, wm_exact (size), wm_exact (thickness), &out, NULL), ==, WM_OK);
  return out;
}

static void
test_iso (void)
{
  const double rows[][2] = { { 49, 15.6 }, { 52, 16.6 }, { 54, 17.2 },
                             { 57, 18.1 }, { 60, 19.1 }, { 72, 22.9 } };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    wm_assert_near (size_of (WM_SIZE_CIRCUMFERENCE, rows[i][0], 0).diameter_mm.value,
                    rows[i][1], 0.05);
}

static void
test_us (void)
{
  const double rows[][2] = { { 3, 44.2 },   { 4, 46.8 },  { 5, 49.3 }, { 6, 51.9 },
                             { 6.5, 53.1 }, { 7, 54.4 },  { 8, 57.0 }, { 9, 59.5 },
                             { 10, 62.1 },  { 11, 64.6 }, { 12, 67.2 } };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      WmRingSize s = size_of (WM_SIZE_US, rows[i][0], 0);

      wm_assert_near (s.circumference_mm.value, rows[i][1], 0.06);
      wm_assert_near (s.us.value, rows[i][0], 1e-9);
    }

  wm_assert_near (size_of (WM_SIZE_US, 7, 0).diameter_mm.value
                      - size_of (WM_SIZE_US, 6, 0).diameter_mm.value,
                  0.8128, 1e-9);
}

static void
test_others (void)
{
  WmRingSize s = size_of (WM_SIZE_CIRCUMFERENCE, 54, 1.8);

  wm_assert_near (s.minus_40.value, 14, 1e-12);
  wm_assert_near (s.blank_mm.value, 59.65, 0.006);
  wm_assert_near (size_of (WM_SIZE_MINUS_40, 14, 0).circumference_mm.value, 54, 1e-12);
  wm_assert_near (size_of (WM_SIZE_DIAMETER, 54 / G_PI, 0).circumference_mm.value, 54,
                  1e-12);
  g_assert_true (isnan (size_of (WM_SIZE_DIAMETER, 17, 0).blank_mm.value));
}

static void
test_letters (void)
{
  char text[8];

  wm_ring_letter (size_of (WM_SIZE_CIRCUMFERENCE, 41.5, 0).uk_1300, text);
  g_assert_cmpstr (text, ==, "D");
  wm_ring_letter (size_of (WM_SIZE_CIRCUMFERENCE, 70, 0).uk_1300, text);
  g_assert_cmpstr (text, ==, "Z");
  wm_ring_letter (size_of (WM_SIZE_CIRCUMFERENCE, 37.5, 0).uk_1250, text);
  g_assert_cmpstr (text, ==, "A");
  /* US 7 is printed as N 1/2 on the one list and as O on the other. */
  wm_ring_letter (size_of (WM_SIZE_US, 7, 0).uk_1250, text);
  g_assert_cmpstr (text, ==, "N ½");
  wm_ring_letter (size_of (WM_SIZE_CIRCUMFERENCE, 95, 0).uk_1300, text);
  g_assert_cmpstr (text, ==, "");
}

static void
test_refusals (void)
{
  const char *which = NULL;
  WmRingSize s;

  g_assert_cmpint (
      wm_ring_size (WM_SIZE_CIRCUMFERENCE, wm_exact (20), wm_exact (0), &s, &which), ==,
      WM_OUT_OF_RANGE);
  g_assert_cmpstr (which, ==, "size");
  g_assert_cmpint (
      wm_ring_size (WM_SIZE_DIAMETER, wm_exact (54), wm_exact (0), &s, &which), ==,
      WM_OUT_OF_RANGE);
  g_assert_cmpint (wm_ring_size (WM_SIZE_US, wm_exact (NAN), wm_exact (0), &s, &which),
                   ==, WM_NOT_A_NUMBER);
  g_assert_cmpint (wm_ring_size (WM_SIZE_US, wm_exact (6), wm_exact (-1), &s, &which), ==,
                   WM_NOT_POSITIVE);
  g_assert_cmpstr (which, ==, "thickness");
  g_assert_cmpint (wm_ring_size ((WmSizeScale)7, wm_exact (6), wm_exact (0), &s, &which),
                   ==, WM_UNKNOWN_INPUT);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reckon/ring-size/iso", test_iso);
  g_test_add_func ("/reckon/ring-size/us", test_us);
  g_test_add_func ("/reckon/ring-size/others", test_others);
  g_test_add_func ("/reckon/ring-size/letters", test_letters);
  g_test_add_func ("/reckon/ring-size/refusals", test_refusals);
  return g_test_run ();
}

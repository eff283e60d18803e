/* test-scale-bar.c: the length a scale bar shows
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/canvas/loupe.h"
#include "window/canvas/scale-bar.h"

#include <math.h>

static void
test_lengths (void)
{
  static const struct
  {
    double px_per_mm, expected_mm;
  } cases[] = {
    { 12.4, 10 }, /* exactly ten fit */
    { 12.5, 5 },  /* a little less than ten fit */
    { 62, 2 },    { 63, 1 }, { 124, 1 }, { 125, 0.5 }, { 1.2, 100 }, { 700, 0.1 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    g_assert_cmpfloat_with_epsilon (wm_scale_bar_choose (cases[i].px_per_mm, 124),
                                    cases[i].expected_mm, 1e-9);
  g_assert_true (isnan (wm_scale_bar_choose (NAN, 124)));
  g_assert_true (isnan (wm_scale_bar_choose (0, 124)));
  g_assert_true (isnan (wm_scale_bar_choose (-3, 124)));
}

/* Look book and design, section 7: true pixels, x10 when the photo allows. */
static void
test_loupe (void)
{
  /* 8000 px across shown in 1000: ten times is 1.25 device px a photo px. */
  g_assert_cmpfloat_with_epsilon (wm_loupe_zoom (0.125, 1), 1.25, 1e-9);
  /* 20,000 px across: ten times would still be smaller than true pixels. */
  g_assert_cmpfloat_with_epsilon (wm_loupe_zoom (0.05, 1), 1, 1e-9);
  /* 2000 px across: x10 would only blow up pixels. */
  g_assert_cmpfloat_with_epsilon (wm_loupe_zoom (0.5, 1), 2, 1e-9);
  /* On a screen of two device px: true pixels are half a view px. */
  g_assert_cmpfloat_with_epsilon (wm_loupe_zoom (0.01, 2), 0.5, 1e-9);
  /* The view is enlarged already: the loupe still enlarges. */
  g_assert_cmpfloat_with_epsilon (wm_loupe_zoom (3, 1), 6, 1e-9);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/window/scale-bar/length", test_lengths);
  g_test_add_func ("/window/loupe/zoom", test_loupe);
  return g_test_run ();
}

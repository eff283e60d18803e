/* test-joint-words.c: the sentence that compares a straight with an angled joint
 *
 * At 30 degrees the area is 1/sin 30 = 2 times as large, and so is the gap's solder. Of a
 * pull s the joint sees s sin^2 a across and s sin a cos a along; with shear strength
 * 1/sqrt (3) of the tensile one, (s/4)^2 + 3 (0.433 s)^2 = 0.625 s^2 = 1: s = 1.265,
 * shown as 1.26 (Cauchy, von Mises; worked by hand).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/bench-work/joint-words.h"

#include <math.h>
#include <string.h>

static void
test_ratio (void)
{
  const WmMetal gold = { .density = { 15.4, 15.6 } };
  g_autofree char *text = wm_joint_words (&gold);

  g_assert_nonnull (strstr (text, "30°"));
  g_assert_nonnull (strstr (text, "2.0 times the area"));
  g_assert_nonnull (strstr (text, "1.26 times the pull"));
  g_assert_nonnull (strstr (text, "2.0 times the solder"));
}

static void
test_no_density (void)
{
  const WmMetal unknown = { .density = { NAN, NAN } };

  g_assert_null (wm_joint_words (&unknown));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/window/joint-words/ratio", test_ratio);
  g_test_add_func ("/window/joint-words/no-density", test_no_density);
  return g_test_run ();
}

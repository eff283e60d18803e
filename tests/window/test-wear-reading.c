/* test-wear-reading.c: what is shown for a given measurement, without a widget
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/measuring/gauge-readings.h"
#include "window/measuring/scale-basis.h"
#include "window/measuring/typed-length.h"
#include "window/measuring/wear-reading.h"

#include <math.h>
#include <string.h>

#include "report/photo-scale.h"

/* ---- lengths as typed ------------------------------------------------------------- */

static void
test_lengths (void)
{
  /* An inch is 25.4 mm exactly: international yard and pound agreement, 1959. */
  static const struct
  {
    const char *text;
    double mm;
  } rows[] = {
    { "10", 10 },       { " 10 mm ", 10 },    { "1,5 cm", 15 },     { "250 µm", 0.25 },
    { "0.5 in", 12.7 }, { "1/2 in", 12.7 },   { "1 1/4\"", 31.75 }, { "24 thou", 0.6096 },
    { "1/2", 0.5 },     { "2 inches", 50.8 }, { "10MM", 10 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *remark = NULL;
      double mm = -1;

      g_assert_cmpint (wm_typed_length (rows[i].text, &mm, &remark), ==, WM_FIELD_OK);
      g_assert_cmpfloat_with_epsilon (mm, rows[i].mm, 1e-12);
    }
}

static void
test_lengths_refused (void)
{
  static const char *const rows[] = {
    "ten",   "-3",   "\u22123", "0",  "1/0", "10 kg",
    "1.2.3", "5000", "1e3",     "mm", "1 2", "99999999999999999999999999999999999999999",
    "nan",   "inf",
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *remark = NULL;
      double mm = -1;

      g_assert_cmpint (wm_typed_length (rows[i], &mm, &remark), ==, WM_FIELD_WRONG);
      g_assert_nonnull (remark);
      g_assert_cmpfloat (mm, ==, -1);
    }
}

/* ---- readings ---------------------------------------------------------------------- */

static void
test_readings (void)
{
  g_autoptr (GArray) readings = NULL;
  g_autofree char *remark = NULL, *kept = NULL;
  WmValue value;

  g_assert_cmpint (wm_gauge_readings_parse ("0.61; 0,59  0.60 mm", &readings, &remark),
                   ==, WM_FIELD_OK);
  g_assert_cmpuint (readings->len, ==, 3);
  kept = wm_gauge_readings_format ((double *)readings->data, readings->len);
  g_assert_cmpstr (kept, ==, "0.61 0.59 0.6");

  /* By hand: mean 0.60, s = 0.01, s / sqrt 3 = 0.0057735; with 0.02 of the gauge
   * sqrt (0.0004 + 0.0000333333) = 0.0208167. */
  value = wm_gauge_readings_value ((double *)readings->data, readings->len, 0.02);
  g_assert_cmpfloat_with_epsilon (value.value, 0.60, 1e-12);
  g_assert_cmpfloat_with_epsilon (value.u, 0.0208167, 1e-7);

  /* One reading has no scatter: the gauge alone. */
  value = wm_gauge_readings_value ((double *)readings->data, 1, 0.02);
  g_assert_cmpfloat (value.u, ==, 0.02);
}

static void
test_readings_odd_and_wrong (void)
{
  g_autoptr (GArray) readings = NULL, none = NULL;
  g_autofree char *odd = NULL, *wrong = NULL, *empty = NULL;

  g_assert_cmpint (wm_gauge_readings_parse ("0.61 0.60 6.1", &readings, &odd), ==,
                   WM_FIELD_ODD);
  g_assert_nonnull (odd);
  g_assert_cmpuint (readings->len, ==, 3);
  g_assert_cmpint (wm_gauge_readings_parse ("0.61 zero", &none, &wrong), ==,
                   WM_FIELD_WRONG);
  g_assert_nonnull (wrong);
  g_assert_null (none);
  g_assert_cmpint (wm_gauge_readings_parse ("", &none, &empty), ==, WM_FIELD_OK);
  g_assert_cmpuint (none->len, ==, 0);
}

/* ---- what is left -------------------------------------------------------------------
 */

static WmWornInput
worn (double now, double u, double made)
{
  WmWornInput input;

  wm_worn_input_init (&input);
  input.value_mm = wm_value (now, u);
  input.as_made_mm = wm_value (made, 0);
  return input;
}

static void
test_half_worn_wire (void)
{
  WmWornInput input = worn (0.60, 0.015, 1.20);
  g_autofree char *value = NULL, *reason = NULL, *stays = NULL, *words = NULL;
  WmWorn wear;

  wm_worn_reckon (&input, &wear);
  g_assert_cmpint (wear.result, ==, WM_OK);
  /* A circle cut through its middle keeps half of its area; its stiffness falls to
   * (pi/8 - 8/(9 pi)) r^4 of pi r^4 / 4: 0.1397 (Roark, half circle, from memory). */
  g_assert_cmpfloat_with_epsilon (wear.thickness_left.value, 0.5, 1e-9);
  g_assert_cmpfloat_with_epsilon (wear.pull_left.value, 0.5, 1e-6);
  g_assert_cmpfloat_with_epsilon (wear.stiffness_left.value, 0.1397, 1e-4);

  g_assert_true (wear.has_suggestion);
  g_assert_cmpint (wear.severity, ==, WM_SEVERITY_REPAIR);
  g_assert_cmpint (wear.at_low, ==, WM_SEVERITY_REPAIR);
  g_assert_cmpint (wear.at_high, ==, WM_SEVERITY_REPAIR);
  value = wm_worn_value_text (0.60, 0.015);
  g_assert_cmpstr (value, ==, "0.60 ± 0.03 mm");
  reason = wm_worn_reason (&wear);
  g_assert_cmpstr (reason, ==, "40 to 60 % of the thickness left points to repair");
  stays = wm_worn_stays (&input, &wear);
  g_assert_cmpstr (stays, ==, "At ± 3 % it stays repair.");
  words = wm_worn_words (&input, &wear);
  g_assert_nonnull (strstr (words, "half of the metal is gone"));
  g_assert_null (strstr (words, " N")); /* no yield strength: no newtons */
}

static void
test_ends_disagree (void)
{
  WmWornInput input = worn (0.62, 0.02, 1.00);
  g_autofree char *stays = NULL;
  WmWorn wear;

  /* 0.58 to 0.66 of the thickness: on either side of 0.60. */
  wm_worn_reckon (&input, &wear);
  g_assert_cmpint (wear.severity, ==, WM_SEVERITY_REPAIR);
  g_assert_cmpint (wear.at_high, ==, WM_SEVERITY_WATCH);
  stays = wm_worn_stays (&input, &wear);
  g_assert_cmpstr (stays, ==,
                   "At ± 4 % it may be watch or repair: the worse counts until it is "
                   "measured closer.");
}

static void
test_newtons (void)
{
  WmWornInput input = worn (0.80, 0.01, 0.80);
  g_autofree char *words = NULL;
  WmWorn wear;

  /* Round wire 0.8, inside 3.0, yield 350: pulled open at 15.719 N (15.605 with the
   * axial force), soldered 62.877 N; straight wire pi/4 0.64 350 = 175.93 N (reckoning
   * reference, topic 2, recomputed there with NumPy). */
  input.inside_mm = 3.0;
  input.yield_mpa = wm_exact (350);
  wm_worn_reckon (&input, &wear);
  g_assert_true (wear.has_ring);
  g_assert_cmpfloat_with_epsilon (wear.open_n.value, 15.605, 1e-3);
  g_assert_cmpfloat_with_epsilon (wear.soldered_n.value, 62.877, 1e-3);
  g_assert_cmpfloat_with_epsilon (wear.straight_n.value, 175.93, 0.01);
  words = wm_worn_words (&input, &wear);
  g_assert_nonnull (strstr (words, "holds about 63 N"));
  g_assert_nonnull (strstr (words, "at about 16 N"));
  g_assert_nonnull (strstr (words, "a hard tug is about 90 N"));
}

static void
test_limits_of_the_check (void)
{
  /* 1.5 mm and more sound; 1.2 to 1.5 watch; 0.8 to 1.2 repair: a ring's shank. */
  static const WmLimits shank = { "thickness_mm",
                                  { WM_BOUND_BELOW, 1.5 },
                                  { WM_BOUND_BELOW, 1.2 },
                                  { WM_BOUND_BELOW, 0.8 } };
  static const WmLimits play = {
    "play_mm", { WM_BOUND_ABOVE, 0.1 }, { WM_BOUND_ABOVE, 0.3 }, { WM_BOUND_ABOVE, 0.5 }
  };
  WmWornInput input = worn (1.02, 0.02, NAN);
  g_autofree char *reason = NULL, *of_play = NULL;
  WmWorn wear;

  input.limits = &shank;
  wm_worn_reckon (&input, &wear);
  g_assert_false (wear.has_left);
  g_assert_true (wear.has_suggestion);
  g_assert_cmpint (wear.severity, ==, WM_SEVERITY_REPAIR);
  reason = wm_worn_reason (&wear);
  g_assert_cmpstr (reason, ==, "0.8 to 1.2 mm points to repair");

  /* Of play more is worse: the upper end decides. */
  input = worn (0.47, 0.02, NAN);
  input.limits = &play;
  wm_worn_reckon (&input, &wear);
  g_assert_cmpint (wear.severity, ==, WM_SEVERITY_NO_WEAR);
  g_assert_cmpint (wear.at_low, ==, WM_SEVERITY_REPAIR);
  of_play = wm_worn_reason (&wear);
  g_assert_cmpstr (of_play, ==, "0.5 mm and more points to do not wear");
}

static void
test_sections (void)
{
  static const char *const with_width[] = { "oval", "rectangle", "half-round", "d" };

  for (guint i = 0; i < G_N_ELEMENTS (with_width); i++)
    {
      WmWornInput input = worn (0.9, 0.01, 1.2);
      g_autofree char *refusal = NULL;
      WmWorn wear;

      input.section = with_width[i];
      wm_worn_reckon (&input, &wear);
      g_assert_false (wear.has_left);
      refusal = wm_worn_refusal (&wear);
      g_assert_cmpstr (refusal, ==, "The width was not given.");
      input.width_mm = 2.4;
      wm_worn_reckon (&input, &wear);
      g_assert_true (wear.has_left);
      g_assert_cmpfloat_with_epsilon (wear.thickness_left.value, 0.75, 1e-9);
      /* A rectangle is exact: area as the height, bending its square, stiffness its
       * cube (any mechanics text). */
      if (i == 1)
        {
          g_assert_cmpfloat_with_epsilon (wear.pull_left.value, 0.75, 1e-9);
          g_assert_cmpfloat_with_epsilon (wear.bending_left.value, 0.5625, 1e-9);
          g_assert_cmpfloat_with_epsilon (wear.stiffness_left.value, 0.421875, 1e-9);
        }
    }
}

static void
test_ring_in_ring_is_more_than_flat (void)
{
  WmWornInput flat = worn (0.60, 0.01, 1.00), saddle = flat;
  WmWorn a, b;

  saddle.section = "ring-in-ring";
  wm_worn_reckon (&flat, &a);
  wm_worn_reckon (&saddle, &b);
  /* A bow bites deepest in the middle: more is left beside it than under a flat. */
  g_assert_true (b.has_left);
  g_assert_cmpfloat (b.pull_left.value, >, 0);
  g_assert_cmpfloat (fabs (b.pull_left.value - a.pull_left.value), >, 0.01);
}

static void
test_thicker_than_made (void)
{
  WmWornInput input = worn (1.30, 0.01, 1.00);
  g_autofree char *refusal = NULL;
  WmWorn wear;

  wm_worn_reckon (&input, &wear);
  g_assert_cmpint (wear.result, ==, WM_LARGER_THAN_NEW);
  refusal = wm_worn_refusal (&wear);
  g_assert_nonnull (strstr (refusal, "measure both again"));
}

/* ---- the scale of a photo ------------------------------------------------------------
 */

static void
test_photo_scale (void)
{
  g_autoptr (WmPhoto) photo = wm_photo_new ();
  WmPhotoScale scale;
  WmLength length;

  photo->width = 2000;
  photo->height = 1500;
  g_assert_false (wm_photo_scale_read (photo, &scale));

  /* Case A of the reckoning reference: 10 mm over 800 px, 160 px, u 1 px each:
   * 2.000 mm, u 0.018466 (also by Monte Carlo there). */
  photo->scale_x1 = 100;
  photo->scale_x2 = 900;
  photo->scale_y1 = photo->scale_y2 = 50;
  photo->scale_mm = 10;
  photo->scale_u_mm = 0.02;
  photo->scale_depth_mm = 0;
  g_assert_true (wm_photo_scale_read (photo, &scale));
  g_assert_cmpfloat_with_epsilon (wm_photo_scale_mm_per_px (&scale), 0.0125, 1e-12);
  g_assert_true (wm_photo_scale_is_even (&scale));
  g_assert_cmpint (wm_photo_scale_measure (&scale, WM_CAMERA_MM, (WmPoint) { 0, 0 },
                                           (WmPoint) { 160, 0 }, 1.0, &length, NULL),
                   ==, WM_OK);
  g_assert_cmpfloat_with_epsilon (length.value_mm, 2.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (length.u_mm, 0.018466, 1e-6);
}

static void
test_photo_scale_of_a_plane (void)
{
  g_autoptr (WmPhoto) photo = wm_photo_new ();
  WmPhotoScale scale;
  WmLength length;

  /* Case R1 of the reckoning reference (checked there against OpenCV): the line
   * (1000,700)-(1060,700) is 4.046093996 mm; u 0.095461 with 1 px and 0.05 mm. */
  photo->width = 2000;
  photo->height = 1334;
  g_object_set (photo, "scale-kind", "rectangle", "scale-plane",
                "412,318 1610,275 1702,1124 355,1190", NULL);
  photo->scale_width_mm = 85.5;
  photo->scale_height_mm = 54;
  photo->scale_u_mm = 0.05;
  g_assert_true (wm_photo_scale_read (photo, &scale));
  g_assert_true (scale.is_plane);
  g_assert_false (wm_photo_scale_is_even (&scale));
  g_assert_cmpint (wm_photo_scale_measure (&scale, WM_CAMERA_MM, (WmPoint) { 1000, 700 },
                                           (WmPoint) { 1060, 700 }, 1.0, &length, NULL),
                   ==, WM_OK);
  g_assert_cmpfloat_with_epsilon (length.value_mm, 4.046093996, 1e-6);
  g_assert_cmpfloat_with_epsilon (length.u_mm, 0.095461, 2e-4);

  g_object_set (photo, "scale-plane", "412,318 1610,275 1702,1124", NULL);
  g_assert_false (wm_photo_scale_read (photo, &scale));
}

static void
test_depth_choices (void)
{
  guint n;
  const double *depths = wm_scale_depths (&n);

  for (guint i = 0; i < n; i++)
    {
      g_assert_cmpuint (wm_scale_depth_find (wm_scale_depth_u (i)), ==, i);
      g_assert_cmpfloat_with_epsilon (wm_scale_depth_u (i) * sqrt (3), depths[i], 1e-12);
    }
  g_assert_cmpfloat (depths[wm_scale_depth_find (NAN)], ==, 2);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/wear-reading/lengths", test_lengths);
  g_test_add_func ("/wear-reading/lengths/refused", test_lengths_refused);
  g_test_add_func ("/wear-reading/readings", test_readings);
  g_test_add_func ("/wear-reading/readings/odd-and-wrong", test_readings_odd_and_wrong);
  g_test_add_func ("/wear-reading/left/half-worn", test_half_worn_wire);
  g_test_add_func ("/wear-reading/left/ends-disagree", test_ends_disagree);
  g_test_add_func ("/wear-reading/left/newtons", test_newtons);
  g_test_add_func ("/wear-reading/left/limits", test_limits_of_the_check);
  g_test_add_func ("/wear-reading/left/sections", test_sections);
  g_test_add_func ("/wear-reading/left/ring-in-ring",
                   test_ring_in_ring_is_more_than_flat);
  g_test_add_func ("/wear-reading/left/thicker", test_thicker_than_made);
  g_test_add_func ("/wear-reading/scale/points", test_photo_scale);
  g_test_add_func ("/wear-reading/scale/plane", test_photo_scale_of_a_plane);
  g_test_add_func ("/wear-reading/scale/depths", test_depth_choices);
  return g_test_run ();
}

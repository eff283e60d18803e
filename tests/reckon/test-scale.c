/* test-scale.c: lengths from one known length
 *
 * Expected values: worked budgets A to D of the linear law, computed with NumPy, with a
 * Monte Carlo run of 2,000,000 draws beside them; 1 - cos for the tilt.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/scale.h"

#include "near.h"

typedef struct
{
  double ruler_mm, u_ruler_mm, ruler_px, u_point_px, span_px;
  double half_mm, camera_mm, tilt_deg;
  double raw_mm, value_mm, u_mm, monte_carlo_u;
} Case;

static const Case cases[] = {
  { 10, 0.02, 800, 1.0, 160, 0, 0, 0, 2.0, 2.0, 0.018466, 0 },
  { 10, 0.02, 800, 1.0, 160, 1, 200, 5, 2.0, 2.002543, 0.019481, 0.019492 },
  { 25, 0.05, 2000, 0.7, 96, 0.5, 250, 10, 1.2, 1.206139, 0.013839, 0.013889 },
  { 10, 0.02, 800, 1.0, 24, 1, 200, 5, 0.3, 0.300381, 0.017720, 0.017719 },
};

static WmRuler
ruler_of (const Case *c)
{
  WmRuler ruler = { { 100, 100 },
                    { 100 + c->ruler_px * 0.6, 100 + c->ruler_px * 0.8 },
                    { c->ruler_mm, c->u_ruler_mm },
                    c->u_point_px };

  return ruler;
}

static void
test_worked_budgets (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const Case *c = &cases[i];
      WmRuler ruler = ruler_of (c);
      WmLie lie = { 0.0, c->half_mm, c->camera_mm, c->tilt_deg };
      WmPoint a = { 500, 300 };
      WmPoint b = { 500 + c->span_px, 300 };
      WmLength length;

      g_assert_cmpint (
          wm_scale_measure (&ruler, &lie, a, b, c->u_point_px, &length, NULL), ==, WM_OK);
      wm_assert_relative (length.raw_mm, c->raw_mm, 1e-12);
      wm_assert_near (length.value_mm, c->value_mm, 0.6e-6);
      wm_assert_near (length.u_mm, c->u_mm, 1.1e-6);
      wm_assert_near (length.expanded_mm, 2.0 * c->u_mm, 2.2e-6);
      if (c->monte_carlo_u > 0.0)
        wm_assert_relative (length.u_mm, c->monte_carlo_u, 0.005);
    }
}

static void
test_budget_b (void)
{
  WmRuler ruler = ruler_of (&cases[1]);
  WmLie lie = { 0.0, 1.0, 200.0, 5.0 };
  WmLength length;

  g_assert_cmpint (wm_scale_measure (&ruler, &lie, (WmPoint) { 0, 0 },
                                     (WmPoint) { 160, 0 }, 1.0, &length, NULL),
                   ==, WM_OK);
  wm_assert_near (length.from_reference_mm, 0.004000, 0.6e-6);
  wm_assert_near (length.from_reference_points_mm, 0.003536, 0.6e-6);
  wm_assert_near (length.from_ends_mm, 0.017678, 0.6e-6);
  wm_assert_near (length.from_depth_mm, 0.005774, 0.6e-6);
  wm_assert_near (length.from_tilt_mm, 0.002277, 0.6e-6);
}

/* A small tilt goes over into the closed form without a step. */
static void
test_tilt_is_smooth (void)
{
  WmRuler ruler = ruler_of (&cases[0]);
  double before = 0.0;

  for (double tilt = 1.10; tilt < 1.20; tilt += 0.001)
    {
      WmLie lie = { 0.0, 0.0, 0.0, tilt };
      WmLength length;

      g_assert_cmpint (wm_scale_measure (&ruler, &lie, (WmPoint) { 0, 0 },
                                         (WmPoint) { 160, 0 }, 1.0, &length, NULL),
                       ==, WM_OK);
      g_assert_cmpfloat (length.from_tilt_mm, >, before);
      wm_assert_relative (length.from_tilt_mm,
                          2.0 * pow (tilt * G_PI / 180.0, 2) / (3.0 * sqrt (5.0)), 1e-3);
      before = length.from_tilt_mm;
    }
}

static void
test_known_depth (void)
{
  WmRuler ruler = ruler_of (&cases[0]);
  WmLie lie = { 4.0, 0.0, 200.0, 0.0 };
  WmLength length;

  g_assert_cmpint (wm_scale_measure (&ruler, &lie, (WmPoint) { 0, 0 },
                                     (WmPoint) { 160, 0 }, 1.0, &length, NULL),
                   ==, WM_OK);
  /* 4 mm of 200 mm nearer: 2 % too long. */
  wm_assert_relative (length.value_mm, 2.0 * 0.98, 1e-12);
}

/* Twice the photo's resolution, same u in px: half the share of the ends. */
static void
test_properties (void)
{
  for (double px = 30; px < 1000; px *= 2)
    {
      WmRuler small = { { 0, 0 }, { 500, 0 }, { 10, 0 }, 0.5 };
      WmRuler large = { { 0, 0 }, { 1000, 0 }, { 10, 0 }, 0.5 };
      WmLength one, two;

      g_assert_cmpint (wm_scale_measure (&small, NULL, (WmPoint) { 0, 0 },
                                         (WmPoint) { 0, px }, 0.5, &one, NULL),
                       ==, WM_OK);
      g_assert_cmpint (wm_scale_measure (&large, NULL, (WmPoint) { 0, 0 },
                                         (WmPoint) { 0, 2 * px }, 0.5, &two, NULL),
                       ==, WM_OK);
      wm_assert_relative (two.value_mm, one.value_mm, 1e-12);
      wm_assert_relative (two.u_mm, one.u_mm / 2.0, 1e-12);
    }
}

static void
test_refusals (void)
{
  const struct
  {
    WmRuler ruler;
    WmLie lie;
    WmPoint b;
    double u_end;
    WmResult result;
    const char *which;
  } rows[] = {
    { { { 0, 0 }, { 49, 0 }, { 10, 0 }, 1 },
      { 0 },
      { 100, 0 },
      1,
      WM_TOO_SHORT,
      "scale" },
    { { { 0, 0 }, { 800, 0 }, { 0, 0 }, 1 },
      { 0 },
      { 100, 0 },
      1,
      WM_NOT_POSITIVE,
      "scale_mm" },
    { { { 0, 0 }, { 800, 0 }, { -10, 0 }, 1 },
      { 0 },
      { 100, 0 },
      1,
      WM_NOT_POSITIVE,
      "scale_mm" },
    { { { 0, 0 }, { 800, 0 }, { NAN, 0 }, 1 },
      { 0 },
      { 100, 0 },
      1,
      WM_NOT_A_NUMBER,
      "scale_mm" },
    { { { NAN, 0 }, { 800, 0 }, { 10, 0 }, 1 },
      { 0 },
      { 100, 0 },
      1,
      WM_NOT_A_NUMBER,
      "scale" },
    { { { 0, 0 }, { 800, 0 }, { 1e9, 0 }, 1 },
      { 0 },
      { 100, 0 },
      1,
      WM_OUT_OF_RANGE,
      "scale_mm" },
    { { { 0, 0 }, { 800, 0 }, { 10, 0 }, -1 },
      { 0 },
      { 100, 0 },
      1,
      WM_NOT_POSITIVE,
      "u_point_px" },
    { { { 0, 0 }, { 800, 0 }, { 10, 0 }, 1 }, { 0 }, { 0, 0 }, 0, WM_TOO_SHORT, "span" },
    { { { 0, 0 }, { 800, 0 }, { 10, 0 }, 1 },
      { 0 },
      { 9.9, 0 },
      1,
      WM_TOO_SHORT,
      "span" },
    { { { 0, 0 }, { 800, 0 }, { 10, 0 }, 1 },
      { 0 },
      { INFINITY, 0 },
      1,
      WM_NOT_A_NUMBER,
      "span" },
    { { { 0, 0 }, { 800, 0 }, { 10, 0 }, 1 },
      { 0, 1, 0, 0 },
      { 100, 0 },
      1,
      WM_OUT_OF_RANGE,
      "camera_mm" },
    { { { 0, 0 }, { 800, 0 }, { 10, 0 }, 1 },
      { 0, 0, 0, 60 },
      { 100, 0 },
      1,
      WM_OUT_OF_RANGE,
      "tilt_max_deg" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      WmLength length = { .value_mm = -1.0 };
      const char *which = NULL;

      g_assert_cmpint (wm_scale_measure (&rows[i].ruler, &rows[i].lie, (WmPoint) { 0, 0 },
                                         rows[i].b, rows[i].u_end, &length, &which),
                       ==, rows[i].result);
      g_assert_cmpstr (which, ==, rows[i].which);
      g_assert_cmpfloat (length.value_mm, ==, -1.0);
    }
}

static void
test_warnings (void)
{
  WmRuler rough = { { 0, 0 }, { 800, 0 }, { 10, 0.6 }, 1 };
  WmLie lie = { 0, 0, 0, 25 };
  WmLength length;

  g_assert_cmpint (wm_scale_measure (&rough, &lie, (WmPoint) { 0, 0 },
                                     (WmPoint) { 90, 0 }, 1.0, &length, NULL),
                   ==, WM_OK);
  g_assert_cmpuint (length.warnings, ==,
                    WM_LENGTH_REFERENCE_ROUGH | WM_LENGTH_TILT_LARGE);
}

static void
test_text (void)
{
  const struct
  {
    double value, expanded;
    const char *text;
  } rows[] = {
    { 0.6213, 0.03, "0.62 ± 0.03 mm" },       { 0.6213, 0.0281, "0.62 ± 0.03 mm" },
    { 2.002543, 0.038962, "2.00 ± 0.04 mm" }, { 1.2061, 0.0151, "1.206 ± 0.016 mm" },
    { 0.3004, 0.0195, "0.30 ± 0.02 mm" },     { 12.34, 2.1, "12 ± 3 mm" },
    { 12.34, 1.21, "12.3 ± 1.3 mm" },         { 0.0999, 0.0999, "0.10 ± 0.10 mm" },
    { 123.4, 14.2, "123 ± 15 mm" },           { 1.5, 0.0, "1.500 mm" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      char text[WM_LENGTH_TEXT_MAX];

      wm_length_text (rows[i].value, rows[i].expanded, "mm", text);
      g_assert_cmpstr (text, ==, rows[i].text);
    }
}

/* The printed uncertainty never claims more than was reckoned, nor hides over a third. */
static void
test_text_is_never_too_sure (void)
{
  for (double u = 1e-4; u < 50.0; u *= 1.037)
    {
      double rounded = 0.0;
      int decimals = wm_length_decimals (u, &rounded);

      g_assert_cmpfloat (rounded, >=, u * (1.0 - 1e-6));
      g_assert_cmpfloat (rounded, <=, u * 1.5);
      g_assert_cmpint (decimals, <=, 9);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reckon/scale/worked-budgets", test_worked_budgets);
  g_test_add_func ("/reckon/scale/budget-b", test_budget_b);
  g_test_add_func ("/reckon/scale/tilt-is-smooth", test_tilt_is_smooth);
  g_test_add_func ("/reckon/scale/known-depth", test_known_depth);
  g_test_add_func ("/reckon/scale/properties", test_properties);
  g_test_add_func ("/reckon/scale/refusals", test_refusals);
  g_test_add_func ("/reckon/scale/warnings", test_warnings);
  g_test_add_func ("/reckon/scale/text", test_text);
  g_test_add_func ("/reckon/scale/text-is-never-too-sure", test_text_is_never_too_sure);
  return g_test_run ();
}

/* test-section.c: cross-sections
 *
 * Expected values: closed forms against polygon integration with over 40,000 vertices
 * (NumPy); the saddle's areas from the two-circle lens; the remaining area of a flatted
 * wire also from the published one-line formula.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/section.h"

#include "near.h"

#define EXACT(v)                                                                         \
  {                                                                                      \
    v, 0.0                                                                               \
  }

typedef struct
{
  WmSectionShape shape;
  double width, height, extra;
  double area, second, modulus;
  double relative;
} Case;

static const Case cases[] = {
  { WM_SECTION_ROUND, 0, 1.2, 0, 1.1309733553, 0.1017876020, 0.1696460033, 1e-9 },
  { WM_SECTION_ROUND, 0, 0.8, 0, 0.5026548246, 0.0201061930, 0.0502654825, 1e-9 },
  { WM_SECTION_RECTANGLE, 3, 1.5, 0, 4.5, 0.84375, 1.125, 1e-12 },
  { WM_SECTION_HALF_ROUND, 2.5, 1.25, 0, 2.4543692606, 0.2679613297, 0.3724356724, 1e-9 },
  { WM_SECTION_TUBE, 0, 2.0, 1.2, 2.0106192983, 0.6836105614, 0.6836105614, 1e-9 },
  { WM_SECTION_TUBE, 0, 1.8, 1.2, 1.4137166941, 0.4135121330, 0.4594579256, 1e-9 },
  { WM_SECTION_FLATTED, 1.2, 0.84, 0, 0.8456109, 0.04161564, 0.08875211, 3e-7 },
  { WM_SECTION_FLATTED, 1.2, 0.60, 0, 0.5654867, 0.01422450, 0.04118841, 3e-7 },
  { WM_SECTION_FLATTED, 1.2, 0.36, 0, 0.2853624, 0.002568595, 0.01214433, 3e-7 },
  { WM_SECTION_D, 3.0, 1.7, 1.0, 4.4592061888, 0.9040441282, 0.9584971500, 1e-9 },
  { WM_SECTION_D, 3.0, 1.2, 0.7, 3.1218819300, 0.3126596852, 0.4670930601, 1e-9 },
  { WM_SECTION_D, 2.8, 0.95, 0.6, 2.3414285607, 0.1481550595, 0.2819325406, 1e-9 },
};

static WmSection
section_of (const Case *c)
{
  WmSection s = { c->shape, EXACT (c->width), EXACT (c->height), EXACT (c->extra) };

  return s;
}

static void
test_properties (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      WmSection s = section_of (&cases[i]);
      WmSectionProperties p;

      g_assert_cmpint (wm_section_properties (&s, &p, NULL), ==, WM_OK);
      wm_assert_relative (p.area_mm2.value, cases[i].area, cases[i].relative);
      wm_assert_relative (p.second_moment_mm4.value, cases[i].second, cases[i].relative);
      wm_assert_relative (p.modulus_mm3.value, cases[i].modulus, cases[i].relative);
      g_assert_cmpfloat (p.area_mm2.u, ==, 0.0);
    }
}

/* One wire of 1.2 worn under mates of several bows; 1000 stands for straight. */
static void
test_saddle (void)
{
  static const double bows[] = { 1000, 3.0, 1.5, 0.9, 0.62 };
  static const struct
  {
    double kept;
    double area[5];
  } rows[] = {
    { 1.10, { 0.96020, 0.95609, 0.95051, 0.93851, 0.90284 } },
    { 1.00, { 0.89045, 0.88067, 0.86827, 0.84487, 0.79687 } },
    { 0.84, { 0.74768, 0.73028, 0.71033, 0.67823, 0.63011 } },
  };
  WmSection made = { WM_SECTION_ROUND, EXACT (0), EXACT (1.2), EXACT (0) };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    for (gsize k = 0; k < G_N_ELEMENTS (bows); k++)
      {
        WmSection worn = { WM_SECTION_SADDLE, EXACT (0), EXACT (rows[i].kept),
                           EXACT (bows[k]) };
        WmSectionLeft left;

        g_assert_cmpint (wm_section_left (&made, &worn, wm_exact (0), &left, NULL), ==,
                         WM_OK);
        wm_assert_near (left.area_left.value, rows[i].area[k], k == 0 ? 1e-4 : 0.6e-5);
        wm_assert_relative (left.height_left.value, rows[i].kept / 1.2, 1e-12);
      }
}

/* A very wide bow is a flat: all three measures go over into the flatted wire. */
static void
test_saddle_becomes_flat (void)
{
  for (double kept = 0.2; kept < 1.2; kept += 0.1)
    {
      WmSection flat = { WM_SECTION_FLATTED, EXACT (1.2), EXACT (kept), EXACT (0) };
      WmSection saddle = { WM_SECTION_SADDLE, EXACT (1.2), EXACT (kept), EXACT (1000) };
      WmSectionProperties a, b;

      g_assert_cmpint (wm_section_properties (&flat, &a, NULL), ==, WM_OK);
      g_assert_cmpint (wm_section_properties (&saddle, &b, NULL), ==, WM_OK);
      wm_assert_relative (b.area_mm2.value, a.area_mm2.value, 2e-3);
      wm_assert_relative (b.second_moment_mm4.value, a.second_moment_mm4.value, 6e-3);
      wm_assert_relative (b.modulus_mm3.value, a.modulus_mm3.value, 6e-3);
    }
}

/* Lens integrated in thin strips: an independent way to I and Z. */
static void
test_saddle_by_strips (void)
{
  const double r = 0.6, bow = 0.9, kept = 0.84;
  const double gap = bow - r + (2 * r - kept);
  const int n = 400000;
  double area = 0, first = 0, second = 0, centroid, inertia;
  WmSection saddle = { WM_SECTION_SADDLE, EXACT (1.2), EXACT (kept), EXACT (bow) };
  WmSectionProperties p;

  for (int i = 0; i < n; i++)
    {
      double y = r - kept + (i + 0.5) * kept / n;
      double wire = sqrt (r * r - y * y);
      double rest = bow * bow - (y - gap) * (y - gap);
      double half = fmin (wire, sqrt (fmax (0.0, rest)));

      y -= r - kept;
      area += 2 * half * kept / n;
      first += 2 * half * y * kept / n;
      second += 2 * half * y * y * kept / n;
    }

  centroid = first / area;
  inertia = second - area * centroid * centroid;
  g_assert_cmpint (wm_section_properties (&saddle, &p, NULL), ==, WM_OK);
  wm_assert_relative (p.area_mm2.value, area, 1e-6);
  wm_assert_relative (p.second_moment_mm4.value, inertia, 1e-6);
  wm_assert_relative (p.modulus_mm3.value, inertia / fmax (kept - centroid, centroid),
                      1e-6);
}

static void
test_flatted_shares (void)
{
  const struct
  {
    double kept, area, stiff, bending;
  } rows[] = { { 0.7, 0.747684, 0.408848, 0.523161 },
               { 0.5, 0.5, 0.139747, 0.242790 },
               { 0.3, 0.252316, 0.025235, 0.071586 } };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      double h = 1.0 - rows[i].kept;
      double x = 1.0 - 2.0 * h;
      WmSection made = { WM_SECTION_ROUND, EXACT (0), EXACT (1), EXACT (0) };
      WmSection worn = { WM_SECTION_FLATTED, EXACT (0), EXACT (rows[i].kept), EXACT (0) };
      WmSectionLeft left;

      g_assert_cmpint (wm_section_left (&made, &worn, wm_exact (0), &left, NULL), ==,
                       WM_OK);
      wm_assert_near (left.area_left.value, rows[i].area, 0.6e-6);
      wm_assert_near (left.stiff_left.value, rows[i].stiff, 0.6e-6);
      wm_assert_near (left.bending_left.value, rows[i].bending, 0.6e-6);
      wm_assert_relative (left.area_left.value,
                          1.0 - (acos (x) - x * sqrt (1 - x * x)) / G_PI, 1e-12);
    }
}

static void
test_d_shank (void)
{
  const struct
  {
    double width, height, side, area, stiff, bending;
  } rows[] = { { 3.0, 1.2, 0.7, 0.700098, 0.345846, 0.487318 },
               { 2.8, 0.95, 0.6, 0.525077, 0.163880, 0.294140 } };
  WmSection made = { WM_SECTION_D, EXACT (3.0), EXACT (1.7), EXACT (1.0) };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      WmSection worn = { WM_SECTION_D, EXACT (rows[i].width), EXACT (rows[i].height),
                         EXACT (rows[i].side) };
      WmSectionLeft left;

      g_assert_cmpint (wm_section_left (&made, &worn, wm_exact (0), &left, NULL), ==,
                       WM_OK);
      wm_assert_near (left.area_left.value, rows[i].area, 0.6e-6);
      wm_assert_near (left.stiff_left.value, rows[i].stiff, 0.6e-6);
      wm_assert_near (left.bending_left.value, rows[i].bending, 0.6e-6);
      g_assert_true (isnan (left.pull_left_n.value));
    }
}

/* Uniform thinning by q: round q^2, q^3, q^4; rectangle of the same width q, q^2, q^3. */
static void
test_powers (void)
{
  for (double q = 0.1; q <= 1.0; q += 0.1)
    {
      WmSection round = { WM_SECTION_ROUND, EXACT (0), EXACT (1.5), EXACT (0) };
      WmSection thin = { WM_SECTION_ROUND, EXACT (0), EXACT (1.5 * q), EXACT (0) };
      WmSection bar = { WM_SECTION_RECTANGLE, EXACT (2), EXACT (1.5), EXACT (0) };
      WmSection low = { WM_SECTION_RECTANGLE, EXACT (2), EXACT (1.5 * q), EXACT (0) };
      WmSectionLeft left;

      g_assert_cmpint (wm_section_left (&round, &thin, wm_exact (0), &left, NULL), ==, 0);
      wm_assert_relative (left.area_left.value, pow (q, 2), 1e-12);
      wm_assert_relative (left.bending_left.value, pow (q, 3), 1e-12);
      wm_assert_relative (left.stiff_left.value, pow (q, 4), 1e-12);
      g_assert_cmpint (wm_section_left (&bar, &low, wm_exact (0), &left, NULL), ==, 0);
      wm_assert_relative (left.area_left.value, q, 1e-12);
      wm_assert_relative (left.bending_left.value, pow (q, 2), 1e-12);
      wm_assert_relative (left.stiff_left.value, pow (q, 3), 1e-12);
    }
}

/* Round wire: u(A share) = 2 q^2 times the relative uncertainties in quadrature. */
static void
test_uncertainty (void)
{
  WmSection made = { WM_SECTION_ROUND, EXACT (0), { 1.2, 0.02 }, EXACT (0) };
  WmSection worn = { WM_SECTION_ROUND, EXACT (0), { 0.9, 0.01 }, EXACT (0) };
  WmSectionLeft left;

  g_assert_cmpint (wm_section_left (&made, &worn, wm_value (350, 35), &left, NULL), ==,
                   WM_OK);
  wm_assert_relative (left.area_left.u, 2.0 * 0.5625 * hypot (0.02 / 1.2, 0.01 / 0.9),
                      1e-6);
  wm_assert_relative (left.pull_left_n.value, G_PI * 0.81 / 4.0 * 350.0, 1e-12);
  wm_assert_relative (left.pull_left_n.u / left.pull_left_n.value,
                      hypot (0.1, 2.0 * 0.01 / 0.9), 1e-6);
}

static void
test_refusals (void)
{
  const struct
  {
    WmSection made, worn;
    double yield;
    WmResult result;
    const char *which;
  } rows[] = {
    { { WM_SECTION_ROUND, EXACT (0), EXACT (1.2), EXACT (0) },
      { WM_SECTION_ROUND, EXACT (0), EXACT (1.3), EXACT (0) },
      0,
      WM_LARGER_THAN_NEW,
      "height" },
    { { WM_SECTION_ROUND, EXACT (0), EXACT (1.2), EXACT (0) },
      { WM_SECTION_ROUND, EXACT (0), EXACT (0), EXACT (0) },
      0,
      WM_NOT_POSITIVE,
      "height" },
    { { WM_SECTION_ROUND, EXACT (0), EXACT (-1.2), EXACT (0) },
      { WM_SECTION_ROUND, EXACT (0), EXACT (1), EXACT (0) },
      0,
      WM_NOT_POSITIVE,
      "made_height" },
    { { WM_SECTION_ROUND, EXACT (0), EXACT (1.2), EXACT (0) },
      { WM_SECTION_ROUND, EXACT (0), EXACT (NAN), EXACT (0) },
      0,
      WM_NOT_A_NUMBER,
      "height" },
    { { WM_SECTION_D, EXACT (1), EXACT (1.7), EXACT (1) },
      { WM_SECTION_D, EXACT (1), EXACT (1.2), EXACT (1) },
      0,
      WM_OUT_OF_RANGE,
      "made_height" },
    { { WM_SECTION_D, EXACT (3), EXACT (1.7), EXACT (1.8) },
      { WM_SECTION_D, EXACT (3), EXACT (1.2), EXACT (1) },
      0,
      WM_CONTRADICTION,
      "made_extra" },
    { { WM_SECTION_TUBE, EXACT (0), EXACT (2), EXACT (1.2) },
      { WM_SECTION_TUBE, EXACT (0), EXACT (1.1), EXACT (1.2) },
      0,
      WM_CONTRADICTION,
      "extra" },
    { { WM_SECTION_ROUND, EXACT (0), EXACT (1.2), EXACT (0) },
      { WM_SECTION_SADDLE, EXACT (0), EXACT (1), EXACT (0.3) },
      0,
      WM_OUT_OF_RANGE,
      "extra" },
    { { WM_SECTION_ROUND, EXACT (0), EXACT (1.2), EXACT (0) },
      { WM_SECTION_RECTANGLE, EXACT (1), EXACT (1), EXACT (0) },
      0,
      WM_CONTRADICTION,
      "shape" },
    { { WM_SECTION_ROUND, EXACT (0), EXACT (1.2), EXACT (0) },
      { WM_SECTION_ROUND, EXACT (0), EXACT (1), EXACT (0) },
      -5,
      WM_NOT_POSITIVE,
      "yield_mpa" },
    { { WM_SECTION_ROUND, EXACT (0), EXACT (500), EXACT (0) },
      { WM_SECTION_ROUND, EXACT (0), EXACT (1), EXACT (0) },
      0,
      WM_OUT_OF_RANGE,
      "made_height" },
    { { (WmSectionShape)77, EXACT (0), EXACT (1), EXACT (0) },
      { WM_SECTION_ROUND, EXACT (0), EXACT (1), EXACT (0) },
      0,
      WM_UNKNOWN_INPUT,
      "shape" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const char *which = NULL;
      WmSectionLeft left;

      g_assert_cmpint (wm_section_left (&rows[i].made, &rows[i].worn,
                                        wm_exact (rows[i].yield), &left, &which),
                       ==, rows[i].result);
      g_assert_cmpstr (which, ==, rows[i].which);
    }
}

/* A reading a hair over new, within what both readings can tell, is not refused. */
static void
test_within_uncertainty_is_new (void)
{
  WmSection made = { WM_SECTION_ROUND, EXACT (0), { 1.20, 0.02 }, EXACT (0) };
  WmSection worn = { WM_SECTION_FLATTED, EXACT (0), { 1.22, 0.02 }, EXACT (0) };
  WmSectionLeft left;

  g_assert_cmpint (wm_section_left (&made, &worn, wm_exact (0), &left, NULL), ==, WM_OK);
  wm_assert_relative (left.area_left.value, 1.0, 1e-12);
}

static void
test_words (void)
{
  g_assert_cmpstr (wm_section_words (0.5), ==, "about half of the metal is gone");
  g_assert_cmpstr (wm_section_words (1.0), ==, "hardly any metal is gone");
  g_assert_cmpstr (wm_section_words (0.0), ==, "almost all of the metal is gone");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reckon/section/properties", test_properties);
  g_test_add_func ("/reckon/section/saddle", test_saddle);
  g_test_add_func ("/reckon/section/saddle-becomes-flat", test_saddle_becomes_flat);
  g_test_add_func ("/reckon/section/saddle-by-strips", test_saddle_by_strips);
  g_test_add_func ("/reckon/section/flatted-shares", test_flatted_shares);
  g_test_add_func ("/reckon/section/d-shank", test_d_shank);
  g_test_add_func ("/reckon/section/powers", test_powers);
  g_test_add_func ("/reckon/section/uncertainty", test_uncertainty);
  g_test_add_func ("/reckon/section/refusals", test_refusals);
  g_test_add_func ("/reckon/section/within-uncertainty-is-new",
                   test_within_uncertainty_is_new);
  g_test_add_func ("/reckon/section/words", test_words);
  return g_test_run ();
}

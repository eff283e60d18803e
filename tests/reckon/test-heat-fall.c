/* test-heat-fall.c: temperature along a bar
 *
 * Expected values: worked bars of 1.5 mm wire, 30 mm long, ambient 25 C (NumPy); a
 * boundary-value solver gave the row k 60, h 50 to every digit; here the same equation
 * is solved once more by finite differences.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/heat-fall.h"

#include "near.h"

/* Cooling h from hot or cool estimate alone: band of one conductivity. */
static WmHeatBand
band (double source, double conduct, double at)
{
  WmHeatFall fall = { source, 25, 1.5, 0, 30, at, conduct, conduct };
  WmHeatBand b;

  g_assert_cmpint (wm_heat_fall (&fall, &b, NULL), ==, WM_OK);
  return b;
}

static void
test_worked (void)
{
  const double at[] = { 5, 10, 20, 30 };
  const struct
  {
    double source, conduct;
    double hot[4];  /* h 20, insulated end */
    double cool[4]; /* h 150, endless */
  } rows[] = {
    { 750, 429, { 738.1, 728.4, 715.5, 711.2 }, { 647.3, 559.2, 418.7, 315.1 } },
    { 800, 60, { 725.9, 667.4, 592.3, 567.9 }, { 540.2, 367.5, 176.4, 91.9 } },
    { 1400, 72, { 1286.4, 1196.2, 1079.7, 1041.8 }, { 972.2, 677.5, 334.7, 172.0 } },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    for (int k = 0; k < 4; k++)
      {
        WmHeatBand b = band (rows[i].source, rows[i].conduct, at[k]);

        wm_assert_near (b.hot_c, rows[i].hot[k], 0.06);
        wm_assert_near (b.cool_c, rows[i].cool[k], 0.06);
      }
}

/* T'' = m^2 T with the far end insulated, by finite differences (Thomas). */
static void
test_by_finite_differences (void)
{
  const int n = 3000;
  const double m = sqrt (4 * 50 / (60 * 0.0015));
  const double h = 0.030 / n;
  double c[3001], d[3001], t[3001];

  c[0] = 0;
  d[0] = 1;
  for (int i = 1; i <= n; i++)
    {
      double a = i == n ? -2.0 : -1.0;
      double b = 2.0 + m * m * h * h;
      double up = i == n ? 0.0 : -1.0;
      double w = b - a * c[i - 1];

      c[i] = up / w;
      d[i] = (0.0 - a * d[i - 1]) / w;
    }

  t[n] = d[n];
  for (int i = n - 1; i >= 0; i--)
    t[i] = d[i] - c[i] * t[i + 1];

  for (int mm = 0; mm <= 30; mm += 5)
    wm_assert_near (wm_heat_bar (m, 0.030, mm / 1000.0), t[mm * 100], 1e-6);
  /* The printed row: 800 C at the flame, 25 ambient. */
  wm_assert_near (25 + 775 * wm_heat_bar (m, 0.030, 0.010), 551.0, 0.06);
  wm_assert_near (25 + 775 * wm_heat_bar (m, INFINITY, 0.010), 508.7, 0.06);
}

static void
test_properties (void)
{
  double before = 1e9;

  for (double at = 0; at <= 30; at += 1)
    {
      WmHeatBand b = band (800, 60, at);

      g_assert_cmpfloat (b.hot_c, <=, before);
      g_assert_cmpfloat (b.cool_c, <=, b.hot_c);
      g_assert_cmpfloat (b.cool_c, >=, 25);
      before = b.hot_c;
    }

  wm_assert_near (band (800, 60, 0).hot_c, 800, 1e-9);
  /* A wider band of conduction only widens the answer. */
  {
    WmHeatFall fall = { 800, 25, 1.5, 0, 30, 10, 40, 80 };
    WmHeatBand b;

    g_assert_cmpint (wm_heat_fall (&fall, &b, NULL), ==, WM_OK);
    g_assert_cmpfloat (b.hot_c, >, band (800, 60, 10).hot_c);
    g_assert_cmpfloat (b.cool_c, <, band (800, 60, 10).cool_c);
  }
}

/* A strip t thick, heated faces free, cools like a wire of twice that. */
static void
test_strip (void)
{
  WmHeatFall strip = { 800, 25, 0, 0.75, 30, 10, 60, 60 };
  WmHeatBand b;

  g_assert_cmpint (wm_heat_fall (&strip, &b, NULL), ==, WM_OK);
  wm_assert_relative (b.hot_c, band (800, 60, 10).hot_c, 1e-12);
}

static void
test_refusals (void)
{
  const struct
  {
    WmHeatFall fall;
    WmResult result;
    const char *which;
  } rows[] = {
    { { 800, 25, 1.5, 0, 30, 40, 60, 60 }, WM_CONTRADICTION, "at" },
    { { 800, 25, 0, 0, 30, 10, 60, 60 }, WM_NOT_POSITIVE, "wire" },
    { { 20, 25, 1.5, 0, 30, 10, 60, 60 }, WM_CONTRADICTION, "ambient" },
    { { 800, 25, 1.5, 0, 30, 10, 60, 50 }, WM_CONTRADICTION, "conduct_high" },
    { { 800, 25, 1.5, 0, -1, 10, 60, 60 }, WM_NOT_POSITIVE, "length" },
    { { NAN, 25, 1.5, 0, 30, 10, 60, 60 }, WM_NOT_A_NUMBER, "source" },
    { { 800, 25, 1.5, 0, 30, 10, 0, 60 }, WM_NOT_POSITIVE, "conduct_low" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const char *which = NULL;
      WmHeatBand b;

      g_assert_cmpint (wm_heat_fall (&rows[i].fall, &b, &which), ==, rows[i].result);
      g_assert_cmpstr (which, ==, rows[i].which);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reckon/heat-fall/worked", test_worked);
  g_test_add_func ("/reckon/heat-fall/finite-differences", test_by_finite_differences);
  g_test_add_func ("/reckon/heat-fall/properties", test_properties);
  g_test_add_func ("/reckon/heat-fall/strip", test_strip);
  g_test_add_func ("/reckon/heat-fall/refusals", test_refusals);
  return g_test_run ();
}

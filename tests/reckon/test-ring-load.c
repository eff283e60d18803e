/* test-ring-load.c: soldered and open rings
 *
 * Expected values: three worked rings (SciPy); the ring constants again here by
 * numerical integration of the bending moment (Castigliano).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/ring-load.h"

#include "near.h"

static void
test_worked (void)
{
  const struct
  {
    double d, inside, yield, e;
    double r, k, plastic, open_yield, open_plain, open_axial, seam, closed_yield, closed,
        straight;
  } rows[] = {
    { 0.8, 3.0, 350, 90000, 1.90, 1.18581, 29.8667, 7.477, 15.719, 15.605, 7.860, 24.531,
      62.877, 351.858 },
    { 1.0, 4.0, 250, 80000, 2.50, 1.17487, 41.6667, 8.015, 16.667, 16.557, 8.333, 26.252,
      66.667, 392.699 },
    { 0.6, 2.5, 200, 170000, 1.55, 1.16828, 7.2000, 2.249, 4.645, 4.617, 2.323, 7.358,
      18.581, 113.097 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      WmRingLoad load;

      g_assert_cmpint (wm_ring_load (wm_exact (rows[i].inside), wm_exact (rows[i].d),
                                     wm_exact (rows[i].yield), wm_exact (rows[i].e),
                                     &load, NULL),
                       ==, WM_OK);
      wm_assert_near (load.mean_radius_mm.value, rows[i].r, 1e-12);
      wm_assert_near (load.curved_factor.value, rows[i].k, 0.6e-5);
      wm_assert_near (load.plastic_moment_nmm.value, rows[i].plastic, 0.6e-4);
      wm_assert_near (load.open_yield_n.value, rows[i].open_yield, 0.6e-3);
      wm_assert_near (load.open_pull_plain_n.value, rows[i].open_plain, 0.6e-3);
      wm_assert_near (load.open_pull_n.value, rows[i].open_axial, 0.6e-3);
      wm_assert_near (load.open_at_seam_n.value, rows[i].seam, 0.6e-3);
      wm_assert_near (load.closed_yield_n.value, rows[i].closed_yield, 0.6e-3);
      wm_assert_near (load.closed_limit_n.value, rows[i].closed, 0.6e-3);
      wm_assert_near (load.straight_limit_n.value, rows[i].straight, 0.6e-3);
      wm_assert_relative (load.gain.value, 4.0, 1e-12);
    }
}

static void
test_gap_opening (void)
{
  WmRingLoad load;

  g_assert_cmpint (wm_ring_load (wm_exact (3.0), wm_exact (0.8), wm_exact (350),
                                 wm_exact (90000), &load, NULL),
                   ==, WM_OK);
  wm_assert_near (load.open_gap_mm_per_n.value, 0.01353, 0.6e-5);
  /* At first yield of the thin ring, 8.796 N. */
  wm_assert_near (load.open_gap_mm_per_n.value * 8.796, 0.119, 0.6e-3);

  g_assert_cmpint (wm_ring_load (wm_exact (3.0), wm_exact (0.8), wm_exact (350),
                                 wm_exact (0), &load, NULL),
                   ==, WM_OK);
  g_assert_true (isnan (load.open_gap_mm_per_n.value));
}

/* Open ring, seam at the side, angle from the seam: M = F R cos t' with t' from the load;
 * the gap opens by the integral of M times the moment of a unit pair at the gap. */
static void
test_constants_by_integration (void)
{
  const int n = 200000;
  double gap = 0.0;
  double closed = 0.0;

  for (int i = 0; i < n; i++)
    {
      /* Half ring from the seam (angle 0) round to the far side (pi); the load acts at
       * pi/2. Past it the moment is F R (-cos t); the unit pair at the seam acts with
       * R (1 - cos t). */
      double t = (i + 0.5) * G_PI / n;
      double moment = t > G_PI / 2 ? -cos (t) : 0.0;
      double side = (i + 0.5) * G_PI / 2 / n;

      gap += 2.0 * moment * (1.0 - cos (t)) * G_PI / n;
      /* Closed ring, quarter: M / (F R) = (cos t) / 2 - 1 / pi; travel 4 M^2 / F. */
      closed += 4.0 * pow (cos (side) / 2.0 - 1.0 / G_PI, 2) * G_PI / 2 / n;
    }

  wm_assert_relative (gap, G_PI / 2 + 2.0, 1e-6);
  wm_assert_relative (closed, G_PI / 4 - 2.0 / G_PI, 1e-6);
}

static void
test_properties (void)
{
  double before = 1e9;

  /* Thinner wire, wider ring: always weaker; soldered always the stronger. */
  for (double d = 1.2; d > 0.3; d -= 0.1)
    {
      WmRingLoad load;

      g_assert_cmpint (wm_ring_load (wm_value (4.0, 0.05), wm_value (d, 0.01),
                                     wm_value (250, 25), wm_exact (80000), &load, NULL),
                       ==, WM_OK);
      g_assert_cmpfloat (load.open_pull_n.value, <, before);
      g_assert_cmpfloat (load.open_pull_n.value, <, load.open_pull_plain_n.value);
      g_assert_cmpfloat (load.open_yield_n.value, <, load.open_pull_n.value);
      g_assert_cmpfloat (load.closed_limit_n.value, <, load.straight_limit_n.value);
      g_assert_cmpfloat (load.curved_factor.value, >, 1.0);
      g_assert_cmpfloat (load.open_pull_n.u, >, 0.1 * load.open_pull_n.value * 0.99);
      before = load.open_pull_n.value;
    }
}

static void
test_refusals (void)
{
  const struct
  {
    double inside, wire, yield, e;
    WmResult result;
    const char *which;
  } rows[] = {
    { 0, 1, 200, 0, WM_NOT_POSITIVE, "inside" },
    { 3, -1, 200, 0, WM_NOT_POSITIVE, "wire" },
    { 3, 1, 0, 0, WM_NOT_POSITIVE, "yield_mpa" },
    { 3, 1, NAN, 0, WM_NOT_A_NUMBER, "yield_mpa" },
    { 3, 1, 200, -1, WM_NOT_POSITIVE, "modulus_mpa" },
    { 0.4, 1, 200, 0, WM_OUT_OF_RANGE, "inside" },
    { 3, 1, 9000, 0, WM_OUT_OF_RANGE, "yield_mpa" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const char *which = NULL;
      WmRingLoad load;

      g_assert_cmpint (wm_ring_load (wm_exact (rows[i].inside), wm_exact (rows[i].wire),
                                     wm_exact (rows[i].yield), wm_exact (rows[i].e),
                                     &load, &which),
                       ==, rows[i].result);
      g_assert_cmpstr (which, ==, rows[i].which);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reckon/ring-load/worked", test_worked);
  g_test_add_func ("/reckon/ring-load/gap-opening", test_gap_opening);
  g_test_add_func ("/reckon/ring-load/constants", test_constants_by_integration);
  g_test_add_func ("/reckon/ring-load/properties", test_properties);
  g_test_add_func ("/reckon/ring-load/refusals", test_refusals);
  return g_test_run ();
}

/* test-edge.c: edges on grey profiles
 *
 * Expected values: profiles made here as exact pixel integrals of a blurred step at a
 * known place (error function), with and without noise of a known size; IEC 61966-2-1 for
 * the coded values.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/edge.h"

#include "near.h"

#define N 200

static WmResult
find (const double *grey, int n, double per_px, double near, double reach_px, int sign,
      WmEdge *out, const char **which)
{
  const WmLightProfile profile = { grey, n, 1, per_px };

  return wm_edge_find (&profile, near, reach_px, sign, out, which);
}

static WmResult
snap (const double *grey, int n, double per_px, double start, double end, double reach_px,
      WmEdge *first, WmEdge *second, const char **which)
{
  const WmLightProfile profile = { grey, n, 1, per_px };

  return wm_edge_snap_span (&profile, start, end, reach_px, first, second, which);
}

/* Step of the given height at place, blurred by sigma samples. */
static void
add_step (double *grey, double place, double height, double sigma)
{
  for (int i = 0; i < N; i++)
    grey[i] += height * 0.5 * (1.0 + erf ((i - place) / (sigma * sqrt (2.0))));
}

static void
add_base (double *grey, double light)
{
  for (int i = 0; i < N; i++)
    grey[i] += light;
}

static void
add_noise (double *grey, double sd, GRand *random)
{
  for (int i = 0; i < N; i++)
    {
      double sum = 0.0;

      for (int k = 0; k < 12; k++)
        sum += g_rand_double (random);
      grey[i] += sd * (sum - 6.0);
    }
}

static double
coded_from_linear (double linear)
{
  return linear <= 0.0031308 ? 12.92 * linear : 1.055 * pow (linear, 1 / 2.4) - 0.055;
}

static void
test_clean_step (void)
{
  for (double place = 99.0; place <= 101.0; place += 0.05)
    for (double sigma = 0.5; sigma <= 2.5; sigma += 0.5)
      {
        double grey[N] = { 0.0 };
        WmEdge edge;

        add_base (grey, 0.1);
        add_step (grey, place, 0.6, sigma);
        g_assert_cmpint (find (grey, N, 1.0, 98.0, 8.0, 0, &edge, NULL), ==, WM_OK);
        wm_assert_near (edge.at, place, sigma <= 1.5 ? 0.1 : 0.25);
        /* Coded: 0.854 - 0.349 (IEC 61966-2-1). */
        wm_assert_near (edge.contrast, 0.505, sigma <= 1.0 ? 0.03 : 0.2);
        g_assert_cmpfloat (edge.u_px, >=, WM_EDGE_MODEL_U_PX);
      }
}

/* Photos are noisy as they are coded: error and stated uncertainty over many of them. */
static void
test_noise_is_stated (void)
{
  GRand *random = g_rand_new_with_seed (7);
  const int runs = 2000;
  double sum = 0.0, stated = 0.0, seen = 0.0;
  int within = 0, within_seen = 0;

  for (int r = 0; r < runs; r++)
    {
      double place = 100.0 + g_rand_double (random);
      double near = place + g_rand_double_range (random, -3.0, 3.0);
      double grey[N] = { 0.0 };
      WmEdge edge;

      add_base (grey, 0.1);
      add_step (grey, place, 0.4, 1.0);
      for (int i = 0; i < N; i++)
        grey[i] = coded_from_linear (grey[i]);
      add_noise (grey, 0.015, random);
      for (int i = 0; i < N; i++)
        grey[i] = wm_linear_from_srgb (fmax (0.0, grey[i]));

      g_assert_cmpint (find (grey, N, 1.0, near, 8.0, 0, &edge, NULL), ==, WM_OK);
      sum += edge.at - place;
      stated += edge.u_px;
      seen += edge.u_seen_px;
      within_seen += fabs (edge.at - place) <= 2.0 * edge.u_seen_px;
      within += fabs (edge.at - place) <= 2.0 * edge.u_px;
    }

  wm_assert_near (sum / runs, 0.0, 0.06);
  g_assert_cmpint (within, >=, runs * 95 / 100);
  g_assert_cmpint (within_seen, >=, runs * 95 / 100);
  /* Better than the hand, which was off by 3 px; far better once it has been looked at.
   */
  g_assert_cmpfloat (stated / runs, <, 1.3);
  g_assert_cmpfloat (seen / runs, <, 0.4);
  g_rand_free (random);
}

static void
test_span (void)
{
  const double heights[] = { 0.5, -0.5 };

  for (int k = 0; k < 2; k++)
    {
      double grey[N] = { 0.0 };
      WmEdge first, second;

      for (int i = 0; i < N; i++)
        grey[i] = 0.6;
      add_step (grey, 70.4, heights[k], 1.0);
      add_step (grey, 130.7, -heights[k], 1.0);
      g_assert_cmpint (snap (grey, N, 1.0, 73.0, 127.0, 8.0, &first, &second, NULL), ==,
                       WM_OK);
      wm_assert_near (first.at, 70.4, 0.03);
      wm_assert_near (second.at, 130.7, 0.03);
      g_assert_cmpfloat (first.contrast * heights[k], >, 0.0);
    }
}

/* A stronger edge of the wrong sign beside the right one does not win. */
static void
test_span_prefers_the_pair (void)
{
  double grey[N] = { 0.0 };
  WmEdge first, second;

  add_base (grey, 0.1);
  add_step (grey, 70.0, 0.4, 1.0);
  add_step (grey, 130.0, -0.4, 1.0);
  add_step (grey, 135.0, 0.5, 1.0);
  g_assert_cmpint (snap (grey, N, 1.0, 71.0, 132.0, 8.0, &first, &second, NULL), ==,
                   WM_OK);
  wm_assert_near (first.at, 70.0, 0.1);
  wm_assert_near (second.at, 130.0, 0.3);
}

/* A second edge as near and as steep: the uncertainty covers both. */
static void
test_doubt_is_stated (void)
{
  double grey[N] = { 0.0 };
  WmEdge edge;

  add_step (grey, 96.0, 0.3, 1.0);
  add_step (grey, 104.0, 0.3, 1.0);
  g_assert_cmpint (find (grey, N, 1.0, 99.5, 10.0, 0, &edge, NULL), ==, WM_OK);
  wm_assert_near (edge.at, 96.0, 0.2);
  g_assert_cmpfloat (edge.u_px, >, 3.0);
}

/* Gold against a ground as bright as itself: seen by its colour alone. */
static void
test_edge_of_colour (void)
{
  double light[3 * N];
  WmLightProfile profile = { light, N, 3, 1.0 };
  WmEdge edge;

  for (int i = 0; i < N; i++)
    {
      double share = 0.5 * (1.0 + erf ((i - 100.3) / sqrt (2.0)));

      light[3 * i] = 0.20 + 0.15 * share;
      light[3 * i + 1] = 0.20;
      light[3 * i + 2] = 0.20 - 0.15 * share;
    }

  g_assert_cmpint (wm_edge_find (&profile, 98.0, 8.0, 0, &edge, NULL), ==, WM_OK);
  wm_assert_near (edge.at, 100.3, 0.2);
  profile.n_channels = 2;
  g_assert_cmpint (wm_edge_find (&profile, 98.0, 8.0, 0, &edge, NULL), ==,
                   WM_OUT_OF_RANGE);
}

/* Four samples a pixel: same place in pixels, same uncertainty floor. */
static void
test_dense_samples (void)
{
  double grey[N] = { 0.0 };
  WmEdge edge;

  add_base (grey, 0.1);
  add_step (grey, 101.3, 0.6, 4.0);
  g_assert_cmpint (find (grey, N, 4.0, 95.0, 5.0, 0, &edge, NULL), ==, WM_OK);
  wm_assert_near (edge.at, 101.3, 0.3);
}

static void
test_refusals (void)
{
  GRand *random = g_rand_new_with_seed (11);
  double flat[N];
  double noisy[N] = { 0.0 };
  double gap[N] = { 0.0 };
  double step[N] = { 0.0 };
  const char *which = NULL;
  WmEdge edge = { .at = -1.0 };
  WmEdge other;

  for (int i = 0; i < N; i++)
    flat[i] = 0.5;
  add_noise (noisy, 0.02, random);
  g_rand_free (random);
  gap[50] = NAN;
  add_step (step, 150.0, 0.6, 1.0);

  g_assert_cmpint (find (flat, N, 1, 100, 8, 0, &edge, &which), ==, WM_NO_EDGE);
  g_assert_cmpstr (which, ==, "profile");
  g_assert_cmpint (find (noisy, N, 1, 100, 8, 0, &edge, NULL), ==, WM_NO_EDGE);
  g_assert_cmpint (find (step, N, 1, 100, 8, 0, &edge, NULL), ==, WM_NO_EDGE);
  g_assert_cmpint (find (step, N, 1, 149, 8, -1, &edge, NULL), ==, WM_NO_EDGE);
  g_assert_cmpint (find (gap, N, 1, 100, 8, 0, &edge, NULL), ==, WM_NOT_A_NUMBER);
  g_assert_cmpint (find (step, 10, 1, 5, 8, 0, &edge, NULL), ==, WM_TOO_FEW);
  g_assert_cmpint (find (step, N, 1, 500, 8, 0, &edge, NULL), ==, WM_OUT_OF_RANGE);
  g_assert_cmpint (find (step, N, 1, 100, 0, 0, &edge, &which), ==, WM_OUT_OF_RANGE);
  g_assert_cmpstr (which, ==, "reach_px");
  g_assert_cmpint (snap (step, N, 1, 160, 100, 8, &edge, &other, NULL), ==,
                   WM_OUT_OF_RANGE);
  g_assert_cmpint (snap (step, N, 1, 60, 120, 8, &edge, &other, NULL), ==, WM_NO_EDGE);
  g_assert_cmpfloat (edge.at, ==, -1.0);
}

static void
test_linear_light (void)
{
  const struct
  {
    int coded;
    double linear;
  } rows[] = { { 1, 0.0003035270 },   { 10, 0.0030352698 },  { 11, 0.0033465358 },
               { 64, 0.0512694584 },  { 128, 0.2158605001 }, { 188, 0.5028864580 },
               { 254, 0.9911020971 }, { 255, 1.0 } };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    wm_assert_near (wm_linear_from_srgb (rows[i].coded / 255.0), rows[i].linear, 0.6e-10);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reckon/edge/clean-step", test_clean_step);
  g_test_add_func ("/reckon/edge/noise-is-stated", test_noise_is_stated);
  g_test_add_func ("/reckon/edge/span", test_span);
  g_test_add_func ("/reckon/edge/span-prefers-the-pair", test_span_prefers_the_pair);
  g_test_add_func ("/reckon/edge/doubt-is-stated", test_doubt_is_stated);
  g_test_add_func ("/reckon/edge/edge-of-colour", test_edge_of_colour);
  g_test_add_func ("/reckon/edge/dense-samples", test_dense_samples);
  g_test_add_func ("/reckon/edge/refusals", test_refusals);
  g_test_add_func ("/reckon/edge/linear-light", test_linear_light);
  return g_test_run ();
}

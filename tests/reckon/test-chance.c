/* test-chance.c: chances, evidence, value at risk
 *
 * Expected values: SciPy 1.10 and R 4.2 (Clopper-Pearson), NumPy for the series and
 * Weibull rows.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/chance.h"

#include "near.h"

static void
test_equal (void)
{
  const double rows[][3] = { { .01, 12, 0.113615 },
                             { .02, 24, 0.384220 },
                             { .005, 40, 0.181680 },
                             { .1, 6, 0.468559 } };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      WmSeriesChance c;

      g_assert_cmpint (wm_chance_equal (rows[i][0], (int)rows[i][1], &c, NULL), ==,
                       WM_OK);
      wm_assert_near (c.chance, rows[i][2], 0.6e-6);
      g_assert_cmpfloat (c.at_least, <=, c.chance);
      g_assert_cmpfloat (c.chance, <=, c.at_most);
    }
}

static void
test_series (void)
{
  const double p[] = { .02, .02, .05, .01, .1 };
  const double sure[] = { 0.1, 1.0 };
  const double tiny[] = { 1e-18, 1e-18 };
  WmSeriesChance c;

  g_assert_cmpint (wm_chance_series (p, 5, &c, NULL), ==, WM_OK);
  wm_assert_near (c.chance, 0.187069, 0.6e-6);
  wm_assert_near (c.at_least, 0.1, 1e-15);
  wm_assert_near (c.at_most, 0.2, 1e-15);
  g_assert_cmpint (wm_chance_series (sure, 2, &c, NULL), ==, WM_OK);
  g_assert_cmpfloat (c.chance, ==, 1.0);
  /* Small chances keep their digits. */
  g_assert_cmpint (wm_chance_series (tiny, 2, &c, NULL), ==, WM_OK);
  wm_assert_relative (c.chance, 2e-18, 1e-12);
}

static void
test_weibull (void)
{
  const double rows[][5] = { { 2.5, 12, 5, 1, 0.062662 },
                             { 2.5, 12, 10, 1, 0.156813 },
                             { 2.5, 12, 10, .5, 0.078948 },
                             { 1, 12, 5, 1, 0.079956 },
                             { 3, 10, 0, 5, 0.117503 } };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      double chance = 0;

      g_assert_cmpint (wm_chance_weibull (rows[i][0], rows[i][1], rows[i][2], rows[i][3],
                                          &chance, NULL),
                       ==, WM_OK);
      wm_assert_near (chance, rows[i][4], 0.6e-6);
    }
}

static void
test_margin (void)
{
  double chance = 0;

  g_assert_cmpint (wm_chance_margin (wm_value (.92, .06), .80, &chance, NULL), ==, WM_OK);
  wm_assert_near (chance, 0.022750, 0.6e-6);
  g_assert_cmpint (wm_chance_margin (wm_value (.85, .06), .80, &chance, NULL), ==, WM_OK);
  wm_assert_near (chance, 0.202328, 0.6e-6);
}

static void
test_evidence (void)
{
  const struct
  {
    int failed, seen;
    double wilson_low, wilson_high, exact_low, exact_high;
  } rows[] = {
    { 0, 10, 0, 0.277533, 0, 0.308497 },
    { 1, 10, 0.017876, 0.404150, 0.002529, 0.445016 },
    { 3, 40, 0.025836, 0.198642, 0.015742, 0.203865 },
    { 7, 85, 0.040464, 0.160360, 0.033753, 0.162344 },
    { 0, 60, 0, 0.060172, 0, 0.059629 },
    { 12, 12, 0.757506, 1, 0.735352, 1 },
    { 15, 148, 0.062386, 0.160487, 0.057844, 0.161650 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      WmEvidence e;

      g_assert_cmpint (wm_evidence (rows[i].failed, rows[i].seen, 0.95, &e, NULL), ==,
                       WM_OK);
      wm_assert_near (e.wilson_low, rows[i].wilson_low, 0.6e-6);
      wm_assert_near (e.wilson_high, rows[i].wilson_high, 0.6e-6);
      wm_assert_near (e.exact_low, rows[i].exact_low, 0.6e-6);
      wm_assert_near (e.exact_high, rows[i].exact_high, 0.6e-6);
    }
}

/* Clopper-Pearson turned round: at its low end, seeing k or more has exactly the tail's
 * chance (binomial sum). */
static void
test_evidence_by_binomial_sum (void)
{
  WmEvidence e;
  double tail = 0.0;

  g_assert_cmpint (wm_evidence (7, 85, 0.95, &e, NULL), ==, WM_OK);
  for (int k = 7; k <= 85; k++)
    tail += exp (lgamma (86) - lgamma (k + 1) - lgamma (86 - k) + k * log (e.exact_low)
                 + (85 - k) * log1p (-e.exact_low));
  wm_assert_near (tail, 0.025, 1e-9);
}

static void
test_value_at_risk (void)
{
  const double one[] = { .08 };
  const int64_t piece[] = { 45000 };
  double p[24];
  int64_t value[24];
  int64_t loss = 0;

  for (int i = 0; i < 24; i++)
    {
      p[i] = .02;
      value[i] = 18000;
    }

  g_assert_cmpint (wm_value_at_risk (one, piece, 1, &loss, NULL), ==, WM_OK);
  g_assert_cmpint (loss, ==, 3600);
  g_assert_cmpint (wm_value_at_risk (p, value, 24, &loss, NULL), ==, WM_OK);
  g_assert_cmpint (loss, ==, 8640);
}

static void
test_refusals (void)
{
  const double bad[] = { 0.1, 1.2 };
  const double gap[] = { NAN };
  const double sure[] = { 1.0, 1.0 };
  const int64_t huge[] = { INT64_MAX, INT64_MAX };
  const int64_t debt[] = { -1, 0 };
  const char *which = NULL;
  int64_t loss = 0;
  double chance = 0;
  WmSeriesChance c;
  WmEvidence e;

  g_assert_cmpint (wm_chance_series (bad, 2, &c, &which), ==, WM_OUT_OF_RANGE);
  g_assert_cmpstr (which, ==, "p");
  g_assert_cmpint (wm_chance_series (gap, 1, &c, &which), ==, WM_NOT_A_NUMBER);
  g_assert_cmpint (wm_chance_series (bad, 0, &c, &which), ==, WM_TOO_FEW);
  g_assert_cmpint (wm_chance_equal (.1, 0, &c, &which), ==, WM_NOT_POSITIVE);
  g_assert_cmpstr (which, ==, "count");
  g_assert_cmpint (wm_chance_weibull (0, 1, 1, 1, &chance, &which), ==, WM_NOT_POSITIVE);
  g_assert_cmpstr (which, ==, "shape");
  g_assert_cmpint (wm_chance_margin (wm_exact (1), .8, &chance, &which), ==,
                   WM_NOT_POSITIVE);
  g_assert_cmpint (wm_evidence (1, 4, .95, &e, &which), ==, WM_TOO_FEW);
  g_assert_cmpstr (which, ==, "seen");
  g_assert_cmpint (wm_evidence (11, 10, .95, &e, &which), ==, WM_CONTRADICTION);
  g_assert_cmpstr (which, ==, "failed");
  g_assert_cmpint (wm_evidence (1, 10, 95, &e, &which), ==, WM_OUT_OF_RANGE);
  g_assert_cmpint (wm_value_at_risk (sure, huge, 2, &loss, &which), ==, WM_TOO_BIG);
  g_assert_cmpint (wm_value_at_risk (sure, debt, 2, &loss, &which), ==, WM_NOT_POSITIVE);
  g_assert_cmpstr (which, ==, "value");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reckon/chance/equal", test_equal);
  g_test_add_func ("/reckon/chance/series", test_series);
  g_test_add_func ("/reckon/chance/weibull", test_weibull);
  g_test_add_func ("/reckon/chance/margin", test_margin);
  g_test_add_func ("/reckon/chance/evidence", test_evidence);
  g_test_add_func ("/reckon/chance/evidence-by-sum", test_evidence_by_binomial_sum);
  g_test_add_func ("/reckon/chance/value-at-risk", test_value_at_risk);
  g_test_add_func ("/reckon/chance/refusals", test_refusals);
  return g_test_run ();
}

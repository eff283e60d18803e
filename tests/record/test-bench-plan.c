/* test-bench-plan.c: what was entered about a piece, as a heat plan and as a quote
 *
 * Temperatures: rows of the trade reference (18 k yellow gold 885; 18 k solders hard 790
 * to 830, medium 740 to 780, easy 695 to 720; sterling 788). Money: the worked rows of
 * the reckoning reference, section 12, made with exact decimal arithmetic.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/bench-plan.h"
#include "record/visit-quote.h"

#include <math.h>

static WmTrade *trade;

typedef struct
{
  WmPiece *piece;
  GPtrArray *stones, *checks, *measurements, *remedies, *materials;
} Case;

static void
set_up (Case *c, const char *metal, const char *old_joints)
{
  c->piece = wm_piece_new ();
  g_object_set (c->piece, "metal", metal, "old-joints", old_joints, NULL);
  c->stones = g_ptr_array_new_with_free_func (g_object_unref);
  c->checks = g_ptr_array_new_with_free_func (g_object_unref);
  c->measurements = g_ptr_array_new_with_free_func (g_object_unref);
  c->remedies = g_ptr_array_new_with_free_func (g_object_unref);
  c->materials = g_ptr_array_new_with_free_func (g_object_unref);
}

static void
tear_down (Case *c)
{
  g_object_unref (c->piece);
  g_ptr_array_unref (c->stones);
  g_ptr_array_unref (c->checks);
  g_ptr_array_unref (c->measurements);
  g_ptr_array_unref (c->remedies);
  g_ptr_array_unref (c->materials);
}

static WmRemedy *
add_remedy (Case *c, const char *method, const char *solder)
{
  WmCheck *check = wm_check_new ();
  WmRemedy *remedy = wm_remedy_new ();

  g_object_set (check, "number", (gint64)c->checks->len + 1, NULL);
  g_object_set (remedy, "check-id", wm_record_get_id (WM_RECORD (check)), "what",
                "in our words", "method", method, "solder", solder, NULL);
  g_ptr_array_add (c->checks, check);
  g_ptr_array_add (c->remedies, remedy);
  return remedy;
}

static void
add_stone (Case *c, const char *species)
{
  WmStoneGroup *group = wm_stone_group_new ();

  g_object_set (group, "species", species, NULL);
  g_ptr_array_add (c->stones, group);
}

static WmBenchPlan *
plan (Case *c)
{
  return wm_bench_plan_new (trade, c->piece, c->stones, c->checks, c->measurements,
                            c->remedies);
}

static const WmPlanStep *
step_of (WmBenchPlan *self, guint i)
{
  g_assert_cmpuint (i, <, self->steps->len);
  return self->steps->pdata[i];
}

static void
test_hottest_first (void)
{
  Case c;
  g_autoptr (WmBenchPlan) self = NULL;

  set_up (&c, "au750y", "none");
  add_remedy (&c, "laser", NULL);
  add_remedy (&c, "solder", "au18_e");
  add_remedy (&c, "cold", NULL);
  add_remedy (&c, "solder", "au18_m");
  self = plan (&c);
  g_assert_cmpint (self->state, ==, WM_PLAN_READY);
  g_assert_cmpstr (step_of (self, 0)->remedy->solder, ==, "au18_m");
  g_assert_cmpstr (step_of (self, 1)->remedy->solder, ==, "au18_e");
  g_assert_cmpint (step_of (self, 2)->method, ==, WM_WORK_LASER);
  g_assert_cmpint (step_of (self, 3)->method, ==, WM_WORK_COLD);
  /* 780 + 30 against 885; 720 + 30 against 885 and against the 740 of step 1. */
  g_assert_cmpfloat (step_of (self, 0)->heat.working_c, ==, 810);
  g_assert_cmpfloat (step_of (self, 0)->heat.margin_metal_k, ==, 75);
  g_assert_cmpfloat (step_of (self, 1)->heat.margin_metal_k, ==, 135);
  g_assert_cmpfloat (step_of (self, 1)->margin_new_k, ==, -10);
  g_assert_cmpint (step_of (self, 1)->new_joint, ==, 1);
  g_assert_true (step_of (self, 1)->trouble & WM_PLAN_NEW_JOINT_CLOSE);
  g_assert_true (isnan (step_of (self, 0)->heat.margin_joints_k));
  g_assert_cmpint (self->verdict, ==, WM_HEAT_WARN);
  tear_down (&c);
}

/* Nothing entered, the word, and an empty field all count as the lowest gold solder of
 * the tables. */
static void
test_unknown_joints_are_the_worst (void)
{
  const char *entered[] = { NULL, "unknown" };

  for (guint i = 0; i < G_N_ELEMENTS (entered); i++)
    {
      Case c;
      g_autoptr (WmBenchPlan) self = NULL;

      set_up (&c, "au750y", entered[i]);
      add_remedy (&c, "solder", "au18_e");
      self = plan (&c);
      g_assert_true (self->joints_guessed);
      g_assert_cmpfloat (self->joints_hold_c, ==, self->heat_metal.lowest_solder_c);
      g_assert_cmpfloat (self->joints_hold_c, <=, 640); /* 9 k extra easy */
      g_assert_cmpint (self->verdict, ==, WM_HEAT_REFUSE);
      g_assert_true (step_of (self, 0)->heat.reasons & WM_HEAT_JOINT_REMELTS);
      tear_down (&c);
    }
}

static void
test_known_joints (void)
{
  Case c;
  g_autoptr (WmBenchPlan) self = NULL, soft = NULL;
  WmRemedy *done;

  set_up (&c, "au750y", "au18_h au22_h");
  add_remedy (&c, "solder", "au18_e");
  self = plan (&c);
  g_assert_cmpfloat (self->joints_hold_c, ==, 790);
  g_assert_cmpfloat (step_of (self, 0)->heat.margin_joints_k, ==, 40);
  g_assert_cmpint (self->verdict, ==, WM_HEAT_PASS);

  /* A joint made during the visit holds like an old one. */
  done = add_remedy (&c, "solder", "au18_m");
  g_object_set (done, "done-at-s", (gint64)1795680000, NULL);
  wm_bench_plan_free (self);
  self = plan (&c);
  g_assert_true (step_of (self, 0)->is_done);
  g_assert_cmpfloat (step_of (self, 1)->heat.margin_joints_k, ==, -10);
  g_assert_cmpint (self->verdict, ==, WM_HEAT_REFUSE);

  g_object_set (c.piece, "old-joints", "soft", NULL);
  soft = plan (&c);
  g_assert_true (soft->joints_soft);
  g_assert_cmpfloat (soft->joints_hold_c, ==, 183);
  tear_down (&c);
}

static void
test_pearl_and_emerald (void)
{
  const char *stones[] = { "pearl", "emerald", "a green one" };

  for (guint i = 0; i < G_N_ELEMENTS (stones); i++)
    {
      Case c;
      WmRemedy *remedy;
      g_autoptr (WmBenchPlan) in = NULL, out = NULL;

      set_up (&c, "au750y", "none");
      add_stone (&c, "diamond");
      add_stone (&c, stones[i]);
      remedy = add_remedy (&c, "solder", "au18_e");
      /* However far away it is said to be: distance clears nothing. */
      g_object_set (remedy, "stone-mm", 200.0, NULL);
      in = plan (&c);
      g_assert_cmpint (in->verdict, ==, WM_HEAT_REFUSE);
      g_assert_true (step_of (in, 0)->trouble & WM_PLAN_STONE_IN_THE_WAY);
      g_assert_cmpint (step_of (in, 0)->worst_stone, ==, 1);

      g_object_set (remedy, "stones-out", TRUE, NULL);
      out = plan (&c);
      g_assert_cmpint (out->verdict, ==, WM_HEAT_WARN); /* the diamond's coat */
      g_assert_true (g_array_index (step_of (out, 0)->stones, WmPlanStone, 1).comes_out);
      g_assert_false (g_array_index (step_of (out, 0)->stones, WmPlanStone, 0).comes_out);
      g_assert_cmpint (g_array_index (step_of (out, 0)->stones, WmPlanStone, 0).advice,
                       ==, WM_STONE_ADVICE_COAT);
      tear_down (&c);
    }
}

static void
test_enamel_never (void)
{
  Case c;
  WmRemedy *remedy;
  g_autoptr (WmBenchPlan) self = NULL;

  set_up (&c, "au750y", "none");
  add_stone (&c, "enamel");
  remedy = add_remedy (&c, "solder", "au18_e");
  g_object_set (remedy, "stones-out", TRUE, NULL);
  self = plan (&c);
  g_assert_cmpint (self->verdict, ==, WM_HEAT_REFUSE);
  g_assert_true (step_of (self, 0)->heat.reasons & WM_HEAT_STONE_FORBIDS);
  tear_down (&c);
}

static void
test_laser (void)
{
  const struct
  {
    double mm;
    WmHeatVerdict verdict;
  } rows[] = { { NAN, WM_HEAT_REFUSE }, { 1, WM_HEAT_REFUSE }, { 8, WM_HEAT_WARN } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      Case c;
      WmRemedy *remedy;
      g_autoptr (WmBenchPlan) self = NULL;

      set_up (&c, "au750y", NULL);
      add_stone (&c, "pearl");
      remedy = add_remedy (&c, "laser", NULL);
      g_object_set (remedy, "stone-mm", rows[i].mm, NULL);
      self = plan (&c);
      g_assert_cmpint (self->verdict, ==, rows[i].verdict);
      tear_down (&c);
    }
}

static void
test_wrong_solders (void)
{
  const struct
  {
    const char *solder;
    unsigned trouble;
  } rows[] = {
    { NULL, WM_PLAN_NO_SOLDER },       { "no such", WM_PLAN_NO_SOLDER },
    { "ag_xe2", WM_PLAN_BARRED },      { "au18_e", WM_PLAN_WRONG_FAMILY },
    { "ag_xe", WM_PLAN_LOW_FINENESS },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      Case c;
      g_autoptr (WmBenchPlan) self = NULL;

      set_up (&c, "ag925", "none");
      add_remedy (&c, "solder", rows[i].solder);
      self = plan (&c);
      g_assert_true (step_of (self, 0)->trouble & rows[i].trouble);
      g_assert_cmpint (self->verdict, !=, WM_HEAT_PASS);
      tear_down (&c);
    }
}

static void
test_no_metal (void)
{
  const struct
  {
    const char *metal;
    WmPlanState state;
  } rows[] = { { NULL, WM_PLAN_NO_METAL },
               { "something white", WM_PLAN_METAL_FOREIGN },
               { "tigr2", WM_PLAN_METAL_FOREIGN } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      Case c;
      g_autoptr (WmBenchPlan) self = NULL;
      g_autoptr (GArray) picks = NULL;

      set_up (&c, rows[i].metal, NULL);
      add_remedy (&c, "solder", "au18_e");
      self = plan (&c);
      picks = wm_bench_plan_list_solders (self);
      g_assert_cmpint (self->state, ==, rows[i].state);
      g_assert_cmpuint (picks->len, ==, 0);
      tear_down (&c);
    }
}

static void
test_picks (void)
{
  Case c;
  g_autoptr (WmBenchPlan) self = NULL;
  g_autoptr (GArray) picks = NULL;

  set_up (&c, "au750y", "none");
  self = plan (&c);
  picks = wm_bench_plan_list_solders (self);
  g_assert_cmpuint (picks->len, >, 10);
  /* 885 less 750 is the widest margin of the yellow solders of 750. */
  g_assert_cmpstr (g_array_index (picks, WmSolderPick, 0).solder->key, ==, "au18_e");
  for (guint i = 1; i < picks->len; i++)
    g_assert_true (g_array_index (picks, WmSolderPick, i - 1).suits
                   || !g_array_index (picks, WmSolderPick, i).suits);
  tear_down (&c);
}

/* ---- quote ------------------------------------------------------------------------- */

static void
add_material (Case *c, WmRemedy *remedy, const char *metal, gint64 mg, gint64 gram,
              gint64 price)
{
  WmMaterial *material = wm_material_new ();

  g_object_set (material, "remedy-id", wm_record_get_id (WM_RECORD (remedy)), "metal",
                metal, "mass-mg", mg, "gram-price-minor", gram, "price-minor", price,
                NULL);
  g_ptr_array_add (c->materials, material);
}

static WmVisitQuote *
quote (Case *c, const WmQuoteTerms *terms)
{
  return wm_visit_quote_new (terms, c->checks, c->remedies, c->materials);
}

/* 0.42 g at 38.15 is 16.023, 35 minutes at 54.00 are 31.50; 2.50 g at 90.00 and 20
 * minutes at 54.00: 225.00 and 18.00. Tax 19 % of 290.52 is 55.1988. */
static void
test_quote (void)
{
  Case c;
  WmQuoteTerms terms = { 5400, 1900, 30000 };
  WmRemedy *first, *second, *third;
  g_autoptr (WmVisitQuote) self = NULL;

  set_up (&c, "au750y", NULL);
  first = add_remedy (&c, "cold", NULL);
  second = add_remedy (&c, "cold", NULL);
  third = add_remedy (&c, "cold", NULL);
  g_object_set (first, "minutes", (gint64)35, "answer", "agreed", NULL);
  g_object_set (second, "minutes", (gint64)20, NULL);
  g_object_set (third, "price-minor", (gint64)8000, "answer", "declined", NULL);
  add_material (&c, first, "au750y", 420, 3815, WM_UNKNOWN);
  add_material (&c, second, "au750y", 2500, 9000, 1);
  self = quote (&c, &terms);
  g_assert_cmpint (wm_material_price (c.materials->pdata[0]), ==, 1602);
  g_assert_cmpint (((WmQuoteRow *)self->rows->pdata[0])->price_minor, ==, 4752);
  g_assert_cmpint (((WmQuoteRow *)self->rows->pdata[1])->price_minor, ==, 24300);
  g_assert_cmpint (self->open_minor, ==, 24300);
  g_assert_cmpint (self->declined_minor, ==, 8000);
  g_assert_cmpint (self->all.net_minor, ==, 29052);
  g_assert_cmpint (self->all.tax_minor, ==, 5520);
  g_assert_cmpint (self->all.total_minor, ==, 34572);
  g_assert_cmpint (self->agreed.total_minor, ==, 5655); /* 47.52 and 9.0288 */
  g_assert_true (self->is_over_limit);
  tear_down (&c);
}

static void
test_typed_price_stays (void)
{
  Case c;
  WmQuoteTerms terms = { 6500, 0, WM_UNKNOWN };
  WmRemedy *remedy;
  WmQuoteRow *row;
  g_autoptr (WmVisitQuote) self = NULL, without = NULL;

  set_up (&c, "au750y", NULL);
  remedy = add_remedy (&c, "cold", NULL);
  g_object_set (remedy, "minutes", (gint64)75, "price-minor", (gint64)5000, NULL);
  self = quote (&c, &terms);
  row = self->rows->pdata[0];
  g_assert_cmpint (row->lines_minor, ==, 8125); /* 75 min at 65.00 */
  g_assert_cmpint (row->price_minor, ==, 5000);
  g_assert_true (row->differs);
  g_assert_cmpint (self->all.total_minor, ==, 5000);

  terms.rate_minor = WM_UNKNOWN;
  g_object_set (remedy, "price-minor", (gint64)WM_UNKNOWN, NULL);
  without = quote (&c, &terms);
  row = without->rows->pdata[0];
  g_assert_true (row->lacks_rate);
  g_assert_cmpint (row->price_minor, ==, WM_UNKNOWN);
  g_assert_cmpuint (without->n_unpriced, ==, 1);
  tear_down (&c);
}

static void
test_too_big (void)
{
  Case c;
  WmQuoteTerms terms = { G_MAXINT64 / 2, 0, WM_UNKNOWN };
  WmRemedy *remedy;
  g_autoptr (WmVisitQuote) self = NULL;

  set_up (&c, "au750y", NULL);
  remedy = add_remedy (&c, "cold", NULL);
  g_object_set (remedy, "minutes", (gint64)99999, NULL);
  self = quote (&c, &terms);
  g_assert_true (self->is_refused);
  g_assert_cmpint (self->all.total_minor, ==, 0);
  tear_down (&c);
}

int
main (int argc, char **argv)
{
  int result;

  g_test_init (&argc, &argv, NULL);
  trade = wm_trade_new_with_shop (NULL, NULL, NULL);
  g_assert_nonnull (trade);
  g_test_add_func ("/record/bench-plan/hottest-first", test_hottest_first);
  g_test_add_func ("/record/bench-plan/unknown-joints",
                   test_unknown_joints_are_the_worst);
  g_test_add_func ("/record/bench-plan/known-joints", test_known_joints);
  g_test_add_func ("/record/bench-plan/pearl-and-emerald", test_pearl_and_emerald);
  g_test_add_func ("/record/bench-plan/enamel", test_enamel_never);
  g_test_add_func ("/record/bench-plan/laser", test_laser);
  g_test_add_func ("/record/bench-plan/wrong-solders", test_wrong_solders);
  g_test_add_func ("/record/bench-plan/no-metal", test_no_metal);
  g_test_add_func ("/record/bench-plan/solders", test_picks);
  g_test_add_func ("/record/visit-quote/sums", test_quote);
  g_test_add_func ("/record/visit-quote/typed-price", test_typed_price_stays);
  g_test_add_func ("/record/visit-quote/too-big", test_too_big);
  result = g_test_run ();
  wm_trade_unref (trade);
  return result;
}

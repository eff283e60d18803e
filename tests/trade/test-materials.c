/* test-materials.c: metals, solders and stones against published values
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/trade.h"

#include <math.h>
#include <string.h>

static WmTrade *trade;

/* Defining fixed points of the International Temperature Scale of 1990 (ITS-90),
 * table 1; platinum: CRC Handbook, cited from memory. */
static void
test_freezing_points (void)
{
  static const struct
  {
    const char *metal;
    double c;
  } points[] = { { "ag", 961.78 },
                 { "au", 1064.18 },
                 { "cu", 1084.62 },
                 { "zn", 419.527 },
                 { "pt", 1768.2 } };

  for (gsize i = 0; i < G_N_ELEMENTS (points); i++)
    {
      const WmMetal *metal = wm_trade_find_metal (trade, points[i].metal);

      g_assert_true (metal->is_pure);
      g_assert_cmpfloat (metal->solidus_c.low, ==, points[i].c);
      g_assert_cmpfloat (metal->liquidus_c.high, ==, points[i].c);
    }
}

/* Densities and moduli: Properties of the platinum metals, Platinum Metals
 * Review 16 (1972); comparison of physical properties, AZoM; sterling: ESPI data. */
static void
test_densities (void)
{
  static const struct
  {
    const char *metal;
    double density, tolerance;
  } rows[] = {
    { "pt", 21.45, 0.05 },    { "pd", 12.02, 0.02 }, { "au", 19.3, 0.03 },
    { "ag", 10.5, 0.03 },     { "rh", 12.41, 0.02 }, { "ru", 12.45, 0.02 },
    { "ag925", 10.36, 0.02 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    g_assert_cmpfloat_with_epsilon (
        wm_trade_find_metal (trade, rows[i].metal)->density.low, rows[i].density,
        rows[i].tolerance + 1e-9);
  g_assert_cmpfloat_with_epsilon (wm_trade_find_metal (trade, "pt")->modulus_gpa.low, 172,
                                  5);
  g_assert_cmpfloat_with_epsilon (wm_trade_find_metal (trade, "pd")->modulus_gpa.low, 117,
                                  5);
}

/* As printed: Pt-Co, J. Maerz, Professional Jeweler, March 1998; Pt-Ru, K. Conlon,
 * Popular U.S. Platinum Jewelry Alloys. */
static void
test_hardness (void)
{
  const WmMetal *cobalt = wm_trade_find_metal (trade, "pt950co");
  const WmMetal *ruthenium = wm_trade_find_metal (trade, "pt950ru");

  g_assert_cmpfloat (cobalt->hv_annealed.low, ==, 130);
  g_assert_cmpfloat (cobalt->hv_hard.low, ==, 270);
  g_assert_cmpfloat (ruthenium->hv_annealed.low, ==, 120);
  g_assert_cmpfloat (ruthenium->hv_hard.low, ==, 220);
}

/* The density of a mixture by the volumes of its parts (1/rho = sum of w/rho_i)
 * from the pure metals' own rows; real alloys differ by a few tenths. */
static void
test_makeup_agrees_with_density (void)
{
  guint n;
  guint n_checked = 0;
  const WmMetal *const *metals = wm_trade_list_metals (trade, &n);

  for (guint i = 0; i < n; i++)
    {
      g_auto (GStrv) words = NULL;
      double volume = 0.0;
      double sum = 0.0;
      gboolean all_known = TRUE;

      if (metals[i]->makeup == NULL)
        continue;

      words = g_strsplit (metals[i]->makeup, " ", -1);
      for (guint j = 0; words[j] != NULL && words[j + 1] != NULL; j += 2)
        {
          g_autofree char *key = g_ascii_strdown (words[j], -1);
          const WmMetal *pure = wm_trade_find_metal (trade, key);
          double ppt = g_ascii_strtod (words[j + 1], NULL);

          sum += ppt;
          if (pure == NULL)
            all_known = FALSE; /* germanium has no row */
          else
            volume += ppt / 1000.0 / pure->density.low;
        }
      g_assert_cmpfloat_with_epsilon (sum, 1000.0, 1e-9);
      if (all_known)
        {
          g_test_message ("%s: %.2f and %.2f", metals[i]->key, 1.0 / volume,
                          metals[i]->density.low);
          g_assert_cmpfloat_with_epsilon (metals[i]->density.low, 1.0 / volume, 0.1);
          n_checked++;
        }
    }
  g_assert_cmpuint (n_checked, >=, 20);
}

static void
test_metals_are_sound (void)
{
  guint n;
  const WmMetal *const *metals = wm_trade_list_metals (trade, &n);

  g_assert_cmpuint (n, >=, 35);
  for (guint i = 0; i < n; i++)
    {
      const WmMetal *metal = metals[i];

      g_assert_nonnull (metal->sources[0]);
      g_assert_cmpfloat (metal->solidus_c.low, <=, metal->liquidus_c.high);
      if (!isnan (metal->hv_hard.low))
        g_assert_cmpfloat (metal->hv_annealed.low, <, metal->hv_hard.high);
      if (metal->temper != NULL)
        g_assert_nonnull (wm_trade_find_temper (trade, metal->temper)->anneal);
      /* The first element of the make-up is the fineness. */
      if (metal->makeup != NULL)
        g_assert_cmpfloat (g_ascii_strtod (metal->makeup + 3, NULL), ==, metal->fineness);
    }
}

/* Palladium solders: 950 Palladium Bench Guide, JCK, in degrees Fahrenheit. */
static void
test_palladium_solders (void)
{
  static const struct
  {
    const char *key;
    double f;
  } rows[] = { { "pd_h", 2365 }, { "pd_m", 2210 }, { "pd_e", 2005 } };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    g_assert_cmpfloat_with_epsilon (wm_trade_find_solder (trade, rows[i].key)->flow_c.low,
                                    (rows[i].f - 32) / 1.8, 1.0);
}

static void
test_solders_are_sound (void)
{
  guint n;
  guint n_barred = 0;
  const WmSolder *const *solders = wm_trade_list_solders (trade, &n);

  g_assert_cmpuint (n, >=, 30);
  for (guint i = 0; i < n; i++)
    {
      const WmSolder *solder = solders[i];

      g_assert_nonnull (solder->families[0]);
      g_assert_nonnull (solder->sources[0]);
      if (!isnan (solder->solidus_c.low))
        g_assert_cmpfloat (solder->solidus_c.low, <, solder->flow_c.high);
      /* Of two solders of one set, the later step flows no hotter; the two figures may
       * come from two sources that print them by 5 C differently (hard silver). */
      if (i > 0 && solder->step > solders[i - 1]->step
          && g_strcmp0 (solder->families[0], solders[i - 1]->families[0]) == 0
          && g_strcmp0 (solder->colour, solders[i - 1]->colour) == 0)
        g_assert_cmpfloat (solder->flow_c.low, <, solders[i - 1]->flow_c.high + 5.0);
      if (solder->is_barred)
        n_barred++;
    }
  /* The one kind that once bore cadmium (Regulation (EC) 1907/2006, XVII, 23). */
  g_assert_cmpuint (n_barred, ==, 1);
}

/* Mohs: the ten reference minerals, and Handbook of Precious Stones (chrysoberyl,
 * spinel). Specific gravity: weight estimation table (diamond, corundum, opal). */
static void
test_stones_published (void)
{
  g_assert_cmpfloat (wm_trade_find_stone (trade, "diamond")->mohs.low, ==, 10);
  g_assert_cmpfloat (wm_trade_find_stone (trade, "ruby")->mohs.low, ==, 9);
  g_assert_cmpfloat (wm_trade_find_stone (trade, "topaz")->mohs.low, ==, 8);
  g_assert_cmpfloat (wm_trade_find_stone (trade, "amethyst")->mohs.low, ==, 7);
  g_assert_cmpfloat (wm_trade_find_stone (trade, "chrysoberyl")->mohs.low, ==, 8.5);
  g_assert_cmpfloat (wm_trade_find_stone (trade, "spinel")->mohs.low, ==, 8);
  g_assert_cmpfloat_with_epsilon (wm_trade_find_stone (trade, "diamond")->sg.low, 3.52,
                                  0.02);
  g_assert_cmpfloat_with_epsilon (wm_trade_find_stone (trade, "ruby")->sg.low, 4.00,
                                  0.02);
  g_assert_cmpfloat_with_epsilon (wm_trade_find_stone (trade, "quartz")->sg.low, 2.66,
                                  0.02);
  g_assert_cmpfloat_with_epsilon (wm_trade_find_stone (trade, "opal")->sg.low, 2.15,
                                  0.02);
  /* Amethyst loses its violet from about 420 C: Scientific Reports 10 (2020). */
  g_assert_cmpfloat (wm_trade_find_stone (trade, "amethyst")->trouble_c.low, ==, 420);
}

/* Stones that the published charts say never to steam or put in the ultrasonic
 * (Rio Grande after GIA; Stuller), and ours that never see heat. */
static void
test_stones_that_never_see_heat (void)
{
  static const char *const never[] = { "diamond_ff", "ruby_gf",   "emerald",
                                       "opal",       "tanzanite", "turquoise",
                                       "coral",      "pearl",     "amber" };
  guint n;
  const WmStone *const *stones = wm_trade_list_stones (trade, &n);

  g_assert_cmpuint (n, >=, 40);
  for (gsize i = 0; i < G_N_ELEMENTS (never); i++)
    {
      const WmStone *stone = wm_trade_find_stone (trade, never[i]);

      g_assert_cmpint (stone->heat, ==, WM_STONE_NEVER);
      g_assert_cmpint (stone->ultrasonic, ==, WM_STAND_NO);
      g_assert_cmpint (stone->steam, ==, WM_STAND_NO);
    }
  for (guint i = 0; i < n; i++)
    {
      g_assert_nonnull (stones[i]->sources[0]);
      g_assert_cmpfloat (stones[i]->mohs.high, <=, 10);
    }
  g_assert_cmpint (wm_trade_find_stone (trade, "diamond")->heat, ==, WM_STONE_STAY);
}

/* EU figures as reproduced in the sources of the rows: nickel release (REACH XVII
 * 27), cadmium (23), lead (63), boric acid (CLP), EN 1811 as amended in 2015. */
static void
test_cautions (void)
{
  static const struct
  {
    const char *key;
    const char *figures[3];
  } rows[] = {
    { "hz_ni", { "0.2", "0.5" } },
    { "hz_ni_test", { "0.35", "0.88" } },
    { "hz_cd", { "0.01 %" } },
    { "hz_pb", { "0.05 %" } },
    { "hz_boric", { "H360FD", "0.3 %", "1B" } },
  };
  guint n;
  const WmCaution *const *cautions = wm_trade_list_cautions (trade, &n);

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    for (guint j = 0; j < 3 && rows[i].figures[j] != NULL; j++)
      g_assert_nonnull (strstr (wm_trade_find_caution (trade, rows[i].key)->figure,
                                rows[i].figures[j]));

  g_assert_cmpuint (n, >=, 30);
  for (guint i = 0; i < n; i++)
    g_assert_nonnull (cautions[i]->sources[0]);
}

/* Every remedy that needs heat reminds of the fire. */
static void
test_heat_brings_its_caution (void)
{
  guint n;
  const WmRemedyRow *const *remedies = wm_trade_list_remedies (trade, &n);

  for (guint i = 0; i < n; i++)
    if (remedies[i]->heat == WM_REMEDY_HEAT)
      g_assert_nonnull (remedies[i]->cautions[0]);
}

/* SWG 10, 14, 16: standard wire gauge chart. */
static void
test_wire_and_words (void)
{
  g_assert_cmpfloat_with_epsilon (wm_trade_find_wire_gauge (trade, "swg10")->mm, 3.251,
                                  1e-9);
  g_assert_cmpfloat_with_epsilon (wm_trade_find_wire_gauge (trade, "swg14")->mm, 2.032,
                                  1e-9);
  g_assert_cmpfloat_with_epsilon (wm_trade_find_wire_gauge (trade, "swg16")->mm, 1.626,
                                  1e-9);
  g_assert_cmpstr (wm_trade_find_word (trade, "claw")->de, ==, "Krappe");
  g_assert_cmpstr (wm_trade_find_source (trade, "C")->words, ==,
                   "common practice, no source");
  g_assert_cmpint (wm_trade_find_source (trade, "M")->kind, ==, WM_SOURCE_MEMORY);
  g_assert_nonnull (wm_trade_find_phrase (trade, "tx_limit"));
  /* C. Corti, Carat Gold Solders for Jewellery Making: at least 20 C below. */
  g_assert_nonnull (
      strstr (wm_trade_find_advice (trade, "s_margin_parent")->text, "20 °C"));
}

int
main (int argc, char **argv)
{
  g_autoptr (GError) error = NULL;
  int result;

  g_test_init (&argc, &argv, NULL);
  trade = wm_trade_new_with_shop (NULL, NULL, &error);
  g_assert_no_error (error);

  g_test_add_func ("/trade/materials/freezing-points", test_freezing_points);
  g_test_add_func ("/trade/materials/densities", test_densities);
  g_test_add_func ("/trade/materials/hardness", test_hardness);
  g_test_add_func ("/trade/materials/makeup", test_makeup_agrees_with_density);
  g_test_add_func ("/trade/materials/metals", test_metals_are_sound);
  g_test_add_func ("/trade/materials/palladium-solders", test_palladium_solders);
  g_test_add_func ("/trade/materials/solders", test_solders_are_sound);
  g_test_add_func ("/trade/materials/stones/published", test_stones_published);
  g_test_add_func ("/trade/materials/stones/never", test_stones_that_never_see_heat);
  g_test_add_func ("/trade/materials/cautions", test_cautions);
  g_test_add_func ("/trade/materials/remedies", test_heat_brings_its_caution);
  g_test_add_func ("/trade/materials/wire-and-words", test_wire_and_words);
  result = g_test_run ();

  wm_trade_unref (trade);
  return result;
}

/* wear-words.c: what a reading says of a worn place, in words
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/measuring/wear-reading.h"

#include <glib/gi18n.h>
#include <math.h>

#include "photo/mark-look.h"
#include "reckon/length.h"
#include "window/glyph.h"

char *
wm_worn_expanded_text (double value_mm, double u_mm)
{
  double rounded = 0;
  int decimals = wm_length_decimals (WM_COVERAGE_FACTOR * u_mm, &rounded);

  return g_strdup_printf (_ ("± %.*f mm"), decimals, rounded);
}

char *
wm_worn_value_text (double value_mm, double u_mm)
{
  double rounded = 0;
  int decimals;

  if (!isfinite (u_mm) || u_mm <= 0)
    return g_strdup_printf (_ ("%.2f mm"), value_mm);
  decimals = wm_length_decimals (WM_COVERAGE_FACTOR * u_mm, &rounded);
  /* Translators: a measured length and its uncertainty */
  return g_strdup_printf (_ ("%.*f ± %.*f mm"), decimals, value_mm, decimals, rounded);
}

/* Two figures at most: a load is known to no more. */
static double
to_two_figures (double value)
{
  double decade = pow (10, floor (log10 (value)) - 1);

  return value > 0 ? round (value / decade) * decade : 0;
}

/* A sentence of its own. */
static void
append_sentence (GString *text, const char *sentence)
{
  g_autofree char *initial =
      g_utf8_strup (sentence, g_utf8_next_char (sentence) - sentence);

  g_string_append_printf (text, "%s%s%s.", text->len > 0 ? " " : "", initial,
                          g_utf8_next_char (sentence));
}

char *
wm_worn_words (const WmWornInput *input, const WmWorn *wear)
{
  GString *text = g_string_new (NULL);
  g_autofree char *load = NULL;

  if (wear->has_left)
    append_sentence (text, _ (wm_section_words (wear->pull_left.value)));
  if (wear->has_ring)
    load = g_strdup_printf (_ ("the ring soldered shut holds about %g N, left open it is "
                               "pulled open at about %g N; a hard tug is about %g N"),
                            to_two_figures (wear->soldered_n.value),
                            to_two_figures (wear->open_n.value), WM_HARD_TUG_N);
  else if (isfinite (wear->straight_n.value))
    load = g_strdup_printf (
        _ ("pulled straight it holds about %g N; a hard tug is about %g N"),
        to_two_figures (wear->straight_n.value), WM_HARD_TUG_N);
  if (load != NULL)
    append_sentence (text, load);
  return g_string_free (text, FALSE);
}

static char *
describe_bounds (const WmWorn *wear)
{
  double factor = wear->by_share ? 100 : 1;
  double from = wear->from * factor, to = wear->to * factor;

  if (wear->by_share)
    {
      if (isnan (from) && isnan (to))
        return NULL;
      if (isnan (from))
        return g_strdup_printf (_ ("under %.0f %% of the thickness left"), to);
      if (isnan (to))
        return g_strdup_printf (_ ("%.0f %% of the thickness left and more"), from);
      return g_strdup_printf (_ ("%.0f to %.0f %% of the thickness left"), from, to);
    }
  if (isnan (from) && isnan (to))
    return NULL;
  if (isnan (from))
    return g_strdup_printf (_ ("under %g mm"), to);
  if (isnan (to))
    return g_strdup_printf (_ ("%g mm and more"), from);
  return g_strdup_printf (_ ("%g to %g mm"), from, to);
}

char *
wm_worn_reason (const WmWorn *wear)
{
  g_autofree char *bounds = wear->has_suggestion ? describe_bounds (wear) : NULL;

  if (!wear->has_suggestion)
    return NULL;
  if (bounds == NULL)
    return g_strdup_printf (_ ("the reading points to %s"),
                            wm_severity_word (wear->severity));
  /* Translators: "40 to 60 % of the thickness left points to repair" */
  return g_strdup_printf (_ ("%s points to %s"), bounds,
                          wm_severity_word (wear->severity));
}

char *
wm_worn_stays (const WmWornInput *input, const WmWorn *wear)
{
  g_autofree char *expanded = NULL;

  if (!wear->has_suggestion)
    return NULL;
  expanded = wear->by_share
                 ? g_strdup_printf (
                     _ ("± %.0f %%"),
                     ceil (100 * WM_COVERAGE_FACTOR * wear->thickness_left.u - 1e-6))
                 : wm_worn_expanded_text (input->value_mm.value, input->value_mm.u);
  if (input->value_mm.u <= 0)
    return g_strdup (_ ("How sure the reading is, is not known."));
  if (wear->at_low == wear->at_high)
    /* Translators: "At ± 0.03 mm either way it stays repair." */
    return g_strdup_printf (_ ("At %s it stays %s."), expanded,
                            wm_severity_word (wear->severity));
  return g_strdup_printf (
      _ ("At %s it may be %s or %s: the worse counts until it is measured closer."),
      expanded, wm_severity_word (MIN (wear->at_low, wear->at_high)),
      wm_severity_word (wear->severity));
}

char *
wm_worn_refusal (const WmWorn *wear)
{
  static const struct
  {
    const char *which;
    const char *words;
  } names[] = {
    { "made_height", N_ ("The thickness as made") }, { "made_width", N_ ("The width") },
    { "height", N_ ("The thickness left") },         { "width", N_ ("The width") },
    { "made_extra", N_ ("The straight side") },      { "extra", N_ ("The second size") },
  };
  const char *name = _ ("The section");

  if (wear->has_left)
    return NULL;
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    if (g_strcmp0 (wear->which, names[i].which) == 0)
      name = _ (names[i].words);
  /* Translators: "The thickness as made", "was not given" */
  return g_strdup_printf (_ ("%s %s."), name, _ (wm_result_text (wear->result)));
}

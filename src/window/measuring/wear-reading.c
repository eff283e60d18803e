/* wear-reading.c: what a reading says of a worn place
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/measuring/wear-reading.h"

#include <glib/gi18n.h>
#include <math.h>

static const WmSectionKind kinds[] = {
  { "round", N_ ("round wire, worn flat"), N_ ("thickness left"), NULL },
  { "ring-in-ring", N_ ("round wire, worn by another ring"), N_ ("thickness left"),
    N_ ("inner radius of that ring") },
  { "oval", N_ ("oval"), N_ ("thickness left"), N_ ("width") },
  { "rectangle", N_ ("rectangular"), N_ ("thickness left"), N_ ("width") },
  { "half-round", N_ ("half-round"), N_ ("thickness left"), N_ ("width") },
  { "d", N_ ("D-shaped"), N_ ("thickness left"), N_ ("width") },
};

const WmSectionKind *
wm_section_kinds (guint *n)
{
  *n = G_N_ELEMENTS (kinds);
  return kinds;
}

const WmSectionKind *
wm_section_kind_find (const char *key)
{
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (g_strcmp0 (key, kinds[i].key) == 0)
      return &kinds[i];
  return &kinds[0];
}

/* ---- input ---------------------------------------------------------------------- */

void
wm_worn_input_init (WmWornInput *input)
{
  *input = (WmWornInput) { .value_mm = { NAN, 0 },
                           .as_made_mm = { NAN, 0 },
                           .width_mm = NAN,
                           .inside_mm = NAN,
                           .yield_mpa = { 0, 0 } };
}

WmValue
wm_worn_yield (WmTrade *trade, const char *metal_key)
{
  const WmMetal *metal =
      trade != NULL && metal_key != NULL ? wm_trade_find_metal (trade, metal_key) : NULL;
  WmRange range;

  if (metal == NULL)
    return wm_exact (0);
  range = metal->yield_annealed_mpa;
  if (isfinite (range.low) && isfinite (range.high))
    /* Anywhere between the two: rectangular (GUM 4.3.7). */
    return wm_value ((range.low + range.high) / 2,
                     (range.high - range.low) / (2 * sqrt (3.0)));
  return wm_exact (isfinite (range.low) ? range.low : 0);
}

void
wm_worn_input_take (WmWornInput *input, WmMeasurement *reading, WmPiece *piece,
                    WmTrade *trade, const WmChecklistItem *item)
{
  double u = reading->uncertainty_mm, u_made = reading->as_made_uncertainty_mm;

  wm_worn_input_init (input);
  input->value_mm = wm_value (reading->value_mm, isfinite (u) ? u : 0);
  input->as_made_mm = wm_value (reading->as_made_mm, isfinite (u_made) ? u_made : 0);
  input->section = reading->section;
  input->width_mm = reading->width_mm;
  input->quantity = reading->quantity;
  if (piece != NULL)
    input->yield_mpa = wm_worn_yield (trade, piece->metal);
  if (item != NULL)
    input->limits = &item->limits;
}

/* ---- sections -------------------------------------------------------------------- */

static gboolean
is_kind (const WmWornInput *input, const char *key)
{
  return g_str_equal (wm_section_kind_find (input->section)->key, key);
}

/* As made and as worn; FALSE: a size is missing. */
static gboolean
make_sections (const WmWornInput *input, WmSection *made, WmSection *worn)
{
  WmValue width = wm_exact (input->width_mm), none = wm_exact (0);
  WmValue new_mm = input->as_made_mm, now_mm = input->value_mm;

  if (is_kind (input, "round"))
    {
      *made = (WmSection) { WM_SECTION_ROUND, none, new_mm, none };
      *worn = (WmSection) { WM_SECTION_FLATTED, new_mm, now_mm, none };
      return TRUE;
    }
  if (is_kind (input, "ring-in-ring"))
    {
      /* A mate of the same wire bent as tight as it goes, until its radius is given. */
      WmValue bow = isfinite (input->width_mm) ? width : wm_exact (new_mm.value);

      *made = (WmSection) { WM_SECTION_ROUND, none, new_mm, none };
      *worn = (WmSection) { WM_SECTION_SADDLE, new_mm, now_mm, bow };
      return TRUE;
    }
  if (!isfinite (input->width_mm))
    return FALSE;
  made->shape = is_kind (input, "oval")        ? WM_SECTION_OVAL
                : is_kind (input, "rectangle") ? WM_SECTION_RECTANGLE
                : is_kind (input, "d")         ? WM_SECTION_D
                                               : WM_SECTION_HALF_ROUND;
  made->width_mm = width;
  made->height_mm = new_mm;
  made->extra_mm = none;
  *worn = *made;
  worn->height_mm = now_mm;
  if (made->shape == WM_SECTION_D)
    {
      /* A dome of half the width on straight sides; sides wear in the same share. */
      double sides = MAX (new_mm.value - width.value / 2, new_mm.value / 4);

      made->extra_mm = wm_exact (sides);
      worn->extra_mm = wm_exact (sides * now_mm.value / new_mm.value);
    }
  return TRUE;
}

static void
reckon_left (const WmWornInput *input, WmWorn *out)
{
  WmSection made, worn;
  WmSectionLeft left;

  if (!(input->as_made_mm.value > 0) || !(input->value_mm.value > 0)
      || !make_sections (input, &made, &worn))
    {
      out->result = WM_MISSING;
      out->which = input->as_made_mm.value > 0 ? "width" : "made_height";
      return;
    }
  out->result = wm_section_left (&made, &worn, input->yield_mpa, &left, &out->which);
  if (out->result != WM_OK)
    return;
  out->has_left = TRUE;
  out->thickness_left = left.height_left;
  out->pull_left = left.area_left;
  out->bending_left = left.bending_left;
  out->stiffness_left = left.stiff_left;
  out->straight_n = left.pull_left_n;
}

static void
reckon_ring (const WmWornInput *input, WmWorn *out)
{
  WmRingLoad load;

  if (!isfinite (input->inside_mm) || !(input->yield_mpa.value > 0)
      || !(is_kind (input, "round") || is_kind (input, "ring-in-ring"))
      || wm_ring_load (wm_exact (input->inside_mm), input->value_mm, input->yield_mpa,
                       wm_exact (0), &load, NULL)
             != WM_OK)
    return;
  out->has_ring = TRUE;
  out->open_n = load.open_pull_n;
  out->soldered_n = load.closed_limit_n;
}

/* ---- the severity it points to ---------------------------------------------------- */

/* The share rule of the reckoning room, for checks without levels of their own. */
static const WmLimits remaining = { "remaining",
                                    { WM_BOUND_BELOW, 0.80 },
                                    { WM_BOUND_BELOW, 0.60 },
                                    { WM_BOUND_BELOW, 0.40 } };

/* What of the reading the check's levels are told in, with its standard uncertainty. */
static gboolean
find_measure (const WmWornInput *input, const WmWorn *wear, const WmLimits **limits,
              WmValue *measure, gboolean *by_share)
{
  const char *word = input->limits != NULL ? input->limits->measure : NULL;
  const char *quantity = input->quantity != NULL ? input->quantity : "thickness";

  *limits = word != NULL ? input->limits : &remaining;
  *by_share = TRUE;
  *measure = wear->thickness_left;
  if (word == NULL)
    return wear->has_left && g_str_equal (quantity, "thickness");
  if (g_str_equal (word, "remaining") || g_str_equal (word, "height_share"))
    return wear->has_left;
  if (g_str_equal (word, "cut_share"))
    {
      measure->value = 1 - measure->value;
      return wear->has_left;
    }
  *by_share = FALSE;
  *measure = input->value_mm;
  return g_str_has_suffix (word, "_mm") && isfinite (measure->value);
}

/* Between which numbers this level lies. */
static void
find_bounds (const WmLimits *limits, WmSeverity level, double *from, double *to)
{
  const WmBound bounds[] = { limits->watch, limits->repair, limits->no_wear };

  *from = *to = NAN;
  for (int i = 0; i < 3; i++)
    {
      gboolean begins_here = i == (int)level - WM_SEVERITY_WATCH;
      gboolean ends_here = i >= (int)level - WM_SEVERITY_WATCH + 1;

      if (bounds[i].side == WM_BOUND_BELOW)
        {
          if (begins_here)
            *to = bounds[i].value;
          else if (ends_here && isnan (*from))
            *from = bounds[i].value;
        }
      else if (bounds[i].side == WM_BOUND_ABOVE)
        {
          if (begins_here)
            *from = bounds[i].value;
          else if (ends_here && isnan (*to))
            *to = bounds[i].value;
        }
    }
}

static void
reckon_suggestion (const WmWornInput *input, WmWorn *out)
{
  const WmLimits *limits;
  WmValue measure;
  double expanded;
  gboolean by_share;

  if (!find_measure (input, out, &limits, &measure, &by_share))
    return;
  expanded = WM_COVERAGE_FACTOR * measure.u;
  if (!wm_limits_judge (limits, measure.value - expanded, &out->at_low)
      || !wm_limits_judge (limits, measure.value + expanded, &out->at_high))
    return;
  out->has_suggestion = TRUE;
  out->by_share = by_share;
  out->severity = MAX (out->at_low, out->at_high);
  find_bounds (limits, out->severity, &out->from, &out->to);
}

void
wm_worn_reckon (const WmWornInput *input, WmWorn *out)
{
  *out = (WmWorn) { .result = WM_MISSING, .straight_n = { NAN, 0 } };
  if (!isfinite (input->value_mm.value))
    {
      out->which = "height";
      return;
    }
  reckon_left (input, out);
  reckon_ring (input, out);
  reckon_suggestion (input, out);
}

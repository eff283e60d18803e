/* reckon-prefill.c: what the record says already, for the inputs of a computation
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "report/reckon-prefill.h"

#include <math.h>
#include <string.h>

/* ---- numbers as the topics read them --------------------------------------------- */

static char *
number_text (double value, double u)
{
  char number[G_ASCII_DTOSTR_BUF_SIZE], doubt[G_ASCII_DTOSTR_BUF_SIZE];

  if (!isfinite (value))
    return NULL;
  g_ascii_formatd (number, sizeof number, "%.6g", value);
  if (!(u > 0))
    return g_strdup (number);
  g_ascii_formatd (doubt, sizeof doubt, "%.2g", u);
  return g_strdup_printf ("%s±%s", number, doubt);
}

/* Half a range over the root of three: as command/ and GUM 4.3.7 have it. */
static char *
range_text (const WmRange *range, double factor)
{
  double half = (range->high - range->low) / 2;

  return number_text ((range->low + half) * factor, half * factor / sqrt (3.0));
}

static char *
day_text (long day)
{
  WmDate date = wm_day_to_date (day);

  return g_strdup_printf ("%04d-%02d-%02d", date.year, date.month, date.day);
}

/* ---- the metal --------------------------------------------------------------------- */

static gboolean
is_spring (const WmTopic *topic)
{
  return g_str_equal (topic->name, "tongue") || g_str_equal (topic->name, "catch");
}

/* Near a joint the metal is soft: where it was soldered, annealed is the careful value;
 * a tongue or catch is used hardened. */
static char *
metal_text (const WmPrefill *self, const WmTopic *topic, const char *name)
{
  const WmMetal *metal = self->piece->metal != NULL
                             ? wm_trade_find_metal (self->trade, self->piece->metal)
                             : NULL;

  if (metal == NULL)
    return NULL;
  if (g_str_equal (name, "density"))
    return range_text (&metal->density, 1);
  if (g_str_equal (name, "modulus_mpa"))
    return range_text (&metal->modulus_gpa, 1000);
  if (g_str_equal (name, "yield_annealed_mpa"))
    return range_text (&metal->yield_annealed_mpa, 1);
  if (g_str_equal (name, "yield_mpa"))
    return range_text (
        is_spring (topic) ? &metal->yield_hard_mpa : &metal->yield_annealed_mpa, 1);
  return NULL;
}

/* ---- the reading ------------------------------------------------------------------- */

/* The section's name in the record against the topic's word for it as it is now. */
static char *
shape_text (const WmMeasurement *reading)
{
  static const char *const shapes[][2] = {
    { "round", "flatted" },       { "ring-in-ring", "saddle" },   { "oval", "oval" },
    { "rectangle", "rectangle" }, { "half-round", "half-round" }, { "d", "d" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (shapes); i++)
    if (g_strcmp0 (reading->section, shapes[i][0]) == 0)
      return g_strdup (shapes[i][1]);
  return NULL;
}

static char *
reading_text (const WmPrefill *self, const WmTopic *topic, const char *name)
{
  const WmMeasurement *r = self->reading;
  gboolean is_mated;

  if (r == NULL)
    return NULL;
  is_mated = g_strcmp0 (r->section, "ring-in-ring") == 0;
  if (g_str_equal (topic->name, "section") && g_str_equal (name, "shape"))
    return shape_text (r);
  if (g_str_equal (topic->name, "section") && g_str_equal (name, "extra") && is_mated)
    return number_text (r->as_made_mm, 0);
  if (g_str_equal (name, "made_height") || g_str_equal (name, "made"))
    return number_text (r->as_made_mm, r->as_made_uncertainty_mm);
  if (g_str_equal (name, "height") || g_str_equal (name, "left")
      || g_str_equal (name, "kept"))
    return number_text (r->value_mm, r->uncertainty_mm);
  if (g_str_equal (name, "made_width"))
    return number_text (r->width_mm, 0);
  if (g_str_equal (name, "wire"))
    return g_str_equal (topic->name, "ring-load")
               ? number_text (r->value_mm, r->uncertainty_mm)
               : number_text (r->as_made_mm, 0);
  if (g_str_equal (name, "share") && r->as_made_mm > 0 && r->uncertainty_mm >= 0)
    return number_text (r->value_mm / r->as_made_mm, r->uncertainty_mm / r->as_made_mm);
  return NULL;
}

/* ---- wear ----------------------------------------------------------------------------
 */

static const WmWear *
find_wear (const WmPrefill *self)
{
  return self->check != NULL
             ? wm_outlook_find (self->outlook, wm_record_get_id (WM_RECORD (self->check)))
             : NULL;
}

static char *
visits_text (const WmWear *wear)
{
  GString *rows = g_string_new (NULL);

  for (guint i = 0; i < wear->points->len; i++)
    {
      const WmWearPoint *point = &g_array_index (wear->points, WmWearPoint, i);
      char value[G_ASCII_DTOSTR_BUF_SIZE], u[G_ASCII_DTOSTR_BUF_SIZE];
      g_autofree char *day = day_text (point->day);

      if (point->is_old || (point->is_after && wear->is_renewed))
        continue;
      g_ascii_formatd (value, sizeof value, "%.6g", point->left_mm.value);
      g_ascii_formatd (u, sizeof u, "%.3g", point->left_mm.u);
      g_string_append_printf (rows, "%s%s:%s:%s", rows->len > 0 ? "," : "", day, value,
                              u);
    }
  return g_string_free (rows, rows->len == 0);
}

/* Years of the forecast's axis at the next check. */
static double
next_years (const WmPrefill *self)
{
  return self->outlook->has_next ? self->outlook->next.due_day / WM_DAYS_PER_YEAR : NAN;
}

/* What the line foretells for the day of the next check. */
static char *
expected_text (const WmPrefill *self, const WmWear *wear)
{
  double central, lower, upper, at = next_years (self);

  if (!wear->has_forecast || isnan (at))
    return NULL;
  wm_forecast_band (&wear->forecast, at, &central, &lower, &upper);
  return number_text (central, (central - lower) / wear->forecast.k);
}

static char *
wear_text (const WmPrefill *self, const WmTopic *topic, const char *name)
{
  const WmWear *wear = find_wear (self);

  if (wear == NULL)
    return NULL;
  if (g_str_equal (name, "visits"))
    return visits_text (wear);
  if (g_str_equal (name, "minimum"))
    return number_text (wear->minimum_mm, 0);
  if (g_str_equal (topic->name, "chance-margin") && g_str_equal (name, "expected"))
    return expected_text (self, wear);
  return NULL;
}

static char *
next_check_text (const WmPrefill *self, const char *name)
{
  const WmOutlook *out = self->outlook;
  GString *factors;

  if (g_str_equal (name, "customary_months"))
    return out->months > 0 ? g_strdup_printf ("%d", out->months) : NULL;
  if (g_str_equal (name, "visit"))
    return out->has_next
               ? day_text (wm_day_add_months (out->next.due_day, -out->next.months))
               : NULL;
  if (!g_str_equal (name, "factors"))
    return NULL;
  factors = g_string_new (NULL);
  for (guint i = 0; i < out->reasons->len; i++)
    {
      const WmIntervalReason *reason = out->reasons->pdata[i];
      char factor[G_ASCII_DTOSTR_BUF_SIZE];

      if (!isfinite (reason->factor))
        continue;
      g_ascii_formatd (factor, sizeof factor, "%g", reason->factor);
      g_string_append_printf (factors, "%s%s", factors->len > 0 ? "," : "", factor);
    }
  return g_string_free (factors, factors->len == 0);
}

/* ---- stones and chances --------------------------------------------------------------
 */

static gint64
count_stones (const WmPrefill *self)
{
  gint64 n = 0;

  for (guint i = 0; i < self->stones->len; i++)
    {
      WmStoneGroup *group = self->stones->pdata[i];

      if (group->count != WM_UNKNOWN)
        n += group->count;
    }
  return n;
}

/* The tables' key of a cut against the topic's. */
static char *
cut_text (const char *cut)
{
  g_autofree char *key = NULL;

  if (cut == NULL)
    return NULL;
  if (g_str_equal (cut, "emerald"))
    return g_strdup ("emerald-cut");
  if (g_str_equal (cut, "baguette_tapered"))
    return g_strdup ("tapered");
  key = g_strdelimit (g_strdup (cut), "_", '-');
  return g_steal_pointer (&key);
}

static char *
stone_text (const WmPrefill *self, const WmTopicInput *input)
{
  WmStoneGroup *group;
  const char *name = input->name;

  if (self->stones->len == 0)
    return NULL;
  group = self->stones->pdata[0];
  if (g_str_equal (name, "cut"))
    {
      g_autofree char *cut = cut_text (group->cut);

      for (int i = 0; cut != NULL && input->choices[i] != NULL; i++)
        if (g_str_equal (input->choices[i], cut))
          return g_steal_pointer (&cut);
      return NULL;
    }
  if (g_str_equal (name, "length"))
    return number_text (group->length_mm, 0);
  if (g_str_equal (name, "width"))
    return number_text (group->width_mm, 0);
  if (g_str_equal (name, "depth"))
    return number_text (group->depth_mm, 0);
  if (g_str_equal (name, "specific_gravity"))
    {
      const WmStone *stone = group->species != NULL
                                 ? wm_trade_find_stone (self->trade, group->species)
                                 : NULL;

      return stone != NULL ? number_text ((stone->sg.low + stone->sg.high) / 2, 0) : NULL;
    }
  return NULL;
}

/* Under five cases the archive gives no share (reckon/chance.h). */
static double
archive_share (const WmPrefill *self)
{
  return self->seen >= 5 ? (double)self->failed / (double)self->seen : NAN;
}

static char *
chance_text (const WmPrefill *self, const WmTopic *topic, const char *name)
{
  const WmWear *wear = find_wear (self);
  double chance = archive_share (self);

  if (g_str_equal (topic->name, "evidence"))
    {
      if (self->check == NULL)
        return NULL;
      if (g_str_equal (name, "failed"))
        return g_strdup_printf ("%" G_GINT64_FORMAT, self->failed);
      if (g_str_equal (name, "seen"))
        return g_strdup_printf ("%" G_GINT64_FORMAT, self->seen);
      return NULL;
    }
  if (g_str_equal (topic->name, "chance") && g_str_equal (name, "count"))
    return count_stones (self) > 0
               ? g_strdup_printf ("%" G_GINT64_FORMAT, count_stones (self))
               : NULL;
  if (g_str_equal (topic->name, "chance") && g_str_equal (name, "p"))
    return number_text (chance, 0);
  if (!g_str_equal (topic->name, "value-at-risk") || !g_str_equal (name, "items")
      || self->piece->declared_minor == WM_UNKNOWN)
    return NULL;
  /* The open part's own wear knows more than the archive's mean. */
  if (wear != NULL && wear->has_forecast && !wear->is_renewed
      && !isnan (next_years (self)))
    chance = wm_forecast_chance (&wear->forecast, next_years (self));
  if (isnan (chance))
    return NULL;
  {
    g_autofree char *p = number_text (chance, 0);

    return g_strdup_printf ("%s:%" G_GINT64_FORMAT, p, self->piece->declared_minor);
  }
}

/* ---- all
 * -------------------------------------------------------------------------------- */

char *
wm_prefill_text (const WmPrefill *self, const WmTopic *topic, const WmTopicInput *input)
{
  char *text;

  if (g_str_equal (topic->name, "stone-weight"))
    return stone_text (self, input);
  if (g_str_equal (topic->name, "next-check")
      && (text = next_check_text (self, input->name)) != NULL)
    return text;
  text = chance_text (self, topic, input->name);
  if (text == NULL)
    text = wear_text (self, topic, input->name);
  if (text == NULL)
    text = metal_text (self, topic, input->name);
  if (text == NULL && !g_str_has_prefix (topic->name, "bridge"))
    text = reading_text (self, topic, input->name);
  return text;
}

static WmMeasurement *
find_reading (GPtrArray *readings, const WmId *check_id)
{
  WmMeasurement *last = NULL;

  for (guint i = 0; i < readings->len; i++)
    {
      WmMeasurement *reading = readings->pdata[i];

      if (wm_id_equal (&reading->check_id, check_id) && reading->value_mm > 0
          && g_strcmp0 (reading->moment, WM_PHOTO_AFTER) != 0)
        last = reading;
    }
  return last != NULL ? g_object_ref (last) : NULL;
}

static gboolean
load_check (WmPrefill *self, WmArchive *archive, const WmId *visit_id,
            const WmId *check_id, GError **error)
{
  g_autoptr (GPtrArray) readings = NULL;

  self->check = wm_archive_get (archive, WM_KIND_CHECK, check_id, error);
  if (self->check == NULL)
    return FALSE;
  readings = wm_archive_list_of_visit (archive, WM_KIND_MEASUREMENT, visit_id, error);
  if (readings == NULL)
    return FALSE;
  self->reading = find_reading (readings, check_id);
  return self->check->item == NULL
         || wm_archive_count_answers (archive, self->check->item, &self->seen,
                                      &self->failed, error);
}

WmPrefill *
wm_prefill_new (WmArchive *archive, WmTrade *trade, const WmId *visit_id,
                const WmId *check_id, long today, GError **error)
{
  g_autoptr (WmVisit) visit = wm_archive_get (archive, WM_KIND_VISIT, visit_id, error);
  g_autoptr (WmPrefill) self = NULL;

  if (visit == NULL)
    return NULL;
  self = g_new0 (WmPrefill, 1);
  self->trade = trade;
  self->piece = wm_archive_get (archive, WM_KIND_PIECE, &visit->piece_id, error);
  if (self->piece == NULL)
    return NULL;
  self->outlook = wm_outlook_load (archive, trade, visit_id, today, error);
  if (self->outlook == NULL)
    return NULL;
  self->stones =
      wm_archive_list (archive, WM_KIND_STONE_GROUP, "piece_id", &visit->piece_id, error);
  if (self->stones == NULL
      || (check_id != NULL && !load_check (self, archive, visit_id, check_id, error)))
    return NULL;
  return g_steal_pointer (&self);
}

void
wm_prefill_free (WmPrefill *self)
{
  g_clear_object (&self->piece);
  g_clear_pointer (&self->outlook, wm_outlook_free);
  g_clear_object (&self->check);
  g_clear_object (&self->reading);
  g_clear_pointer (&self->stones, g_ptr_array_unref);
  g_free (self);
}

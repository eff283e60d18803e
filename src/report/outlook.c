/* outlook.c: how the parts of a piece wear over its visits, and when it should come back
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "report/outlook.h"

#include <math.h>
#include <string.h>

#include "reckon/suggest.h"
#include "report/outlook-private.h"

/* What was measured beside the uncertainty it was entered with; a reading without one is
 * taken as good as a sliding gauge read by hand (0.05 mm; common practice, no source). */
#define WM_UNSAID_U_MM 0.05

static void
free_wear (gpointer data)
{
  WmWear *wear = data;

  g_free (wear->item);
  g_free (wear->title);
  g_free (wear->quantity);
  g_array_unref (wear->points);
  g_free (wear);
}

void
wm_outlook_free (WmOutlook *self)
{
  g_ptr_array_unref (self->wears);
  g_ptr_array_unref (self->reasons);
  g_free (self);
}

static long
day_of_time (gint64 at_s)
{
  g_autoptr (GDateTime) at = g_date_time_new_from_unix_local (at_s);
  WmDate date = { g_date_time_get_year (at), g_date_time_get_month (at),
                  g_date_time_get_day_of_month (at) };
  long day = 0;

  wm_day_from_date (date, &day);
  return day;
}

static double
years_of_day (long day)
{
  return day / WM_DAYS_PER_YEAR;
}

/* ---- readings of all visits --------------------------------------------------- */

static WmCheck *
find_check (GPtrArray *checks, const WmId *id)
{
  for (guint i = 0; i < checks->len; i++)
    if (wm_id_equal (wm_record_get_id (checks->pdata[i]), id))
      return checks->pdata[i];
  return NULL;
}

static WmWear *
get_wear (WmOutlookLoad *load, WmCheck *check, WmMeasurement *reading)
{
  const char *quantity = reading->quantity != NULL ? reading->quantity : "";
  const WmChecklistItem *item = wm_trade_find_item (load->trade, check->item);
  static const char *const none[] = { NULL };
  /* The named levels that many items share are our own proposal (limits.txt). */
  static const char *const ours[] = { "P", NULL };
  WmWear *wear;

  for (guint i = 0; i < load->out->wears->len; i++)
    {
      wear = load->out->wears->pdata[i];
      if (g_strcmp0 (wear->item, check->item) == 0
          && g_strcmp0 (wear->quantity, quantity) == 0)
        return wear;
    }
  wear = g_new0 (WmWear, 1);
  wear->item = g_strdup (check->item);
  wear->title = g_strdup (check->title);
  wear->quantity = g_strdup (quantity);
  wear->points = g_array_new (FALSE, FALSE, sizeof (WmWearPoint));
  wear->made_mm = NAN;
  wear->minimum_mm = NAN;
  wear->sources = item == NULL ? none : item->rule != NULL ? ours : item->sources;
  g_ptr_array_add (load->out->wears, wear);
  return wear;
}

/* Of several readings of one moment of one visit the thinnest stands. */
static void
add_point (WmWear *wear, WmVisit *visit, WmMeasurement *reading)
{
  gint64 at_s = reading->measured_at_s != WM_UNKNOWN ? reading->measured_at_s
                                                     : visit->taken_in_at_s;
  WmWearPoint point = { .day = day_of_time (at_s),
                        .left_mm = { reading->value_mm, reading->uncertainty_mm },
                        .is_after = g_strcmp0 (reading->moment, WM_PHOTO_AFTER) == 0 };

  if (!(point.left_mm.u > 0))
    point.left_mm.u = WM_UNSAID_U_MM;
  for (guint i = 0; i < wear->points->len; i++)
    {
      WmWearPoint *other = &g_array_index (wear->points, WmWearPoint, i);

      if (other->day == point.day && other->is_after == point.is_after)
        {
          if (point.left_mm.value < other->left_mm.value)
            *other = point;
          return;
        }
    }
  g_array_append_val (wear->points, point);
}

static void
end_series (WmWear *wear)
{
  for (guint i = 0; i < wear->points->len; i++)
    {
      WmWearPoint *point = &g_array_index (wear->points, WmWearPoint, i);

      point->is_old = point->is_old || !point->is_after;
    }
}

/* What a reading says of the part itself: its size as made, and where a new one begins.
 */
static void
note_change (WmWear *wear, WmMeasurement *reading, gboolean is_after, gboolean is_shown,
             gboolean is_mended)
{
  if (reading->as_made_mm > 0 && !is_after)
    wear->made_mm = reading->as_made_mm;
  if (is_mended && is_shown)
    wear->is_renewed = TRUE;
  else if (is_mended)
    end_series (wear);
  /* A new wire may be another size than the old one. */
  if (is_after && !is_shown && g_array_index (wear->points, WmWearPoint, 0).is_old)
    wear->made_mm = reading->value_mm;
}

/* Readings before the work, then the new series of what was mended, then readings after
 * it. */
static gboolean
add_visit (WmOutlookLoad *load, WmVisit *visit, GError **error)
{
  const WmId *id = wm_record_get_id (WM_RECORD (visit));
  gboolean is_shown = wm_id_equal (id, wm_record_get_id (WM_RECORD (load->shown)));
  g_autoptr (GPtrArray) checks =
      wm_archive_list (load->archive, WM_KIND_CHECK, "visit_id", id, error);
  g_autoptr (GPtrArray) readings =
      checks != NULL
          ? wm_archive_list_of_visit (load->archive, WM_KIND_MEASUREMENT, id, error)
          : NULL;
  g_autoptr (GPtrArray) remedies =
      readings != NULL
          ? wm_archive_list_of_visit (load->archive, WM_KIND_REMEDY, id, error)
          : NULL;

  if (remedies == NULL)
    return FALSE;
  for (int after = 0; after < 2; after++)
    for (guint i = 0; i < readings->len; i++)
      {
        WmMeasurement *reading = readings->pdata[i];
        WmCheck *check = find_check (checks, &reading->check_id);
        gboolean is_after = g_strcmp0 (reading->moment, WM_PHOTO_AFTER) == 0;
        WmWear *wear;

        if (check == NULL || check->item == NULL || !(reading->value_mm > 0)
            || is_after != after)
          continue;
        wear = get_wear (load, check, reading);
        add_point (wear, visit, reading);
        if (is_shown)
          wear->check_id = *wm_record_get_id (WM_RECORD (check));
        note_change (wear, reading, is_after, is_shown,
                     !is_after && wm_outlook_is_mended (check, remedies));
      }
  return TRUE;
}

/* ---- the fit ------------------------------------------------------------------- */

/* Where the levels of the item say "do not wear" (else "repair"), mm; NaN: nowhere. */
static double
find_minimum (const WmChecklistItem *item, double made_mm)
{
  const WmThresholds usual = WM_THRESHOLDS_DEFAULT;
  const WmBound *bound;

  if (item == NULL || item->limits.measure == NULL)
    return usual.no_wear * made_mm;
  bound = item->limits.no_wear.side == WM_BOUND_BELOW ? &item->limits.no_wear
                                                      : &item->limits.repair;
  if (bound->side != WM_BOUND_BELOW)
    return NAN;
  if (g_str_equal (item->limits.measure, "remaining")
      || g_str_equal (item->limits.measure, "height_share"))
    return bound->value * made_mm;
  if (g_str_has_suffix (item->limits.measure, "_mm"))
    return bound->value;
  return NAN;
}

/* Readings that belong to one unmended part up to the shown visit. */
static int
collect_fit (const WmWear *wear, WmVisitReading *readings)
{
  int n = 0;

  for (guint i = 0; i < wear->points->len && n < WM_FORECAST_MAX_VISITS; i++)
    {
      const WmWearPoint *point = &g_array_index (wear->points, WmWearPoint, i);

      /* What was measured after this visit's own work is another part already. */
      if (point->is_old || (point->is_after && wear->is_renewed))
        continue;
      readings[n++] = (WmVisitReading) { years_of_day (point->day), point->left_mm };
    }
  return n;
}

static int
compare_points (gconstpointer a, gconstpointer b)
{
  const WmWearPoint *one = a, *two = b;

  if (one->day != two->day)
    return one->day < two->day ? -1 : 1;
  return one->is_after - two->is_after;
}

static void
fit_wear (WmOutlookLoad *load, WmWear *wear)
{
  WmVisitReading readings[WM_FORECAST_MAX_VISITS];
  const char *which = NULL;

  g_array_sort (wear->points, compare_points);
  wear->minimum_mm =
      find_minimum (wm_trade_find_item (load->trade, wear->item), wear->made_mm);
  wear->n_fit = collect_fit (wear, readings);
  wear->has_forecast = wear->minimum_mm > 0
                       && wm_forecast (readings, wear->n_fit, wear->minimum_mm, -1.0,
                                       &wear->forecast, &which)
                              == WM_OK;
}

/* Only what gets thinner: a gap or a play grows. */
static gboolean
is_thinning (const WmWear *wear)
{
  const WmWearPoint *last =
      &g_array_index (wear->points, WmWearPoint, wear->points->len - 1);

  return wear->minimum_mm > 0
         && (last->is_after || isnan (wear->made_mm)
             || last->left_mm.value <= wear->made_mm + 2 * last->left_mm.u);
}

static double
rank_of (const WmWear *wear)
{
  if (!wear->has_forecast)
    return 2e6;
  if (wear->forecast.kind == WM_FORECAST_DUE_NOW)
    return 0;
  return isfinite (wear->forecast.careful_years) ? wear->forecast.careful_years : 1e6;
}

static int
compare_wears (gconstpointer a, gconstpointer b)
{
  const WmWear *one = *(WmWear *const *)a, *two = *(WmWear *const *)b;
  double x = rank_of (one) + 1e7 * one->is_renewed;
  double y = rank_of (two) + 1e7 * two->is_renewed;

  return x < y ? -1 : x > y;
}

/* ---- the next check -------------------------------------------------------------- */

char *
wm_outlook_setting (const char *type, WmWorn worn)
{
  return g_strdup_printf (WM_SETTING_CHECK_MONTHS "%s-%s", type,
                          worn == WM_WORN_SELDOM  ? "seldom"
                          : worn == WM_WORN_OFTEN ? "often"
                                                  : "daily");
}

int
wm_outlook_months (WmArchive *archive, const WmPieceType *type, WmWorn worn,
                   gboolean *out_is_shop)
{
  g_autofree char *name = wm_outlook_setting (type->key, worn);
  g_autofree char *setting = wm_archive_get_setting (archive, name);
  const WmRange *range = worn == WM_WORN_SELDOM  ? &type->months_seldom
                         : worn == WM_WORN_OFTEN ? &type->months_often
                                                 : &type->months_daily;
  gint64 months = 0;

  if (out_is_shop != NULL)
    *out_is_shop = FALSE;
  if (setting != NULL && g_ascii_string_to_signed (setting, 10, 1, 120, &months, NULL))
    {
      if (out_is_shop != NULL)
        *out_is_shop = TRUE;
      return (int)months;
    }
  return isfinite (range->low) ? (int)range->low : 0;
}

/* A first check after so many months is the same as a factor that leads there. */
static int
collect_factors (const WmOutlook *out, double *factors)
{
  double months = out->months;
  int n = 0;

  for (guint i = 0; i < out->reasons->len; i++)
    {
      const WmIntervalReason *reason = out->reasons->pdata[i];

      if (!isfinite (reason->factor))
        continue;
      factors[n++] = reason->factor;
      months *= reason->factor;
    }
  for (guint i = 0; i < out->reasons->len; i++)
    {
      const WmIntervalReason *reason = out->reasons->pdata[i];

      if (isfinite (reason->months) && reason->months < months)
        {
          factors[n++] = reason->months / months;
          months = reason->months;
        }
    }
  return n;
}

static void
reckon_next (WmOutlookLoad *load, long base_day)
{
  WmOutlook *out = load->out;
  double factors[32];
  const WmWear *fastest = NULL;
  const char *which = NULL;
  WmDate date;

  if (out->months < 1 || out->reasons->len > G_N_ELEMENTS (factors))
    return;
  for (guint i = 0; i < out->wears->len && fastest == NULL; i++)
    {
      const WmWear *wear = out->wears->pdata[i];

      if (wear->has_forecast && !wear->is_renewed)
        fastest = wear;
    }
  out->has_next =
      wm_next_check (fastest != NULL ? &fastest->forecast : NULL, base_day, out->months,
                     factors, collect_factors (out, factors), &out->next, &which)
      == WM_OK;
  if (!out->has_next)
    return;
  if (out->next.reason == WM_CHECK_FORECAST || out->next.reason == WM_CHECK_DUE_NOW)
    out->decides = fastest;
  date = wm_day_to_date (out->next.due_day);
  g_snprintf (out->due_on, sizeof out->due_on, "%04d-%02d-%02d", date.year, date.month,
              date.day);
}

static void
choose_months (WmOutlookLoad *load)
{
  const WmPieceType *type =
      load->piece->type != NULL
          ? wm_trade_find_piece_type (load->trade, load->piece->type)
          : NULL;

  load->out->worn = wm_outlook_read_worn (load->piece->worn);
  if (type == NULL)
    return;
  load->out->months =
      wm_outlook_months (load->archive, type, load->out->worn, &load->out->is_shop_rule);
  if (type->sources[0] != NULL)
    {
      const WmSource *source = wm_trade_find_source (load->trade, type->sources[0]);

      load->out->source = source != NULL ? source->words : NULL;
    }
}

static gboolean
add_visits (WmOutlookLoad *load, GError **error)
{
  g_autoptr (GPtrArray) visits =
      wm_archive_list (load->archive, WM_KIND_VISIT, "piece_id",
                       wm_record_get_id (WM_RECORD (load->piece)), error);

  if (visits == NULL)
    return FALSE;
  for (guint i = 0; i < visits->len; i++)
    {
      WmVisit *visit = visits->pdata[i];

      if (!add_visit (load, visit, error))
        return FALSE;
      if (wm_id_equal (wm_record_get_id (WM_RECORD (visit)),
                       wm_record_get_id (WM_RECORD (load->shown))))
        break;
    }
  return TRUE;
}

WmOutlook *
wm_outlook_load (WmArchive *archive, WmTrade *trade, const WmId *visit_id, long today,
                 GError **error)
{
  g_autoptr (WmVisit) visit = wm_archive_get (archive, WM_KIND_VISIT, visit_id, error);
  g_autoptr (WmPiece) piece =
      visit != NULL ? wm_archive_get (archive, WM_KIND_PIECE, &visit->piece_id, error)
                    : NULL;
  g_autoptr (WmOutlook) out = NULL;
  WmOutlookLoad load = { archive, trade, visit, piece, NULL };

  if (piece == NULL)
    return NULL;
  load.out = out = g_new0 (WmOutlook, 1);
  out->wears = g_ptr_array_new_with_free_func (free_wear);
  out->reasons = g_ptr_array_new ();
  if (!add_visits (&load, error) || !wm_outlook_add_check_reasons (&load, error))
    return NULL;

  for (guint i = 0; i < out->wears->len; i++)
    fit_wear (&load, out->wears->pdata[i]);
  for (guint i = out->wears->len; i > 0; i--)
    if (!is_thinning (out->wears->pdata[i - 1]))
      g_ptr_array_remove_index (out->wears, i - 1);
  g_ptr_array_sort (out->wears, compare_wears);
  wm_outlook_add_piece_reasons (&load);
  choose_months (&load);
  reckon_next (&load, visit->handed_back_at_s != WM_UNKNOWN
                          ? day_of_time (visit->handed_back_at_s)
                          : today);
  return g_steal_pointer (&out);
}

const WmWear *
wm_outlook_find (const WmOutlook *self, const WmId *check_id)
{
  for (guint i = 0; i < self->wears->len; i++)
    {
      const WmWear *wear = self->wears->pdata[i];

      if (wm_id_equal (&wear->check_id, check_id))
        return wear;
    }
  return NULL;
}

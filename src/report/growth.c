/* growth.c: the same place measured on two visits, and what has changed
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "report/growth.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#include "report/photo-box.h"

void
wm_growth_found_clear (WmGrowthFound *self)
{
  g_clear_object (&self->earlier);
  g_clear_object (&self->later);
}

/* The last of @measurements of @check_id; @quantity (nullable): any. */
static WmMeasurement *
find_last (GPtrArray *measurements, const WmId *check_id, const char *quantity,
           const char *moment)
{
  WmMeasurement *last = NULL;

  for (guint i = 0; i < measurements->len; i++)
    {
      WmMeasurement *measurement = g_ptr_array_index (measurements, i);

      if (wm_id_equal (&measurement->check_id, check_id)
          && g_strcmp0 (measurement->moment, moment) == 0
          && (quantity == NULL || g_strcmp0 (measurement->quantity, quantity) == 0)
          && isfinite (measurement->value_mm) && isfinite (measurement->uncertainty_mm))
        last = measurement;
    }
  return last;
}

/* The reading an earlier visit left: what the work made of it, else as it came in. */
static WmMeasurement *
find_in_visit (WmArchive *archive, WmVisit *visit, WmCheck *check, const char *quantity)
{
  const WmId *id = wm_record_get_id (WM_RECORD (visit));
  g_autoptr (GPtrArray) checks =
      wm_archive_list_of_visit (archive, WM_KIND_CHECK, id, NULL);
  g_autoptr (GPtrArray) measurements =
      wm_archive_list_of_visit (archive, WM_KIND_MEASUREMENT, id, NULL);
  WmMeasurement *found = NULL;

  for (guint i = 0; checks != NULL && measurements != NULL && i < checks->len; i++)
    {
      WmCheck *other = g_ptr_array_index (checks, i);
      const WmId *other_id = wm_record_get_id (WM_RECORD (other));

      if (g_strcmp0 (other->item, check->item) != 0)
        continue;
      found = find_last (measurements, other_id, quantity, WM_PHOTO_AFTER);
      if (found == NULL)
        found = find_last (measurements, other_id, quantity, WM_PHOTO_BEFORE);
    }
  return found != NULL ? g_object_ref (found) : NULL;
}

/* Latest visit first. */
static int
compare_visits (gconstpointer a, gconstpointer b)
{
  const WmVisit *first = *(WmVisit *const *)a;
  const WmVisit *second = *(WmVisit *const *)b;

  return first->taken_in_at_s > second->taken_in_at_s   ? -1
         : first->taken_in_at_s < second->taken_in_at_s ? 1
                                                        : 0;
}

static WmMeasurement *
find_earlier (WmArchive *archive, WmVisitData *data, WmCheck *check, const char *quantity,
              gint64 *at_s)
{
  g_autoptr (GPtrArray) visits =
      wm_archive_list (archive, WM_KIND_VISIT, "piece_id", &data->visit->piece_id, NULL);
  WmMeasurement *found = NULL;

  if (visits == NULL)
    return NULL;
  g_ptr_array_sort (visits, compare_visits);
  for (guint i = 0; found == NULL && i < visits->len; i++)
    {
      WmVisit *visit = g_ptr_array_index (visits, i);

      if (visit->taken_in_at_s >= data->visit->taken_in_at_s)
        continue;
      *at_s = visit->taken_in_at_s;
      found = find_in_visit (archive, visit, check, quantity);
    }
  return found;
}

/* The photo a measurement was made on, or NULL. */
static WmPhoto *
find_photo (WmArchive *archive, WmMeasurement *measurement)
{
  g_autoptr (WmMark) mark = NULL;

  if (wm_id_is_none (&measurement->mark_id))
    return NULL;
  mark = wm_archive_get (archive, WM_KIND_MARK, &measurement->mark_id, NULL);
  return mark != NULL ? wm_archive_get (archive, WM_KIND_PHOTO, &mark->photo_id, NULL)
                      : NULL;
}

/* The scale's own uncertainty as a share of a length; 0 where it is not said. */
static double
scale_share (WmPhoto *photo)
{
  return photo->scale_mm > 0 && photo->scale_u_mm > 0
             ? photo->scale_u_mm / photo->scale_mm
             : 0;
}

/* Both by the same rule: what that is wrong by is in both readings. */
static double
find_shared (WmArchive *archive, const WmGrowthFound *found)
{
  g_autoptr (WmPhoto) earlier = find_photo (archive, found->earlier);
  g_autoptr (WmPhoto) later = find_photo (archive, found->later);

  if (earlier == NULL || later == NULL || earlier->scale_basis == NULL
      || g_strcmp0 (earlier->scale_basis, later->scale_basis) != 0)
    return 0;
  return MIN (scale_share (earlier), scale_share (later));
}

gboolean
wm_growth_find (WmArchive *archive, WmVisitData *data, WmCheck *check, WmGrowthFound *out)
{
  WmMeasurement *later;
  double shared;

  memset (out, 0, sizeof *out);
  if (check->item == NULL)
    return FALSE;
  later = find_last (data->measurements, wm_record_get_id (WM_RECORD (check)), NULL,
                     WM_PHOTO_BEFORE);
  if (later == NULL)
    return FALSE;
  out->earlier = find_earlier (archive, data, check, later->quantity, &out->earlier_at_s);
  if (out->earlier == NULL)
    return FALSE;
  out->later = g_object_ref (later);
  shared = find_shared (archive, out);
  out->shares_scale = shared > 0;
  if (wm_growth_between (wm_value (out->earlier->value_mm, out->earlier->uncertainty_mm),
                         wm_value (later->value_mm, later->uncertainty_mm), shared,
                         &out->growth, NULL)
      == WM_OK)
    return TRUE;
  wm_growth_found_clear (out);
  return FALSE;
}

static const char *
say (WmLanguage *language, const char *text)
{
  return language != NULL ? wm_say (language, text) : _ (text);
}

/* Which way it went: a thickness gets thinner, a play larger. */
static const char *
direction_words (WmLanguage *language, const WmGrowthFound *found)
{
  gboolean less = found->growth.change.value < 0;

  if (g_strcmp0 (found->later->quantity, "thickness") == 0)
    return less ? say (language, N_ ("thinner")) : say (language, N_ ("thicker"));
  if (g_strcmp0 (found->later->quantity, "length") == 0)
    return less ? say (language, N_ ("shorter")) : say (language, N_ ("longer"));
  return less ? say (language, N_ ("smaller")) : say (language, N_ ("larger"));
}

char *
wm_growth_words (WmArchive *archive, WmVisitData *data, WmCheck *check,
                 WmLanguage *language)
{
  WmGrowthFound found;
  g_autoptr (GDateTime) when = NULL;
  g_autofree char *year = NULL;
  g_autofree char *change = NULL;
  const char *scale;
  char *words;

  if (!wm_growth_find (archive, data, check, &found))
    return NULL;
  when = g_date_time_new_from_unix_local (found.earlier_at_s);
  year = when != NULL ? g_date_time_format (when, "%Y") : g_strdup ("?");
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
  change = found.growth.is_told
               ? g_strdup_printf (say (language, N_ ("%.2f ± %.2f mm %s")),
                                  fabs (found.growth.change.value),
                                  WM_COVERAGE_FACTOR * found.growth.change.u,
                                  direction_words (language, &found))
               : g_strdup_printf (
                   say (language, N_ ("no change beyond ± %.2f mm can be told")),
                   WM_COVERAGE_FACTOR * found.growth.change.u);
  scale = found.shares_scale
              ? say (language, N_ (" (what the rule itself is wrong by is in both)"))
              : "";
  words = g_strdup_printf (
      say (language, N_ ("%.2f ± %.2f mm, in %s %.2f ± %.2f mm: %s%s.")),
      found.later->value_mm, WM_COVERAGE_FACTOR * found.later->uncertainty_mm, year,
      found.earlier->value_mm, WM_COVERAGE_FACTOR * found.earlier->uncertainty_mm, change,
      scale);
#pragma GCC diagnostic pop
  wm_growth_found_clear (&found);
  return words;
}

/* outlook-words.c: the wear of a piece and its next check, in the customer's language
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "report/outlook.h"

#include <glib/gi18n.h>
#include <math.h>

#include "report/words.h"

char *
wm_wear_date (double years)
{
  WmDate date = wm_day_to_date (wm_day_from_years (0, years));

  return g_strdup_printf ("%04d-%02d-%02d", date.year, date.month, date.day);
}

/* The tables' reasons as the customer reads them; one that is not here is said in the
 * tables' own words. */
static const struct
{
  const char *key;
  const char *words; /* N_() */
} reason_words[] = {
  { "k_watch", N_ ("one place is to be watched") },
  { "k_repairfresh", N_ ("what was mended is looked at again soon") },
  { "k_refused", N_ ("a repair that was advised was not done") },
  { "k_hands", N_ ("it is worn at work or sport") },
  { "k_sleep", N_ ("it is worn day and night") },
  { "k_pool", N_ ("it is worn in the pool") },
  { "k_stack", N_ ("it is worn next to another piece or a watch") },
  { "k_soft", N_ ("its metal is soft") },
  { "k_old", N_ ("a part has worn by more than a fifth") },
};

static const char *
say_reason (WmLanguage *language, const WmIntervalReason *reason)
{
  for (guint i = 0; i < G_N_ELEMENTS (reason_words); i++)
    if (g_str_equal (reason->key, reason_words[i].key))
      return wm_say (language, reason_words[i].words);
  return wm_say (language, reason->reason);
}

static char *
join_reasons (const WmOutlook *self, WmLanguage *language)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < self->reasons->len; i++)
    {
      if (text->len > 0)
        g_string_append (text, "; ");
      g_string_append (text, say_reason (language, self->reasons->pdata[i]));
    }
  return g_string_free (text, FALSE);
}

static char *
say_forecast (const WmOutlook *self, WmLanguage *language)
{
  const WmWear *wear = self->decides;
  g_autofree char *pace = wm_words_mm (language, wear->forecast.loss_mm_year.value, 2);
  g_autofree char *least = wm_words_mm (language, wear->minimum_mm, 2);
  int months = self->next.months;

  /* Translators: months, part ("Jump rings"), mm, mm */
  return g_strdup_printf (
      wm_say_n (
          language,
          N_ ("In %d month: %s: %s thinner a year, and by then half of the careful "
              "time until %s are left will have passed."),
          N_ ("In %d months: %s: %s thinner a year, and by then half of the careful "
              "time until %s are left will have passed."),
          months),
      months, wm_say (language, wear->title), pace, least);
}

char *
wm_outlook_sentence (const WmOutlook *self, WmLanguage *language)
{
  int months = self->next.months;

  if (!self->has_next)
    return NULL;
  if (self->next.reason == WM_CHECK_DUE_NOW)
    return g_strdup_printf (wm_say (language, N_ ("Now: %s may already be thinner than "
                                                  "the least allowed.")),
                            wm_say (language, self->decides->title));
  if (self->next.reason == WM_CHECK_FORECAST)
    return say_forecast (self, language);
  if (self->next.reason == WM_CHECK_SHORTENED)
    {
      g_autofree char *reasons = join_reasons (self, language);

      /* Translators: months, usual months, reasons separated by semicolons */
      return g_strdup_printf (
          wm_say_n (language, N_ ("In %d month instead of the usual %d: %s."),
                    N_ ("In %d months instead of the usual %d: %s."), months),
          months, self->months, reasons);
    }
  return g_strdup_printf (
      wm_say_n (language, N_ ("In %d month, as is usual for such a piece."),
                N_ ("In %d months, as is usual for such a piece."), months),
      months);
}

static char *
say_pace (const WmWear *wear, WmLanguage *language)
{
  const WmForecast *f = &wear->forecast;
  g_autofree char *pace =
      wm_words_mm_within (language, f->loss_mm_year.value, 2 * f->loss_mm_year.u);

  /* Translators: "0.12 ± 0.04 mm" */
  return g_strdup_printf (wm_say (language, N_ ("%s thinner a year.")), pace);
}

/* When, in whole sentences; "" where the visits give no date. */
static char *
say_when (const WmWear *wear, WmLanguage *language)
{
  const WmForecast *f = &wear->forecast;
  g_autofree char *least = wm_words_mm (language, wear->minimum_mm, 2);
  g_autofree char *day = NULL, *date = NULL;

  switch (f->kind)
    {
    case WM_FORECAST_DUE_NOW:
      return g_strdup_printf (
          wm_say (language, N_ ("It may be under the least of %s already.")), least);
    case WM_FORECAST_NO_WEAR:
      return g_strdup (wm_say (
          language, N_ ("No wear is shown: the differences are those of measuring.")));
    case WM_FORECAST_TOO_CLOSE:
      return g_strdup (wm_say (
          language, N_ ("The visits lie less than three months apart: too close for a "
                        "date.")));
    case WM_FORECAST_FAR:
      return g_strdup_printf (
          wm_say (language, N_ ("The least of %s is more than 30 years away.")), least);
    case WM_FORECAST_DATED:
    default:
      day = wm_wear_date (f->careful_years);
      date = wm_words_date (language, day);
      return g_strdup_printf (
          wm_say (language,
                  wear->is_renewed ? N_ (
                      "Left as it was, it could have reached the least of %s by %s.")
                                   : N_ ("It can reach the least of %s by %s.")),
          least, date);
    }
}

char *
wm_wear_sentence (const WmWear *wear, WmLanguage *language)
{
  g_autofree char *pace = NULL, *when = NULL;
  const char *doubt = "";

  if (!wear->has_forecast)
    return g_strdup (
        wm_say (language,
                wear->n_fit < 2
                    ? N_ ("One reading so far: no pace of wear is known. Assumed is that "
                          "it wears as such pieces usually do; a second visit will tell.")
                    : N_ ("The readings are all of one day: no pace of wear is known.")));
  when = say_when (wear, language);
  if (wear->forecast.kind == WM_FORECAST_NO_WEAR)
    return g_steal_pointer (&when);
  pace = say_pace (wear, language);
  if (wear->forecast.birge > 1)
    doubt = wm_say (language, N_ (" The readings scatter more than they should: the band "
                                  "was widened."));
  else if (!wear->forecast.is_wear_shown)
    doubt = wm_say (language, N_ (" The wear is still within what measuring can tell."));
  return g_strdup_printf ("%s %s%s", pace, when, doubt);
}

/* The last two readings before the work, of the same part. */
static gboolean
find_last_two (const WmWear *wear, const WmWearPoint **out_now,
               const WmWearPoint **out_before)
{
  *out_now = *out_before = NULL;
  for (guint i = wear->points->len; i > 0; i--)
    {
      const WmWearPoint *point = &g_array_index (wear->points, WmWearPoint, i - 1);

      if (point->is_old || (point->is_after && wear->is_renewed))
        continue;
      if (*out_now == NULL)
        *out_now = point;
      else if (point->day < (*out_now)->day)
        {
          *out_before = point;
          return TRUE;
        }
    }
  return FALSE;
}

char *
wm_wear_since_last (const WmWear *wear, WmLanguage *language)
{
  const WmWearPoint *now, *before;
  g_autofree char *day = NULL, *date = NULL, *amount = NULL;
  WmDate d;
  double loss;

  if (!find_last_two (wear, &now, &before))
    return NULL;
  d = wm_day_to_date (before->day);
  day = g_strdup_printf ("%04d-%02d-%02d", d.year, d.month, d.day);
  date = wm_words_date (language, day);
  loss = before->left_mm.value - now->left_mm.value;
  amount = wm_words_mm_within (language, fabs (loss),
                               2 * hypot (before->left_mm.u, now->left_mm.u));
  /* Translators: "0.13 ± 0.06 mm less than on 20 November 2025" */
  return g_strdup_printf (wm_say (language, loss >= 0 ? N_ ("%s less than on %s")
                                                      : N_ ("%s more than on %s")),
                          amount, date);
}

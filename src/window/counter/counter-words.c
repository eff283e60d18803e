/* counter-words.c: a finding in the customer's plain sentences
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/counter/counter-words.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#include "report/blocks.h"
#include "report/words.h"

char *
wm_counter_piece (WmLanguage *language, WmVisitData *data)
{
  if (data->type != NULL && data->type->your != NULL)
    return g_strdup (wm_say (language, data->type->your));
  return g_strdup (wm_say (language, N_ ("Your piece")));
}

gboolean
wm_counter_has_after (const WmFinding *finding)
{
  return finding->check->after_severity != WM_SEVERITY_NOT_LOOKED_AT;
}

static const char *
get_before_state (WmSeverity severity)
{
  switch (severity)
    {
    case WM_SEVERITY_WATCH:
      return N_ ("Wear it, and come back in time.");
    case WM_SEVERITY_REPAIR:
      return N_ ("Have it mended before long. Wear it only lightly until then.");
    case WM_SEVERITY_NO_WEAR:
      return N_ ("Keep it off until it is mended.");
    default:
      return N_ ("Wear it as usual.");
    }
}

static const char *
get_after_state (WmSeverity severity)
{
  switch (severity)
    {
    case WM_SEVERITY_SOUND:
      return N_ ("Mended. Wear it as usual.");
    case WM_SEVERITY_WATCH:
      return N_ ("Better. Wear it, and come back in time.");
    case WM_SEVERITY_REPAIR:
      return N_ ("Not mended yet. Wear it only lightly.");
    case WM_SEVERITY_NO_WEAR:
      return N_ ("Not mended yet. Keep it off.");
    default:
      return N_ ("The part was taken off.");
    }
}

char *
wm_counter_state (WmLanguage *language, const WmFinding *finding)
{
  WmCheck *check = finding->check;

  return g_strdup (wm_say (language, wm_counter_has_after (finding)
                                         ? get_after_state (check->after_severity)
                                         : get_before_state (check->severity)));
}

/* Appends a paragraph with a full stop. */
static void
add_paragraph (GString *text, const char *words)
{
  if (words == NULL || *words == '\0')
    return;
  if (text->len > 0)
    g_string_append_c (text, '\n');
  g_string_append (text, words);
  if (strchr (".!?", words[strlen (words) - 1]) == NULL)
    g_string_append_c (text, '.');
}

double
wm_counter_ratio (const WmFinding *finding, const char *moment)
{
  double ratio = NAN;

  for (guint i = 0; i < finding->measurements->len; i++)
    {
      WmMeasurement *measurement = g_ptr_array_index (finding->measurements, i);
      gboolean is_after = g_strcmp0 (measurement->moment, WM_PHOTO_AFTER) == 0;

      if (is_after == (g_strcmp0 (moment, WM_PHOTO_AFTER) == 0)
          && isfinite (measurement->value_mm) && measurement->as_made_mm > 0)
        ratio = measurement->value_mm / measurement->as_made_mm;
    }
  return ratio;
}

/* The measured thickness as a share anybody can picture. Tenths either side of a half
 * are "about half"; a customer does not read percentages. */
static const char *
get_ratio_words (double ratio, gboolean is_past)
{
  if (!isfinite (ratio))
    return NULL;
  if (ratio >= 0.85)
    return is_past ? N_ ("Most of the metal was left") : N_ ("Most of the metal is left");
  if (ratio >= 0.65)
    return is_past ? N_ ("About three quarters of the metal was left")
                   : N_ ("About three quarters of the metal is left");
  if (ratio >= 0.54)
    return is_past ? N_ ("A little more than half of the metal was left")
                   : N_ ("A little more than half of the metal is left");
  if (ratio >= 0.46)
    return is_past ? N_ ("About half of the metal was left")
                   : N_ ("About half of the metal is left");
  return is_past ? N_ ("Less than half of the metal was left")
                 : N_ ("Less than half of the metal is left");
}

/* What it leads to: as a warning, or in hindsight once it is mended. */
static char *
make_consequence (WmLanguage *language, WmVisitData *data, const WmFinding *finding)
{
  WmCheck *check = finding->check;
  const WmChecklistItem *item =
      data->trade != NULL ? wm_trade_find_item (data->trade, check->item) : NULL;
  const WmConsequence *left =
      item != NULL ? wm_trade_find_consequence (data->trade, item->left[0]) : NULL;

  if (wm_counter_has_after (finding) && check->after_severity == WM_SEVERITY_SOUND
      && left != NULL && left->had != NULL)
    return g_strdup_printf (wm_say (language, N_ ("Had it given way, %s")),
                            wm_say (language, left->had));
  if (wm_counter_has_after (finding) && check->after_severity == WM_SEVERITY_SOUND)
    return NULL;
  return check->if_left != NULL
             ? g_strdup_printf (wm_say (language, N_ ("If it is left as it is: %s")),
                                wm_say (language, check->if_left))
             : NULL;
}

/* What would help, while nothing is done: what was chosen, else what is usual. */
static char *
make_advice (WmLanguage *language, const WmFinding *finding)
{
  g_auto (GStrv) usual = g_strsplit (
      finding->check->remedies != NULL ? finding->check->remedies : "", "\n", 2);
  const char *what = usual[0];

  if (finding->remedies->len > 0)
    what = ((WmRemedy *)g_ptr_array_index (finding->remedies, 0))->what;
  if (what == NULL || *what == '\0')
    return NULL;
  return g_strdup_printf (wm_say (language, N_ ("What helps: %s")),
                          wm_say (language, what));
}

static gboolean
is_worked_on (const WmFinding *finding)
{
  for (guint i = 0; i < finding->remedies->len; i++)
    {
      WmRemedy *remedy = g_ptr_array_index (finding->remedies, i);

      if (remedy->done_at_s != WM_UNKNOWN || g_strcmp0 (remedy->answer, "declined") == 0)
        return TRUE;
    }
  return FALSE;
}

char *
wm_counter_story (WmLanguage *language, WmVisitData *data, const WmFinding *finding)
{
  gboolean is_past = wm_counter_has_after (finding);
  const char *ratio =
      get_ratio_words (wm_counter_ratio (finding, WM_PHOTO_BEFORE), is_past);
  g_autofree char *consequence = make_consequence (language, data, finding);
  g_autofree char *work = NULL;
  GString *text = g_string_new (NULL);

  add_paragraph (text, finding->check->note);
  if (ratio != NULL)
    add_paragraph (text, wm_say (language, ratio));
  add_paragraph (text, consequence);
  if (is_worked_on (finding))
    work = wm_finding_done (language, finding);
  else if (!is_past)
    work = make_advice (language, finding);
  add_paragraph (text, work);
  return g_string_free (text, FALSE);
}

char *
wm_counter_tests (WmLanguage *language, const WmFinding *finding)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < finding->proofs->len; i++)
    {
      WmProof *proof = g_ptr_array_index (finding->proofs, i);

      if (!proof->passed || proof->test == NULL)
        continue;
      if (text->len > 0)
        g_string_append_c (text, '\n');
      g_string_append (text, wm_say (language, proof->test));
      if (proof->reading != NULL)
        g_string_append_printf (text, ", %s", proof->reading);
    }
  return g_string_free (text, FALSE);
}

char *
wm_counter_come_back (WmLanguage *language, WmVisitData *data)
{
  g_autofree char *date = NULL;

  if (data->visit->next_check_on == NULL)
    return g_strdup ("");
  date = wm_words_date (language, data->visit->next_check_on);
  return g_strdup_printf (wm_say (language, N_ ("Come back by %s")), date);
}

/* Names of the checks with this answer, a name a line. */
static char *
list_checks (WmLanguage *language, WmVisitData *data, WmSeverity severity)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < data->checks->len; i++)
    {
      WmCheck *check = g_ptr_array_index (data->checks, i);

      if (check->severity != (gint64)severity || check->title == NULL)
        continue;
      if (text->len > 0)
        g_string_append_c (text, '\n');
      g_string_append (text, wm_say (language, check->title));
    }
  return g_string_free (text, FALSE);
}

char *
wm_counter_rest_title (WmLanguage *language, WmVisitData *data)
{
  guint n_sound = wm_visit_data_count (data, WM_SEVERITY_SOUND);

  if (n_sound == 0)
    return g_strdup (wm_say (language, data->findings->len > 0
                                           ? N_ ("Nothing else was looked at yet")
                                           : N_ ("Nothing was looked at yet")));
  return g_strdup (wm_say (language, data->findings->len > 0
                                         ? N_ ("Everything else we looked at is sound")
                                         : N_ ("Everything we looked at is sound")));
}

char *
wm_counter_rest_sound (WmLanguage *language, WmVisitData *data)
{
  return list_checks (language, data, WM_SEVERITY_SOUND);
}

char *
wm_counter_rest_open (WmLanguage *language, WmVisitData *data)
{
  return list_checks (language, data, WM_SEVERITY_NOT_LOOKED_AT);
}

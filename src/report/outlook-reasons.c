/* outlook-reasons.c: what brings the next check forward
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "report/outlook-private.h"

#include <string.h>

#include "reckon/severity.h"

gboolean
wm_outlook_is_mended (WmCheck *check, GPtrArray *remedies)
{
  for (guint i = 0; i < remedies->len; i++)
    {
      WmRemedy *remedy = remedies->pdata[i];

      if (remedy->done_at_s != WM_UNKNOWN
          && wm_id_equal (&remedy->check_id, wm_record_get_id (WM_RECORD (check))))
        return TRUE;
    }
  return FALSE;
}

static void
add_reason (WmOutlookLoad *load, const char *key)
{
  const WmIntervalReason *reason = wm_trade_find_interval_reason (load->trade, key);

  if (reason != NULL)
    g_ptr_array_add (load->out->reasons, (gpointer)reason);
}

/* Words by which a piece is described where it is taken in; whole words, lower case. */
typedef struct
{
  const char *word;
  int means;
} Word;

static gboolean
has_word (const char *text, const char *word)
{
  g_autofree char *low = g_utf8_strdown (text != NULL ? text : "", -1);
  gsize length = strlen (word);

  for (const char *at = low; (at = strstr (at, word)) != NULL; at++)
    {
      gunichar before = at == low ? ' ' : g_utf8_get_char (g_utf8_prev_char (at));
      gunichar behind = g_utf8_get_char (at + length);

      if (!g_unichar_isalpha (before) && !g_unichar_isalpha (behind))
        return TRUE;
    }
  return FALSE;
}

WmWorn
wm_outlook_read_worn (const char *worn)
{
  static const Word words[] = {
    { "daily", WM_WORN_DAILY },         { "every day", WM_WORN_DAILY },
    { "always", WM_WORN_DAILY },        { "täglich", WM_WORN_DAILY },
    { "immer", WM_WORN_DAILY },         { "often", WM_WORN_OFTEN },
    { "häufig", WM_WORN_OFTEN },        { "oft", WM_WORN_OFTEN },
    { "weekly", WM_WORN_OFTEN },        { "wöchentlich", WM_WORN_OFTEN },
    { "now and then", WM_WORN_SELDOM }, { "seldom", WM_WORN_SELDOM },
    { "rarely", WM_WORN_SELDOM },       { "occasionally", WM_WORN_SELDOM },
    { "gelegentlich", WM_WORN_SELDOM }, { "selten", WM_WORN_SELDOM },
  };

  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    if (has_word (worn, words[i].word))
      return (WmWorn)words[i].means;
  return WM_WORN_UNSAID;
}

static void
add_worn_reasons (WmOutlookLoad *load)
{
  static const struct
  {
    const char *word, *key;
  } words[] = {
    { "night", "k_sleep" },    { "nachts", "k_sleep" }, { "nacht", "k_sleep" },
    { "work", "k_hands" },     { "sport", "k_hands" },  { "arbeit", "k_hands" },
    { "watch", "k_stack" },    { "uhr", "k_stack" },    { "pool", "k_pool" },
    { "schwimmen", "k_pool" },
  };
  const char *last = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    if (has_word (load->piece->worn, words[i].word)
        && g_strcmp0 (last, words[i].key) != 0)
      {
        add_reason (load, words[i].key);
        last = words[i].key;
      }
}

/* Fine gold and 22 k, fine silver, platinum with iridium or palladium (intervals.txt). */
static gboolean
is_soft (const WmOutlookLoad *load)
{
  const WmMetal *metal = load->piece->metal != NULL
                             ? wm_trade_find_metal (load->trade, load->piece->metal)
                             : NULL;

  if (metal == NULL)
    return FALSE;
  return (g_strcmp0 (metal->family, "gold") == 0 && metal->fineness >= 900)
         || (g_strcmp0 (metal->family, "silver") == 0 && metal->fineness >= 990)
         || g_str_has_prefix (metal->key, "pt950ir")
         || g_str_has_prefix (metal->key, "pt950pd");
}

/* A part that stays as it is and has lost more than a fifth. */
static gboolean
has_thin_part (const WmOutlook *out)
{
  for (guint i = 0; i < out->wears->len; i++)
    {
      const WmWear *wear = out->wears->pdata[i];
      const WmWearPoint *last =
          &g_array_index (wear->points, WmWearPoint, wear->points->len - 1);

      if (!wear->is_renewed && !last->is_old && last->left_mm.value < 0.8 * wear->made_mm)
        return TRUE;
    }
  return FALSE;
}

/* Parts whose repair is looked at again soon (intervals.txt: "hinge, clasp or setting"),
 * by their keys in parts.txt. */
static gboolean
is_hinge_clasp_or_setting (WmTrade *trade, WmCheck *check)
{
  static const char *const parts[] = { "clasp", "fastening", "hinge", "claws",
                                       "rim",   "beads",     "catch", "head" };
  const WmChecklistItem *item =
      check->item != NULL ? wm_trade_find_item (trade, check->item) : NULL;

  for (guint i = 0; item != NULL && i < G_N_ELEMENTS (parts); i++)
    if (g_strcmp0 (item->part, parts[i]) == 0)
      return TRUE;
  return FALSE;
}

static gboolean
is_declined (WmCheck *check, GPtrArray *remedies)
{
  for (guint i = 0; i < remedies->len; i++)
    {
      WmRemedy *remedy = remedies->pdata[i];

      if (g_strcmp0 (remedy->answer, "declined") == 0 && remedy->done_at_s == WM_UNKNOWN
          && wm_id_equal (&remedy->check_id, wm_record_get_id (WM_RECORD (check))))
        return TRUE;
    }
  return FALSE;
}

gboolean
wm_outlook_add_check_reasons (WmOutlookLoad *load, GError **error)
{
  const WmId *id = wm_record_get_id (WM_RECORD (load->shown));
  g_autoptr (GPtrArray) checks =
      wm_archive_list (load->archive, WM_KIND_CHECK, "visit_id", id, error);
  g_autoptr (GPtrArray) remedies =
      checks != NULL ? wm_archive_list_of_visit (load->archive, WM_KIND_REMEDY, id, error)
                     : NULL;
  gboolean watch = FALSE, fresh = FALSE, declined = FALSE;

  if (remedies == NULL)
    return FALSE;
  for (guint i = 0; i < checks->len; i++)
    {
      WmCheck *check = checks->pdata[i];
      gint64 left = check->after_severity != WM_SEVERITY_NOT_LOOKED_AT
                        ? check->after_severity
                        : check->severity;
      gboolean mended = wm_outlook_is_mended (check, remedies);

      watch = watch
              || (wm_severity_is_finding ((WmSeverity)left)
                  && (!mended || check->after_severity != WM_SEVERITY_NOT_LOOKED_AT));
      declined = declined || is_declined (check, remedies);
      fresh = fresh || (mended && is_hinge_clasp_or_setting (load->trade, check));
    }
  if (watch)
    add_reason (load, "k_watch");
  if (fresh)
    add_reason (load, "k_repairfresh");
  if (declined)
    add_reason (load, "k_refused");
  return TRUE;
}

void
wm_outlook_add_piece_reasons (WmOutlookLoad *load)
{
  add_worn_reasons (load);
  if (is_soft (load))
    add_reason (load, "k_soft");
  if (has_thin_part (load->out))
    add_reason (load, "k_old");
}

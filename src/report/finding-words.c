/* finding-words.c: a finding, and the piece, in plain sentences
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#include "report/blocks.h"
#include "report/words.h"

char *
wm_finding_sentence (WmLanguage *language, const WmFinding *finding)
{
  WmCheck *check = finding->check;
  const char *text = check->customer != NULL ? check->customer
                     : check->fault != NULL  ? check->fault
                                             : check->title;

  return g_strdup (wm_say (language, text));
}

/* Adds @sentence as one of its own, with its full stop. */
static void
append_sentence (GString *text, const char *sentence)
{
  if (sentence == NULL || *sentence == '\0')
    return;
  if (text->len > 0)
    g_string_append_c (text, ' ');
  g_string_append (text, sentence);
  if (strchr (".!?", sentence[strlen (sentence) - 1]) == NULL)
    g_string_append_c (text, '.');
}

/* Each line of a text of the tables as a sentence. */
static void
append_lines (GString *text, WmLanguage *language, const char *lines)
{
  g_auto (GStrv) each = g_strsplit (lines != NULL ? lines : "", "\n", -1);

  for (guint i = 0; each[i] != NULL; i++)
    append_sentence (text, *each[i] != '\0' ? wm_say (language, each[i]) : NULL);
}

char *
wm_finding_found (WmLanguage *language, WmVisitData *data, const WmFinding *finding)
{
  WmCheck *check = finding->check;
  GString *text = g_string_new (NULL);

  if (check->note != NULL)
    append_sentence (text, check->note);
  else
    append_sentence (text, wm_say (language, check->fault));
  append_lines (text, language, check->if_left);
  return g_string_free (text, FALSE);
}

/* Looked at again after the work: what is not done by then was left on purpose. */
static gboolean
is_closed (const WmFinding *finding)
{
  return finding->check->after_severity != WM_SEVERITY_NOT_LOOKED_AT;
}

char *
wm_finding_done (WmLanguage *language, const WmFinding *finding)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < finding->remedies->len; i++)
    {
      WmRemedy *remedy = g_ptr_array_index (finding->remedies, i);

      if (remedy->done_at_s != WM_UNKNOWN)
        append_sentence (text, wm_say (language, remedy->what));
      else if (g_strcmp0 (remedy->answer, "declined") == 0)
        {
          g_autofree char *declined =
              g_strdup_printf (wm_say (language, N_ ("Not wanted now: %s")),
                               wm_say (language, remedy->what));

          append_sentence (text, declined);
        }
    }
  if (text->len == 0)
    g_string_append (text, wm_say (language, is_closed (finding)
                                                 ? N_ ("Left as it is.")
                                                 : N_ ("Nothing was done yet.")));
  return g_string_free (text, FALSE);
}

char *
wm_finding_tested (WmLanguage *language, const WmFinding *finding)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < finding->proofs->len; i++)
    {
      WmProof *proof = g_ptr_array_index (finding->proofs, i);
      const char *test = wm_say (language, proof->test);
      g_autofree char *line = proof->reading != NULL
                                  ? g_strdup_printf ("%s: %s", test, proof->reading)
                                  : g_strdup (test);

      append_sentence (text, line);
      if (!proof->passed)
        append_sentence (text, wm_say (language, N_ ("Not passed yet")));
    }
  if (text->len == 0)
    g_string_append (text, wm_say (language, is_closed (finding)
                                                 ? N_ ("Looked at again under the loupe.")
                                                 : N_ ("Not tested yet.")));
  return g_string_free (text, FALSE);
}

const char *
wm_piece_type_words (WmLanguage *language, WmVisitData *data)
{
  if (data->type != NULL)
    return wm_say (language, data->type->name);
  return data->piece->type != NULL ? data->piece->type : "";
}

char *
wm_piece_metal_words (WmLanguage *language, WmVisitData *data)
{
  WmPiece *piece = data->piece;
  const WmMetal *metal =
      piece->metal != NULL ? wm_trade_find_metal (data->trade, piece->metal) : NULL;
  const char *name = metal != NULL ? wm_say (language, metal->name) : piece->metal;

  if (name == NULL)
    return g_strdup ("");
  if (piece->fineness == WM_UNKNOWN)
    return g_strdup (name);
  return g_strdup_printf ("%s (%d)", name, (int)piece->fineness);
}

/* How a fact about a stone is known. What is only said is printed as said. */
static const char *
get_basis_words (WmLanguage *language, const char *basis)
{
  static const char *const words[][2] = {
    { "said", N_ ("as told") },    { "seen", N_ ("as seen") },
    { "tested", N_ ("tested") },   { "stamped", N_ ("as stamped") },
    { "assumed", N_ ("assumed") },
  };

  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    if (g_strcmp0 (basis, words[i][0]) == 0)
      return wm_say (language, words[i][1]);
  return NULL;
}

static void
append_stone (GString *text, WmLanguage *language, WmVisitData *data, WmStoneGroup *group)
{
  const WmStone *stone =
      group->species != NULL ? wm_trade_find_stone (data->trade, group->species) : NULL;
  const WmCut *cut =
      group->cut != NULL ? wm_trade_find_cut (data->trade, group->cut) : NULL;
  const char *basis = get_basis_words (language, group->basis);

  if (text->len > 0)
    g_string_append (text, "; ");
  if (group->count != WM_UNKNOWN)
    g_string_append_printf (text, "%d × ", (int)group->count);
  g_string_append (text, stone != NULL            ? wm_say (language, stone->name)
                         : group->species != NULL ? group->species
                                                  : "");
  if (group->cut != NULL)
    g_string_append_printf (text, ", %s",
                            cut != NULL ? wm_say (language, cut->name) : group->cut);
  if (isfinite (group->length_mm))
    {
      g_autofree char *size = wm_words_mm (language, group->length_mm, 1);

      g_string_append_printf (text, ", %s", size);
    }
  if (basis != NULL)
    g_string_append_printf (text, " (%s)", basis);
}

char *
wm_piece_stone_words (WmLanguage *language, WmVisitData *data)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < data->stones->len; i++)
    append_stone (text, language, data, g_ptr_array_index (data->stones, i));
  return g_string_free (text, FALSE);
}

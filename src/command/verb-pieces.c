/* verb-pieces.c: pieces [WORDS]: the list of pieces, or those found by words
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>

#include "command/json-out.h"
#include "command/severity-words.h"
#include "command/verbs.h"

/* Rows asked for at a time. */
#define WM_PAGE 500

static void
add_row (JsonBuilder *builder, const WmPieceRow *row)
{
  json_builder_begin_object (builder);
  wm_json_add_text (builder, "number", row->number);
  wm_json_add_text (builder, "type", row->type);
  wm_json_add_text (builder, "owner", row->owner_name);
  wm_json_add_severity (builder, "severity", row->severity);
  wm_json_add_text (builder, "description", row->description);
  wm_json_add_flag (builder, "on_bench", row->on_bench);
  wm_json_add_text (builder, "moment", row->moment);
  wm_json_add_time (builder, "taken_in_at", row->taken_in_at_s);
  wm_json_add_time (builder, "handed_back_at", row->handed_back_at_s);
  wm_json_add_text (builder, "promised_on", row->promised_on);
  wm_json_add_text (builder, "next_check_on", row->next_check_on);
  json_builder_end_object (builder);
}

static void
print_row (WmCall *call, WmTrade *trade, const WmPieceRow *row)
{
  const WmPieceType *type =
      row->type != NULL ? wm_trade_find_piece_type (trade, row->type) : NULL;

  wm_call_print (call, "%-14s  %-24s  %-20s  %s\n",
                 row->number != NULL ? row->number : "–",
                 row->owner_name != NULL ? row->owner_name : "–",
                 type != NULL        ? wm_trade_text (type->name)
                 : row->type != NULL ? row->type
                                     : "–",
                 wm_severity_words (row->severity));
}

static char *
join_words (WmCall *call)
{
  GString *words = g_string_new (NULL);

  for (guint i = 0; i < wm_call_count_operands (call); i++)
    g_string_append_printf (words, "%s ", wm_call_get_operand (call, i));
  return g_string_free (words, FALSE);
}

static WmExit
run (WmCall *call)
{
  g_autoptr (WmArchive) archive = wm_call_look_at_archive (call);
  WmTrade *trade = archive != NULL ? wm_call_get_trade (call) : NULL;
  g_autofree char *words = join_words (call);
  g_autoptr (JsonBuilder) builder = json_builder_new ();
  guint n = 0;

  if (trade == NULL)
    return WM_EXIT_FAILED;
  json_builder_begin_array (builder);
  for (guint offset = 0; n == offset; offset += WM_PAGE)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (GPtrArray) rows = wm_archive_search (archive, words, WM_PIECES_ALL, NULL,
                                                      offset, WM_PAGE, &error);

      if (rows == NULL)
        return wm_call_fail_with (call, error);
      for (guint i = 0; i < rows->len; i++)
        if (wm_call_wants_json (call))
          add_row (builder, rows->pdata[i]);
        else
          print_row (call, trade, rows->pdata[i]);
      n += rows->len;
    }
  json_builder_end_array (builder);
  if (wm_call_wants_json (call))
    wm_call_print_json (call, json_builder_get_root (builder));
  else if (n == 0)
    wm_call_print (call, "%s\n", _ ("No pieces."));
  return WM_EXIT_DONE;
}

const WmVerb wm_verb_pieces = {
  .name = "pieces",
  .operands = N_ ("[WORDS]"),
  .max_operands = G_MAXUINT,
  .summary = N_ ("list the pieces, or those that have all the words"),
  .run = run,
};

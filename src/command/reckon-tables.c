/* reckon-tables.c: keys of the trade's tables in place of numbers, for reckon
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "command/reckon-tables.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#include "trade/heat.h"

static gboolean
asks_for (const WmTopic *topic, const char *name)
{
  for (int i = 0; i < topic->n_inputs; i++)
    if (g_str_equal (topic->inputs[i].name, name))
      return TRUE;
  return FALSE;
}

gboolean
wm_reckon_takes_metal (const WmTopic *topic)
{
  return asks_for (topic, "density") || asks_for (topic, "modulus_mpa")
         || asks_for (topic, "metal_solidus");
}

/* ---- keys in rows
 * ---------------------------------------------------------------------- */

/* "stay:700:925", in the plain form that the topic reads. */
static char *
stone_row (WmTrade *trade, const WmStone *stone)
{
  static const char *const rules[] = { "stay", "guard", "out", "never" };
  char limit[G_ASCII_DTOSTR_BUF_SIZE];
  char coated[G_ASCII_DTOSTR_BUF_SIZE];
  WmHeatStone heat;

  wm_trade_heat_stone (trade, stone, TRUE, FALSE, &heat);
  g_ascii_dtostr (limit, sizeof limit, heat.limit_c);
  g_ascii_dtostr (coated, sizeof coated, heat.coated_limit_c);
  return g_strdup_printf ("%s@%s:%s:%s", stone->key, rules[stone->heat], limit,
                          isnan (heat.coated_limit_c) ? "-" : coated);
}

static char *
solder_row (const WmSolder *solder)
{
  char solidus[G_ASCII_DTOSTR_BUF_SIZE];
  char flow[G_ASCII_DTOSTR_BUF_SIZE];
  WmHeatSolder heat;

  wm_trade_heat_solder (solder, &heat);
  g_ascii_dtostr (solidus, sizeof solidus, heat.solidus_c);
  g_ascii_dtostr (flow, sizeof flow, heat.flow_c);
  return g_strdup_printf ("%s@%s:%s", solder->key, isnan (heat.solidus_c) ? "-" : solidus,
                          flow);
}

/* Which table the first word of a row may name; 0 for none. */
static char
table_of (const WmTopic *topic, const char *name)
{
  if (!g_str_has_prefix (topic->name, "heat-"))
    return 0;
  return g_str_equal (name, "solders") ? 'd' : g_str_equal (name, "stones") ? 's' : 0;
}

char *
wm_reckon_expand_keys (WmCall *call, const WmTopic *topic, const char *name,
                       const char *text)
{
  char table = table_of (topic, name);
  WmTrade *trade = table != 0 ? wm_call_get_trade (call) : NULL;
  g_auto (GStrv) rows = NULL;

  if (table == 0)
    return g_strdup (text);
  if (trade == NULL)
    return NULL;

  rows = g_strsplit (text, ",", -1);
  for (guint i = 0; rows[i] != NULL; i++)
    {
      /* Words behind the key ("opal:-:-:0") stay where they are only in the plain form.
       */
      const WmStone *stone = table == 's' ? wm_trade_find_stone (trade, rows[i]) : NULL;
      const WmSolder *solder =
          table == 'd' ? wm_trade_find_solder (trade, rows[i]) : NULL;

      if (stone == NULL && solder == NULL)
        continue;
      g_free (rows[i]);
      rows[i] = stone != NULL ? stone_row (trade, stone) : solder_row (solder);
    }

  return g_strjoinv (",", rows);
}

/* ---- a metal
 * --------------------------------------------------------------------------- */

static void
set_if_open (WmTopicInputs *inputs, const char *name, double value)
{
  for (int i = 0; i < inputs->topic->n_inputs; i++)
    if (g_str_equal (inputs->topic->inputs[i].name, name) && !inputs->given[i].is_given
        && !isnan (value))
      wm_topic_set_value (inputs, name, wm_exact (value), NULL);
}

/* The rectangular width of a table's range counts as uncertainty: half of it over sqrt 3
 * (GUM 4.3.7). */
static void
set_range_if_open (WmTopicInputs *inputs, const char *name, WmRange range, double factor)
{
  double half = (range.high - range.low) / 2.0;

  for (int i = 0; i < inputs->topic->n_inputs; i++)
    if (g_str_equal (inputs->topic->inputs[i].name, name) && !inputs->given[i].is_given
        && !isnan (half))
      wm_topic_set_value (
          inputs, name,
          wm_value ((range.low + half) * factor, half * factor / sqrt (3.0)), NULL);
}

static void
set_all_solders (WmTopicInputs *inputs, WmTrade *trade, const WmMetal *metal)
{
  g_autoptr (GPtrArray) solders = wm_trade_list_solders_for (trade, metal->family);
  g_autoptr (GString) rows = g_string_new (NULL);

  for (int i = 0; i < inputs->topic->n_inputs; i++)
    if (g_str_equal (inputs->topic->inputs[i].name, "solders")
        && inputs->given[i].is_given)
      return;

  for (guint i = 0; i < solders->len; i++)
    {
      g_autofree char *row = solder_row (solders->pdata[i]);

      g_string_append_printf (rows, "%s%s", i > 0 ? "," : "", row);
    }

  if (rows->len > 0)
    wm_topic_set (inputs, "solders", rows->str, NULL);
}

WmExit
wm_reckon_set_metal (WmCall *call, WmTopicInputs *inputs, const char *key)
{
  WmTrade *trade = wm_call_get_trade (call);
  const WmMetal *metal = trade != NULL ? wm_trade_find_metal (trade, key) : NULL;
  WmHeatMetal heat;

  if (trade == NULL)
    return WM_EXIT_FAILED;
  if (metal == NULL)
    {
      g_autofree char *shown = wm_shown_path (key);

      return wm_call_fail (call, _ ("metal: the tables have no metal “%s”."), shown);
    }

  set_range_if_open (inputs, "density", metal->density, 1.0);
  set_range_if_open (inputs, "modulus_mpa", metal->modulus_gpa, 1000.0);
  if (!asks_for (inputs->topic, "metal_solidus"))
    return WM_EXIT_DONE;

  if (!wm_trade_heat_metal (trade, metal, &heat))
    return wm_call_fail (call, _ ("metal: the tables have no solder for “%s”."), key);

  set_if_open (inputs, "metal_solidus", heat.solidus_c);
  set_if_open (inputs, "lowest_solder", heat.lowest_solder_c);
  set_if_open (inputs, "whole_piece_hot", heat.whole_piece_hot);
  set_all_solders (inputs, trade, metal);
  return WM_EXIT_DONE;
}

/* trade.c: all tables of the trade, loaded
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/trade.h"

#include <glib/gi18n.h>

#include "trade/layers.h"
#include "wearmark-config.h"

struct _WmTrade
{
  gatomicrefcount refs;
  WmRows *rows;
  GPtrArray *problems; /* NULL-terminated */
};

static char *
find_tables_dir (void)
{
  const char *named = g_getenv ("WEARMARK_TABLES");

  if (named != NULL && *named != '\0')
    return g_strdup (named);
  if (g_file_test (WM_TABLES_DIR, G_FILE_TEST_IS_DIR))
    return g_strdup (WM_TABLES_DIR);
  return g_strdup (WM_TABLES_SOURCE_DIR);
}

WmTrade *
wm_trade_new_with_shop (const char *dir, const char *shop_dir, GError **error)
{
  g_autoptr (GPtrArray) problems = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *found = dir == NULL ? find_tables_dir () : g_strdup (dir);
  WmRows *rows = wm_layers_load (found, shop_dir, problems, error);
  WmTrade *self;

  if (rows == NULL)
    return NULL;

  self = g_new0 (WmTrade, 1);
  g_atomic_ref_count_init (&self->refs);
  self->rows = rows;
  g_ptr_array_add (problems, NULL);
  self->problems = g_steal_pointer (&problems);
  return self;
}

WmTrade *
wm_trade_new (const char *dir, GError **error)
{
  g_autofree char *shop_dir =
      g_build_filename (g_get_user_data_dir (), "wearmark", "tables", NULL);

  return wm_trade_new_with_shop (dir, shop_dir, error);
}

WmTrade *
wm_trade_ref (WmTrade *self)
{
  g_return_val_if_fail (self != NULL, NULL);

  g_atomic_ref_count_inc (&self->refs);
  return self;
}

void
wm_trade_unref (WmTrade *self)
{
  if (self == NULL || !g_atomic_ref_count_dec (&self->refs))
    return;

  wm_rows_free (self->rows);
  g_ptr_array_unref (self->problems);
  g_free (self);
}

const char *const *
wm_trade_get_problems (WmTrade *self)
{
  return (const char *const *)self->problems->pdata;
}

const char *
wm_trade_text (const char *text)
{
  /* gettext answers the empty text with its own header. */
  if (text == NULL || *text == '\0')
    return text;
  return g_dgettext (GETTEXT_PACKAGE, text);
}

char *
wm_trade_describe_sources (WmTrade *self, const char *const *sources,
                           const char *source_note)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; sources[i] != NULL; i++)
    {
      const WmSource *source = wm_trade_find_source (self, sources[i]);

      g_string_append_printf (text, "%s%s", i > 0 ? "; " : "",
                              source->title != NULL ? source->title
                                                    : wm_trade_text (source->words));
    }
  if (source_note != NULL)
    g_string_append_printf (text, " (%s)", wm_trade_text (source_note));
  return g_string_free (text, FALSE);
}

char *
wm_trade_describe_left (WmTrade *self, const WmChecklistItem *item)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; item->left[i] != NULL; i++)
    g_string_append_printf (
        text, "%s%s", i > 0 ? ". " : "",
        wm_trade_text (wm_trade_find_consequence (self, item->left[i])->customer));
  return g_string_free (text, FALSE);
}

char *
wm_trade_describe_remedies (WmTrade *self, const WmChecklistItem *item)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; item->remedies[i] != NULL; i++)
    g_string_append_printf (
        text, "%s%s", i > 0 ? "; " : "",
        wm_trade_text (wm_trade_find_remedy (self, item->remedies[i])->name));
  return g_string_free (text, FALSE);
}

/* The typed doors to the rows: one line for each kind. */
#define FIND(noun, Type, KIND)                                                           \
  const Type *wm_trade_find_##noun (WmTrade *self, const char *key)                      \
  {                                                                                      \
    return key == NULL ? NULL                                                            \
                       : g_hash_table_lookup (self->rows->by_key[WM_KIND_##KIND], key);  \
  }
#define LIST(nouns, Type, KIND)                                                          \
  const Type *const *wm_trade_list_##nouns (WmTrade *self, guint *n)                     \
  {                                                                                      \
    if (n != NULL)                                                                       \
      *n = self->rows->n_rows[WM_KIND_##KIND];                                           \
    return (const Type *const *)self->rows->rows[WM_KIND_##KIND]->pdata;                 \
  }

/* clang-format off */
FIND (piece_type, WmPieceType, TYPE)
FIND (item, WmChecklistItem, CHECK)
FIND (block, WmBlock, BLOCK)
FIND (part, WmPart, PART)
FIND (view, WmView, VIEW)
FIND (way, WmWay, WAY)
FIND (consequence, WmConsequence, CONSEQUENCE)
FIND (remedy, WmRemedyRow, REMEDY)
FIND (measure, WmMeasure, MEASURE)
FIND (source, WmSource, SOURCE)
FIND (metal, WmMetal, METAL)
FIND (temper, WmTemper, TEMPER)
FIND (solder, WmSolder, SOLDER)
FIND (stone, WmStone, STONE)
FIND (cut, WmCut, CUT)
FIND (fineness, WmFinenessRow, FINENESS)
FIND (test, WmFinalTest, TEST)
FIND (caution, WmCaution, CAUTION)
FIND (fault, WmFault, FAULT)
FIND (interval_reason, WmIntervalReason, REASON)
FIND (advice, WmAdvice, ADVICE)
FIND (phrase, WmPhrase, PHRASE)
FIND (word, WmWord, WORD)
FIND (wire_gauge, WmWireGauge, WIRE)

LIST (piece_types, WmPieceType, TYPE)
LIST (items, WmChecklistItem, CHECK)
LIST (blocks, WmBlock, BLOCK)
LIST (remedies, WmRemedyRow, REMEDY)
LIST (sources, WmSource, SOURCE)
LIST (metals, WmMetal, METAL)
LIST (solders, WmSolder, SOLDER)
LIST (stones, WmStone, STONE)
LIST (cuts, WmCut, CUT)
LIST (fineness, WmFinenessRow, FINENESS)
LIST (tests, WmFinalTest, TEST)
LIST (cautions, WmCaution, CAUTION)
LIST (faults, WmFault, FAULT)
LIST (interval_reasons, WmIntervalReason, REASON)
LIST (advice, WmAdvice, ADVICE)
LIST (words, WmWord, WORD)
LIST (wire_gauges, WmWireGauge, WIRE)
/* clang-format on */

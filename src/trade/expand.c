/* expand.c: what the tables say by reference, written out
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/expand.h"

#include <string.h>

static void
take_rule (WmRows *rows, WmChecklistItem *item)
{
  const WmLimitsRow *rule;

  if (item->rule == NULL)
    return;

  rule = g_hash_table_lookup (rows->by_key[WM_KIND_LIMITS], item->rule);
  if (item->limits.measure == NULL)
    item->limits = rule->limits;
  if (item->threshold == NULL)
    item->threshold = rule->threshold;
}

static const WmChecklistItem *const *
keep_items (WmRows *rows, GPtrArray *items)
{
  const WmChecklistItem **list = wm_rows_alloc (rows, (items->len + 1) * sizeof *list);

  if (items->len > 0)
    memcpy (list, items->pdata, items->len * sizeof *list);
  return list;
}

/* Behind the last item of the same part, so that parts stay together; a check
 * named twice (by a block and by itself) comes once. */
static void
place_item (GPtrArray *items, WmChecklistItem *item)
{
  guint at = items->len;

  if (g_ptr_array_find (items, item, NULL))
    return;

  for (guint i = items->len; i > 0; i--)
    {
      const WmChecklistItem *other = g_ptr_array_index (items, i - 1);

      if (strcmp (other->part, item->part) == 0)
        {
          at = i;
          break;
        }
    }
  g_ptr_array_insert (items, (int)at, item);
}

static void
place_keys (WmRows *rows, GPtrArray *items, const char *const *keys)
{
  for (guint i = 0; keys[i] != NULL; i++)
    {
      const WmBlock *block = g_hash_table_lookup (rows->by_key[WM_KIND_BLOCK], keys[i]);

      if (block == NULL)
        {
          place_item (items, g_hash_table_lookup (rows->by_key[WM_KIND_CHECK], keys[i]));
          continue;
        }
      for (guint j = 0; block->checks[j] != NULL; j++)
        place_item (items,
                    g_hash_table_lookup (rows->by_key[WM_KIND_CHECK], block->checks[j]));
    }
}

void
wm_expand_rows (WmRows *rows)
{
  GPtrArray *checks = rows->rows[WM_KIND_CHECK];
  GPtrArray *blocks = rows->rows[WM_KIND_BLOCK];
  GPtrArray *types = rows->rows[WM_KIND_TYPE];

  for (guint i = 0; i < checks->len; i++)
    take_rule (rows, g_ptr_array_index (checks, i));

  for (guint i = 0; i < blocks->len; i++)
    {
      g_autoptr (GPtrArray) items = g_ptr_array_new ();
      WmBlock *block = g_ptr_array_index (blocks, i);

      place_keys (rows, items, block->checks);
      block->items = keep_items (rows, items);
      block->n_items = items->len;
    }

  for (guint i = 0; i < types->len; i++)
    {
      g_autoptr (GPtrArray) items = g_ptr_array_new ();
      WmPieceType *type = g_ptr_array_index (types, i);

      place_keys (rows, items, type->checks);
      place_keys (rows, items, type->add);
      type->items = keep_items (rows, items);
      type->n_items = items->len;
    }
}

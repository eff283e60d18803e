/* make-checks.c: the checklist of a visit, made from the tables of the trade
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/make-checks.h"

static char *
join_remedies (WmTrade *trade, const WmChecklistItem *item)
{
  GString *lines = g_string_new (NULL);

  for (guint i = 0; item->remedies[i] != NULL; i++)
    {
      const WmRemedyRow *remedy = wm_trade_find_remedy (trade, item->remedies[i]);

      if (remedy == NULL)
        continue;
      if (lines->len > 0)
        g_string_append_c (lines, '\n');
      g_string_append (lines, remedy->name);
    }
  return g_string_free (lines, FALSE);
}

WmCheck *
wm_make_check (WmTrade *trade, const WmChecklistItem *item, const WmId *visit_id,
               gint64 position)
{
  WmCheck *check = wm_check_new ();
  WmRecord *record = WM_RECORD (check);
  const WmPart *part = wm_trade_find_part (trade, item->part);
  /* The worst consequence: the tables have it first. */
  const WmConsequence *left = wm_trade_find_consequence (trade, item->left[0]);
  g_autofree char *remedies = join_remedies (trade, item);

  check->visit_id = *visit_id;
  check->position = position;
  wm_record_set_text (record, "item", item->key);
  wm_record_set_text (record, "part", part != NULL ? part->name : NULL);
  wm_record_set_text (record, "title", item->name);
  wm_record_set_text (record, "fault", item->fault);
  wm_record_set_text (record, "look", item->look);
  wm_record_set_text (record, "if-left", left != NULL ? left->customer : NULL);
  wm_record_set_text (record, "remedies", remedies);
  wm_record_set_text (record, "customer", item->customer);
  wm_record_set_text (record, "source", item->sources[0]);
  return check;
}

GPtrArray *
wm_make_checks (WmTrade *trade, const char *type, const WmId *visit_id)
{
  GPtrArray *checks = g_ptr_array_new_with_free_func (g_object_unref);
  const WmPieceType *row = wm_trade_find_piece_type (trade, type);

  for (guint i = 0; row != NULL && i < row->n_items; i++)
    g_ptr_array_add (checks, wm_make_check (trade, row->items[i], visit_id, i));
  return checks;
}

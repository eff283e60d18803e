/* edit.c: one user action as a value
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "archive/edit.h"

#include "archive/edit-private.h"

static void
free_item (WmEditItem *item)
{
  g_clear_object (&item->copy);
  g_clear_object (&item->original);
  g_free (item);
}

WmEdit *
wm_edit_new (const char *label, const WmId *piece_id, const WmId *by)
{
  WmEdit *self = g_new0 (WmEdit, 1);

  g_atomic_ref_count_init (&self->refs);
  self->label = g_strdup (label);
  if (piece_id != NULL)
    self->piece_id = *piece_id;
  if (by != NULL)
    self->by = *by;
  self->items = g_ptr_array_new_with_free_func ((GDestroyNotify)free_item);
  self->by_key = g_hash_table_new (wm_id_hash, wm_id_equal_func);
  return self;
}

static WmEditItem *
take_item (WmEdit *self, WmRecord *record)
{
  WmEditItem *item = g_hash_table_lookup (self->by_key, wm_record_get_id (record));

  if (item == NULL)
    {
      item = g_new0 (WmEditItem, 1);
      item->kind = wm_record_get_kind (record);
      item->id = *wm_record_get_id (record);
      item->revision = wm_record_get_revision (record);
      g_ptr_array_add (self->items, item);
      g_hash_table_insert (self->by_key, &item->id, item);
    }
  return item;
}

void
wm_edit_put (WmEdit *self, gpointer record)
{
  WmEditItem *item;

  g_return_if_fail (WM_IS_RECORD (record));
  item = take_item (self, record);
  g_clear_object (&item->copy);
  item->copy = wm_record_copy (record);
  if (g_set_object (&item->original, record))
    item->revision = wm_record_get_revision (record);
  wm_record_set_stamp (record, wm_record_get_changed_at_us (record),
                       wm_record_get_changed_by (record), item->revision + 1);
}

void
wm_edit_remove (WmEdit *self, gpointer record)
{
  WmEditItem *item;

  g_return_if_fail (WM_IS_RECORD (record));
  item = take_item (self, record);
  g_clear_object (&item->copy);
  g_clear_object (&item->original);
}

gboolean
wm_edit_is_empty (WmEdit *self)
{
  return self->items->len == 0;
}

WmEdit *
wm_edit_ref (WmEdit *self)
{
  g_atomic_ref_count_inc (&self->refs);
  return self;
}

void
wm_edit_unref (WmEdit *self)
{
  if (!g_atomic_ref_count_dec (&self->refs))
    return;
  g_hash_table_unref (self->by_key);
  g_ptr_array_unref (self->items);
  g_free (self->label);
  g_free (self);
}

void
wm_edit_settle (WmEdit *self, gboolean committed)
{
  for (guint i = 0; i < self->items->len; i++)
    {
      WmEditItem *item = self->items->pdata[i];

      /* Put again since: the later edit settles it. */
      if (item->original == NULL
          || wm_record_get_revision (item->original) != item->revision + 1)
        continue;
      if (committed)
        wm_record_set_stamp (item->original, wm_record_get_changed_at_us (item->copy),
                             wm_record_get_changed_by (item->copy),
                             wm_record_get_revision (item->copy));
      else
        wm_record_set_stamp (item->original, wm_record_get_changed_at_us (item->original),
                             wm_record_get_changed_by (item->original), item->revision);
      g_clear_object (&item->original);
    }
}

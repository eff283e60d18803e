/* plan.c: what an edit does to the rows as they are now
 *
 * Puts are compared with the rows they replace; removals take along what belongs to
 * the removed row (links.c), so that the log can bring all of it back.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "archive/change.h"

#include "archive/links.h"

typedef struct
{
  WmDatabase *db;
  GPtrArray *changes;  /* of WmRowChange */
  GHashTable *by_key;  /* WmId -> WmRowChange, the same ones */
  GHashTable *emptied; /* WmRowChange that only empties fields */
} Plan;

static WmRowChange *
add_change (Plan *plan, WmKind kind, const WmId *id)
{
  WmRowChange *change = wm_row_change_new (kind, id);

  g_ptr_array_add (plan->changes, change);
  g_hash_table_insert (plan->by_key, &change->id, change);
  return change;
}

static gboolean
set_conflict (WmKind kind, GError **error)
{
  g_set_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_CONFLICT,
               "the %s was changed since it was read", wm_kind_get_info (kind)->name);
  return FALSE;
}

static gboolean
plan_put (Plan *plan, const WmEditItem *item, GError **error)
{
  g_auto (WmRow) now = { NULL };
  WmRowChange *change;

  if (!wm_row_load (plan->db, item->kind, &item->id, &now, error))
    return FALSE;

  if (now.record == NULL && item->revision > 0)
    return set_conflict (item->kind, error);
  if (now.record != NULL)
    {
      gint64 revision = wm_record_get_revision (now.record);

      /* Above it: an edit in between changed nothing, or was refused. */
      if (item->revision < revision)
        return set_conflict (item->kind, error);
      if (wm_record_equal (now.record, item->copy))
        {
          wm_record_set_stamp (item->copy, wm_record_get_changed_at_us (now.record),
                               wm_record_get_changed_by (now.record), revision);
          return TRUE;
        }
    }

  change = add_change (plan, item->kind, &item->id);
  change->revision = now.record != NULL ? wm_record_get_revision (now.record) : 0;
  change->after.made_at_us = now.made_at_us;
  change->after.record = g_object_ref (item->copy);
  change->before = now;
  now.record = NULL;
  return TRUE;
}

static gboolean
plan_removal (Plan *plan, WmKind kind, const WmId *id, GError **error)
{
  g_auto (WmRow) now = { NULL };
  WmRowChange *change;

  if (!wm_row_load (plan->db, kind, id, &now, error))
    return FALSE;
  if (now.record == NULL)
    {
      g_set_error (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_NOT_FOUND,
                   "the %s is not there any more", wm_kind_get_info (kind)->name);
      return FALSE;
    }
  change = add_change (plan, kind, id);
  change->revision = wm_record_get_revision (now.record);
  change->before = now;
  now.record = NULL;
  return TRUE;
}

/* The keys of the rows whose field @link is @id. (element-type WmId) */
static GArray *
list_tied (Plan *plan, const WmLink *link, const WmId *id, GError **error)
{
  g_autoptr (GArray) keys = g_array_new (FALSE, FALSE, sizeof (WmId));
  g_autofree char *sql =
      g_strdup_printf ("SELECT id FROM \"%s\" WHERE \"%s\" = ?1 ORDER BY id",
                       wm_kind_get_info (link->kind)->name, link->field);
  g_autoptr (WmStatement) select = wm_database_prepare (plan->db, sql, error);
  g_autoptr (GError) problem = NULL;

  if (select == NULL)
    return NULL;
  wm_statement_bind_id (select, 1, id);
  while (wm_statement_next (select, &problem))
    {
      WmId key = wm_statement_get_id (select, 0);

      g_array_append_val (keys, key);
    }
  if (problem == NULL)
    return g_steal_pointer (&keys);
  g_propagate_error (error, g_steal_pointer (&problem));
  return NULL;
}

/* A row that belongs to a removed one goes with it, unless the edit puts it anew. */
static gboolean
take_along (Plan *plan, const WmLink *link, const WmId *key, GError **error)
{
  if (g_hash_table_contains (plan->by_key, key))
    return TRUE;
  return plan_removal (plan, link->kind, key, error);
}

/* A row that names a removed one forgets it. */
static gboolean
empty_field (Plan *plan, const WmLink *link, const WmId *key, GError **error)
{
  const WmField *field = wm_kind_find_field (link->kind, link->field);
  WmRowChange *change = g_hash_table_lookup (plan->by_key, key);

  if (change == NULL)
    {
      if (!plan_removal (plan, link->kind, key, error))
        return FALSE;
      change = g_hash_table_lookup (plan->by_key, key);
      change->after.made_at_us = change->before.made_at_us;
      change->after.record = wm_record_copy (change->before.record);
      g_hash_table_add (plan->emptied, change);
    }
  if (g_hash_table_contains (plan->emptied, change))
    *(WmId *)wm_record_get_member (change->after.record, field) = WM_ID_NONE;
  return TRUE;
}

typedef gboolean (*WmFollow) (Plan *plan, const WmLink *link, const WmId *key,
                              GError **error);

/* Calls @follow for every row tied by @rule to a removed one, also to those removed
 * meanwhile. */
static gboolean
follow_removed (Plan *plan, WmLinkRule rule, WmFollow follow, GError **error)
{
  for (guint i = 0; i < plan->changes->len; i++)
    for (guint j = 0; j < wm_n_links; j++)
      {
        const WmRowChange *change = plan->changes->pdata[i];
        const WmLink *link = &wm_links[j];
        g_autoptr (GArray) keys = NULL;

        if (change->after.record != NULL || link->rule != rule
            || wm_kind_find_field (link->kind, link->field)->refers_to != change->kind)
          continue;
        keys = list_tied (plan, link, &change->id, error);
        if (keys == NULL)
          return FALSE;
        for (guint k = 0; k < keys->len; k++)
          if (!follow (plan, link, &g_array_index (keys, WmId, k), error))
            return FALSE;
      }
  return TRUE;
}

static gboolean
plan_items (Plan *plan, WmEdit *edit, GError **error)
{
  for (guint i = 0; i < edit->items->len; i++)
    {
      const WmEditItem *item = edit->items->pdata[i];

      if (item->copy != NULL ? !plan_put (plan, item, error)
                             : !plan_removal (plan, item->kind, &item->id, error))
        return FALSE;
    }
  return follow_removed (plan, WM_LINK_BELONGS, take_along, error)
         && follow_removed (plan, WM_LINK_NAMES, empty_field, error);
}

gboolean
wm_plan_follow (WmDatabase *db, GPtrArray *changes, GError **error)
{
  g_autoptr (GHashTable) by_key = g_hash_table_new (wm_id_hash, wm_id_equal_func);
  g_autoptr (GHashTable) emptied = g_hash_table_new (NULL, NULL);
  Plan plan = { db, changes, by_key, emptied };

  for (guint i = 0; i < changes->len; i++)
    {
      WmRowChange *change = changes->pdata[i];

      g_hash_table_insert (by_key, &change->id, change);
    }
  return follow_removed (&plan, WM_LINK_BELONGS, take_along, error)
         && follow_removed (&plan, WM_LINK_NAMES, empty_field, error);
}

GPtrArray *
wm_plan_edit (WmDatabase *db, WmEdit *edit, GError **error)
{
  g_autoptr (GPtrArray) changes = wm_row_changes_new ();
  g_autoptr (GHashTable) by_key = g_hash_table_new (wm_id_hash, wm_id_equal_func);
  g_autoptr (GHashTable) emptied = g_hash_table_new (NULL, NULL);
  Plan plan = { db, changes, by_key, emptied };

  if (!plan_items (&plan, edit, error))
    return NULL;
  return g_steal_pointer (&changes);
}

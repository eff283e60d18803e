/* tile-memory.c: decoded tiles kept in memory, over all stores
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/tile-memory.h"

#include "photo/tiles.h"

typedef struct
{
  guint64 owner;
  int level, column, row;
  WmPixels *tile;
  GList link; /* in by_use; the first was used last */
} Entry;

static GMutex mutex;
static GHashTable *entries;
static GQueue by_use = G_QUEUE_INIT;
static gsize bytes_held;

static guint
hash_entry (gconstpointer data)
{
  const Entry *entry = data;

  return (guint)entry->owner * 2654435761u ^ (guint)entry->level << 28
         ^ (guint)entry->column << 14 ^ (guint)entry->row;
}

static gboolean
equal_entries (gconstpointer a, gconstpointer b)
{
  const Entry *first = a, *second = b;

  return first->owner == second->owner && first->level == second->level
         && first->column == second->column && first->row == second->row;
}

static gsize
entry_bytes (const Entry *entry)
{
  return entry->tile->stride * (gsize)entry->tile->height;
}

static void
remove_entry (Entry *entry)
{
  g_hash_table_remove (entries, entry);
  g_queue_unlink (&by_use, &entry->link);
  bytes_held -= entry_bytes (entry);
  wm_pixels_unref (entry->tile);
  g_free (entry);
}

guint64
wm_tile_memory_new_owner (void)
{
  static guint64 last;
  guint64 owner;

  g_mutex_lock (&mutex);
  owner = ++last;
  if (entries == NULL)
    entries = g_hash_table_new (hash_entry, equal_entries);
  g_mutex_unlock (&mutex);
  return owner;
}

WmPixels *
wm_tile_memory_get (guint64 owner, int level, int column, int row)
{
  Entry key = { .owner = owner, .level = level, .column = column, .row = row };
  Entry *entry;
  WmPixels *tile = NULL;

  g_mutex_lock (&mutex);
  entry = g_hash_table_lookup (entries, &key);
  if (entry != NULL)
    {
      g_queue_unlink (&by_use, &entry->link);
      g_queue_push_head_link (&by_use, &entry->link);
      tile = wm_pixels_ref (entry->tile);
    }
  g_mutex_unlock (&mutex);
  return tile;
}

void
wm_tile_memory_put (guint64 owner, int level, int column, int row, WmPixels *tile)
{
  Entry *entry = g_new0 (Entry, 1);
  Entry *old;

  *entry = (Entry) { .owner = owner,
                     .level = level,
                     .column = column,
                     .row = row,
                     .tile = wm_pixels_ref (tile) };
  entry->link.data = entry;

  g_mutex_lock (&mutex);
  old = g_hash_table_lookup (entries, entry);
  if (old != NULL)
    remove_entry (old);

  /* Room first, so that the bound holds at every moment. */
  while (bytes_held + entry_bytes (entry) > WM_TILE_MEMORY && !g_queue_is_empty (&by_use))
    remove_entry (g_queue_peek_tail (&by_use));

  g_hash_table_add (entries, entry);
  g_queue_push_head_link (&by_use, &entry->link);
  bytes_held += entry_bytes (entry);
  g_mutex_unlock (&mutex);
}

void
wm_tile_memory_drop (guint64 owner)
{
  GList *next;

  g_mutex_lock (&mutex);
  for (GList *link = by_use.head; link != NULL; link = next)
    {
      Entry *entry = link->data;

      next = link->next;
      if (entry->owner == owner)
        remove_entry (entry);
    }
  g_mutex_unlock (&mutex);
}

gsize
wm_tile_memory_used (void)
{
  gsize used;

  g_mutex_lock (&mutex);
  used = bytes_held;
  g_mutex_unlock (&mutex);
  return used;
}

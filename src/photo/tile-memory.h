/* tile-memory.h: decoded tiles kept in memory, over all stores
 *
 * Inside this room only. Bounded by WM_TILE_MEMORY; the least lately used go first.
 * Any thread.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/pixels.h"

/* A number for a new store; never used again. */
guint64 wm_tile_memory_new_owner (void);

/* (transfer full), or NULL. */
WmPixels *wm_tile_memory_get (guint64 owner, int level, int column, int row);
void wm_tile_memory_put (guint64 owner, int level, int column, int row, WmPixels *tile);

/* A store is gone: its tiles too. */
void wm_tile_memory_drop (guint64 owner);

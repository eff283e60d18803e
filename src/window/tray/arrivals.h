/* arrivals.h: the watched folder, and the new photos in it that are ready
 *
 * Main thread only; the folder is listed and the files are read on workers, because a
 * sync folder may be on a network. Signal:
 *   changed (void)   another one is ready, or the list is otherwise not as it was
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/tray/arrival.h"
#include "window/tray/burst-rule.h"

#define WM_TYPE_ARRIVALS (wm_arrivals_get_type ())
G_DECLARE_FINAL_TYPE (WmArrivals, wm_arrivals, WM, ARRIVALS, GObject)

WmArrivals *wm_arrivals_new (void);

/* @folder (nullable): NULL watches nothing. What is in it already is not new. */
void wm_arrivals_set_folder (WmArrivals *self, const char *folder);
const char *wm_arrivals_get_folder (WmArrivals *self);

/* Ready ones, oldest burst first, the sharpest of a burst first: (transfer container)
 * (element-type WmArrival), the elements borrowed until the next "changed". */
GPtrArray *wm_arrivals_list (WmArrivals *self);

/* A file that stays broken, or NULL: borrowed likewise. */
const WmArrival *wm_arrivals_get_broken (WmArrivals *self);

/* NULL, or why the folder can not be looked at: whole sentences. */
const char *wm_arrivals_get_problem (WmArrivals *self);

/* It is offered no longer: it was @taken in, or is not wanted. */
void wm_arrivals_put_aside (WmArrivals *self, WmArrival *arrival, gboolean taken);
/* What was not wanted is offered again. Returns how many. */
guint wm_arrivals_bring_back (WmArrivals *self);
/* Tells everybody to show the list again. */
void wm_arrivals_tell (WmArrivals *self);

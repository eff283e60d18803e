/* owner-search.h: find a customer the shop knows, or enter a new one
 *
 * Signals:
 *   owner-chosen (WmPerson *)    a known customer
 *   owner-named (const char *)   somebody new
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/session.h"

#define WM_TYPE_OWNER_SEARCH (wm_owner_search_get_type ())
G_DECLARE_FINAL_TYPE (WmOwnerSearch, wm_owner_search, WM, OWNER_SEARCH, GtkWidget)

/* Empties it. */
void wm_owner_search_show (WmOwnerSearch *self, WmSession *session);

/* Customers whose name has words beginning with @words, newest piece first; at most
 * @limit. (transfer full) (element-type WmPerson) */
GPtrArray *wm_owner_search_find (WmArchive *archive, const char *words, guint limit);

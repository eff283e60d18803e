/* stack-window.h: photos are chosen, and merged into one sharp photo
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "archive/archive.h"

/* @photo was merged from @frames (element-type WmPhoto): the caller keeps both by an
 * edit. Not called when it is cancelled or fails (told in the window). */
typedef void (*WmStackDone) (WmPhoto *photo, GPtrArray *frames, gpointer user_data);

/**
 * wm_stack_window_present:
 * @candidates: (element-type WmPhoto): of one size; copied
 * @shown: one of them; what was taken in one go with it is chosen at first
 * @user_data: freed by @destroy when the window goes
 */
void wm_stack_window_present (GtkWindow *parent, WmArchive *archive,
                              GPtrArray *candidates, WmPhoto *shown, WmStackDone done,
                              gpointer user_data, GDestroyNotify destroy);

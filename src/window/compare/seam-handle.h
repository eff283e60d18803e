/* seam-handle.h: the round handle that pulls the seam between two photos
 *
 * Signals:
 *   pulled (double dx)      dragged so far since the last one, px to the right
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

/* Target of a finger (look book, section 2), px. */
#define WM_SEAM_TARGET 44

#define WM_TYPE_SEAM_HANDLE (wm_seam_handle_get_type ())
G_DECLARE_FINAL_TYPE (WmSeamHandle, wm_seam_handle, WM, SEAM_HANDLE, GtkWidget)

GtkWidget *wm_seam_handle_new (void);
/* Tells screen readers where the seam is: 0 left to 1 right. */
void wm_seam_handle_set_place (WmSeamHandle *self, double place);

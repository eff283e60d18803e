/* finding-head.h: a finding in one line: glyph and number, what it is, how bad
 *
 * With its story: glyph to glyph, as it was found and as it is after the work.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "record/check.h"

#define WM_TYPE_FINDING_HEAD (wm_finding_head_get_type ())
G_DECLARE_FINAL_TYPE (WmFindingHead, wm_finding_head, WM, FINDING_HEAD, GtkWidget)

GtkWidget *wm_finding_head_new (void);
/* @story: show the severity after the work too */
void wm_finding_head_show (WmFindingHead *self, WmCheck *check, gboolean story);
/* Leaves the words of the severities to the glyphs and to screen readers: for a narrow
 * list. */
void wm_finding_head_set_brief (WmFindingHead *self);

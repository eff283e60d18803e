/* reckon-form.h: one computation as a form: inputs, and the answer as they are typed
 *
 * Signals:
 *   answered (void)  the answer is another, or there is none
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <adwaita.h>

#include "report/reckon-prefill.h"

#define WM_TYPE_RECKON_FORM (wm_reckon_form_get_type ())
G_DECLARE_FINAL_TYPE (WmReckonForm, wm_reckon_form, WM, RECKON_FORM, AdwBin)

GtkWidget *wm_reckon_form_new (void);

/* Shows @topic afresh. @prefill (nullable): fills what the record says; not kept. */
void
wm_reckon_form_show (WmReckonForm *self, const WmTopic *topic, const WmPrefill *prefill);

/* The answer in one line for a note, or NULL while there is none. Caller frees. */
char *wm_reckon_form_get_note (WmReckonForm *self);

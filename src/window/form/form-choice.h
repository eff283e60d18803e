/* form-choice.h: a label with a list to choose from under it, bound to one field
 *
 * Properties, for templates: title (string), field (string).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/session.h"

#define WM_TYPE_FORM_CHOICE (wm_form_choice_get_type ())
G_DECLARE_FINAL_TYPE (WmFormChoice, wm_form_choice, WM, FORM_CHOICE, GtkWidget)

/* Keys as they are kept and their translated names, n of both; the first line says
 * nothing ("not said"). */
void wm_form_choice_set_choices (WmFormChoice *self, const char *const *keys,
                                 const char *const *names, guint n);

/* @record (nullable). A key that is no choice is shown as it is. */
void wm_form_choice_bind (WmFormChoice *self, WmSession *session, gpointer record);

/* Emits "chosen" (const char *key, NULL for nothing) after a hand has chosen; a handler
 * that returns TRUE has made the edit itself. */

/* form-field.h: a label with a place to type under it, bound to one field of a record
 *
 * Shows the field, checks what is typed when it is left or Enter is pressed, and makes
 * one edit of it; what is wrong is said beside it and nothing is kept until it is
 * right. Escape brings the kept value back.
 *
 * Properties, for templates: title (string), field (string: the record's field, as in
 * its table), kind (WmFormKind), multiline (boolean, construct only).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/form/form-value.h"

#define WM_TYPE_FORM_FIELD (wm_form_field_get_type ())
G_DECLARE_FINAL_TYPE (WmFormField, wm_form_field, WM, FORM_FIELD, GtkWidget)

/* @record (nullable): NULL empties the field and shuts it. What is being typed stays. */
void wm_form_field_bind (WmFormField *self, WmSession *session, gpointer record);

/* Leaves the field: commits what is typed, if it is right. */
void wm_form_field_leave (WmFormField *self);

/* Names to choose from while typing. (transfer none) */
void wm_form_field_set_suggestions (WmFormField *self, const char *const *names);

/* Emits "keeping" (WmRecord *changed copy) before an edit is made of what was typed: a
 * handler may change more of it, so that it is one edit. */

/* For a field that is not bound: emits "entered" (const char *text) instead. */
void wm_form_field_set_text (WmFormField *self, const char *text);
const char *wm_form_field_get_text (WmFormField *self);
void
wm_form_field_set_remark (WmFormField *self, WmFieldVerdict verdict, const char *remark);
GtkEntry *wm_form_field_get_entry (WmFormField *self);

/* Undo inside the field while something is being typed; FALSE if nothing is. */
gboolean wm_form_field_undo_typing (GtkWidget *focus, gboolean redo);

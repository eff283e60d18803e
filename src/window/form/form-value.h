/* form-value.h: a record's field as text in a form, and back
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/form/field-check.h"
#include "window/session.h"

typedef enum
{
  WM_FORM_TEXT,
  WM_FORM_DATE,
  WM_FORM_MONEY,
  WM_FORM_MASS,
  WM_FORM_MM,
  WM_FORM_COUNT,
  WM_FORM_PHONE,
  WM_FORM_EMAIL,
  WM_FORM_FINENESS,
  WM_FORM_METAL, /* key of a metal, or plain words */
  WM_FORM_STONE, /* key of a stone, or plain words */
  WM_FORM_CUT,   /* key of a cut, or plain words */
  WM_FORM_CURRENCY,
  WM_FORM_REMEDY,     /* name of a remedy of the tables, or plain words */
  WM_FORM_SHOP_MONEY, /* in a setting, with its currency: "6500 EUR" */
  WM_FORM_PERCENT,    /* in a setting, hundredths of a per cent: "1900" */
  WM_FORM_TEST        /* name of a final test of the tables, or plain words */
} WmFormKind;

#define WM_TYPE_FORM_KIND (wm_form_kind_get_type ())
GType wm_form_kind_get_type (void);

/* The text to show. Caller frees. */
char *wm_form_value_format (WmSession *session, WmFormKind kind, WmRecord *record,
                            const WmField *field);

/* Checks @text and, unless it is wrong, writes it into @record. @out_remark as in
 * field-check.h. */
WmFieldVerdict
wm_form_value_parse (WmSession *session, WmFormKind kind, const char *text,
                     WmRecord *record, const WmField *field, char **out_remark);

/* Currency of the shown piece, else of the shop, else EUR. Caller frees. */
char *wm_form_currency (WmSession *session);

/* What the edit of a field is called in the history: N_() marked. */
const char *wm_form_edit_label (WmRecord *record, const WmField *field);

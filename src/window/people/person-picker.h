/* person-picker.h: who is working now: a short list, one key each
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "window/session.h"

#define WM_TYPE_PERSON_PICKER (wm_person_picker_get_type ())
G_DECLARE_FINAL_TYPE (WmPersonPicker, wm_person_picker, WM, PERSON_PICKER, GtkPopover)

WmPersonPicker *wm_person_picker_new (WmSession *session);

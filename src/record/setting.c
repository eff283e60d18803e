/* setting.c: what the shop has set once: its name, money, paper, limits
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/setting.h"

#include <glib/gi18n.h>

static const WmField fields[] = {
  { "name", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmSetting, name),
    N_ ("name of the setting") },
  { "value", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmSetting, value), N_ ("value") },
};

static const WmKindInfo info = { WM_KIND_SETTING, "setting", N_ ("setting"), fields,
                                 G_N_ELEMENTS (fields) };

WM_DEFINE_RECORD (WmSetting, wm_setting, &info)

/* setting.h: what the shop has set once: its name, money, paper, limits
 *
 * One setting a record, so that changing one is one small edit. The names in use
 * are the WM_SETTING_ words below; a name this program does not know is kept.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "record/record.h"

#define WM_SETTING_SHOP_NAME "shop-name"
#define WM_SETTING_SHOP_ADDRESS "shop-address" /* lines separated by newline */
#define WM_SETTING_SHOP_CONTACT "shop-contact" /* telephone, e-mail: one line */
#define WM_SETTING_CURRENCY "currency"         /* ISO 4217 code: EUR */
#define WM_SETTING_PAPER "paper"               /* "a4" or "letter" */
#define WM_SETTING_NUMBER_BLOCK                                                          \
  "number-block" /* "first-last" running numbers of this workstation */
#define WM_SETTING_WATCHED_FOLDER                                                        \
  "watched-folder"               /* where new photos arrive on this workstation */
#define WM_SETTING_TERMS "terms" /* the shop's own terms for ticket and report */
/* "6500 EUR": minor units and their currency, so that a price in another currency is
 * never mixed in. */
#define WM_SETTING_HOURLY_RATE "hourly-rate"
#define WM_SETTING_TAX_BP "tax-bp" /* hundredths of a per cent */

#define WM_TYPE_SETTING (wm_setting_get_type ())
G_DECLARE_FINAL_TYPE (WmSetting, wm_setting, WM, SETTING, WmRecord)

/* Members are read freely and written through the properties of the same name. */
struct _WmSetting
{
  WmRecord parent_instance;

  char *name;  /* WM_SETTING_... */
  char *value; /* as text; numbers in the C locale */
};

WmSetting *wm_setting_new (void);

/* material.h: metal or a part that a remedy takes: one line of its price
 *
 * Metal is charged by mass: price_minor = mass_mg x gram_price_minor / 1000, rounded by
 * reckon/quote.h. A part has a price only.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "record/record.h"

#define WM_TYPE_MATERIAL (wm_material_get_type ())
G_DECLARE_FINAL_TYPE (WmMaterial, wm_material, WM, MATERIAL, WmRecord)

/* Members are read freely and written through the properties of the same name. */
struct _WmMaterial
{
  WmRecord parent_instance;

  WmId remedy_id;
  gint64 position; /* order within the remedy, from 0 */
  char *what;      /* plain words: "end ring, 0.9 mm wire" */
  char *metal;     /* key of an alloy; NULL: a part, not metal by mass */
  gint64 mass_mg;
  gint64 gram_price_minor; /* minor units of the piece's currency */
  gint64 price_minor;      /* of the whole line */
};

WmMaterial *wm_material_new (void);

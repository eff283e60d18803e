/* material.c: metal or a part that a remedy takes: one line of its price
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/material.h"

#include <glib/gi18n.h>

static const WmField fields[] = {
  { "remedy_id", WM_FIELD_KEY, G_STRUCT_OFFSET (WmMaterial, remedy_id), N_ ("remedy"),
    WM_KIND_REMEDY },
  { "position", WM_FIELD_NUMBER, G_STRUCT_OFFSET (WmMaterial, position),
    N_ ("position") },
  { "what", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmMaterial, what), N_ ("what it is") },
  { "metal", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmMaterial, metal), N_ ("metal") },
  { "mass_mg", WM_FIELD_INT, G_STRUCT_OFFSET (WmMaterial, mass_mg), N_ ("mass") },
  { "gram_price_minor", WM_FIELD_INT, G_STRUCT_OFFSET (WmMaterial, gram_price_minor),
    N_ ("price per gram") },
  { "price_minor", WM_FIELD_INT, G_STRUCT_OFFSET (WmMaterial, price_minor),
    N_ ("price") },
};

static const WmKindInfo info = { WM_KIND_MATERIAL, "material", N_ ("material"), fields,
                                 G_N_ELEMENTS (fields) };

WM_DEFINE_RECORD (WmMaterial, wm_material, &info)

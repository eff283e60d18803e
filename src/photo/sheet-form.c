/* sheet-form.c: where the marks of our printed scale sheet stand, in millimetres
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/sheet-form.h"

/* Our choice: both fit A4 and Letter one above the other; the marks are as large as
 * leaves room for a bracelet (148 x 98 mm clear) and for a ring (62 x 43 mm). The two
 * differ in shape and in the share of the marks, so neither is taken for the other. */
static const WmSheetForm forms[WM_SHEET_N_FIELDS] = {
  [WM_SHEET_LARGE] = { 160.0, 110.0, 12.0 },
  [WM_SHEET_SMALL] = { 76.0, 57.0, 7.0 },
};

const WmSheetForm *
wm_sheet_form (WmSheetField field)
{
  return &forms[field];
}

WmPoint
wm_sheet_mark_origin (WmSheetField field, int index)
{
  const WmSheetForm *form = &forms[field];
  int is_right = index == 1 || index == 2;
  int is_low = index >= 2;

  return (WmPoint) { is_right ? form->width_mm - form->mark_mm : 0.0,
                     is_low ? form->height_mm - form->mark_mm : 0.0 };
}

void
wm_sheet_mark_dots (WmSheetField field, int index, WmPoint dots[WM_SHEET_N_MARKS])
{
  /* One in the middle; two and more on the corners of a square. */
  static const int steps[WM_SHEET_N_MARKS][2] = {
    { -1, -1 }, { 1, 1 }, { 1, -1 }, { -1, 1 }
  };
  double mark_mm = forms[field].mark_mm;
  WmPoint origin = wm_sheet_mark_origin (field, index);

  for (int i = 0; i <= index; i++)
    {
      double step = index == 0 ? 0.0 : WM_SHEET_STEP * mark_mm;

      dots[i].x = origin.x + 0.5 * mark_mm + steps[i][0] * step;
      dots[i].y = origin.y + 0.5 * mark_mm + steps[i][1] * step;
    }
}

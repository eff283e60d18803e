/* sheet-form.h: where the marks of our printed scale sheet stand, in millimetres
 *
 * The sheet has two fields to lay a piece in: a large one for bracelets and chains, a
 * small one for rings and close-ups. Each has four square marks in its corners: a black
 * frame with one to four black dots in it, counted clockwise from the top left. The page
 * that is printed and the finder read the same numbers.
 *
 * Coordinates of a field: mm from the outer top left corner of its first mark, x right,
 * y down, at a print of 100 %. The pattern is our own.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/point.h"

#define WM_SHEET_N_MARKS 4

typedef enum
{
  WM_SHEET_LARGE = 0,
  WM_SHEET_SMALL,
  WM_SHEET_N_FIELDS
} WmSheetField;

typedef struct
{
  double width_mm; /* from outer edge to outer edge of the marks */
  double height_mm;
  double mark_mm; /* side of a mark */
} WmSheetForm;

/* Shares of a mark's side. */
#define WM_SHEET_HOLE 0.64 /* side of the white square in the frame */
#define WM_SHEET_DOT 0.17  /* diameter of a dot */
#define WM_SHEET_STEP 0.15 /* of a dot's middle from the mark's middle, each way */
/* White that must stay free round a mark, for its edges to be found. */
#define WM_SHEET_QUIET 0.15

/* What the jeweller measures on the paper to learn whether the printer kept the size. */
#define WM_SHEET_CHECK_MM 100.0

const WmSheetForm *wm_sheet_form (WmSheetField field);

/* Outer top left corner of mark @index (0 to 3). */
WmPoint wm_sheet_mark_origin (WmSheetField field, int index);

/* The dots of mark @index: index + 1 middles, mm of the field. */
void wm_sheet_mark_dots (WmSheetField field, int index, WmPoint dots[WM_SHEET_N_MARKS]);

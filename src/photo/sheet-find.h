/* sheet-find.h: our printed scale sheet, found on a photo by its marks
 *
 * Black frames with one to four dots are looked for in the photo's outlines (local
 * threshold, components within components), checked against both fields of the sheet,
 * and their corners found again to a fraction of a pixel at full size. Three of the four
 * marks are enough: the piece may lie on one. The answer is the field's rectangle, ready
 * for reckon/plane.h (wm_plane_solve): set corners, width, height and u_corner_px.
 *
 * Valid for a sheet that lies flat; a bent one, or a lens that bends lines, is seen by
 * the marks not fitting one plane (WM_SHEET_BENT) and by u_corner_px growing.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gio/gio.h>

#include "photo/sheet-form.h"

typedef enum
{
  WM_SHEET_FOUND = 0,
  WM_SHEET_NONE,     /* no mark of ours: the photo shows no sheet */
  WM_SHEET_TOO_FEW,  /* only one or two marks: the rest is covered or cut off */
  WM_SHEET_NO_FIELD, /* marks, but no three that belong together */
  WM_SHEET_BENT      /* the marks do not lie in one plane */
} WmSheetAnswer;

typedef struct
{
  WmSheetAnswer answer; /* the rest is set for FOUND only */
  WmSheetField field;
  int n_marks;        /* 3 or 4 */
  WmPoint corners[4]; /* photo px, upright: the field's rectangle, its top left corner
                         first, clockwise; a corner may lie outside the photo */
  double width_mm;    /* corner 0 to 1, as printed */
  double height_mm;   /* corner 1 to 2 */
  double u_corner_px; /* standard uncertainty of each corner, per coordinate */
  double residual_px; /* root mean square, of all corners of marks that were found */
  double tilt_deg;    /* about how far the camera leant, from the field's own shape */
} WmSheetPlace;

/**
 * wm_sheet_find:
 * @path: a photo
 * @check_mm: what the sheet's 100 mm rule measures on the paper, 80 to 125;
 *   WM_SHEET_CHECK_MM when the printer kept the size
 * @out: (out): written on TRUE
 *
 * Of both fields on one photo the one that is larger there is given. Blocks (half a
 * second for 24 megapixels): off the interface thread.
 *
 * Returns: TRUE whether a sheet was found or not (@out->answer); FALSE with a
 * WM_PHOTO_ERROR or G_IO_ERROR_CANCELLED when the photo can not be read
 */
gboolean wm_sheet_find (const char *path, double check_mm, WmSheetPlace *out,
                        GCancellable *cancellable, GError **error);

/* A sentence on the answer, with what to do; in English, marked for translation. */
const char *wm_sheet_answer_text (WmSheetAnswer answer);

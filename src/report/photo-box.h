/* photo-box.h: a photo, or a part of it, in a box on the sheet, with its marks
 *
 * On paper ("print") the photo's own JPEG bytes go into the PDF once, however often
 * it is shown; to be mailed, each box gets a picture of the size it takes. On a
 * screen the box is filled with pixels of the screen's size.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gio/gio.h>

#include "report/sheet.h"
#include "report/visit-data.h"

typedef enum
{
  WM_REPORT_PRINT, /* photos as they are */
  WM_REPORT_MAIL   /* small: each picture as large as its place on the page */
} WmReportSize;

typedef struct
{
  WmVisitData *data;
  WmReportSize size;
  GHashTable *surfaces; /* path -> cairo surface of a whole photo, JPEG attached */
  GCancellable *cancellable;
} WmPhotoBoxes;

/* @data is borrowed. */
void wm_photo_boxes_init (WmPhotoBoxes *self, WmVisitData *data, WmReportSize size);
void wm_photo_boxes_clear (WmPhotoBoxes *self);

/* What a box shows: where each place of the upright photo falls, in mm from the box's
 * top left corner. */
typedef struct
{
  WmPhoto *photo;
  cairo_matrix_t to_box;
} WmBoxView;

/* The whole photo, as large as fits; quarter turns obeyed. */
void wm_box_view_fit (WmBoxView *view, WmPhoto *photo, double width_mm, double height_mm);

/* @centre in the middle, @px_per_mm photo pixels to a millimetre of paper; moved so
 * that the box stays within the photo where it can. */
void wm_box_view_close_up (WmBoxView *view, WmPhoto *photo, WmPoint centre,
                           double px_per_mm, double width_mm, double height_mm);

/* The after photo laid on what @before shows. @matrix: after pixels to before pixels,
 * row by row; about the middle of the box it is as good as affine. FALSE if the matrix
 * can not be used there. */
gboolean wm_box_view_follow (WmBoxView *view, WmPhoto *after, const double matrix[9],
                             const WmBoxView *before, double width_mm, double height_mm);

/* Marks drawn over a box. @severity is what the disc shows. */
typedef struct
{
  WmMark *mark;
  int number;
  WmSeverity severity;
} WmBoxMark;

/**
 * wm_photo_box_draw:
 *
 * A photo whose file is missing or damaged leaves a grey box that says so. Places of
 * discs are chosen anew for the box. @scale_bar: draw one if the photo's scale is known.
 */
void wm_photo_box_draw (WmPhotoBoxes *self, WmSheet *sheet, const WmBoxView *view,
                        double x_mm, double y_mm, double width_mm, double height_mm,
                        const WmBoxMark *marks, guint n_marks, gboolean scale_bar);

/* Photo pixels a true millimetre has, or NaN while the photo has no scale. */
double wm_photo_px_per_true_mm (WmPhoto *photo);

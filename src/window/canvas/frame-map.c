/* frame-map.c: a photo laid in the frame of another one
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/canvas/frame-map.h"

#include <math.h>
#include <string.h>

#include "photo/align.h"

/* Of the third coordinate against its value in the middle: nearer to the horizon a
 * photo px is spread over more than a screen. */
#define LEAST_W 1e-3

gboolean
wm_frame_map_init (WmFrameMap *self, const double matrix[9], double width, double height)
{
  double inverse[9];

  if (!wm_align_invert (matrix, inverse))
    return FALSE;
  memcpy (self->to_frame, matrix, sizeof self->to_frame);
  memcpy (self->to_photo, inverse, sizeof self->to_photo);
  self->width = width;
  self->height = height;
  return TRUE;
}

static double
depth (const double m[9], WmPoint p)
{
  return m[6] * p.x + m[7] * p.y + m[8];
}

/* The view transform as an affine map. */
static WmAffine
affine_of_view (const WmViewTransform *view)
{
  WmPoint o = wm_view_transform_to_view (view, (WmPoint) { 0, 0 });
  WmPoint x = wm_view_transform_to_view (view, (WmPoint) { 1, 0 });
  WmPoint y = wm_view_transform_to_view (view, (WmPoint) { 0, 1 });

  return (WmAffine) { x.x - o.x, y.x - o.x, x.y - o.y, y.y - o.y, o.x, o.y };
}

gboolean
wm_frame_map_near (const WmFrameMap *self, const WmViewTransform *view, WmPoint photo,
                   WmAffine *out)
{
  const double *m = self->to_frame;
  WmAffine v = affine_of_view (view);
  double w = depth (m, photo);
  WmPoint at = wm_align_map (m, photo);
  double xx, xy, yx, yy;

  if (!(w * m[8] > LEAST_W * m[8] * m[8]) || !isfinite (at.x) || !isfinite (at.y))
    return FALSE;
  xx = (m[0] - at.x * m[6]) / w;
  xy = (m[1] - at.x * m[7]) / w;
  yx = (m[3] - at.y * m[6]) / w;
  yy = (m[4] - at.y * m[7]) / w;
  out->xx = v.xx * xx + v.xy * yx;
  out->xy = v.xx * xy + v.xy * yy;
  out->yx = v.yx * xx + v.yy * yx;
  out->yy = v.yx * xy + v.yy * yy;
  out->x0 = v.xx * at.x + v.xy * at.y + v.x0 - out->xx * photo.x - out->xy * photo.y;
  out->y0 = v.yx * at.x + v.yy * at.y + v.y0 - out->yx * photo.x - out->yy * photo.y;
  return TRUE;
}

double
wm_frame_map_zoom (const WmFrameMap *self, const WmViewTransform *view)
{
  WmPoint photo = wm_align_map (self->to_photo, view->centre);
  WmAffine near;

  if (!wm_frame_map_near (self, view, photo, &near))
    return view->zoom;
  return sqrt (fabs (near.xx * near.yy - near.xy * near.yx));
}

gboolean
wm_frame_map_box_to_photo (const WmFrameMap *self, const WmViewTransform *view,
                           double photo[4])
{
  double left = G_MAXDOUBLE, top = G_MAXDOUBLE, right = -G_MAXDOUBLE,
         bottom = -G_MAXDOUBLE;

  for (int i = 0; i < 4; i++)
    {
      WmPoint corner = { i & 1 ? view->view_width : 0, i & 2 ? view->view_height : 0 };
      WmPoint frame = wm_view_transform_to_photo (view, corner);
      WmPoint p = wm_align_map (self->to_photo, frame);

      if (!(depth (self->to_photo, frame) * self->to_photo[8] > 0) || !isfinite (p.x)
          || !isfinite (p.y))
        return FALSE;
      left = MIN (left, p.x);
      top = MIN (top, p.y);
      right = MAX (right, p.x);
      bottom = MAX (bottom, p.y);
    }
  photo[0] = left;
  photo[1] = top;
  photo[2] = right - left;
  photo[3] = bottom - top;
  return TRUE;
}

/* What an affine map about the middle is wrong by at the edge, in the texture's own px
 * (one of which covers at most one px of the screen): half * half * g / w, the second
 * term of 1 / (1 + g x / w). */
int
wm_frame_map_parts (const WmFrameMap *self, const double box[4], int pixels)
{
  const double *m = self->to_frame;
  WmPoint middle = { box[0] + box[2] / 2, box[1] + box[3] / 2 };
  double px = MAX (box[2], box[3]) / pixels; /* photo px per px of the texture */
  double slope = hypot (m[6], m[7]) * px / fabs (depth (m, middle));
  double needed = pixels / 2.0 * sqrt (slope / WM_FRAME_ERROR_PX);
  int parts = 1;

  while (parts < needed && parts < WM_FRAME_MOST_PARTS)
    parts *= 2;
  return parts;
}

/* photo-scale.c: the scale kept with a photo, ready to measure with
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "report/photo-scale.h"

#include <math.h>

#include "record/points.h"

#define N_CORNERS 4

/* Most that a corner may differ for the scale to be called even. */
#define EVEN_SHARE 0.02

static double
known (double value)
{
  return isfinite (value) && value > 0 ? value : 0;
}

static gboolean
read_plane (WmPhoto *photo, WmPlane *plane)
{
  g_autoptr (GArray) corners =
      photo->scale_plane != NULL ? wm_points_parse (photo->scale_plane) : NULL;

  if (corners == NULL || corners->len != N_CORNERS)
    return FALSE;
  for (guint i = 0; i < N_CORNERS; i++)
    plane->corners[i] = g_array_index (corners, WmPoint, i);
  plane->width_mm = wm_value (photo->scale_width_mm, known (photo->scale_u_mm));
  plane->height_mm = wm_value (photo->scale_height_mm, known (photo->scale_u_mm));
  plane->u_corner_px = WM_PLACED_POINT_U_PX;
  return wm_plane_solve (plane, NULL) == WM_OK;
}

gboolean
wm_photo_scale_read (WmPhoto *photo, WmPhotoScale *out)
{
  WmPhotoScale scale = { .width = photo->width,
                         .height = photo->height,
                         .depth_u_mm = known (photo->scale_depth_mm) };
  double mm_per_px;

  if (photo->scale_plane != NULL)
    {
      scale.is_plane = TRUE;
      if (!read_plane (photo, &scale.plane))
        return FALSE;
    }
  else
    {
      scale.ruler = (WmRuler) { { photo->scale_x1, photo->scale_y1 },
                                { photo->scale_x2, photo->scale_y2 },
                                { photo->scale_mm, known (photo->scale_u_mm) },
                                WM_PLACED_POINT_U_PX };
      if (wm_scale_check (&scale.ruler, &mm_per_px, NULL) != WM_OK)
        return FALSE;
    }
  *out = scale;
  return TRUE;
}

double
wm_photo_scale_mm_per_px_at (const WmPhotoScale *scale, WmPoint at)
{
  WmPoint here, right, down;
  double mm_per_px = NAN;

  if (!scale->is_plane)
    return wm_scale_check (&scale->ruler, &mm_per_px, NULL) == WM_OK ? mm_per_px : NAN;
  if (wm_plane_map (&scale->plane, at, &here) != WM_OK
      || wm_plane_map (&scale->plane, (WmPoint) { at.x + 1, at.y }, &right) != WM_OK
      || wm_plane_map (&scale->plane, (WmPoint) { at.x, at.y + 1 }, &down) != WM_OK)
    return NAN;
  return sqrt (fabs ((right.x - here.x) * (down.y - here.y)
                     - (right.y - here.y) * (down.x - here.x)));
}

double
wm_photo_scale_mm_per_px (const WmPhotoScale *scale)
{
  return wm_photo_scale_mm_per_px_at (scale,
                                      (WmPoint) { scale->width / 2, scale->height / 2 });
}

gboolean
wm_photo_scale_is_even (const WmPhotoScale *scale)
{
  double middle = wm_photo_scale_mm_per_px (scale);

  for (int i = 0; i < N_CORNERS && scale->is_plane; i++)
    {
      WmPoint corner = { i % 2 == 0 ? 0 : scale->width, i < 2 ? 0 : scale->height };
      double there = wm_photo_scale_mm_per_px_at (scale, corner);

      if (!(fabs (there / middle - 1) <= EVEN_SHARE))
        return FALSE;
    }
  return isfinite (middle);
}

WmResult
wm_photo_scale_measure (const WmPhotoScale *scale, double camera_mm, WmPoint a, WmPoint b,
                        double u_end_px, WmLength *out, const char **which)
{
  /* The record keeps a standard uncertainty, the lie a half width: rectangular, GUM
   * 4.3.7 (clause from memory). */
  WmLie lie = { 0.0, scale->depth_u_mm * sqrt (3.0), camera_mm, 0.0 };

  if (scale->is_plane)
    return wm_plane_measure (&scale->plane, &lie, a, b, u_end_px, out, which);
  return wm_scale_measure (&scale->ruler, &lie, a, b, u_end_px, out, which);
}

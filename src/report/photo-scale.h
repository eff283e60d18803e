/* photo-scale.h: the scale kept with a photo, ready to measure with
 *
 * Two points a known distance apart, or four corners of a known rectangle (also the
 * printed sheet's), as the record of the photo has them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/plane.h"
#include "reckon/scale.h"
#include "record/photo.h"

/* Of the camera from the piece while nothing better is known, mm: a close-up lens or
 * telephone on a stand (common practice, no source). */
#define WM_CAMERA_MM 200.0

typedef struct
{
  gboolean is_plane;
  WmRuler ruler;        /* two points */
  WmPlane plane;        /* rectangle, solved */
  double width, height; /* of the photo, upright px */
  double depth_u_mm;    /* the place off the plane of the scale, standard; 0 or more */
} WmPhotoScale;

/* FALSE: the photo has no scale, or one that can not be used; @out is not written. */
gboolean wm_photo_scale_read (WmPhoto *photo, WmPhotoScale *out);

/* What a photo px is at @at, mm: over all directions its mean (of a plane: square root
 * of what a square px covers). NaN beyond a plane's horizon. */
double wm_photo_scale_mm_per_px_at (const WmPhotoScale *scale, WmPoint at);

/* The same in the middle of the photo. */
double wm_photo_scale_mm_per_px (const WmPhotoScale *scale);

/* Whether one figure holds over the whole photo: within 2 % of the middle's in all four
 * corners, which the eye does not see on a scale bar (common practice, no source). */
gboolean wm_photo_scale_is_even (const WmPhotoScale *scale);

/**
 * wm_photo_scale_measure:
 * @camera_mm: distance of the camera, above 0
 * @u_end_px: of each end, standard
 *
 * Returns: as wm_scale_measure () or wm_plane_measure ()
 */
WmResult
wm_photo_scale_measure (const WmPhotoScale *scale, double camera_mm, WmPoint a, WmPoint b,
                        double u_end_px, WmLength *out, const char **which);

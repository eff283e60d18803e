/* icc.c: rows of pixels from a photo's own colours to sRGB
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/icc.h"

#include <lcms2.h>

/* A context of our own: nothing is reported to anyone else's handlers, and two
 * threads never share one. */
struct _WmIccToSrgb
{
  cmsContext context;
  cmsHTRANSFORM transform;
};

/* A profile that moves no colour of a coarse grid by more than this is sRGB, under
 * whatever name (rounding alone moves one). */
#define SAME 2
#define GRID 5

static gboolean
changes_anything (cmsHTRANSFORM transform)
{
  guint8 before[GRID * GRID * GRID][4], after[GRID * GRID * GRID][4];
  int n = 0;

  for (int b = 0; b < GRID; b++)
    for (int g = 0; g < GRID; g++)
      for (int r = 0; r < GRID; r++, n++)
        {
          before[n][0] = b * 255 / (GRID - 1);
          before[n][1] = g * 255 / (GRID - 1);
          before[n][2] = r * 255 / (GRID - 1);
          before[n][3] = 255;
        }

  cmsDoTransform (transform, before, after, (cmsUInt32Number)n);
  for (int i = 0; i < n; i++)
    for (int c = 0; c < 3; c++)
      if (ABS (before[i][c] - after[i][c]) > SAME)
        return TRUE;

  return FALSE;
}

static cmsHTRANSFORM
make_transform (cmsContext context, const void *profile, gsize length)
{
  cmsHTRANSFORM transform = NULL;
  cmsHPROFILE from = cmsOpenProfileFromMemTHR (context, profile, (cmsUInt32Number)length);
  cmsHPROFILE to;

  if (from == NULL)
    return NULL;

  if (cmsGetColorSpace (from) == cmsSigRgbData)
    {
      to = cmsCreate_sRGBProfileTHR (context);
      transform =
          cmsCreateTransformTHR (context, from, TYPE_BGRA_8, to, TYPE_BGRA_8,
                                 INTENT_RELATIVE_COLORIMETRIC, cmsFLAGS_COPY_ALPHA);
      cmsCloseProfile (to);
    }
  cmsCloseProfile (from);
  return transform;
}

WmIccToSrgb *
wm_icc_to_srgb_new (const void *profile, gsize length)
{
  g_autofree WmIccToSrgb *self = g_new0 (WmIccToSrgb, 1);

  self->context = cmsCreateContext (NULL, NULL);
  if (self->context == NULL)
    return NULL;

  self->transform = make_transform (self->context, profile, length);
  if (self->transform != NULL && changes_anything (self->transform))
    return g_steal_pointer (&self);

  if (self->transform != NULL)
    cmsDeleteTransform (self->transform);
  cmsDeleteContext (self->context);
  return NULL;
}

void
wm_icc_to_srgb_free (WmIccToSrgb *self)
{
  if (self == NULL)
    return;
  cmsDeleteTransform (self->transform);
  cmsDeleteContext (self->context);
  g_free (self);
}

void
wm_icc_to_srgb_apply (WmIccToSrgb *self, guint8 *pixels, int count)
{
  cmsDoTransform (self->transform, pixels, pixels, (cmsUInt32Number)count);
}

gboolean
wm_icc_is_srgb (const void *profile, gsize length)
{
  cmsContext context = cmsCreateContext (NULL, NULL);
  cmsHTRANSFORM transform = make_transform (context, profile, length);
  gboolean is_srgb = transform != NULL && !changes_anything (transform);

  if (transform != NULL)
    cmsDeleteTransform (transform);
  cmsDeleteContext (context);
  return is_srgb;
}

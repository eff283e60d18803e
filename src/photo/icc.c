/* icc.c: rows of pixels from a photo's own colours to sRGB
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/icc.h"

#include <lcms2.h>
#include <string.h>

/* A context of our own: nothing is reported to anyone else's handlers, and two
 * threads never share one. */
struct _WmIccToSrgb
{
  cmsContext context;
  cmsHTRANSFORM transform;
};

static gboolean
calls_itself_srgb (cmsHPROFILE profile)
{
  char words[128] = "";

  cmsGetProfileInfoASCII (profile, cmsInfoDescription, "en", "US", words, sizeof words);
  words[sizeof words - 1] = '\0';
  return strncmp (words, "sRGB", 4) == 0;
}

WmIccToSrgb *
wm_icc_to_srgb_new (const void *profile, gsize length)
{
  g_autofree WmIccToSrgb *self = g_new0 (WmIccToSrgb, 1);
  cmsHPROFILE from, to;

  self->context = cmsCreateContext (NULL, NULL);
  if (self->context == NULL)
    return NULL;

  from = cmsOpenProfileFromMemTHR (self->context, profile, (cmsUInt32Number)length);
  if (from != NULL)
    {
      if (cmsGetColorSpace (from) == cmsSigRgbData && !calls_itself_srgb (from))
        {
          to = cmsCreate_sRGBProfileTHR (self->context);
          self->transform = cmsCreateTransformTHR (
            self->context, from, TYPE_BGRA_8, to, TYPE_BGRA_8,
            INTENT_RELATIVE_COLORIMETRIC, cmsFLAGS_COPY_ALPHA);
          cmsCloseProfile (to);
        }
      cmsCloseProfile (from);
    }

  if (self->transform == NULL)
    {
      cmsDeleteContext (self->context);
      return NULL;
    }

  return g_steal_pointer (&self);
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
  cmsHPROFILE opened = cmsOpenProfileFromMemTHR (context, profile,
                                                 (cmsUInt32Number)length);
  gboolean is_srgb = opened != NULL && calls_itself_srgb (opened);

  if (opened != NULL)
    cmsCloseProfile (opened);
  cmsDeleteContext (context);
  return is_srgb;
}

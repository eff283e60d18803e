/* photo-words.c: what the judge said of a photo, in words
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/photo-words.h"

#include <math.h>

#include "photo/judge.h"
#include "report/photo-scale.h"

/* The reasons behind the words of a record; unknown ones are left out. */
static guint
parse_reasons (const char *words)
{
  g_auto (GStrv) list = g_strsplit (words != NULL ? words : "", " ", -1);
  guint reasons = 0;

  for (guint bit = WM_REASON_SOFT; bit <= WM_REASON_NO_DETAIL; bit <<= 1)
    {
      WmJudgement judgement = { .reasons = bit };
      g_autofree const char **codes = wm_judgement_reason_codes (&judgement);

      if (codes[0] != NULL && g_strv_contains ((const char *const *)list, codes[0]))
        reasons |= bit;
    }
  return reasons;
}

static gboolean
parse_verdict (const char *word, WmVerdict *verdict)
{
  for (guint i = WM_VERDICT_GOOD; i <= WM_VERDICT_RETAKE; i++)
    if (g_strcmp0 (word, wm_verdict_code (i)) == 0)
      {
        *verdict = i;
        return TRUE;
      }
  return FALSE;
}

char *
wm_photo_verdict_words (WmPhoto *photo)
{
  WmJudgement judgement = { .focus = NAN, .reblur = NAN };

  if (!parse_verdict (photo->verdict, &judgement.verdict))
    return NULL;
  judgement.reasons = parse_reasons (photo->verdict_reasons);
  return wm_judgement_summary (&judgement);
}

char *
wm_photo_verdict_advice (WmPhoto *photo)
{
  guint reasons = parse_reasons (photo->verdict_reasons);
  GString *text = NULL;

  for (guint bit = WM_REASON_SOFT; bit <= WM_REASON_NO_DETAIL; bit <<= 1)
    {
      const char *advice = (reasons & bit) != 0 ? wm_reason_advice (bit) : NULL;

      if (advice == NULL)
        continue;
      if (text == NULL)
        text = g_string_new (advice);
      else
        g_string_append_printf (text, " %s", advice);
    }
  return text != NULL ? g_string_free (text, FALSE) : NULL;
}

double
wm_photo_scale_px_per_mm (WmPhoto *photo)
{
  WmPhotoScale scale;

  return wm_photo_scale_read (photo, &scale) ? 1 / wm_photo_scale_mm_per_px (&scale)
                                             : NAN;
}

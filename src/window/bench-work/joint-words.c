/* joint-words.c: a straight against an angled solder joint, in one sentence
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/bench-work/joint-words.h"

#include <glib/gi18n.h>
#include <math.h>

#include "reckon/joint.h"

char *
wm_joint_words (const WmMetal *metal)
{
  /* Any strength and any section do: only ratios are read. */
  WmJoint joint = {
    .angle_deg = wm_exact (90.0),
    .area_mm2 = wm_exact (1.0),
    .gap_mm = wm_exact (WM_JOINT_GAP_MM),
    .across_mpa = wm_exact (100.0),
    .along_mpa = wm_exact (100.0 / sqrt (3.0)),
    .yield_mpa = wm_exact (0.0),
    .solder_g_cm3 = wm_exact (metal->density.low),
    .fillet = wm_exact (WM_JOINT_FILLET),
  };
  WmJointStrength straight, angled;

  if (isnan (metal->density.low) || wm_joint (&joint, &straight, NULL) != WM_OK)
    return NULL;
  joint.angle_deg = wm_exact (WM_JOINT_ANGLED_DEG);
  if (wm_joint (&joint, &angled, NULL) != WM_OK)
    return NULL;

  return g_strdup_printf (
      _ ("Joint: filed to %.0f° instead of straight it has %.1f times the area, stands "
         "about %.2f times the pull and takes %.1f times the solder, at a gap of %.2f "
         "mm. "
         "Shear strength by von Mises, from the mechanics texts; an estimate to choose "
         "by, no proof of strength."),
      WM_JOINT_ANGLED_DEG, angled.area_gain.value, angled.gain.value,
      angled.solder_mm3.value / straight.solder_mm3.value, WM_JOINT_GAP_MM);
}

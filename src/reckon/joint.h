/* joint.h: straight and angled soldered joints, and a bridge over a weak place
 *
 * Pure computation: no I/O, no GLib, no state; safe on any thread.
 *
 * Angle between the joint's plane and the wire's axis: 90 is a straight (butt) joint.
 * Joint area A / sin a; of a pull s = F/A the joint sees s sin^2 a across it and
 * s sin a cos a along it. Together: (across/S)^2 + (along/T)^2 = 1 with the solder's
 * strength S across and T along; never more than the metal itself. Solder: joint area
 * times gap times a fillet allowance.
 * A bridge (backing plate) of width w makes up the lost area: thickness = lost area / w;
 * it laps far enough each side that the solder carries what the bridge carries:
 * lap = yield thickness / T (derived; even shear along the lap, so take more, not
 * less).
 * Valid for 10 to 90 degrees, a gap above 0; 0.02 to 0.1 mm draws solder in, over
 * 0.15 mm ask for a better fit (common practice, no source).
 *
 * Source: Cauchy's stress transformation (any mechanics text); the quadratic criterion is
 * a common screening choice for brazed joints (from memory). The fillet allowance of 1.5
 * is an example, not a measurement.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/value.h"

#define WM_JOINT_GAP_WIDE_MM 0.15
#define WM_JOINT_GAP_NARROW_MM 0.02
#define WM_JOINT_FILLET 1.5

typedef struct
{
  WmValue angle_deg;    /* 10..90 */
  WmValue area_mm2;     /* of the wire, above 0 */
  WmValue gap_mm;       /* above 0 */
  WmValue across_mpa;   /* S; value 0 = not known */
  WmValue along_mpa;    /* T; value 0 = not known */
  WmValue yield_mpa;    /* of the metal; value 0 = not known, then no cap */
  WmValue solder_g_cm3; /* density */
  WmValue fillet;       /* 1 or more */
} WmJoint;

typedef struct
{
  WmValue joint_area_mm2;
  WmValue area_gain;    /* against the straight joint */
  WmValue across_share; /* of the pull's stress */
  WmValue along_share;
  WmValue allowed_mpa; /* pull on the wire; NaN without S and T */
  WmValue force_n;
  WmValue gain;       /* against the straight joint of the same solder */
  WmValue solder_mm3; /* the gap alone */
  WmValue solder_mg;  /* the gap alone */
  WmValue solder_fillet_mg;
  int is_metal_the_limit; /* the wire gives before the joint */
  int is_gap_wide;
  int is_gap_narrow;
} WmJointStrength;

/**
 * wm_joint:
 *
 * Returns: WM_OK, or the refusal with @which angle, area, gap, across_mpa, along_mpa,
 * yield_mpa, solder_density, fillet
 */
WmResult wm_joint (const WmJoint *joint, WmJointStrength *out, const char **which);

typedef struct
{
  WmValue thickness_mm;
  WmValue lap_mm;    /* each side of the weak place; NaN without yield and T */
  WmValue length_mm; /* two laps and the place itself; NaN likewise */
} WmBridge;

/**
 * wm_bridge:
 * @made_mm2, @left_mm2: section as made and left
 * @width_mm: of the bridge; @place_mm: length of the weak place
 * @yield_mpa: of the bridge's metal; @along_mpa: the solder's shear strength; value 0 =
 * not known
 *
 * Returns: WM_OK; WM_LARGER_THAN_NEW (@which left); otherwise @which made, left, width,
 * place, yield_mpa, along_mpa
 */
WmResult
wm_bridge (WmValue made_mm2, WmValue left_mm2, WmValue width_mm, WmValue place_mm,
           WmValue yield_mpa, WmValue along_mpa, WmBridge *out, const char **which);

/* tongue.h: the folded spring tongue of a box clasp
 *
 * Pure computation: no I/O, no GLib, no state; safe on any thread.
 *
 * The upper leaf as a cantilever: k = E b t^3 / (4 L^3), F = k d, strain at the root
 * 3 t d / (2 L^2), press at first yield 2 yield L^2 / (3 E t), limit 1.5 times the force
 * there. Pressed further it keeps a set (elastic, perfectly plastic, rectangular
 * section): d/dy = (5 - (3 + f) sqrt (3 - 2 f)) / f^2 with f = F/Fy, set = d - f dy; from
 * 20/9 dy on f = 1.5.
 * Annealing does not change k, only the yield strength: the same press then sets it.
 * Valid for L/t from 5, d up to L/5; best for d/L under 0.1 and L/t over 10, and a fold
 * that neither yields nor turns (a soft fold makes it weaker).
 *
 * Source: Euler-Bernoulli cantilever (Timoshenko, from memory); the set re-derived and
 * checked against numerical integration of the curvature (test-tongue.c).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/value.h"

typedef struct
{
  WmValue width_mm;
  WmValue thickness_mm;
  WmValue length_mm;   /* free length from the fold */
  WmValue press_mm;    /* how far the tip is pressed when it goes in */
  WmValue modulus_mpa; /* Young's modulus */
  WmValue yield_mpa;   /* for this alloy and state; value 0 = not known */
} WmTongue;

typedef struct
{
  WmValue stiffness_n_mm;
  WmValue force_n;     /* at full press; without a yield strength the elastic one */
  WmValue strain;      /* at the root, ratio */
  WmValue elastic_mpa; /* stress if it stayed elastic */
  /* NaN without a yield strength. */
  WmValue yield_press_mm; /* press at which it begins to set */
  WmValue yield_force_n;
  WmValue limit_force_n;
  WmValue set_mm; /* what it does not spring back */
  int takes_set;  /* set may be over 0 within its expanded uncertainty */
  int is_hinge;   /* pressed to the limit: it has lost its temper */
} WmTongueLoad;

/**
 * wm_tongue_load:
 *
 * Returns: WM_OK; WM_OUT_OF_RANGE when L/t is under 5 (@which length) or d is over L/5
 * (@which press); otherwise the refusal with @which width, thickness, length, press,
 * modulus_mpa, yield_mpa
 */
WmResult wm_tongue_load (const WmTongue *tongue, WmTongueLoad *out, const char **which);

/* ring-load.h: what a round ring of wire holds, soldered or open
 *
 * Pure computation: no I/O, no GLib, no state; safe on any thread.
 *
 * Round wire d on mean radius R = (inside + d) / 2, pulled at two opposite points,
 * plastic moment Mp = yield d^3 / 6. Three models: soldered; unsoldered with the seam
 * at the side; unsoldered with the seam at the load. First yield with Winkler-Bach's
 * factor for the inner fibre of a curved bar. The force at which an unsoldered ring
 * is pulled open is Mp / R (seam at the side).
 * Valid for R / (d/2) from 1.5; the joint itself may be weaker (joint.h). Two straight
 * legs in pure tension, 2 A yield, are an upper limit reached only after a link has
 * pulled long: never the strength of a round ring.
 *
 * Source: Timoshenko, Strength of Materials I and II; Roark, circular rings (both from
 * memory); the constants 1/pi, 1/2 - 1/pi, pi/4 - 2/pi, pi/2 + 2 and 3 pi re-derived by
 * numerical integration (test-ring-load.c).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/value.h"

typedef struct
{
  WmValue mean_radius_mm;
  WmValue curved_factor; /* Winkler-Bach, inner fibre; 1 for a straight bar */
  WmValue plastic_moment_nmm;
  WmValue open_yield_n;      /* seam at the side: first yield (curved bar) */
  WmValue open_pull_n;       /* seam at the side: pulled open, with the axial force */
  WmValue open_pull_plain_n; /* the same without the axial force, Mp / R */
  WmValue open_at_seam_n;    /* seam at the load: pulled open */
  WmValue open_gap_mm_per_n; /* opening of the seam at the side, elastic; NaN without E */
  WmValue closed_yield_n;    /* soldered: first yield (curved bar) */
  WmValue closed_limit_n;    /* soldered: plastic limit */
  WmValue straight_limit_n;  /* 2 A yield: upper limit, never quoted as the strength */
  WmValue gain;              /* closed_limit_n / open_pull_plain_n */
} WmRingLoad;

/**
 * wm_ring_load:
 * @inside_mm: inside diameter, above 0
 * @wire_mm: wire diameter at the thinnest place, above 0
 * @yield_mpa: yield strength for alloy and state, MPa, above 0
 * @modulus_mpa: Young's modulus, MPa; value 0 = not known
 *
 * Returns: WM_OK; WM_OUT_OF_RANGE (@which inside) when R / (d/2) is under 1.5; otherwise
 * the refusal with @which inside, wire, yield_mpa, modulus_mpa
 */
WmResult wm_ring_load (WmValue inside_mm, WmValue wire_mm, WmValue yield_mpa,
                       WmValue modulus_mpa, WmRingLoad *out, const char **which);

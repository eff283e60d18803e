/* catch.h: notch, engagement and hold of a catch
 *
 * Pure computation: no I/O, no GLib, no state; safe on any thread.
 *
 * Kept metal under a notch of depth n in thickness t: pull (t-n)/t, bending its square,
 * stiffness its cube. Stress concentration after Inglis, 1 + 2 sqrt (n / root radius):
 * an upper guide for a shallow notch; for one hard pull only the ligament counts, for
 * something that snaps every day it is a cracking warning.
 * Engagement: least of notch depth and catch height, less slack, less the tongue's set.
 * Pushing in or pulling out over a slope at angle a to the sliding direction with
 * friction m: W = P (m + tan a) / (1 - m tan a); from a = atan (1/m) on it locks, and
 * near there no number is honest. A locked catch goes by shear: 0.58 yield times the
 * sheared area (von Mises).
 * Peterson's finite-width charts give less than Inglis; they were not checked and
 * are not used.
 *
 * Source: Inglis 1913 (from memory); insertion force as in snap-fit design guides (read
 * in excerpt); von Mises 1913 (from memory). Limits for "too deep" and for the least
 * engagement are our own proposal.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/value.h"

/* Kept share under which a notch counts as too deep: the remaining-section rule's
 * "repair" (our own proposal, trade tables). */
#define WM_NOTCH_LEAST_KEPT 0.60
/* Engagement under which only a hold test can tell (our own proposal). */
#define WM_CATCH_LEAST_ENGAGED_MM 0.20
/* 1 - m tan a under this counts as locked. */
#define WM_CATCH_LOCK_MARGIN 0.05

typedef struct
{
  WmValue pull_left; /* shares of the metal without the notch */
  WmValue bending_left;
  WmValue stiff_left;
  WmValue concentration; /* Inglis; NaN when the root radius is not given */
  int is_too_deep;       /* pull_left may be under WM_NOTCH_LEAST_KEPT (2 u) */
} WmNotch;

/**
 * wm_notch:
 * @root_radius_mm: value 0 = not known
 *
 * Returns: WM_OK; WM_CONTRADICTION (@which depth) when the notch is as deep as the metal;
 * otherwise @which thickness, depth, root_radius
 */
WmResult wm_notch (WmValue thickness_mm, WmValue depth_mm, WmValue root_radius_mm,
                   WmNotch *out, const char **which);

typedef struct
{
  WmValue engaged_mm;  /* may be negative: then it does not catch at all */
  WmValue push_in_n;   /* over the front slope */
  WmValue pull_out_n;  /* over the back slope; NaN when it locks */
  WmValue shear_n;     /* load at which the catch shears; NaN without yield and width */
  int locks;           /* back slope at or near self-locking: no number */
  int needs_hold_test; /* engaged_mm - 2 u under WM_CATCH_LEAST_ENGAGED_MM, or no lock */
} WmCatchHold;

typedef struct
{
  WmValue notch_depth_mm;
  WmValue catch_height_mm;
  WmValue slack_mm;
  WmValue set_mm;    /* of the tongue (tongue.h), 0 or more */
  WmValue force_n;   /* of the tongue at the tip (tongue.h) */
  WmValue friction;  /* 0..1 */
  WmValue front_deg; /* slope going in, 1..89 */
  WmValue back_deg;  /* slope coming out, 1..90 (90 = square shoulder) */
  WmValue width_mm;  /* of the catching edge; value 0 = not known */
  WmValue yield_mpa; /* value 0 = not known */
} WmCatch;

/**
 * wm_catch_hold:
 *
 * Returns: WM_OK; WM_NO_NUMBER_HONEST (@which front) when the front slope locks: it can
 * not be pushed in; otherwise the refusal with @which notch_depth, catch_height, slack,
 * set, force, friction, front, back, width, yield_mpa
 */
WmResult wm_catch_hold (const WmCatch *c, WmCatchHold *out, const char **which);

/* stone-weight.h: carat from millimetres, in the setting
 *
 * Pure computation: no I/O, no GLib, no state; safe on any thread.
 *
 * Diamonds: length x width x depth x factor, rounds and ovals with the square of the mean
 * diameter; some factors go with the ratio of length to width, on a straight line between
 * the printed ones. Coloured stones: the same with specific gravity times a factor of the
 * cut. Girdle and bulge: a correction in per cent.
 * Valid for ordinary proportions; an estimate, never a weighing. The method itself is
 * good to about WM_STONE_METHOD_SHARE: the sources' own corrections for girdle, depth and
 * bulge run to 4, 5 and 6 % (our own reading of them, no published figure).
 *
 * Source: trade reference, 7.4 and 7.5, with the published tables named there (1931 and
 * later); princess from memory; heart, triangle, baguettes common practice; sphere
 * geometry: pi / 1200 carat per mm^3 and unit of specific gravity.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/value.h"

#define WM_STONE_METHOD_SHARE 0.05
/* Exact: 4th CGPM, 1907. */
#define WM_CARAT_PER_GRAM 5.0
#define WM_STONE_DIAMOND_SG 3.52

typedef enum
{
  WM_STONE_CUT_ROUND = 0,
  WM_STONE_CUT_ROUND_OLD = 1, /* older full cut */
  WM_STONE_CUT_OVAL = 2,
  WM_STONE_CUT_EMERALD = 3, /* cut corners */
  WM_STONE_CUT_MARQUISE = 4,
  WM_STONE_CUT_PEAR = 5,
  WM_STONE_CUT_PRINCESS = 6,
  WM_STONE_CUT_HEART = 7,
  WM_STONE_CUT_TRIANGLE = 8,
  WM_STONE_CUT_BAGUETTE = 9,
  WM_STONE_CUT_TAPERED = 10,   /* width: mean of the two ends */
  WM_STONE_CUT_RECTANGLE = 11, /* coloured only */
  WM_STONE_CUT_SQUARE = 12,    /* coloured only */
  WM_STONE_CUT_CABOCHON = 13,  /* coloured only */
  WM_STONE_CUT_SPHERE = 14     /* pearl, bead; length: diameter */
} WmStoneCut;

#define WM_N_STONE_CUTS 15

typedef struct
{
  WmStoneCut cut;
  WmValue length_mm;         /* or the one diameter of a round or sphere */
  WmValue width_mm;          /* or the other diameter */
  WmValue depth_mm;          /* not read for a sphere */
  WmValue specific_gravity;  /* value 0 = diamond */
  double correction_percent; /* girdle, bulge: -10..20 */
} WmStoneMeasures;

typedef struct
{
  WmValue carat;
  double factor; /* the one used */
} WmStoneWeight;

/**
 * wm_stone_weight:
 *
 * Returns: WM_OK; WM_UNKNOWN_INPUT (@which cut) for a cut without a factor for this
 * stone; WM_CONTRADICTION (@which width) when the width exceeds the length by over 5 %;
 * WM_OUT_OF_RANGE (@which length) when length to width lies outside the printed ratios by
 * over a fifth; otherwise @which length, width, depth, specific_gravity, correction
 */
WmResult
wm_stone_weight (const WmStoneMeasures *stone, WmStoneWeight *out, const char **which);

/**
 * wm_stone_cut_text:
 *
 * Trade name of the cut, to be translated; wm_stone_cut_key the stable one. Static.
 */
const char *wm_stone_cut_text (WmStoneCut cut);
const char *wm_stone_cut_key (WmStoneCut cut);

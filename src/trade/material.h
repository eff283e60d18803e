/* material.h: metals, solders, stones and cuts of the tables
 *
 * Rows belong to their WmTrade; see checklist.h for the rules of texts, lists
 * and missing numbers. Figures are guide values: a supplier's data sheet comes
 * first, and every row carries its sources.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "trade/checklist.h"

G_BEGIN_DECLS

/**
 * WmMetal:
 * @family: "gold", "silver", "platinum", "palladium", "steel", "titanium"; "element" for
 *   a pure metal that alloys are made with
 * @is_pure: a chemical element rather than a working alloy
 * @fineness: parts per thousand by mass, NAN where it means nothing
 * @makeup: "Au 750 Ag 125 Cu 125", parts per thousand, or NULL
 * @density: g/cm3
 * @solidus_c, @liquidus_c: degrees Celsius; equal for a pure metal
 * @modulus_gpa: Young's modulus, GPa
 * @hv_annealed, @hv_hard: Vickers hardness
 * @yield_annealed_mpa, @yield_hard_mpa: MPa, see @yield_note
 * @temper: key of the #WmTemper that says how it is annealed, or NULL
 */
typedef struct
{
  const char *key;
  const char *name;
  const char *family;
  gboolean is_pure;
  double fineness;
  const char *makeup;
  WmRange density;
  WmRange solidus_c;
  WmRange liquidus_c;
  WmRange modulus_gpa;
  WmRange hv_annealed;
  WmRange hv_hard;
  WmRange yield_annealed_mpa;
  WmRange yield_hard_mpa;
  const char *yield_note;
  const char *temper;
  const char *const *sources;
  const char *source_note;
} WmMetal;

/* How a metal is annealed, cooled and hardened again. */
typedef struct
{
  const char *key;
  const char *name;
  const char *anneal;
  const char *cooling;
  const char *hardening;
  const char *note;
  const char *const *sources;
  const char *source_note;
} WmTemper;

/**
 * WmSolder:
 * @families: metals it joins, as in #WmMetal
 * @colour: "yellow", "white", "rose", or NULL
 * @fineness: parts per thousand of the family's metal, NAN when not known
 * @fineness_text: fineness or make-up in words
 * @solidus_c, @flow_c: degrees Celsius; flow is the liquidus or the printed number
 * @step: 1 flows hottest within its family and colour
 */
typedef struct
{
  const char *key;
  const char *name;
  const char *const *families;
  const char *colour;
  const char *grade;
  double fineness;
  const char *fineness_text;
  WmRange solidus_c;
  WmRange flow_c;
  double step;
  gboolean is_barred; /* cadmium-bearing kind: never to be used */
  const char *const *sources;
  const char *source_note;
} WmSolder;

/* What a stone stands near a flame. Ordered: later is stricter. */
typedef enum
{
  WM_STONE_STAY,
  WM_STONE_GUARD,
  WM_STONE_OUT,
  WM_STONE_NEVER
} WmStoneHeat;

typedef enum
{
  WM_STAND_YES,
  WM_STAND_CARE,
  WM_STAND_NO
} WmStand;

/**
 * WmStone:
 * @mohs, @sg: hardness; specific gravity
 * @heat: see #WmStoneHeat
 * @trouble_c: degrees Celsius at which trouble is first to be feared in air, where the
 *   source has a number; never permission to heat up to it
 * @trouble: the same in words
 * @happens: what happens to the stone
 * @shock: thermal shock, in words
 * @pickle, @ultrasonic, @steam: what it stands
 * @caveat: further words, or NULL
 */
typedef struct
{
  const char *key;
  const char *name;
  WmRange mohs;
  WmRange sg;
  WmStoneHeat heat;
  WmRange trouble_c;
  const char *trouble;
  const char *happens;
  const char *shock;
  WmStand pickle;
  WmStand ultrasonic;
  WmStand steam;
  const char *caveat;
  const char *const *sources;
  const char *source_note;
} WmStone;

/**
 * WmCut:
 * @diamond_formula, @stone_formula: estimating formula in words (mm in, carat out)
 */
typedef struct
{
  const char *key;
  const char *name;
  const char *diamond_formula;
  const char *stone_formula;
  const char *const *sources;
  const char *source_note;
} WmCut;

/**
 * WmFinenessRow:
 * @values: finenesses of this metal, parts per thousand, ascending, NULL-terminated
 */
typedef struct
{
  const char *key;
  const char *name;
  const char *const *values;
  const char *const *sources;
  const char *source_note;
} WmFinenessRow;

G_END_DECLS

/* heat-plan.h: which solder, in which order, and what becomes of the stones
 *
 * Pure computation: no I/O, no GLib, no state; safe on any thread.
 *
 * Working temperature = flow point of the solder + superheat. Margins: to the solidus of
 * the metal (refused under 0 K, warned under 30 K), to the solidus of the weakest joint
 * already holding (refused under 0 K, warned under 20 K), to the limit of each stone. The
 * worst case is taken throughout: every joint and every stone of the piece is as hot as
 * the place that is soldered. Distance never clears anything (heat-fall.h may only warn).
 * An unknown old joint counts as the lowest solder customary for the metal; with a sign
 * of tin-lead it counts as the eutectic, 183 C, and any hard soldering is refused until
 * it is cleaned away. An unknown stone is taken out. Joints go hottest first; two that
 * endanger each other have no safe order by temperature alone.
 *
 * Source: trade reference, sections 2 and 3 (the margin of 20 C to the metal is published
 * in a solder guide; 30 K superheat and the warning margins are common practice, no
 * source); Sn63Pb37 eutectic 183 C (from memory). Solder and stone rows are guide values:
 * supplier's data sheets come first.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/result.h"

#define WM_HEAT_SUPERHEAT_K 30.0
#define WM_HEAT_METAL_WARN_K 30.0
#define WM_HEAT_JOINT_WARN_K 20.0
#define WM_HEAT_TIN_LEAD_C 183.0
#define WM_HEAT_MAX 64

typedef struct
{
  double solidus_c;
  double anneal_c;        /* softens from here on; NaN = not known */
  double lowest_solder_c; /* lowest solidus of the solders customary for it */
  int whole_piece_hot;    /* silver: the whole piece reaches working temperature */
} WmHeatMetal;

typedef struct
{
  double solidus_c; /* NaN = not known: then the metal's lowest_solder_c counts */
  double flow_c;
} WmHeatSolder;

typedef enum
{
  WM_OLD_JOINT_KNOWN = 0,
  WM_OLD_JOINT_UNKNOWN = 1,
  WM_OLD_JOINT_SOFT = 2 /* grey seam, bubbling: tin-lead suspected */
} WmOldJointKind;

typedef struct
{
  WmOldJointKind kind;
  double solidus_c; /* read for KNOWN only */
} WmOldJoint;

typedef enum
{
  WM_HEAT_STONE_STAYS = 0,
  WM_HEAT_STONE_GUARD = 1,
  WM_HEAT_STONE_OUT = 2,
  WM_HEAT_STONE_NEVER = 3,
  WM_HEAT_STONE_UNKNOWN = 4
} WmHeatStoneRule;

typedef struct
{
  WmHeatStoneRule heat;
  double limit_c;        /* first trouble */
  double coated_limit_c; /* under a protective coat; NaN = a coat does not help */
  int can_come_out;      /* false: enamel, glued, too risky to unset */
  int is_out;            /* has been taken out already */
} WmHeatStone;

/* What to do with a stone, mildest first. */
typedef enum
{
  WM_STONE_ADVICE_STAYS = 0,
  WM_STONE_ADVICE_COAT = 1,   /* stays under a protective coat */
  WM_STONE_ADVICE_SHIELD = 2, /* stays behind a heat shield, no flame on it */
  WM_STONE_ADVICE_OUT = 3,
  WM_STONE_ADVICE_NO_HEAT = 4 /* can neither stay nor come out: cold repair or laser */
} WmStoneAdvice;

typedef enum
{
  WM_HEAT_PASS = 0,
  WM_HEAT_WARN = 1,
  WM_HEAT_REFUSE = 2
} WmHeatVerdict;

typedef enum
{
  WM_HEAT_METAL_MELTS = 1 << 0,
  WM_HEAT_METAL_CLOSE = 1 << 1,
  WM_HEAT_JOINT_REMELTS = 1 << 2,
  WM_HEAT_JOINT_CLOSE = 1 << 3,
  WM_HEAT_JOINT_GUESSED = 1 << 4,  /* an old joint's solder is not known */
  WM_HEAT_SOFT_SOLDER = 1 << 5,    /* tin-lead must be cleaned away first */
  WM_HEAT_STONES_OUT = 1 << 6,     /* some stones have to come out first */
  WM_HEAT_STONES_GUARDED = 1 << 7, /* some stay only under a coat or shield */
  WM_HEAT_STONE_FORBIDS = 1 << 8   /* one can neither stay nor come out */
} WmHeatReason;

#define WM_N_HEAT_REASONS 9

typedef enum
{
  WM_HEAT_TEMPER_KEPT = 0,
  WM_HEAT_TEMPER_SOFT_NEAR = 1, /* soft near the joint: springs and pins hardened again */
  WM_HEAT_TEMPER_SOFT_WHOLE = 2 /* the whole piece is soft */
} WmHeatTemper;

typedef struct
{
  double working_c;
  double margin_metal_k;
  double margin_joints_k; /* NaN without old joints */
  double margin_stones_k; /* least over stones that stay; NaN without any */
  WmHeatVerdict verdict;
  unsigned reasons; /* WmHeatReason */
  WmHeatTemper temper;
} WmHeatStep;

typedef struct
{
  const WmHeatMetal *metal;
  double superheat_k; /* 0..100 */
  const WmOldJoint *joints;
  int n_joints;
  const WmHeatStone *stones;
  int n_stones;
} WmHeatPiece;

/**
 * wm_heat_judge:
 * @advice: (out) (optional): one for each stone of @piece
 *
 * Judges one solder on the piece as it is.
 *
 * Returns: WM_OK; WM_CONTRADICTION (@which solders) for a solidus over the flow point;
 * WM_OUT_OF_RANGE, WM_NOT_A_NUMBER, WM_NOT_POSITIVE with @which metal_solidus, anneal,
 * lowest_solder, superheat, solders, joints, stones
 */
WmResult wm_heat_judge (const WmHeatPiece *piece, const WmHeatSolder *solder,
                        WmHeatStep *out, WmStoneAdvice *advice, const char **which);

typedef struct
{
  int best;     /* index of the solder with the widest least margin; -1 = none is safe */
  int n_usable; /* PASS or WARN */
  unsigned why_none; /* when best is -1: reasons of all refusals together */
} WmHeatChoice;

/**
 * wm_heat_choose:
 * @solders: 1..WM_HEAT_MAX
 * @steps: (out): one for each solder
 *
 * Returns: as wm_heat_judge; WM_TOO_FEW (@which solders) without any
 */
WmResult
wm_heat_choose (const WmHeatPiece *piece, const WmHeatSolder *solders, int n_solders,
                WmHeatStep *steps, WmHeatChoice *out, const char **which);

/**
 * wm_heat_order:
 * @solders: of the new joints, 1..WM_HEAT_MAX
 * @order: (out): indices, hottest first; equal flow points keep their order
 * @margins_k: (out): for each place in @order, the margin of the joints made before it
 * to its working temperature; NaN for the first
 * @clash_a, @clash_b: (out): two joints that endanger each other either way round, or
 * -1, -1
 *
 * Returns: as wm_heat_judge
 */
WmResult
wm_heat_order (const WmHeatSolder *solders, int n_solders, double superheat_k, int *order,
               double *margins_k, int *clash_a, int *clash_b, const char **which);

/**
 * wm_heat_reason_text:
 * @index: 0..WM_N_HEAT_REASONS - 1, the bit's number
 *
 * Plain sentence, to be translated. Static.
 */
const char *wm_heat_reason_text (int index);
const char *wm_stone_advice_text (WmStoneAdvice advice);
const char *wm_heat_temper_text (WmHeatTemper temper);
const char *wm_heat_verdict_text (WmHeatVerdict verdict);

/* bench-plan.h: the heat plan of a visit, from what was entered about the piece
 *
 * What is not known counts as the worst of its kind: old joints that nobody entered hold
 * the lowest solder of the metal's family, a stone that the table does not have comes
 * out. Distance clears nothing: the temperature at a stone is an estimate that may warn.
 * Declined remedies are left out; a joint already made counts as a known old joint.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "record/kinds.h"
#include "reckon/heat-fall.h"
#include "reckon/heat-plan.h"
#include "trade/trade.h"

/* Common practice, no source: a laser's heat stays about that near its spot. */
#define WM_LASER_NEAR_MM 2.0

/* In piece.old_joints beside the keys of solders: grey, bubbling seam, tin-lead. */
#define WM_OLD_JOINTS_NONE "none"
#define WM_OLD_JOINTS_UNKNOWN "unknown"
#define WM_OLD_JOINTS_SOFT "soft"

typedef enum
{
  WM_WORK_UNSAID,
  WM_WORK_SOLDER,
  WM_WORK_LASER,
  WM_WORK_COLD
} WmWorkMethod;

/* Why nothing can be planned. */
typedef enum
{
  WM_PLAN_READY,
  WM_PLAN_NO_METAL,     /* not entered */
  WM_PLAN_METAL_FOREIGN /* plain words, or no solder of the tables joins it */
} WmPlanState;

/* What is wrong with a step beyond the reasons of the heat. */
typedef enum
{
  WM_PLAN_NO_METHOD = 1 << 0,
  WM_PLAN_NO_SOLDER = 1 << 1,    /* none chosen, or one that the table does not have */
  WM_PLAN_WRONG_FAMILY = 1 << 2, /* the solder is not for this metal */
  WM_PLAN_BARRED = 1 << 3,       /* a cadmium-bearing kind */
  WM_PLAN_LOW_FINENESS = 1 << 4, /* under the fineness of the marking table */
  WM_PLAN_STONE_IN_THE_WAY = 1 << 5, /* has to come out first and does not */
  WM_PLAN_NEW_JOINT_CLOSE = 1 << 6,  /* a joint of this plan: under 20 K, or remelts */
  WM_PLAN_CLASH = 1 << 7,            /* endangers another step, and that this one */
  WM_PLAN_LASER_STONE = 1 << 8,      /* a stone that takes no heat beside the laser */
  WM_PLAN_LASER_LOW = 1 << 9,        /* a stone near: low power */
  WM_PLAN_STONE_MAY_BURN = 1 << 10,  /* the estimate at its distance is over its limit */
  WM_PLAN_LASER_SOFT = 1 << 11       /* soft solder is suspected under the laser */
} WmPlanTrouble;

#define WM_N_PLAN_TROUBLES 12

typedef struct
{
  WmStoneGroup *group;  /* (nullable): NULL only if none is entered */
  const WmStone *row;   /* (nullable): not in the table */
  WmStoneAdvice advice; /* as if it were in its setting */
  gboolean comes_out;   /* the remedy says so, and it has to */
} WmPlanStone;

typedef struct
{
  int number; /* from 1, in the order of the work */
  WmCheck *check;
  WmRemedy *remedy;
  WmWorkMethod method;
  gboolean is_done;
  const WmSolder *solder; /* (nullable) */
  gboolean has_heat;      /* @flow and @heat are reckoned */
  WmHeatSolder flow;
  WmHeatStep heat;
  double margin_new_k; /* to the joints of this plan made before; NaN without any */
  int new_joint;       /* number of the weakest of them; 0 without any */
  int clash;           /* number of the step; 0 without */
  GArray *stones;      /* WmPlanStone, one a group */
  int worst_stone;     /* index; -1 without stones */
  gboolean has_band;
  WmHeatBand band;  /* estimate at the stone's distance */
  unsigned trouble; /* WmPlanTrouble */
  WmHeatVerdict verdict;
} WmPlanStep;

typedef struct
{
  WmPlanState state;
  WmTrade *trade;
  WmPiece *piece;
  const WmMetal *metal;    /* (nullable) */
  WmHeatMetal heat_metal;  /* if READY */
  GPtrArray *steps;        /* WmPlanStep */
  GPtrArray *groups;       /* WmStoneGroup */
  GArray *joints;          /* WmOldJoint */
  double joints_hold_c;    /* weakest old joint; NaN without any */
  gboolean joints_guessed; /* not entered */
  gboolean joints_soft;
  WmHeatVerdict verdict; /* worst of the steps */
} WmBenchPlan;

/**
 * wm_bench_plan_new:
 * @stones: (element-type WmStoneGroup); @checks: (element-type WmCheck)
 * @measurements: (element-type WmMeasurement)
 * @remedies: (element-type WmRemedy): of the whole visit
 *
 * Remedies without heat in the tables and without a method count as cold.
 *
 * Returns: (transfer full)
 */
WmBenchPlan *
wm_bench_plan_new (WmTrade *trade, WmPiece *piece, GPtrArray *stones, GPtrArray *checks,
                   GPtrArray *measurements, GPtrArray *remedies);
void wm_bench_plan_free (WmBenchPlan *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmBenchPlan, wm_bench_plan_free)

/* How a remedy is done: as entered, else as the tables have it. */
WmWorkMethod wm_bench_plan_method (WmTrade *trade, WmRemedy *remedy);

typedef struct
{
  const WmSolder *solder;
  WmHeatStep heat;
  gboolean suits; /* fineness and colour */
} WmSolderPick;

/**
 * wm_bench_plan_list_solders:
 *
 * Solders that join the piece's metal, for a new joint on the piece as it is: the safe
 * ones of fitting fineness and colour first, then by verdict and margin; never a barred
 * one.
 *
 * Returns: (transfer full): WmSolderPick; empty unless READY
 */
GArray *wm_bench_plan_list_solders (WmBenchPlan *self);

/* Plain English, to be translated. Static. @index: the bit's number. */
const char *wm_plan_trouble_text (int index);

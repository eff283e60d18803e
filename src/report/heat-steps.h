/* heat-steps.h: the heat plan of a visit: its remedies as steps, hottest first
 *
 * Made from the records and the tables of the trade by reckon/heat-plan.h; what is not
 * known counts as the worst of its kind. Words for it are in heat-words.h. A plan lives
 * no longer than its WmVisitData. No widgets; any one thread.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/heat-plan.h"
#include "reckon/joint.h"
#include "report/visit-data.h"
#include "trade/heat.h"

/* Heat of a laser or pulse-arc weld stays within this of the spot: common practice, no
 * source. Nearer than it, or at a distance nobody has said, a stone is warned of. */
#define WM_HEAT_LASER_REACH_MM 2.0

typedef enum
{
  WM_HEAT_HOW_SOLDER,
  WM_HEAT_HOW_LASER,
  WM_HEAT_HOW_COLD,
  WM_HEAT_HOW_NOT_SAID /* needs heat, or words of one's own: counts as soldering */
} WmHeatHow;

/* What the record keeps and the lists offer: "solder", "laser", "cold". */
const char *wm_heat_how_key (WmHeatHow how);

typedef struct
{
  WmRemedy *remedy;
  WmCheck *check;
  WmHeatHow how;
  const WmSolder *solder; /* NULL: not said, or not in the tables */
  gboolean is_guessed;    /* counts as the worst solder of the metal */
  WmHeatSolder heat;      /* for solder and not said only */
  WmHeatStep judged;      /* likewise */
  double margin_made_k;   /* to the joints of earlier steps; NaN without any */
  int made_step;          /* the nearest of those in WmHeatPlan.steps; -1 */
  WmStoneAdvice *advice;  /* (nullable): one a stone group */
  const char *reason;     /* why it is refused or warned of: N_(); NULL */
  WmHeatVerdict verdict;
} WmHeatLine;

typedef enum
{
  WM_HEAT_PLAN_EMPTY,    /* no remedy that is not declined */
  WM_HEAT_PLAN_NO_METAL, /* not set, plain words, or no soldering metal of the tables */
  WM_HEAT_PLAN_OPEN,     /* a step does not say how, or with which solder */
  WM_HEAT_PLAN_REFUSED,
  WM_HEAT_PLAN_CARE,
  WM_HEAT_PLAN_COLD, /* nothing is heated */
  WM_HEAT_PLAN_SAFE
} WmHeatPlanState;

typedef struct
{
  WmVisitData *data; /* borrowed */
  const WmMetal *metal;
  WmHeatMetal heat_metal;
  WmHeatPlanState state;
  GPtrArray *steps;         /* (element-type WmHeatLine): solder hottest first, laser,
                               cold */
  GArray *joints;           /* WmOldJoint */
  GPtrArray *joint_solders; /* (element-type WmSolder): the known ones */
  gboolean joints_unknown;
  GArray *stones;        /* WmHeatStone, in the order of data->stones */
  GPtrArray *stone_rows; /* (element-type WmStone, NULL where not in the tables) */
} WmHeatPlan;

/**
 * wm_heat_plan_new:
 *
 * Remedies declined by the customer are left out; those of one's own words count as hot
 * until it is said how.
 *
 * Returns: (transfer full): never NULL; look at its state
 */
WmHeatPlan *wm_heat_plan_new (WmVisitData *data);
void wm_heat_plan_free (WmHeatPlan *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmHeatPlan, wm_heat_plan_free)

/* How a remedy is done, by the record or else by the tables. */
WmHeatHow wm_heat_how (WmTrade *trade, const WmRemedy *remedy);

/* The metal of the piece in the tables, or NULL. */
const WmMetal *wm_heat_metal_of (WmTrade *trade, WmPiece *piece);

/**
 * wm_heat_rank_solders:
 * @stones_out: the stones come out before
 * @verdicts: (out) (optional): WmHeatVerdict, one a solder
 *
 * Returns: (transfer container): rows of #WmSolder that join the metal, the fitting ones
 * first: not refused, of the fineness asked for, of the metal's colour, hottest. Empty
 * without a metal.
 */
GPtrArray *
wm_heat_rank_solders (WmHeatPlan *self, gboolean stones_out, GArray **verdicts);

/**
 * wm_heat_angled_joint:
 * @out_straight, @out_angled: (out)
 *
 * A joint of one square millimetre, straight and filed to 30 degrees, gap 0.05 mm; the
 * solder's shear strength taken as 1/sqrt (3) of its tensile strength (von Mises), since
 * tables of solders give none. Only ratios are meant to be read.
 *
 * Returns: FALSE if the metal's density is not known
 */
gboolean wm_heat_angled_joint (const WmMetal *metal, WmJointStrength *out_straight,
                               WmJointStrength *out_angled);

#define WM_HEAT_ANGLED_DEG 30.0
#define WM_HEAT_ANGLED_GAP_MM 0.05

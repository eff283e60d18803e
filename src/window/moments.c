/* moments.c: the five moments of a visit and their pages, once
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/moments.h"

#include <glib/gi18n.h>

#include "record/visit.h"
#include "window/bench-work/bench-work-page.h"
#include "window/hand-back/hand-back-page.h"
#include "window/inspection/inspection-page.h"
#include "window/proof/proof-page.h"
#include "window/take-in/take-in-page.h"

static const WmMomentRow moments[WM_N_MOMENTS] = {
  { WM_MOMENT_TAKE_IN, N_ ("Take-in"), "wm-take-in-symbolic", wm_take_in_page_get_type },
  { WM_MOMENT_INSPECTION, N_ ("Inspection"), "wm-inspection-symbolic",
    wm_inspection_page_get_type },
  { WM_MOMENT_WORK, N_ ("Bench work"), "wm-bench-work-symbolic",
    wm_bench_work_page_get_type },
  { WM_MOMENT_PROOF, N_ ("Proof"), "wm-proof-symbolic", wm_proof_page_get_type },
  { WM_MOMENT_HAND_BACK, N_ ("Hand-back"), "wm-hand-back-symbolic",
    wm_hand_back_page_get_type },
};

const WmMomentRow *
wm_moments (void)
{
  return moments;
}

const WmMomentRow *
wm_moments_find (const char *word)
{
  for (int i = 0; i < WM_N_MOMENTS; i++)
    if (g_strcmp0 (moments[i].word, word) == 0)
      return &moments[i];
  return NULL;
}

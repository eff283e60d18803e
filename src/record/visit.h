/* visit.h: one stay of a piece in the shop
 *
 * Moments are: take-in, inspection, work, proof, hand-back; nothing forces the
 * order. moment is where the jeweller left off.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "record/record.h"

#define WM_MOMENT_TAKE_IN "take-in"
#define WM_MOMENT_INSPECTION "inspection"
#define WM_MOMENT_WORK "work"
#define WM_MOMENT_PROOF "proof"
#define WM_MOMENT_HAND_BACK "hand-back"

#define WM_TYPE_VISIT (wm_visit_get_type ())
G_DECLARE_FINAL_TYPE (WmVisit, wm_visit, WM, VISIT, WmRecord)

/* Members are read freely and written through the properties of the same name. */
struct _WmVisit
{
  WmRecord parent_instance;

  WmId piece_id;
  char *moment;         /* one of the WM_MOMENT_ words */
  gint64 taken_in_at_s; /* UTC seconds */
  WmId taken_in_by;
  char *promised_on;
  char *wishes;             /* in the owner's words */
  char *condition;          /* one thing seen together a line */
  gint64 mass_in_mg;        /* milligrams */
  gint64 mass_out_mg;       /* milligrams */
  gint64 price_limit_minor; /* in the piece's currency */
  gint64 inspected_at_s;    /* UTC seconds; unknown until called inspected */
  WmId inspected_by;
  char *open_reason; /* needed to call a visit inspected with checks not looked at */
  gint64 handed_back_at_s; /* UTC seconds; unknown while the piece is here */
  WmId handed_back_by;
  char *next_check_on;
  char *next_check_reason; /* one sentence the customer reads */
  char *shop_note;         /* never shown to a customer */
};

WmVisit *wm_visit_new (void);

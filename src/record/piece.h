/* piece.h: one piece of jewellery, for its whole life
 *
 * Keys of type and metal are those of the tables of the trade (trade/).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "record/record.h"

#define WM_TYPE_PIECE (wm_piece_get_type ())
G_DECLARE_FINAL_TYPE (WmPiece, wm_piece, WM, PIECE, WmRecord)

/* Members are read freely and written through the properties of the same name. */
struct _WmPiece
{
  WmRecord parent_instance;

  char *number; /* year, running number, check character: "2026-0151-Q" */
  char *type;   /* key of a piece type: "ring_claw" */
  WmId owner_id;
  char *metal;          /* key of an alloy ("au750y") or plain words */
  gint64 fineness;      /* parts per thousand by mass */
  char *fineness_basis; /* "said", "stamped", "tested", "assumed" */
  char *description;
  char *unlike;
  char *worn; /* "daily, next to a watch" */
  char *size; /* ring size or other size as written */
  double length_mm;
  gint64 declared_minor; /* in the currency's minor unit (cents) */
  char *currency;        /* ISO 4217 */
  char *declared_basis;  /* the customer's words: receipt, valuation and date, a guess */
  char *shop_note;       /* never shown to a customer */
  char *old_joints;      /* "unknown", "none", or keys of solders; NULL: unknown */
};

WmPiece *wm_piece_new (void);

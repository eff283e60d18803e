/* remedy.h: what is done about a finding
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "record/record.h"

#define WM_TYPE_REMEDY (wm_remedy_get_type ())
G_DECLARE_FINAL_TYPE (WmRemedy, wm_remedy, WM, REMEDY, WmRecord)

/* Members are read freely and written through the properties of the same name. */
struct _WmRemedy
{
  WmRecord parent_instance;

  WmId check_id;
  gint64 position;
  char *what;         /* plain words the customer reads */
  gint64 minutes;     /* minutes estimated */
  gint64 price_minor; /* in the piece's currency */
  char *answer;       /* "agreed", "declined"; NULL: not asked yet */
  gint64 done_at_s;   /* UTC seconds */
  WmId done_by;
  char *method;    /* "solder", "laser", "cold" */
  char *solder;    /* key of the solders table */
  double stone_mm; /* from the joint */
  gboolean stones_out;
};

WmRemedy *wm_remedy_new (void);

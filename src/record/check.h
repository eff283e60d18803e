/* check.h: one checklist item answered in one visit
 *
 * The wording of the item is kept as it was that day, whatever the tables say
 * later. number is the figure on the discs: given when the check first gets a
 * mark or becomes a finding, unique in the visit, never given again.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "record/record.h"

#define WM_TYPE_CHECK (wm_check_get_type ())
G_DECLARE_FINAL_TYPE (WmCheck, wm_check, WM, CHECK, WmRecord)

/* Members are read freely and written through the properties of the same name. */
struct _WmCheck
{
  WmRecord parent_instance;

  WmId visit_id;
  gint64 position; /* order on the list, from 0 */
  char *item;      /* id of the item in the tables: "cl01" */
  char *part;      /* group on the list: "Box and tongue" */
  char *title;     /* what is looked at: "Claw tip" */
  char *fault;     /* its name when it is not sound: "Worn claw" */
  char *look;
  char *if_left;  /* plain words */
  char *remedies; /* one a line */
  char *customer; /* "The ring that joins the clasp was worn thin." */
  char *source;   /* code of the source of the threshold */
  gint64 number;
  gint64 severity;      /* WmSeverity (reckon/severity.h); 0 not looked at */
  char *note;           /* the customer reads it on the report */
  gint64 answered_at_s; /* UTC seconds */
  WmId answered_by;
  gint64 after_severity; /* WmSeverity; 0 not yet looked at again */
  gint64 suggested;      /* WmSeverity; 0: the numbers say nothing */
  char *suggested_reason;
  char *other_word_note;
};

WmCheck *wm_check_new (void);

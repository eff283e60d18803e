/* reminder.h: one call to the owner to come back
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "record/record.h"

#define WM_TYPE_REMINDER (wm_reminder_get_type ())
G_DECLARE_FINAL_TYPE (WmReminder, wm_reminder, WM, REMINDER, WmRecord)

/* Members are read freely and written through the properties of the same name. */
struct _WmReminder
{
  WmRecord parent_instance;

  WmId piece_id;
  WmId visit_id; /* the visit that set the date */
  char *due_on;
  char *reason;
  char *sent_on;
  char *way; /* "post", "email", "phone" */
  char *result;
};

WmReminder *wm_reminder_new (void);

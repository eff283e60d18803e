/* person.h: somebody the shop knows: an owner of pieces, or one who works here
 *
 * No accounts and no passwords: a worker is a name and initials.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "record/record.h"

#define WM_ROLE_OWNER "owner"
#define WM_ROLE_WORKER "worker"

#define WM_TYPE_PERSON (wm_person_get_type ())
G_DECLARE_FINAL_TYPE (WmPerson, wm_person, WM, PERSON, WmRecord)

/* Members are read freely and written through the properties of the same name. */
struct _WmPerson
{
  WmRecord parent_instance;

  char *role; /* WM_ROLE_OWNER or WM_ROLE_WORKER */
  char *name; /* as written on paper */
  /* of a worker: two or three letters, unique among those who work here */
  char *initials;
  char *phone;
  char *email;
  char *address;    /* lines separated by newline */
  char *letters_by; /* "post", "email", "phone", "none" */
  char *language;   /* BCP 47: "en", "de" */
  char *note;       /* for the shop only; never shown to a customer */
  gboolean retired; /* a worker who left stays, because old edits name them */
};

WmPerson *wm_person_new (void);

/* person.c: somebody the shop knows: an owner of pieces, or one who works here
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/person.h"

#include <glib/gi18n.h>

static const WmField fields[] = {
  { "role", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPerson, role), N_ ("role") },
  { "name", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPerson, name), N_ ("name") },
  { "initials", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPerson, initials), N_ ("initials") },
  { "phone", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPerson, phone), N_ ("telephone") },
  { "email", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPerson, email), N_ ("e-mail") },
  { "address", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPerson, address), N_ ("address") },
  { "letters_by", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPerson, letters_by),
    N_ ("letters by") },
  { "language", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPerson, language), N_ ("language") },
  { "note", WM_FIELD_TEXT, G_STRUCT_OFFSET (WmPerson, note), N_ ("note") },
  { "retired", WM_FIELD_FLAG, G_STRUCT_OFFSET (WmPerson, retired),
    N_ ("no longer here") },
};

static const WmKindInfo info = { WM_KIND_PERSON, "person", N_ ("person"), fields,
                                 G_N_ELEMENTS (fields) };

WM_DEFINE_RECORD (WmPerson, wm_person, &info)

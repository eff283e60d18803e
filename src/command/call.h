/* call.h: one call of a verb, from inside
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "command/command.h"

struct _WmCall
{
  const WmVerb *verb;  /* NULL: none yet */
  GPtrArray *operands; /* of char * */
  GHashTable *values;  /* option's name -> value */
  WmTrade *trade;      /* once asked for */
};

void wm_call_init (WmCall *call);
void wm_call_clear (WmCall *call);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (WmCall, wm_call_clear)

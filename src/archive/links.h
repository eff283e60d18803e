/* links.h: which rows go with which, and which only name each other
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "record/record.h"

typedef enum
{
  WM_LINK_BELONGS, /* goes when the named row goes: a mark with its photo */
  WM_LINK_NAMES,   /* is emptied when the named row goes: a mark and its check */
  WM_LINK_HOLDS    /* keeps the named row from going: the owner of a piece */
} WmLinkRule;

typedef struct
{
  WmKind kind;
  const char *field;
  WmLinkRule rule;
} WmLink;

/* One for every field of type key of every kind. */
extern const WmLink wm_links[];
extern const guint wm_n_links;

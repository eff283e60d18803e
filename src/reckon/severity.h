/* severity.h: the four levels a check can have, and "not looked at"
 *
 * Kept in this lowest room because the tables, the record, the drawn mark and
 * the reckoned suggestions all speak of the same four levels. The numbers are
 * stored in archives and typed on the keypad: they never change.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

typedef enum
{
  WM_SEVERITY_NOT_LOOKED_AT = 0,
  WM_SEVERITY_SOUND = 1,
  WM_SEVERITY_WATCH = 2,
  WM_SEVERITY_REPAIR = 3,
  WM_SEVERITY_NO_WEAR = 4,
  WM_SEVERITY_NOT_PRESENT = 5 /* the piece has no such part; not a finding */
} WmSeverity;

/* A finding is a check whose answer is not sound (design.md, section 3). */
static inline int
wm_severity_is_finding (WmSeverity severity)
{
  return severity >= WM_SEVERITY_WATCH && severity <= WM_SEVERITY_NO_WEAR;
}

/* open-check.c: which check of the visit was opened last, for windows over the page
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/open-check.h"

static GQuark
get_quark (void)
{
  return g_quark_from_static_string ("wm-open-check");
}

void
wm_open_check_set (WmSession *session, const WmId *check_id)
{
  g_object_set_qdata_full (G_OBJECT (session), get_quark (),
                           g_memdup2 (check_id, sizeof *check_id), g_free);
}

WmId
wm_open_check_get (WmSession *session)
{
  const WmId *id = g_object_get_qdata (G_OBJECT (session), get_quark ());

  return id != NULL ? *id : WM_ID_NONE;
}

/* evidence.c: what the archive itself has seen of one checklist item
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "archive/archive-private.h"
#include "reckon/severity.h"

gboolean
wm_archive_count_answers (WmArchive *self, const char *item, gint64 *out_seen,
                          gint64 *out_failed, GError **error)
{
  g_auto (WmReader) reader = { NULL };
  g_autoptr (WmStatement) count = NULL;

  if (!wm_archive_take_reader (self, &reader, error))
    return FALSE;
  count = wm_database_prepare (
      reader.db,
      "SELECT count (*), coalesce (sum (severity >= ?2), 0) FROM \"check\""
      " WHERE item = ?1 AND severity BETWEEN ?3 AND ?4",
      error);
  if (count == NULL)
    return FALSE;
  wm_statement_bind_text (count, 1, item);
  wm_statement_bind_int64 (count, 2, WM_SEVERITY_REPAIR);
  wm_statement_bind_int64 (count, 3, WM_SEVERITY_SOUND);
  wm_statement_bind_int64 (count, 4, WM_SEVERITY_NO_WEAR);
  if (!wm_statement_next (count, error))
    return FALSE;
  *out_seen = wm_statement_get_int64 (count, 0);
  *out_failed = wm_statement_get_int64 (count, 1);
  return TRUE;
}

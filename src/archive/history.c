/* history.c: what was done to a piece, for reading
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "archive/archive-private.h"

static void
free_event (WmEvent *event)
{
  g_free (event->by_name);
  g_free (event->label);
  g_free (event);
}

GPtrArray *
wm_archive_list_events (WmArchive *self, const WmId *piece_id, GError **error)
{
  g_autoptr (GPtrArray) events =
      g_ptr_array_new_with_free_func ((GDestroyNotify)free_event);
  g_auto (WmReader) reader = { NULL };
  g_autoptr (WmStatement) select = NULL;
  g_autoptr (GError) problem = NULL;

  if (!wm_archive_take_reader (self, &reader, error))
    return NULL;
  select =
      wm_database_prepare (reader.db,
                           "SELECT e.made_at_us, p.name, e.label, e.undone FROM edit AS e"
                           " LEFT JOIN person AS p ON p.id = e.made_by"
                           " WHERE e.action = 'edit' AND e.piece_id IS ?1 ORDER BY e.id",
                           error);
  if (select == NULL)
    return NULL;
  wm_statement_bind_id (select, 1, piece_id);
  while (wm_statement_next (select, &problem))
    {
      WmEvent *event = g_new0 (WmEvent, 1);

      event->at_us = wm_statement_get_int64 (select, 0);
      event->by_name = g_strdup (wm_statement_get_text (select, 1));
      event->label = g_strdup (wm_statement_get_text (select, 2));
      event->undone = wm_statement_get_int64 (select, 3) != 0;
      g_ptr_array_add (events, event);
    }
  if (problem == NULL)
    return g_steal_pointer (&events);
  g_propagate_error (error, g_steal_pointer (&problem));
  return NULL;
}

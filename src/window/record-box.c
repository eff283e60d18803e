/* record-box.c: one child widget a record, kept while the record is there
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/record-box.h"

#define KEY "wm-record-id"

static gboolean
is_child_of (GtkWidget *child, const WmId *id)
{
  const WmId *own = g_object_get_data (G_OBJECT (child), KEY);

  return own != NULL && wm_id_equal (own, id);
}

static GtkWidget *
find_child (GtkBox *box, const WmId *id)
{
  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (box)); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (is_child_of (child, id))
      return child;
  return NULL;
}

static gboolean
is_listed (GPtrArray *records, GtkWidget *child)
{
  for (guint i = 0; i < records->len; i++)
    if (is_child_of (child, wm_record_get_id (records->pdata[i])))
      return TRUE;
  return FALSE;
}

static void
remove_unlisted (GtkBox *box, GPtrArray *records)
{
  GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (box));

  while (child != NULL)
    {
      GtkWidget *next = gtk_widget_get_next_sibling (child);

      if (!is_listed (records, child))
        gtk_box_remove (box, child);
      child = next;
    }
}

void
wm_record_box_show (GtkBox *box, GPtrArray *records, WmRecordMake make, WmRecordShow show,
                    gpointer user_data)
{
  GtkWidget *before = NULL;

  remove_unlisted (box, records);
  for (guint i = 0; i < records->len; i++)
    {
      const WmId *id = wm_record_get_id (records->pdata[i]);
      GtkWidget *child = find_child (box, id);

      if (child == NULL)
        {
          child = make (records->pdata[i], user_data);
          g_object_set_data_full (G_OBJECT (child), KEY, g_memdup2 (id, sizeof (WmId)),
                                  g_free);
          gtk_box_insert_child_after (box, child, before);
        }
      else if (gtk_widget_get_prev_sibling (child) != before)
        gtk_box_reorder_child_after (box, child, before);
      show (child, records->pdata[i], user_data);
      before = child;
    }
}

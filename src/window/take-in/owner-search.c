/* owner-search.c: find a customer the shop knows, or enter a new one
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/take-in/owner-search.h"

#include <glib/gi18n.h>

#define MAX_SHOWN 6
/* Pieces looked through for their owners: a customer with many pieces must not hide
 * the others. */
#define MAX_PIECES 60

struct _WmOwnerSearch
{
  GtkWidget parent_instance;

  GtkWidget *entry;
  GtkWidget *list;
  WmSession *session;
};

enum
{
  OWNER_CHOSEN,
  OWNER_NAMED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (WmOwnerSearch, wm_owner_search, GTK_TYPE_WIDGET)

/* ---- finding --------------------------------------------------------------------- */

static gboolean
has_words (const char *name, const char *words)
{
  return name != NULL && g_str_match_string (words, name, TRUE);
}

static gboolean
is_listed (GPtrArray *owners, const WmId *id)
{
  for (guint i = 0; i < owners->len; i++)
    if (wm_id_equal (wm_record_get_id (owners->pdata[i]), id))
      return TRUE;
  return FALSE;
}

GPtrArray *
wm_owner_search_find (WmArchive *archive, const char *words, guint limit)
{
  GPtrArray *owners = g_ptr_array_new_with_free_func (g_object_unref);
  g_autoptr (GPtrArray) rows =
      wm_archive_search (archive, words, WM_PIECES_ALL, NULL, 0, MAX_PIECES, NULL);

  for (guint i = 0; rows != NULL && i < rows->len && owners->len < limit; i++)
    {
      WmPieceRow *row = rows->pdata[i];
      g_autoptr (WmPiece) piece = NULL;
      WmPerson *owner;

      if (!has_words (row->owner_name, words))
        continue;
      piece = wm_archive_get (archive, WM_KIND_PIECE, &row->piece_id, NULL);
      if (piece == NULL || wm_id_is_none (&piece->owner_id)
          || is_listed (owners, &piece->owner_id))
        continue;
      owner = wm_archive_get (archive, WM_KIND_PERSON, &piece->owner_id, NULL);
      if (owner != NULL)
        g_ptr_array_add (owners, owner);
    }

  return owners;
}

/* ---- list ------------------------------------------------------------------------ */

static void
clear_list (WmOwnerSearch *self)
{
  GtkWidget *row;

  while ((row = gtk_widget_get_first_child (self->list)) != NULL)
    gtk_list_box_remove (GTK_LIST_BOX (self->list), row);
}

static void
add_line (WmOwnerSearch *self, const char *title, const char *second, WmPerson *owner)
{
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *name = gtk_label_new (title);
  GtkWidget *more = gtk_label_new (second);

  gtk_label_set_xalign (GTK_LABEL (name), 0);
  gtk_label_set_ellipsize (GTK_LABEL (name), PANGO_ELLIPSIZE_END);
  gtk_widget_set_hexpand (name, TRUE);
  gtk_widget_add_css_class (more, "second-line");
  gtk_box_append (GTK_BOX (box), name);
  gtk_box_append (GTK_BOX (box), more);
  gtk_widget_add_css_class (box, "card-line");
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  title, -1);
  if (owner != NULL)
    g_object_set_data_full (G_OBJECT (row), "owner", g_object_ref (owner),
                            g_object_unref);
  gtk_list_box_append (GTK_LIST_BOX (self->list), row);
}

static char *
get_words (WmOwnerSearch *self)
{
  return g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->entry))));
}

static void
on_search_changed (GtkEditable *entry, WmOwnerSearch *self)
{
  g_autofree char *words = get_words (self);
  g_autofree char *new_line = NULL;
  g_autoptr (GPtrArray) owners = NULL;

  clear_list (self);
  gtk_widget_set_visible (self->list, words[0] != '\0');
  if (words[0] == '\0')
    return;

  owners =
      wm_owner_search_find (wm_session_get_archive (self->session), words, MAX_SHOWN);
  for (guint i = 0; i < owners->len; i++)
    {
      WmPerson *owner = owners->pdata[i];

      add_line (self, owner->name, owner->phone != NULL ? owner->phone : owner->email,
                owner);
    }
  /* Translators: somebody the shop does not know yet: New customer: Tilda Osk */
  new_line = g_strdup_printf (_ ("New customer: %s"), words);
  add_line (self, new_line, "", NULL);
}

static void
choose_row (WmOwnerSearch *self, GtkListBoxRow *row)
{
  WmPerson *owner = g_object_get_data (G_OBJECT (row), "owner");
  g_autofree char *words = get_words (self);

  if (owner != NULL)
    g_signal_emit (self, signals[OWNER_CHOSEN], 0, owner);
  else if (words[0] != '\0')
    g_signal_emit (self, signals[OWNER_NAMED], 0, words);
}

static void
on_row_activated (GtkListBox *list, GtkListBoxRow *row, WmOwnerSearch *self)
{
  choose_row (self, row);
}

/* Enter takes the customer whose whole name was typed, else a new one: a namesake is
 * chosen from the list on purpose. */
static void
on_activate (GtkEntry *entry, WmOwnerSearch *self)
{
  g_autofree char *words = get_words (self);

  if (words[0] == '\0')
    return;
  for (GtkWidget *row = gtk_widget_get_first_child (self->list); row != NULL;
       row = gtk_widget_get_next_sibling (row))
    {
      WmPerson *owner = g_object_get_data (G_OBJECT (row), "owner");

      if (owner != NULL && g_utf8_collate (owner->name, words) == 0)
        {
          choose_row (self, GTK_LIST_BOX_ROW (row));
          return;
        }
    }
  g_signal_emit (self, signals[OWNER_NAMED], 0, words);
}

/* ---- overrides ----------------------------------------------------------------------
 */

static gboolean
wm_owner_search_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (WM_OWNER_SEARCH (widget)->entry);
}

static void
wm_owner_search_dispose (GObject *object)
{
  WmOwnerSearch *self = WM_OWNER_SEARCH (object);

  g_clear_pointer (&self->entry, gtk_widget_unparent);
  g_clear_pointer (&self->list, gtk_widget_unparent);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (wm_owner_search_parent_class)->dispose (object);
}

static void
wm_owner_search_class_init (WmOwnerSearchClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_owner_search_dispose;
  widget_class->grab_focus = wm_owner_search_grab_focus;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);

  signals[OWNER_CHOSEN] =
      g_signal_new ("owner-chosen", WM_TYPE_OWNER_SEARCH, G_SIGNAL_RUN_LAST, 0, NULL,
                    NULL, NULL, G_TYPE_NONE, 1, WM_TYPE_PERSON);
  signals[OWNER_NAMED] =
      g_signal_new ("owner-named", WM_TYPE_OWNER_SEARCH, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                    NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
wm_owner_search_init (WmOwnerSearch *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_widget_add_css_class (GTK_WIDGET (self), "card-list");

  self->entry = gtk_entry_new ();
  gtk_entry_set_has_frame (GTK_ENTRY (self->entry), FALSE);
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->entry), _ ("Name of the customer"));
  gtk_entry_set_icon_from_icon_name (GTK_ENTRY (self->entry), GTK_ENTRY_ICON_PRIMARY,
                                     "system-search-symbolic");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Name of the customer"), -1);
  gtk_widget_add_css_class (self->entry, "card-entry");
  g_signal_connect (self->entry, "changed", G_CALLBACK (on_search_changed), self);
  g_signal_connect (self->entry, "activate", G_CALLBACK (on_activate), self);
  gtk_widget_set_parent (self->entry, GTK_WIDGET (self));

  self->list = gtk_list_box_new ();
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (self->list), GTK_SELECTION_NONE);
  gtk_widget_set_visible (self->list, FALSE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Customers"), -1);
  g_signal_connect (self->list, "row-activated", G_CALLBACK (on_row_activated), self);
  gtk_widget_set_parent (self->list, GTK_WIDGET (self));
}

void
wm_owner_search_show (WmOwnerSearch *self, WmSession *session)
{
  g_set_object (&self->session, session);
  gtk_widget_set_sensitive (GTK_WIDGET (self), !wm_session_is_read_only (session));
}

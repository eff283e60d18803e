/* pieces-pane.c: search, diary and the list of pieces at the left
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/pieces/pieces-pane.h"

#include <adwaita.h>
#include <glib/gi18n.h>

#include "window/action-table.h"
#include "window/pieces/piece-row-view.h"
#include "window/pieces/pieces-model.h"
#include "window/resource.h"
#include "window/template.h"

/* Arrow keys run through the list without opening every piece on the way. */
#define OPEN_DELAY_MS 140
#define DIARY_DAYS 84 /* twelve weeks */

struct _WmPiecesPane
{
  GtkWidget parent_instance;

  GtkWidget *pieces_toggle;
  GtkWidget *new_button;
  GtkSearchEntry *entry;
  GtkWidget *diary_button;
  GtkLabel *diary_count;
  GtkStack *stack;
  GtkListView *list;
  GtkLabel *empty;

  WmSession *session;
  WmPiecesModel *model;
  GtkSingleSelection *selection;
  guint open_id;
  gboolean following; /* the selection follows the session, not the hand */
};

enum
{
  CHOSEN,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (WmPiecesPane, wm_pieces_pane, GTK_TYPE_WIDGET)

static void
show_state (WmPiecesPane *self)
{
  WmPiecesState state = wm_pieces_model_get_state (self->model);

  if (state == WM_PIECES_STATE_EMPTY)
    gtk_label_set_label (self->empty, _ ("No pieces yet. Take in the first one."));
  else if (state == WM_PIECES_STATE_NOT_FOUND)
    gtk_label_set_label (self->empty,
                         _ ("Nothing found for these words. Try a number or a name."));
  gtk_stack_set_visible_child_name (
      self->stack, state == WM_PIECES_STATE_EMPTY || state == WM_PIECES_STATE_NOT_FOUND
                       ? "empty"
                       : "list");
}

static void
show_diary_count (WmPiecesPane *self)
{
  g_autofree char *due_by = wm_pieces_due_by (DIARY_DAYS);
  gint64 n =
      wm_archive_count (wm_session_get_archive (self->session), WM_PIECES_DUE, due_by);
  g_autofree char *text = g_strdup_printf ("%" G_GINT64_FORMAT, n);

  gtk_label_set_label (self->diary_count, n > 0 ? text : "");
}

static WmPieceRow *
get_selected_row (WmPiecesPane *self)
{
  WmPiecesItem *item = gtk_single_selection_get_selected_item (self->selection);

  return item == NULL ? NULL : wm_pieces_item_get_row (item);
}

static gboolean
open_selected (gpointer data)
{
  WmPiecesPane *self = data;
  WmPieceRow *row = get_selected_row (self);
  WmPiece *shown = wm_session_get_piece (self->session);

  self->open_id = 0;
  if (row == NULL)
    return G_SOURCE_REMOVE;
  if ((shown != NULL
       && wm_id_equal (wm_record_get_id (WM_RECORD (shown)), &row->piece_id))
      || wm_session_open_piece (self->session, &row->piece_id, NULL))
    g_signal_emit (self, signals[CHOSEN], 0);

  return G_SOURCE_REMOVE;
}

static void
open_later (WmPiecesPane *self, guint delay_ms)
{
  g_clear_handle_id (&self->open_id, g_source_remove);
  self->open_id = g_timeout_add (delay_ms, open_selected, self);
}

static void
on_selected (GtkSingleSelection *selection, GParamSpec *pspec, WmPiecesPane *self)
{
  if (!self->following && get_selected_row (self) != NULL)
    open_later (self, OPEN_DELAY_MS);
}

static void
on_row_activated (GtkListView *list, guint position, WmPiecesPane *self)
{
  gtk_single_selection_set_selected (self->selection, position);
  open_later (self, 0);
}

static void
on_search_changed (GtkSearchEntry *entry, WmPiecesPane *self)
{
  wm_pieces_model_set_words (self->model, gtk_editable_get_text (GTK_EDITABLE (entry)));
}

/* Enter opens the first piece found. */
static void
on_search_activate (GtkSearchEntry *entry, WmPiecesPane *self)
{
  GListModel *model = G_LIST_MODEL (self->model);

  for (guint i = 0; i < MIN (g_list_model_get_n_items (model), 2); i++)
    {
      g_autoptr (WmPiecesItem) item = g_list_model_get_item (model, i);

      if (wm_pieces_item_get_row (item) != NULL)
        {
          on_row_activated (self->list, i, self);
          return;
        }
    }
}

static void
on_search_stopped (GtkSearchEntry *entry, WmPiecesPane *self)
{
  gtk_editable_set_text (GTK_EDITABLE (entry), "");
  gtk_widget_grab_focus (GTK_WIDGET (self->list));
}

static void
on_archive_changed (WmArchive *archive, const WmChange *change, WmPiecesPane *self)
{
  if (!wm_change_touches (change, WM_KIND_PIECE)
      && !wm_change_touches (change, WM_KIND_VISIT)
      && !wm_change_touches (change, WM_KIND_CHECK)
      && !wm_change_touches (change, WM_KIND_PHOTO)
      && !wm_change_touches (change, WM_KIND_PERSON))
    return;

  wm_pieces_model_refresh (self->model);
  show_diary_count (self);
}

static void
on_state_changed (WmPiecesModel *model, GParamSpec *pspec, WmPiecesPane *self)
{
  show_state (self);
}

static void
on_setup (GtkSignalListItemFactory *factory, GtkListItem *line, WmPiecesPane *self)
{
  gtk_list_item_set_child (line, wm_piece_row_view_new (self->session));
}

static void
on_bind (GtkSignalListItemFactory *factory, GtkListItem *line, WmPiecesPane *self)
{
  WmPiecesItem *item = gtk_list_item_get_item (line);
  gboolean head = wm_pieces_item_is_head (item);

  gtk_list_item_set_selectable (line, !head);
  gtk_list_item_set_activatable (line, !head);
  wm_piece_row_view_set_item (WM_PIECE_ROW_VIEW (gtk_list_item_get_child (line)), item);
}

static void
on_unbind (GtkSignalListItemFactory *factory, GtkListItem *line, WmPiecesPane *self)
{
  wm_piece_row_view_set_item (WM_PIECE_ROW_VIEW (gtk_list_item_get_child (line)), NULL);
}

static void
wm_pieces_pane_dispose (GObject *object)
{
  WmPiecesPane *self = WM_PIECES_PANE (object);

  g_clear_handle_id (&self->open_id, g_source_remove);
  if (self->session != NULL)
    g_signal_handlers_disconnect_by_data (wm_session_get_archive (self->session), self);
  if (self->model != NULL)
    g_signal_handlers_disconnect_by_data (self->model, self);
  wm_template_dispose (GTK_WIDGET (self), WM_TYPE_PIECES_PANE);
  g_clear_object (&self->selection);
  g_clear_object (&self->model);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (wm_pieces_pane_parent_class)->dispose (object);
}

static void
wm_pieces_pane_class_init (WmPiecesPaneClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_pieces_pane_dispose;

  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "pieces-pane.ui");
  gtk_widget_class_bind_template_child (widget_class, WmPiecesPane, pieces_toggle);
  gtk_widget_class_bind_template_child (widget_class, WmPiecesPane, new_button);
  gtk_widget_class_bind_template_child (widget_class, WmPiecesPane, entry);
  gtk_widget_class_bind_template_child (widget_class, WmPiecesPane, diary_button);
  gtk_widget_class_bind_template_child (widget_class, WmPiecesPane, diary_count);
  gtk_widget_class_bind_template_child (widget_class, WmPiecesPane, stack);
  gtk_widget_class_bind_template_child (widget_class, WmPiecesPane, list);
  gtk_widget_class_bind_template_child (widget_class, WmPiecesPane, empty);
  gtk_widget_class_bind_template_callback (widget_class, on_search_changed);
  gtk_widget_class_bind_template_callback (widget_class, on_search_activate);
  gtk_widget_class_bind_template_callback (widget_class, on_search_stopped);
  gtk_widget_class_set_css_name (widget_class, "wm-pieces-pane");

  signals[CHOSEN] = g_signal_new ("chosen", WM_TYPE_PIECES_PANE, G_SIGNAL_RUN_LAST, 0,
                                  NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
wm_pieces_pane_init (WmPiecesPane *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  wm_action_name_widget (self->pieces_toggle, "win.pieces");
  wm_action_name_widget (self->new_button, "win.new-piece");
  wm_action_name_widget (self->diary_button, "win.diary");
}

static GtkListItemFactory *
make_factory (WmPiecesPane *self)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();

  g_signal_connect (factory, "setup", G_CALLBACK (on_setup), self);
  g_signal_connect (factory, "bind", G_CALLBACK (on_bind), self);
  g_signal_connect (factory, "unbind", G_CALLBACK (on_unbind), self);
  return factory;
}

void
wm_pieces_pane_set_session (WmPiecesPane *self, WmSession *session)
{
  g_autoptr (GtkListItemFactory) factory = NULL;

  self->session = g_object_ref (session);
  self->model = wm_pieces_model_new (wm_session_get_archive (session));
  self->selection = gtk_single_selection_new (g_object_ref (G_LIST_MODEL (self->model)));
  gtk_single_selection_set_autoselect (self->selection, FALSE);
  gtk_single_selection_set_can_unselect (self->selection, TRUE);

  g_signal_connect (self->model, "notify::state", G_CALLBACK (on_state_changed), self);
  g_signal_connect_object (self->selection, "notify::selected", G_CALLBACK (on_selected),
                           self, 0);
  g_signal_connect (wm_session_get_archive (session), "changed",
                    G_CALLBACK (on_archive_changed), self);
  g_signal_connect (self->list, "activate", G_CALLBACK (on_row_activated), self);

  factory = make_factory (self);
  gtk_list_view_set_factory (self->list, factory);
  gtk_list_view_set_model (self->list, GTK_SELECTION_MODEL (self->selection));
  show_state (self);
  show_diary_count (self);
}

void
wm_pieces_pane_grab_search (WmPiecesPane *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self->entry));
}

/* pieces-item.c: one line of the list of pieces
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/pieces/pieces-item.h"

struct _WmPiecesItem
{
  GObject parent_instance;

  char *title;
  char *count;
  WmPieceRow *row;
};

enum
{
  PROP_0,
  PROP_ROW,
  N_PROPS
};

static GParamSpec *props[N_PROPS];

G_DEFINE_FINAL_TYPE (WmPiecesItem, wm_pieces_item, G_TYPE_OBJECT)

static void
wm_pieces_item_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  if (id == PROP_ROW)
    g_value_set_object (value, WM_PIECES_ITEM (object)->row);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
wm_pieces_item_finalize (GObject *object)
{
  WmPiecesItem *self = WM_PIECES_ITEM (object);

  g_free (self->title);
  g_free (self->count);
  g_clear_object (&self->row);

  G_OBJECT_CLASS (wm_pieces_item_parent_class)->finalize (object);
}

static void
wm_pieces_item_class_init (WmPiecesItemClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->get_property = wm_pieces_item_get_property;
  object_class->finalize = wm_pieces_item_finalize;
  props[PROP_ROW] = g_param_spec_object ("row", NULL, NULL, WM_TYPE_PIECE_ROW,
                                         G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
wm_pieces_item_init (WmPiecesItem *self)
{
}

WmPiecesItem *
wm_pieces_item_new (void)
{
  return g_object_new (WM_TYPE_PIECES_ITEM, NULL);
}

WmPiecesItem *
wm_pieces_item_new_head (const char *title, const char *count)
{
  WmPiecesItem *self = wm_pieces_item_new ();

  self->title = g_strdup (title);
  self->count = g_strdup (count);
  return self;
}

void
wm_pieces_item_set_row (WmPiecesItem *self, WmPieceRow *row)
{
  if (g_set_object (&self->row, row))
    g_object_notify_by_pspec (G_OBJECT (self), props[PROP_ROW]);
}

gboolean
wm_pieces_item_is_head (WmPiecesItem *self)
{
  return self->title != NULL;
}

const char *
wm_pieces_item_get_title (WmPiecesItem *self)
{
  return self->title;
}

const char *
wm_pieces_item_get_count (WmPiecesItem *self)
{
  return self->count;
}

WmPieceRow *
wm_pieces_item_get_row (WmPiecesItem *self)
{
  return self->row;
}

/* pieces-model.c: the list of pieces, filled as it is looked at
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/pieces/pieces-model.h"

#include <glib/gi18n.h>

/* A tall screen shows about 25 rows of 80 px. */
#define PAGE 50
/* Pages kept of each group; the list asks again for what was let go. */
#define MAX_PAGES 24
#define DUE_DAYS 28

typedef struct
{
  WmPieces which;
  gint64 count;
  GHashTable *pages;  /* page number -> GPtrArray of WmPiecesItem */
  GQueue pages_order; /* page numbers, oldest first */
} Group;

#define N_GROUPS 3

struct _WmPiecesModel
{
  GObject parent_instance;

  WmArchive *archive;
  char *words; /* NULL: the groups */
  Group groups[N_GROUPS];
  GPtrArray *found;   /* WmPiecesItem, with words */
  gboolean found_all; /* no more to read */
  gboolean reading_found;
  guint generation; /* answers to an older question are dropped */
  WmPiecesState state;
};

/* What a worker is asked, copied; it never sees the model. */
typedef struct
{
  WmArchive *archive;
  char *words;
  int group; /* -1: count all groups; N_GROUPS: search */
  guint page;
  guint offset;
  guint generation;
  char *due_by;
  gint64 counts[N_GROUPS];
  GPtrArray *rows;
  WmPiecesModel *model; /* only touched on the main thread */
} Question;

enum
{
  PROP_0,
  PROP_STATE,
  N_PROPS
};

static GParamSpec *props[N_PROPS];

static const WmPieces group_which[N_GROUPS] = { WM_PIECES_ON_BENCH, WM_PIECES_DUE,
                                                WM_PIECES_ALL };
static const char *const group_titles[N_GROUPS] = { N_ ("On the bench"), N_ ("Due"),
                                                    N_ ("All") };

static void model_iface_init (GListModelInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (WmPiecesModel, wm_pieces_model, G_TYPE_OBJECT,
                               G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL,
                                                      model_iface_init))

/* ---- asking ------------------------------------------------------------------ */

static void
free_question (gpointer data)
{
  Question *question = data;

  g_object_unref (question->model);
  g_object_unref (question->archive);
  g_free (question->words);
  g_free (question->due_by);
  g_clear_pointer (&question->rows, g_ptr_array_unref);
  g_free (question);
}

/* Off the main thread. */
static void
answer_question (Question *question)
{
  if (question->group < 0)
    for (int i = 0; i < N_GROUPS; i++)
      question->counts[i] =
          wm_archive_count (question->archive, group_which[i], question->due_by);
  else
    question->rows = wm_archive_search (
        question->archive, question->words,
        question->group == N_GROUPS ? WM_PIECES_ALL : group_which[question->group],
        question->due_by, question->offset, PAGE, NULL);
}

static gboolean take_answer (gpointer data);

/* Off the main thread. */
static void
work (gpointer data, gpointer unused)
{
  Question *question = data;

  answer_question (question);
  g_idle_add_full (G_PRIORITY_HIGH_IDLE, take_answer, question, free_question);
}

/* One worker: questions of the list never overtake one another. */
static GThreadPool *
get_pool (void)
{
  static GThreadPool *pool;

  if (pool == NULL)
    pool = g_thread_pool_new (work, NULL, 1, FALSE, NULL);
  return pool;
}

static void
ask (WmPiecesModel *self, int group, guint page, guint offset)
{
  Question *question = g_new0 (Question, 1);

  question->archive = g_object_ref (self->archive);
  question->words = g_strdup (self->words);
  question->group = group;
  question->page = page;
  question->offset = offset;
  question->generation = self->generation;
  question->due_by = wm_pieces_due_by (DUE_DAYS);
  question->model = g_object_ref (self);
  g_thread_pool_push (get_pool (), question, NULL);
}

/* ---- groups ------------------------------------------------------------------- */

static guint
count_lines (Group *group)
{
  return group->count > 0 ? (guint)group->count + 1 : 0;
}

static guint
find_start (WmPiecesModel *self, int group)
{
  guint start = 0;

  for (int i = 0; i < group; i++)
    start += count_lines (&self->groups[i]);
  return start;
}

static void
forget_pages (Group *group)
{
  g_hash_table_remove_all (group->pages);
  g_queue_clear (&group->pages_order);
}

static GPtrArray *
get_page (WmPiecesModel *self, int index, guint page)
{
  Group *group = &self->groups[index];
  GPtrArray *items = g_hash_table_lookup (group->pages, GUINT_TO_POINTER (page));

  if (items != NULL)
    return items;

  items = g_ptr_array_new_with_free_func (g_object_unref);
  for (int i = 0; i < PAGE; i++)
    g_ptr_array_add (items, wm_pieces_item_new ());
  g_hash_table_insert (group->pages, GUINT_TO_POINTER (page), items);
  g_queue_push_tail (&group->pages_order, GUINT_TO_POINTER (page));
  if (g_queue_get_length (&group->pages_order) > MAX_PAGES)
    g_hash_table_remove (group->pages, g_queue_pop_head (&group->pages_order));
  ask (self, index, page, page * PAGE);

  return items;
}

static void
set_state (WmPiecesModel *self, WmPiecesState state)
{
  if (self->state == state)
    return;

  self->state = state;
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_STATE]);
}

static void
take_counts (WmPiecesModel *self, const gint64 *counts)
{
  for (int i = 0; i < N_GROUPS; i++)
    {
      Group *group = &self->groups[i];
      guint old = count_lines (group);
      GHashTableIter iter;
      gpointer page;

      if (group->count != counts[i])
        {
          forget_pages (group);
          group->count = counts[i];
          g_list_model_items_changed (G_LIST_MODEL (self), find_start (self, i), old,
                                      count_lines (group));
          continue;
        }
      /* The same number of rows: fill those that are known again, in place. */
      g_hash_table_iter_init (&iter, group->pages);
      while (g_hash_table_iter_next (&iter, &page, NULL))
        ask (self, i, GPOINTER_TO_UINT (page), GPOINTER_TO_UINT (page) * PAGE);
    }

  set_state (self, self->groups[N_GROUPS - 1].count > 0 ? WM_PIECES_STATE_ROWS
                                                        : WM_PIECES_STATE_EMPTY);
}

static void
take_page (WmPiecesModel *self, int index, guint page, GPtrArray *rows)
{
  GPtrArray *items =
      g_hash_table_lookup (self->groups[index].pages, GUINT_TO_POINTER (page));

  for (guint i = 0; items != NULL && rows != NULL && i < rows->len && i < items->len; i++)
    wm_pieces_item_set_row (items->pdata[i], rows->pdata[i]);
}

/* ---- found by words ------------------------------------------------------------ */

static void
take_found (WmPiecesModel *self, guint offset, GPtrArray *rows)
{
  guint old = self->found->len, n = rows == NULL ? 0 : rows->len;
  guint old_lines = old > 0 ? old + 1 : 0;

  self->reading_found = FALSE;
  self->found_all = n < PAGE;
  if (offset == 0)
    g_ptr_array_set_size (self->found, 0);
  for (guint i = 0; i < n; i++)
    {
      WmPiecesItem *item = wm_pieces_item_new ();

      wm_pieces_item_set_row (item, rows->pdata[i]);
      g_ptr_array_add (self->found, item);
    }

  if (offset == 0)
    g_list_model_items_changed (G_LIST_MODEL (self), 0, old_lines, n > 0 ? n + 1 : 0);
  else if (n > 0)
    {
      g_list_model_items_changed (G_LIST_MODEL (self), old + 1, 0, n);
      g_list_model_items_changed (G_LIST_MODEL (self), 0, 1, 1);
    }
  set_state (self,
             self->found->len > 0 ? WM_PIECES_STATE_ROWS : WM_PIECES_STATE_NOT_FOUND);
}

static gboolean
take_answer (gpointer data)
{
  Question *question = data;
  WmPiecesModel *self = question->model;

  if (question->generation != self->generation)
    return G_SOURCE_REMOVE;

  if (question->group < 0)
    take_counts (self, question->counts);
  else if (question->group == N_GROUPS)
    take_found (self, question->offset, question->rows);
  else
    take_page (self, question->group, question->page, question->rows);

  return G_SOURCE_REMOVE;
}

/* ---- the model ------------------------------------------------------------------ */

static GType
get_item_type (GListModel *model)
{
  return WM_TYPE_PIECES_ITEM;
}

static guint
get_n_items (GListModel *model)
{
  WmPiecesModel *self = WM_PIECES_MODEL (model);

  if (self->words != NULL)
    return self->found->len > 0 ? self->found->len + 1 : 0;
  return find_start (self, N_GROUPS);
}

static gpointer
get_found_item (WmPiecesModel *self, guint position)
{
  g_autofree char *count = NULL;

  if (position == 0)
    {
      count = g_strdup_printf (self->found_all ? "%'u" : "%'u+", self->found->len);
      return wm_pieces_item_new_head (_ ("Found"), count);
    }
  if (position > self->found->len)
    return NULL;

  if (position == self->found->len && !self->found_all && !self->reading_found)
    {
      self->reading_found = TRUE;
      ask (self, N_GROUPS, 0, self->found->len);
    }
  return g_object_ref (self->found->pdata[position - 1]);
}

static gpointer
get_item (GListModel *model, guint position)
{
  WmPiecesModel *self = WM_PIECES_MODEL (model);

  if (self->words != NULL)
    return get_found_item (self, position);

  for (int i = 0; i < N_GROUPS; i++)
    {
      guint lines = count_lines (&self->groups[i]);

      if (position >= lines)
        {
          position -= lines;
          continue;
        }
      if (position == 0)
        {
          g_autofree char *count =
              g_strdup_printf ("%'" G_GINT64_FORMAT, self->groups[i].count);

          return wm_pieces_item_new_head (_ (group_titles[i]), count);
        }
      return g_object_ref (
          get_page (self, i, (position - 1) / PAGE)->pdata[(position - 1) % PAGE]);
    }

  return NULL;
}

static void
model_iface_init (GListModelInterface *iface)
{
  iface->get_item_type = get_item_type;
  iface->get_n_items = get_n_items;
  iface->get_item = get_item;
}

static void
wm_pieces_model_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  if (id == PROP_STATE)
    g_value_set_int (value, WM_PIECES_MODEL (object)->state);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
wm_pieces_model_finalize (GObject *object)
{
  WmPiecesModel *self = WM_PIECES_MODEL (object);

  for (int i = 0; i < N_GROUPS; i++)
    {
      forget_pages (&self->groups[i]);
      g_hash_table_unref (self->groups[i].pages);
    }
  g_ptr_array_unref (self->found);
  g_free (self->words);
  g_clear_object (&self->archive);

  G_OBJECT_CLASS (wm_pieces_model_parent_class)->finalize (object);
}

static void
wm_pieces_model_class_init (WmPiecesModelClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->get_property = wm_pieces_model_get_property;
  object_class->finalize = wm_pieces_model_finalize;
  props[PROP_STATE] = g_param_spec_int ("state", NULL, NULL, WM_PIECES_STATE_READING,
                                        WM_PIECES_STATE_NOT_FOUND, 0,
                                        G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
wm_pieces_model_init (WmPiecesModel *self)
{
  self->found = g_ptr_array_new_with_free_func (g_object_unref);
  for (int i = 0; i < N_GROUPS; i++)
    {
      self->groups[i].which = group_which[i];
      self->groups[i].pages =
          g_hash_table_new_full (NULL, NULL, NULL, (GDestroyNotify)g_ptr_array_unref);
      g_queue_init (&self->groups[i].pages_order);
    }
}

WmPiecesModel *
wm_pieces_model_new (WmArchive *archive)
{
  WmPiecesModel *self = g_object_new (WM_TYPE_PIECES_MODEL, NULL);

  self->archive = g_object_ref (archive);
  ask (self, -1, 0, 0);
  return self;
}

void
wm_pieces_model_set_words (WmPiecesModel *self, const char *words)
{
  guint old = get_n_items (G_LIST_MODEL (self));
  gboolean had_words = self->words != NULL;

  if (words != NULL && words[0] == '\0')
    words = NULL;
  if (g_strcmp0 (words, self->words) == 0)
    return;

  g_free (self->words);
  self->words = g_strdup (words);
  self->generation++;
  self->reading_found = FALSE;
  if (words == NULL)
    {
      g_ptr_array_set_size (self->found, 0);
      for (int i = 0; i < N_GROUPS; i++)
        forget_pages (&self->groups[i]);
      g_list_model_items_changed (G_LIST_MODEL (self), 0, old,
                                  get_n_items (G_LIST_MODEL (self)));
      ask (self, -1, 0, 0);
      return;
    }

  /* What was found for the words before stays until the new answer is there. */
  if (!had_words)
    g_list_model_items_changed (G_LIST_MODEL (self), 0, old, 0);
  self->reading_found = TRUE;
  ask (self, N_GROUPS, 0, 0);
}

void
wm_pieces_model_refresh (WmPiecesModel *self)
{
  if (self->words == NULL)
    ask (self, -1, 0, 0);
  else if (!self->reading_found)
    {
      self->reading_found = TRUE;
      ask (self, N_GROUPS, 0, 0);
    }
}

WmPiecesState
wm_pieces_model_get_state (WmPiecesModel *self)
{
  return self->state;
}

char *
wm_pieces_due_by (int days)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autoptr (GDateTime) then = g_date_time_add_days (now, days);

  return g_date_time_format (then, "%Y-%m-%d");
}

/* pairer.c: photos brought into register in the background
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/compare/pairer.h"

#include <glib/gi18n.h>

#include "window/compare/pairer-job.h"
#include "window/compare/pairer-keep.h"

/* After the last change, so that photos still coming in go first; and how often the
 * progress is told. ms */
#define SETTLE_MS 300
#define TELL_MS 100

struct _WmPairer
{
  GObject parent_instance;

  WmSession *session;  /* owns this */
  WmPairerJob *job;    /* under way, or NULL */
  GQueue *asked;       /* WmPairerJob: by hand, before all others */
  GHashTable *left;    /* keys of pairs not to be begun by themselves -> state */
  GHashTable *waiting; /* keys of pairs whose turn comes */
  guint look_id, tell_id;
};

enum
{
  CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (WmPairer, wm_pairer, G_TYPE_OBJECT)

static void look_soon (WmPairer *self);

static void
tell (WmPairer *self)
{
  g_signal_emit (self, signals[CHANGED], 0);
}

static gboolean
on_tell (gpointer data)
{
  tell (data);
  return G_SOURCE_CONTINUE;
}

static char *
make_key (const WmId *before_id, const WmId *after_id)
{
  g_autofree char *before = wm_id_to_string (before_id);
  g_autofree char *after = wm_id_to_string (after_id);

  return g_strconcat (before, " ", after, NULL);
}

/* ---- work ------------------------------------------------------------------------ */

static void
on_job_done (WmPairerJob *job, const GError *error, gpointer user_data)
{
  g_autoptr (WmPairer) self = user_data; /* ref taken at the start */
  g_autofree char *key = make_key (&job->before_id, &job->after_id);

  g_clear_handle_id (&self->tell_id, g_source_remove);
  self->job = NULL;
  if (self->session == NULL)
    {
      wm_pairer_job_free (job);
      return;
    }
  if (job->told != NULL)
    job->told (&job->alignment, error, job->told_data);
  else if (error == NULL)
    wm_pairer_keep (self->session, job);
  else if (!job->is_displaced)
    g_hash_table_insert (
        self->left, g_steal_pointer (&key),
        GINT_TO_POINTER (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED)
                             ? WM_PAIRER_STOPPED
                             : WM_PAIRER_FAILED));
  wm_pairer_job_free (job);
  tell (self);
  look_soon (self);
}

static void
start (WmPairer *self, WmPairerJob *job)
{
  self->job = job;
  self->tell_id = g_timeout_add (TELL_MS, on_tell, self);
  wm_pairer_job_run (job, on_job_done, g_object_ref (self));
  tell (self);
}

/* ---- what there is to do ------------------------------------------------------------
 */

GArray *
wm_pairer_list (GPtrArray *photos, GPtrArray *pairings)
{
  g_autoptr (GPtrArray) befores = wm_photos_of_moment (photos, WM_PHOTO_BEFORE);
  g_autoptr (GPtrArray) afters = wm_photos_of_moment (photos, WM_PHOTO_AFTER);

  return wm_pairs_list (befores, afters, pairings);
}

static WmPairerJob *
make_job (WmPairer *self, const WmPair *pair)
{
  WmArchive *archive = wm_session_get_archive (self->session);
  WmVisit *visit = wm_session_get_visit (self->session);

  return wm_pairer_job_new (archive, &visit->piece_id, pair);
}

/* Takes the first open pair of @pairs that is not left alone; notes the others. */
static void
take_open (WmPairer *self, GArray *pairs, WmPairerJob **first)
{
  for (guint i = 0; i < pairs->len; i++)
    {
      const WmPair *pair = &g_array_index (pairs, WmPair, i);
      g_autofree char *key = make_key (wm_record_get_id (WM_RECORD (pair->before)),
                                       wm_record_get_id (WM_RECORD (pair->after)));

      if (!wm_pair_is_open (pair, WM_ALIGN_ENGINE_VERSION)
          || g_hash_table_contains (self->left, key))
        continue;
      if (*first == NULL)
        *first = make_job (self, pair);
      else
        g_hash_table_add (self->waiting, g_steal_pointer (&key));
    }
}

static gboolean
on_look (gpointer data)
{
  WmPairer *self = data;
  const WmId *visit_id = wm_session_get_visit_id (self->session);
  WmArchive *archive = wm_session_get_archive (self->session);
  g_autoptr (GPtrArray) photos = NULL, pairings = NULL, earlier = NULL;
  g_autoptr (GArray) pairs = NULL, past = NULL;
  WmPairerJob *job = NULL;

  self->look_id = 0;
  if (self->job != NULL || visit_id == NULL || wm_session_is_read_only (self->session))
    return G_SOURCE_REMOVE;
  g_hash_table_remove_all (self->waiting);
  photos = wm_archive_list_of_visit (archive, WM_KIND_PHOTO, visit_id, NULL);
  pairings = wm_archive_list_of_visit (archive, WM_KIND_PAIRING, visit_id, NULL);
  if (photos == NULL || pairings == NULL)
    return G_SOURCE_REMOVE;
  pairs = wm_pairer_list (photos, pairings);
  take_open (self, pairs, &job);
  past = wm_pairer_list_past (self->session, photos, pairings, &earlier);
  take_open (self, past, &job);
  if (!g_queue_is_empty (self->asked))
    {
      if (job != NULL)
        wm_pairer_job_free (job);
      job = g_queue_pop_head (self->asked);
    }
  if (job != NULL)
    start (self, job);
  return G_SOURCE_REMOVE;
}

static void
look_soon (WmPairer *self)
{
  g_clear_handle_id (&self->look_id, g_source_remove);
  self->look_id =
      g_timeout_add (g_queue_is_empty (self->asked) ? SETTLE_MS : 0, on_look, self);
}

/* What was begun without being asked for gives way, and is begun again later. */
static void
make_way (WmPairer *self)
{
  if (self->job == NULL || self->job->told != NULL || self->job->is_choice)
    return;
  self->job->is_displaced = TRUE;
  wm_pairer_job_cancel (self->job);
}

static void
on_visit_changed (WmSession *session, WmPairer *self)
{
  g_hash_table_remove_all (self->left);
  make_way (self);
  look_soon (self);
}

static void
on_rows_changed (WmSession *session, const WmChange *change, WmPairer *self)
{
  if (change->n_rows == 0 || wm_change_touches (change, WM_KIND_PHOTO)
      || wm_change_touches (change, WM_KIND_PAIRING))
    look_soon (self);
}

/* ---- overrides ------------------------------------------------------------------------
 */

static void
wm_pairer_dispose (GObject *object)
{
  WmPairer *self = WM_PAIRER (object);

  g_clear_handle_id (&self->look_id, g_source_remove);
  g_clear_handle_id (&self->tell_id, g_source_remove);
  if (self->session != NULL)
    g_object_remove_weak_pointer (G_OBJECT (self->session), (gpointer *)&self->session);
  self->session = NULL;
  if (self->asked != NULL)
    g_queue_free_full (self->asked, (GDestroyNotify)wm_pairer_job_free);
  self->asked = NULL;
  g_clear_pointer (&self->left, g_hash_table_unref);
  g_clear_pointer (&self->waiting, g_hash_table_unref);
  G_OBJECT_CLASS (wm_pairer_parent_class)->dispose (object);
}

static void
wm_pairer_class_init (WmPairerClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = wm_pairer_dispose;
  signals[CHANGED] = g_signal_new ("changed", WM_TYPE_PAIRER, G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 0);
}

static void
wm_pairer_init (WmPairer *self)
{
  self->asked = g_queue_new ();
  self->left = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  self->waiting = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
}

/* The session goes: nobody is left to tell. */
static void
let_go (gpointer data)
{
  WmPairer *self = data;

  g_clear_handle_id (&self->look_id, g_source_remove);
  g_clear_handle_id (&self->tell_id, g_source_remove);
  if (self->job != NULL)
    wm_pairer_job_cancel (self->job);
  g_object_unref (self);
}

/* ---- public
 * ----------------------------------------------------------------------------- */

WmPairer *
wm_pairer_of (WmSession *session)
{
  WmPairer *self = g_object_get_data (G_OBJECT (session), "wm-pairer");

  if (self != NULL)
    return self;
  self = g_object_new (WM_TYPE_PAIRER, NULL);
  self->session = session;
  g_object_add_weak_pointer (G_OBJECT (session), (gpointer *)&self->session);
  g_signal_connect_object (session, "visit-changed", G_CALLBACK (on_visit_changed), self,
                           0);
  g_signal_connect_object (session, "rows-changed", G_CALLBACK (on_rows_changed), self,
                           0);
  g_object_set_data_full (G_OBJECT (session), "wm-pairer", self, let_go);
  look_soon (self);
  return self;
}

WmPairerState
wm_pairer_get_state (WmPairer *self, const WmId *before_id, const WmId *after_id,
                     double *progress)
{
  g_autofree char *key = make_key (before_id, after_id);

  *progress = 0;
  if (self->job != NULL && wm_id_equal (&self->job->before_id, before_id)
      && wm_id_equal (&self->job->after_id, after_id))
    {
      *progress = wm_pairer_job_get_progress (self->job);
      return WM_PAIRER_AT_WORK;
    }
  if (g_hash_table_contains (self->waiting, key))
    return WM_PAIRER_WAITING;
  return GPOINTER_TO_INT (g_hash_table_lookup (self->left, key));
}

void
wm_pairer_stop (WmPairer *self)
{
  if (self->job != NULL)
    wm_pairer_job_cancel (self->job);
}

static void
ask (WmPairer *self, WmPairerJob *job)
{
  g_autofree char *key = make_key (&job->before_id, &job->after_id);

  g_hash_table_remove (self->left, key);
  g_queue_push_tail (self->asked, job);
  make_way (self);
  look_soon (self);
}

void
wm_pairer_again (WmPairer *self, const WmPair *pair)
{
  ask (self, make_job (self, pair));
}

void
wm_pairer_choose (WmPairer *self, WmPhoto *before, WmPhoto *after)
{
  WmPair pair = { before, after, NULL };
  WmPairerJob *job = make_job (self, &pair);

  job->is_choice = TRUE;
  ask (self, job);
}

void
wm_pairer_refine (WmPairer *self, WmPhoto *before, WmPhoto *after, const double start[9],
                  WmPairerRefined told, GObject *user_data)
{
  WmPair pair = { before, after, NULL };
  WmPairerJob *job = make_job (self, &pair);

  wm_pairer_job_set_start (job, start, told, user_data);
  ask (self, job);
}

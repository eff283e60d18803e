/* visit-data.c: one visit with everything that belongs to it, for showing
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "report/visit-data.h"

static void
wm_finding_free (WmFinding *finding)
{
  g_ptr_array_unref (finding->before);
  g_ptr_array_unref (finding->after);
  g_ptr_array_unref (finding->measurements);
  g_ptr_array_unref (finding->remedies);
  g_ptr_array_unref (finding->proofs);
  g_free (finding);
}

static void
wm_visit_data_free (WmVisitData *self)
{
  GPtrArray *arrays[] = { self->findings, self->stones, self->photos,
                          self->checks,   self->marks,  self->measurements,
                          self->remedies, self->proofs, self->pairings };

  for (guint i = 0; i < G_N_ELEMENTS (arrays); i++)
    if (arrays[i] != NULL)
      g_ptr_array_unref (arrays[i]);
  g_clear_pointer (&self->people, g_hash_table_unref);
  g_clear_pointer (&self->paths, g_hash_table_unref);
  g_clear_pointer (&self->trade, wm_trade_unref);
  g_clear_object (&self->piece);
  g_clear_object (&self->owner);
  g_clear_object (&self->visit);
  g_free (self->shop_name);
  g_free (self->shop_address);
  g_free (self->shop_contact);
  g_free (self->folder);
  g_free (self);
}

WmVisitData *
wm_visit_data_ref (WmVisitData *self)
{
  g_atomic_ref_count_inc (&self->count);
  return self;
}

void
wm_visit_data_unref (WmVisitData *self)
{
  if (g_atomic_ref_count_dec (&self->count))
    wm_visit_data_free (self);
}

WmPhoto *
wm_visit_data_find_photo (WmVisitData *self, const WmId *id)
{
  for (guint i = 0; i < self->photos->len; i++)
    {
      WmPhoto *photo = g_ptr_array_index (self->photos, i);

      if (wm_id_equal (wm_record_get_id (WM_RECORD (photo)), id))
        return photo;
    }
  return NULL;
}

const char *
wm_visit_data_get_path (WmVisitData *self, WmPhoto *photo)
{
  return g_hash_table_lookup (self->paths, photo);
}

/* Whether @photo shows the piece after the work; during counts as before. */
static gboolean
is_after (WmPhoto *photo)
{
  return g_strcmp0 (photo->moment, WM_PHOTO_AFTER) == 0;
}

/* Adds those of @records whose key @field is the check. */
static void
take_of_check (GPtrArray *to, GPtrArray *records, WmKind kind, WmCheck *check)
{
  const WmField *field = wm_kind_find_field (kind, "check_id");

  for (guint i = 0; i < records->len; i++)
    {
      WmRecord *record = g_ptr_array_index (records, i);

      if (wm_id_equal (wm_record_get_member (record, field),
                       wm_record_get_id (WM_RECORD (check))))
        g_ptr_array_add (to, record);
    }
}

static WmFinding *
make_finding (WmVisitData *self, WmCheck *check)
{
  WmFinding *finding = g_new0 (WmFinding, 1);
  g_autoptr (GPtrArray) marks = g_ptr_array_new ();

  finding->check = check;
  finding->before = g_ptr_array_new ();
  finding->after = g_ptr_array_new ();
  finding->measurements = g_ptr_array_new ();
  finding->remedies = g_ptr_array_new ();
  finding->proofs = g_ptr_array_new ();
  take_of_check (marks, self->marks, WM_KIND_MARK, check);
  take_of_check (finding->measurements, self->measurements, WM_KIND_MEASUREMENT, check);
  take_of_check (finding->remedies, self->remedies, WM_KIND_REMEDY, check);
  take_of_check (finding->proofs, self->proofs, WM_KIND_PROOF, check);
  for (guint i = 0; i < marks->len; i++)
    {
      WmMark *mark = g_ptr_array_index (marks, i);
      WmPhoto *photo = wm_visit_data_find_photo (self, &mark->photo_id);

      /* Carried over and not looked at by anybody yet: that is claimed nowhere. */
      if (!mark->confirmed && !wm_id_is_none (&mark->carried_from))
        continue;
      if (photo != NULL)
        g_ptr_array_add (is_after (photo) ? finding->after : finding->before, mark);
    }
  return finding;
}

static int
compare_findings (gconstpointer a, gconstpointer b)
{
  WmCheck *x = (*(WmFinding *const *)a)->check;
  WmCheck *y = (*(WmFinding *const *)b)->check;

  if (x->severity != y->severity)
    return x->severity > y->severity ? -1 : 1;
  if (x->number != y->number)
    return x->number < y->number ? -1 : 1;
  return x->position < y->position ? -1 : x->position > y->position;
}

static void
collect_findings (WmVisitData *self)
{
  self->findings = g_ptr_array_new_with_free_func ((GDestroyNotify)wm_finding_free);
  for (guint i = 0; i < self->checks->len; i++)
    {
      WmCheck *check = g_ptr_array_index (self->checks, i);

      if (wm_severity_is_finding (check->severity))
        g_ptr_array_add (self->findings, make_finding (self, check));
    }
  g_ptr_array_sort (self->findings, compare_findings);
}

static gboolean
load_people (WmVisitData *self, WmArchive *archive, GError **error)
{
  g_autoptr (GPtrArray) people =
      wm_archive_list (archive, WM_KIND_PERSON, NULL, NULL, error);

  if (people == NULL)
    return FALSE;

  self->people = g_hash_table_new_full (wm_id_hash, wm_id_equal_func, g_free, g_free);
  for (guint i = 0; i < people->len; i++)
    {
      WmPerson *person = g_ptr_array_index (people, i);

      if (g_strcmp0 (person->role, WM_ROLE_WORKER) == 0)
        g_hash_table_insert (
            self->people,
            g_memdup2 (wm_record_get_id (WM_RECORD (person)), sizeof (WmId)),
            g_strdup (person->name));
    }
  return TRUE;
}

static char *
get_setting (WmArchive *archive, const char *name)
{
  char *value = wm_archive_get_setting (archive, name);

  return value != NULL ? value : g_strdup ("");
}

/* Everything that hangs on the visit. */
static gboolean
load_rows (WmVisitData *self, WmArchive *archive, const WmId *visit_id, GError **error)
{
  const struct
  {
    WmKind kind;
    GPtrArray **to;
  } rows[] = {
    { WM_KIND_PHOTO, &self->photos },     { WM_KIND_CHECK, &self->checks },
    { WM_KIND_MARK, &self->marks },       { WM_KIND_MEASUREMENT, &self->measurements },
    { WM_KIND_REMEDY, &self->remedies },  { WM_KIND_PROOF, &self->proofs },
    { WM_KIND_PAIRING, &self->pairings },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      *rows[i].to = wm_archive_list_of_visit (archive, rows[i].kind, visit_id, error);
      if (*rows[i].to == NULL)
        return FALSE;
    }
  return TRUE;
}

static gboolean
load_piece (WmVisitData *self, WmArchive *archive, GError **error)
{
  self->piece = wm_archive_get (archive, WM_KIND_PIECE, &self->visit->piece_id, error);
  if (self->piece == NULL)
    return FALSE;

  self->type = self->piece->type != NULL
                   ? wm_trade_find_piece_type (self->trade, self->piece->type)
                   : NULL;
  if (!wm_id_is_none (&self->piece->owner_id))
    {
      self->owner =
          wm_archive_get (archive, WM_KIND_PERSON, &self->piece->owner_id, error);
      if (self->owner == NULL)
        return FALSE;
    }
  self->stones = wm_archive_list (archive, WM_KIND_STONE_GROUP, "piece_id",
                                  &self->visit->piece_id, error);
  return self->stones != NULL;
}

WmVisitData *
wm_visit_data_load (WmArchive *archive, WmTrade *trade, const WmId *visit_id,
                    GError **error)
{
  g_autoptr (WmVisitData) self = g_new0 (WmVisitData, 1);

  g_atomic_ref_count_init (&self->count);
  self->trade = wm_trade_ref (trade);
  self->visit = wm_archive_get (archive, WM_KIND_VISIT, visit_id, error);
  if (self->visit == NULL || !load_piece (self, archive, error)
      || !load_rows (self, archive, visit_id, error)
      || !load_people (self, archive, error))
    return NULL;

  self->folder = g_strdup (wm_archive_get_folder (archive));
  self->shop_name = get_setting (archive, WM_SETTING_SHOP_NAME);
  self->shop_address = get_setting (archive, WM_SETTING_SHOP_ADDRESS);
  self->shop_contact = get_setting (archive, WM_SETTING_SHOP_CONTACT);
  self->paths = g_hash_table_new_full (NULL, NULL, NULL, g_free);
  for (guint i = 0; i < self->photos->len; i++)
    {
      WmPhoto *photo = g_ptr_array_index (self->photos, i);

      g_hash_table_insert (self->paths, photo, wm_archive_photo_path (archive, photo));
    }
  collect_findings (self);
  return g_steal_pointer (&self);
}

static guint
count_marks_on (WmVisitData *self, WmPhoto *photo)
{
  const WmId *id = wm_record_get_id (WM_RECORD (photo));
  guint n = 0;

  for (guint i = 0; i < self->marks->len; i++)
    if (wm_id_equal (&((WmMark *)g_ptr_array_index (self->marks, i))->photo_id, id))
      n++;
  return n;
}

WmPhoto *
wm_visit_data_find_overview (WmVisitData *self, const char *moment)
{
  WmPhoto *best = NULL;
  guint best_marks = 0;

  for (guint i = 0; i < self->photos->len; i++)
    {
      WmPhoto *photo = g_ptr_array_index (self->photos, i);
      guint marks = count_marks_on (self, photo);

      if (g_strcmp0 (photo->moment, moment) != 0)
        continue;
      if (best == NULL || marks > best_marks)
        {
          best = photo;
          best_marks = marks;
        }
    }
  return best;
}

/* The last one placed: a close-up follows the overview. */
gboolean
wm_visit_data_find_place (WmVisitData *self, const WmFinding *finding, const char *moment,
                          WmPhoto **out_photo, WmMark **out_mark)
{
  gboolean after = g_strcmp0 (moment, WM_PHOTO_AFTER) == 0;
  GPtrArray *marks = after ? finding->after : finding->before;
  WmMark *mark;

  if (marks->len == 0)
    return FALSE;
  mark = g_ptr_array_index (marks, marks->len - 1);
  *out_mark = mark;
  *out_photo = wm_visit_data_find_photo (self, &mark->photo_id);
  return *out_photo != NULL;
}

guint
wm_visit_data_count (WmVisitData *self, WmSeverity severity)
{
  guint n = 0;

  for (guint i = 0; i < self->checks->len; i++)
    if (((WmCheck *)g_ptr_array_index (self->checks, i))->severity == severity)
      n++;
  return n;
}

const char *
wm_visit_data_get_name (WmVisitData *self, const WmId *person_id)
{
  return g_hash_table_lookup (self->people, person_id);
}

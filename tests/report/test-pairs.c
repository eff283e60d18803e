/* test-pairs.c: which photo belongs to which, and marks carried between them
 *
 * Expected values: the rules in report/pairs.h and report/carry.h; places carried are
 * worked by hand for a quarter turn with a scale of two, whose matrix is written down.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/points.h"
#include "report/carry.h"
#include "report/pairs.h"

#include <math.h>

#define N 4

typedef struct
{
  GPtrArray *befores, *afters, *pairings;
} Fixture;

static void
add_photo (GPtrArray *to, const char *view)
{
  WmPhoto *photo = wm_photo_new ();

  photo->position = to->len;
  photo->width = 1000;
  photo->height = 800;
  wm_record_set_text (WM_RECORD (photo), "view", view);
  g_ptr_array_add (to, photo);
}

static WmPairing *
add_pairing (Fixture *f, int before, int after, const char *made_by)
{
  WmPairing *pairing = wm_pairing_new ();

  pairing->before_photo_id = *wm_record_get_id (f->befores->pdata[before]);
  pairing->after_photo_id = *wm_record_get_id (f->afters->pdata[after]);
  pairing->engine = 1;
  wm_record_set_text (WM_RECORD (pairing), "made_by", made_by);
  g_ptr_array_add (f->pairings, pairing);
  return pairing;
}

static void
set_up (Fixture *f, gconstpointer unused)
{
  f->befores = g_ptr_array_new_with_free_func (g_object_unref);
  f->afters = g_ptr_array_new_with_free_func (g_object_unref);
  f->pairings = g_ptr_array_new_with_free_func (g_object_unref);
}

static void
tear_down (Fixture *f, gconstpointer unused)
{
  g_ptr_array_unref (f->befores);
  g_ptr_array_unref (f->afters);
  g_ptr_array_unref (f->pairings);
}

/* @wanted: for each before photo the after photo, or -1; ends with -2 */
static void
assert_pairs (Fixture *f, const int *wanted)
{
  g_autoptr (GArray) pairs = wm_pairs_list (f->befores, f->afters, f->pairings);
  guint n = 0;

  for (guint i = 0; wanted[i] != -2; i++)
    {
      const WmPair *pair = n < pairs->len ? &g_array_index (pairs, WmPair, n) : NULL;

      if (wanted[i] == -1)
        {
          g_assert_true (pair == NULL || pair->before != f->befores->pdata[i]);
          continue;
        }
      g_assert_nonnull (pair);
      g_assert_true (pair->before == f->befores->pdata[i]);
      g_assert_true (pair->after == f->afters->pdata[wanted[i]]);
      n++;
    }
  g_assert_cmpuint (n, ==, pairs->len);
}

static void
test_views (Fixture *f, gconstpointer unused)
{
  const char *const before[] = { "top", "back", "top", NULL };
  const char *const after[] = { "back", "top", NULL, "side" };

  for (int i = 0; i < N; i++)
    {
      add_photo (f->befores, before[i]);
      add_photo (f->afters, after[i]);
    }
  /* The second "top" finds none left; no view is no view in common. */
  assert_pairs (f, (int[]) { 1, 0, -1, -1, -2 });
}

static void
test_only_two (Fixture *f, gconstpointer unused)
{
  add_photo (f->befores, "top");
  assert_pairs (f, (int[]) { -1, -2 });
  add_photo (f->afters, NULL);
  assert_pairs (f, (int[]) { 0, -2 });
  add_photo (f->afters, NULL);
  assert_pairs (f, (int[]) { -1, -2 });
}

/* What is said goes before the views, by hand before the program, later before
 * earlier. */
static void
test_said (Fixture *f, gconstpointer unused)
{
  for (int i = 0; i < 3; i++)
    {
      add_photo (f->befores, "top");
      add_photo (f->afters, "top");
    }
  add_pairing (f, 2, 0, WM_PAIRING_BY_PROGRAM);
  assert_pairs (f, (int[]) { 1, 2, 0, -2 });
  add_pairing (f, 2, 1, WM_PAIRING_BY_PROGRAM);
  assert_pairs (f, (int[]) { 0, 2, 1, -2 });
  add_pairing (f, 2, 2, WM_PAIRING_BY_HAND);
  add_pairing (f, 2, 1, WM_PAIRING_BY_PROGRAM);
  assert_pairs (f, (int[]) { 0, 1, 2, -2 });
}

static void
test_open (Fixture *f, gconstpointer unused)
{
  WmPair pair = { NULL };
  double m[9];
  const double shift[9] = { 1, 0, 5, 0, 1, 7, 0, 0, 1 };

  add_photo (f->befores, NULL);
  add_photo (f->afters, NULL);
  g_assert_true (wm_pair_is_open (&pair, 1));
  pair.pairing = add_pairing (f, 0, 0, WM_PAIRING_BY_PROGRAM);
  g_assert_false (wm_pair_is_open (&pair, 1));
  g_assert_true (wm_pair_is_open (&pair, 2));
  pair.pairing = add_pairing (f, 0, 0, WM_PAIRING_BY_HAND);
  g_assert_false (wm_pair_is_open (&pair, 2));
  pair.pairing = add_pairing (f, 0, 0, WM_PAIRING_REFINED);
  g_assert_false (wm_pair_is_open (&pair, 2));

  pair.pairing = add_pairing (f, 0, 0, WM_PAIRING_BY_PROGRAM);
  wm_record_set_text (WM_RECORD (pair.pairing), "reason", WM_PAIRING_CONFIRMED);
  g_assert_false (wm_pair_is_open (&pair, 2));

  wm_pairing_set_matrix (pair.pairing, shift);
  g_assert_true (wm_pairing_get_matrix (pair.pairing, m));
  g_assert_cmpmem (m, sizeof m, shift, sizeof shift);
  wm_pairing_set_matrix (pair.pairing, NULL);
  g_assert_true (pair.pairing->refused);
  g_assert_true (isnan (pair.pairing->m4));
  g_assert_false (wm_pairing_get_matrix (pair.pairing, m));
}

/* ---- carrying -------------------------------------------------------------- */

static WmMark *
add_mark (GPtrArray *to, WmPhoto *photo, const WmId *check_id, const char *points)
{
  WmMark *mark = wm_mark_new ();

  mark->photo_id = *wm_record_get_id (WM_RECORD (photo));
  mark->check_id = *check_id;
  mark->confirmed = TRUE;
  wm_record_set_text (WM_RECORD (mark), "shape", WM_MARK_LINE);
  wm_record_set_text (WM_RECORD (mark), "points", points);
  g_ptr_array_add (to, mark);
  return mark;
}

/* (x, y) -> (900 - 2 y, 2 x): turned by a quarter clockwise and twice as large. */
static const double quarter[9] = { 0, -2, 900, 2, 0, 0, 0, 0, 1 };

static void
test_carry (Fixture *f, gconstpointer unused)
{
  g_autoptr (GPtrArray) sources = g_ptr_array_new_with_free_func (g_object_unref);
  g_autoptr (GPtrArray) there = g_ptr_array_new_with_free_func (g_object_unref);
  g_autoptr (GPtrArray) carried = NULL;
  WmId one = wm_id_new (), two = wm_id_new (), three = wm_id_new ();
  WmPhoto *from, *to;
  WmMark *mark;

  add_photo (f->befores, NULL);
  add_photo (f->befores, NULL);
  add_photo (f->afters, NULL);
  from = f->befores->pdata[0];
  to = f->afters->pdata[0];
  add_mark (sources, from, &one, "100,200 150,200");
  add_mark (sources, from, &two, "300,300 310,300");    /* there already */
  add_mark (sources, from, &three, "100,700 110,700");  /* falls off */
  add_mark (sources, from, &WM_ID_NONE, "10,10 20,20"); /* tied to nothing */
  add_mark (sources, f->befores->pdata[1], &three, "100,200 110,200"); /* elsewhere */
  mark = add_mark (sources, from, &three, "100,200 110,200");          /* waits itself */
  mark->confirmed = FALSE;
  mark->carried_from = one;
  add_mark (there, to, &two, "1,1 2,2");

  carried = wm_carry_marks (sources, from, there, to, quarter, NULL, NULL);
  g_assert_cmpuint (carried->len, ==, 1);
  mark = carried->pdata[0];
  g_assert_cmpstr (mark->points, ==, "500,200 500,300");
  g_assert_cmpstr (mark->shape, ==, WM_MARK_LINE);
  g_assert_false (mark->confirmed);
  g_assert_true (wm_id_equal (&mark->check_id, &one));
  g_assert_true (wm_id_equal (&mark->carried_from, wm_record_get_id (sources->pdata[0])));
  g_assert_true (wm_id_equal (&mark->photo_id, wm_record_get_id (WM_RECORD (to))));

  /* Once it is there it is not carried again, whatever became of its check. */
  mark->check_id = WM_ID_NONE;
  g_ptr_array_add (there, g_object_ref (mark));
  g_ptr_array_unref (carried);
  carried = wm_carry_marks (sources, from, there, to, quarter, NULL, NULL);
  g_assert_cmpuint (carried->len, ==, 0);
}

static const WmId *
no_check (WmMark *source, gpointer user_data)
{
  return user_data;
}

/* Another visit's check: what the caller says, or none. */
static void
test_carry_to_visit (Fixture *f, gconstpointer unused)
{
  g_autoptr (GPtrArray) sources = g_ptr_array_new_with_free_func (g_object_unref);
  g_autoptr (GPtrArray) none = g_ptr_array_new ();
  g_autoptr (GPtrArray) carried = NULL, tied = NULL;
  WmId old = wm_id_new (), today = wm_id_new ();

  add_photo (f->befores, NULL);
  add_photo (f->afters, NULL);
  add_mark (sources, f->befores->pdata[0], &old, "100,200 150,200");
  carried = wm_carry_marks (sources, f->befores->pdata[0], none, f->afters->pdata[0],
                            quarter, no_check, NULL);
  g_assert_cmpuint (carried->len, ==, 1);
  g_assert_true (wm_id_is_none (&((WmMark *)carried->pdata[0])->check_id));
  tied = wm_carry_marks (sources, f->befores->pdata[0], none, f->afters->pdata[0],
                         quarter, no_check, &today);
  g_assert_true (wm_id_equal (&((WmMark *)tied->pdata[0])->check_id, &today));
}

#define add(path, test) g_test_add (path, Fixture, NULL, set_up, test, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add ("/report/pairs/views", test_views);
  add ("/report/pairs/only-two", test_only_two);
  add ("/report/pairs/said", test_said);
  add ("/report/pairs/open", test_open);
  add ("/report/carry/marks", test_carry);
  add ("/report/carry/to-visit", test_carry_to_visit);
  return g_test_run ();
}

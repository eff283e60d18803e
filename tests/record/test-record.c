/* test-record.c: keys, field tables, copying, points
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <math.h>
#include <string.h>

#include "record/kinds.h"
#include "record/points.h"

/* RFC 9562, section 5.7 and appendix A.6: version and variant bits, and the time
 * of the example 017F22E2-79B0-7CC3-98C4-DC0C0C07398F, 0x017F22E279B0 ms. */
static void
test_id_layout (void)
{
  WmId example;
  g_autofree char *text = NULL;
  gint64 before_ms = g_get_real_time () / 1000;
  WmId id = wm_id_new ();
  gint64 stamped_ms = 0;

  g_assert_true (wm_id_from_string ("017F22E2-79B0-7CC3-98C4-DC0C0C07398F", &example));
  g_assert_cmphex (example.bytes[0], ==, 0x01);
  g_assert_cmphex (example.bytes[5], ==, 0xb0);
  g_assert_cmphex (example.bytes[6] >> 4, ==, 7);
  text = wm_id_to_string (&example);
  g_assert_cmpstr (text, ==, "017f22e2-79b0-7cc3-98c4-dc0c0c07398f");

  for (int i = 0; i < 6; i++)
    stamped_ms = stamped_ms << 8 | id.bytes[i];
  g_assert_cmpint (stamped_ms, >=, before_ms);
  g_assert_cmpint (stamped_ms, <=, before_ms + 10000);
  g_assert_cmphex (id.bytes[6] >> 4, ==, 7);
  g_assert_cmphex (id.bytes[8] >> 6, ==, 2);
}

static void
test_id_order (void)
{
  WmId last = wm_id_new ();

  /* More than the 4096 of one millisecond, so that the carry is met. */
  for (int i = 0; i < 20000; i++)
    {
      WmId next = wm_id_new ();

      g_assert_cmpint (wm_id_compare (&last, &next), <, 0);
      last = next;
    }
}

static void
test_id_refuses (void)
{
  static const char *const wrong[] = { "", "017f22e2-79b0-7cc3-98c4-dc0c0c07398",
                                       "017f22e279b07cc398c4dc0c0c07398f",
                                       "017f22e2-79b0-7cc3-98c4-dc0c0c07398g",
                                       "017f22e2-79b0-7cc3-98c4-dc0c0c07398ff" };
  WmId id = WM_ID_NONE;

  g_assert_false (wm_id_from_string (NULL, &id));
  for (guint i = 0; i < G_N_ELEMENTS (wrong); i++)
    g_assert_false (wm_id_from_string (wrong[i], &id));
  g_assert_true (wm_id_is_none (&id));
}

/* Fills every field of a record of any kind with something that is not "nothing". */
static void
fill (WmRecord *record)
{
  const WmKindInfo *info = wm_record_get_info (record);

  for (guint i = 0; i < info->n_fields; i++)
    {
      gpointer member = wm_record_get_member (record, &info->fields[i]);

      switch (info->fields[i].type)
        {
        case WM_FIELD_TEXT:
          *(char **)member = g_strdup_printf ("text %u", i);
          break;
        case WM_FIELD_DATE:
          *(char **)member = g_strdup ("2026-11-25");
          break;
        case WM_FIELD_INT:
        case WM_FIELD_NUMBER:
          *(gint64 *)member = 1000 + i;
          break;
        case WM_FIELD_REAL:
          *(double *)member = 0.25 + i;
          break;
        case WM_FIELD_FLAG:
          *(gboolean *)member = TRUE;
          break;
        case WM_FIELD_KEY:
          *(WmId *)member = wm_id_new ();
          break;
        }
    }
}

static void
test_kinds_copy (void)
{
  for (WmKind kind = 0; kind < WM_N_KINDS; kind++)
    {
      const WmKindInfo *info = wm_kind_get_info (kind);
      g_autoptr (WmRecord) empty = wm_record_new (kind);
      g_autoptr (WmRecord) full = wm_record_new (kind);
      g_autoptr (WmRecord) copy = NULL;

      g_assert_cmpint (info->kind, ==, kind);
      g_assert_cmpuint (info->n_fields, >, 0);
      fill (full);
      wm_record_set_stamp (full, 77, wm_record_get_id (empty), 3);
      copy = wm_record_copy (full);
      g_assert_true (wm_record_equal (full, copy));
      g_assert_cmpint (wm_record_get_revision (copy), ==, 3);

      /* Changing any one member must show. */
      for (guint i = 0; i < info->n_fields; i++)
        {
          g_autoptr (WmRecord) other = wm_record_copy (empty);
          gpointer to = wm_record_get_member (other, &info->fields[i]);

          g_assert_true (wm_record_equal (other, empty));
          if (info->fields[i].type == WM_FIELD_TEXT
              || info->fields[i].type == WM_FIELD_DATE)
            *(char **)to = g_strdup ("x");
          else if (info->fields[i].type == WM_FIELD_KEY)
            *(WmId *)to = wm_id_new ();
          else if (info->fields[i].type == WM_FIELD_REAL)
            *(double *)to = 1.5;
          else if (info->fields[i].type == WM_FIELD_FLAG)
            *(gboolean *)to = TRUE;
          else
            *(gint64 *)to = 7;
          g_assert_false (wm_record_equal (other, empty));
        }
    }
}

/* The order of kinds is the order of inserting: a key points backwards. */
static void
test_kinds_order (void)
{
  guint keys = 0;

  for (WmKind kind = 0; kind < WM_N_KINDS; kind++)
    {
      const WmKindInfo *info = wm_kind_get_info (kind);

      for (guint i = 0; i < info->n_fields; i++)
        if (info->fields[i].type == WM_FIELD_KEY)
          {
            g_assert_cmpint (info->fields[i].refers_to, <=, kind);
            keys++;
          }
    }
  g_assert_cmpuint (keys, >, 10);
}

static void
test_nothing_said (void)
{
  g_autoptr (WmPiece) piece = wm_piece_new ();
  g_autoptr (WmCheck) check = wm_check_new ();

  g_assert_null (piece->number);
  g_assert_true (isnan (piece->length_mm));
  g_assert_cmpint (piece->declared_minor, ==, WM_UNKNOWN);
  g_assert_cmpint (check->severity, ==, 0);
  g_assert_cmpint (check->number, ==, WM_UNKNOWN);
  g_object_set (piece, "description", "", NULL);
  g_assert_null (piece->description);
}

static void
test_points (void)
{
  WmPoint points[] = { { 812.5, 300 }, { 0, 0.126 }, { -0.001, 1e6 } };
  g_autofree char *text = wm_points_format (points, G_N_ELEMENTS (points));
  g_autoptr (GArray) read = wm_points_parse (text);
  static const char *const wrong[] = { "",    " ",     "1",     "1,",      "1,2,3",
                                       "1 2", "nan,1", "1,inf", "1,2;3,4", "a,b" };

  g_assert_cmpstr (text, ==, "812.5,300 0,0.13 0,1000000");
  g_assert_cmpuint (read->len, ==, 3);
  g_assert_cmpfloat (g_array_index (read, WmPoint, 0).x, ==, 812.5);
  g_assert_cmpfloat (g_array_index (read, WmPoint, 2).y, ==, 1e6);
  g_assert_null (wm_points_parse (NULL));
  for (guint i = 0; i < G_N_ELEMENTS (wrong); i++)
    g_assert_null (wm_points_parse (wrong[i]));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/record/id/layout", test_id_layout);
  g_test_add_func ("/record/id/order", test_id_order);
  g_test_add_func ("/record/id/refuses", test_id_refuses);
  g_test_add_func ("/record/kinds/copy", test_kinds_copy);
  g_test_add_func ("/record/kinds/order", test_kinds_order);
  g_test_add_func ("/record/kinds/nothing-said", test_nothing_said);
  g_test_add_func ("/record/points", test_points);
  return g_test_run ();
}

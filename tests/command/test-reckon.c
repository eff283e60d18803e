/* test-reckon.c: reckon and measure, called as from a shell
 *
 * Expected values: those of the computations' own tests; the photo is a bar drawn here at
 * a known place.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "command/command.h"

#include "photo/png-write.h"

#include <glib/gstdio.h>
#include <json-glib/json-glib.h>
#include <locale.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>

/* A call in a child: what it prints, and how it ends. */
typedef struct
{
  char *out;
  char *err;
  int code;
} Ran;

static char *photo_path;

static void
ran_clear (Ran *ran)
{
  g_free (ran->out);
  g_free (ran->err);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Ran, ran_clear)

/* This program once more, with "--verb": then main () runs the command line itself. */
static Ran
run (const char *first, ...)
{
  g_autoptr (GPtrArray) argv = g_ptr_array_new ();
  g_autoptr (GError) error = NULL;
  Ran ran = { NULL, NULL, 0 };
  int status = 0;
  va_list args;

  g_ptr_array_add (argv, (gpointer)g_getenv ("WM_TEST_SELF"));
  g_ptr_array_add (argv, (gpointer) "--verb");
  g_ptr_array_add (argv, (gpointer)first);
  va_start (args, first);
  for (const char *arg = va_arg (args, const char *); arg != NULL;
       arg = va_arg (args, const char *))
    g_ptr_array_add (argv, (gpointer)arg);
  va_end (args);
  g_ptr_array_add (argv, NULL);

  g_spawn_sync (NULL, (char **)argv->pdata, NULL, G_SPAWN_DEFAULT, NULL, NULL, &ran.out,
                &ran.err, &status, &error);
  g_assert_no_error (error);
  g_assert_true (WIFEXITED (status));
  ran.code = WEXITSTATUS (status);
  return ran;
}

static JsonObject *
object_of (const Ran *ran, JsonParser *parser)
{
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (ran->code, ==, 0);
  json_parser_load_from_data (parser, ran->out, -1, &error);
  g_assert_no_error (error);
  return json_node_get_object (json_parser_get_root (parser));
}

static double
result_of (JsonObject *object, const char *name, const char *key)
{
  JsonObject *results = json_object_get_object_member (object, "results");

  g_assert_true (json_object_has_member (results, name));
  return json_object_get_double_member (json_object_get_object_member (results, name),
                                        key);
}

static void
test_section_json (void)
{
  g_auto (Ran) ran = run ("reckon", "section", "shape=flatted", "made_height=1.2±0.02",
                          "height=0.84mm", "yield_mpa=350", "--json", NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonObject *object = object_of (&ran, parser);
  JsonObject *inputs = json_object_get_object_member (object, "inputs");

  g_assert_cmpstr (json_object_get_string_member (object, "topic"), ==, "section");
  g_assert_cmpfloat (fabs (result_of (object, "area_left", "value") - 0.747684), <, 6e-7);
  g_assert_cmpfloat (result_of (object, "area_left", "standard_uncertainty"), >, 0.0);
  g_assert_cmpfloat (fabs (json_object_get_double_member (
                               json_object_get_object_member (inputs, "made_height"),
                               "standard_uncertainty")
                           - 0.02),
                     <, 1e-12);
  g_assert_nonnull (json_object_get_string_member (object, "source"));
}

/* A German desktop has a decimal comma; the command line keeps to the point. */
static void
test_locale_does_not_matter (void)
{
  if (setlocale (LC_NUMERIC, "de_DE.UTF-8") == NULL)
    {
      g_test_skip ("no locale with a decimal comma is installed");
      return;
    }

  setlocale (LC_NUMERIC, "C");
  g_setenv ("LC_ALL", "de_DE.UTF-8", TRUE);
  test_section_json ();
  g_setenv ("LC_ALL", "C.UTF-8", TRUE);
}

static void
test_lists_topics (void)
{
  g_auto (Ran) words = run ("reckon", NULL);
  g_auto (Ran) json = run ("reckon", "--json", NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonArray *array;

  g_assert_cmpint (words.code, ==, 0);
  g_assert_nonnull (strstr (words.out, "heat-plan"));
  g_assert_cmpint (json.code, ==, 0);
  g_assert_true (json_parser_load_from_data (parser, json.out, -1, NULL));
  array = json_node_get_array (json_parser_get_root (parser));
  g_assert_cmpuint (json_array_get_length (array), >, 20);
  g_assert_cmpstr (
      json_object_get_string_member (json_array_get_object_element (array, 0), "topic"),
      ==, "photo-length");
}

static void
test_words (void)
{
  g_auto (Ran) ran = run ("reckon", "section", "shape=round", "made_height=1.2±0.01",
                          "height=0.85±0.01", NULL);
  g_auto (Ran) check =
      run ("reckon", "next-check", "visit=2026-11-25", "customary_months=12", NULL);

  g_assert_cmpint (ran.code, ==, 0);
  g_assert_nonnull (strstr (ran.out, "about half of the metal is gone"));
  g_assert_nonnull (strstr (ran.out, "0.50 ± 0.03"));
  g_assert_cmpint (check.code, ==, 0);
  g_assert_nonnull (strstr (check.out, "2027-11-25"));
  g_assert_nonnull (strstr (check.out, "In 12 months"));
}

/* Keys of the tables: sterling with all its solders, none of them safe beside an unknown
 * old joint; on 18 ct with a hard old joint the easy solder is. */
static void
test_heat_plan_by_keys (void)
{
  g_auto (Ran) silver = run ("reckon", "heat-plan", "metal=ag925", "joints=unknown",
                             "stones=diamond,opal", "--json", NULL);
  g_auto (Ran) gold = run ("reckon", "heat-plan", "metal=au750y", "joints=known:790",
                           "solders=au18_m,au18_e", "stones=sapphire,opal", NULL);
  g_auto (Ran) wrong = run ("reckon", "heat-plan", "metal=unobtainium", NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonObject *object = object_of (&silver, parser);

  g_assert_cmpfloat (result_of (object, "best", "value"), ==, 0.0);
  g_assert_null (strstr (silver.out, "ag_xe2"));
  g_assert_cmpint (gold.code, ==, 0);
  g_assert_nonnull (strstr (gold.out, "au18_e"));
  g_assert_nonnull (strstr (gold.out, "usable with care"));
  g_assert_cmpint (wrong.code, ==, 1);
  g_assert_nonnull (strstr (wrong.err, "unobtainium"));
}

static void
test_refused_by_name (void)
{
  const struct
  {
    const char *topic, *first, *second;
    int code;
    const char *named;
  } rows[] = {
    { "section", "shape=round", NULL, 2, "made_height" },
    { "nonsense", NULL, NULL, 2, "nonsense" },
    { "chance", "p=0.5", "size=3", 2, "size" },
    { "chance", "p=0.5", "twelve", 2, "twelve" },
    { "chance", "p=-0.5", "count=3", 1, "p " },
    { "chance", "p=nan", "count=3", 1, "p " },
    { "chance", "p=1.5", "count=3", 1, "p " },
    { "chance", "p=0.5", "count=2.5", 1, "count" },
    { "drawn-wire", "from=1.5in", "to=1", 1, "from" },
    { "drawn-wire", "from=1.5", "to=2", 1, "to" },
    { "stone-weight", "cut=cube", "length=5", 1, "cut" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_auto (Ran) ran =
          run ("reckon", rows[i].topic, rows[i].first != NULL ? rows[i].first : "--json",
               rows[i].second != NULL ? rows[i].second : "--json", NULL);

      g_assert_cmpint (ran.code, ==, rows[i].code);
      g_assert_cmpstr (ran.out, ==, "");
      g_assert_nonnull (strstr (ran.err, rows[i].named));
    }
}

/* A light bar from x = 120.25 to x = 180.75, 60.5 px wide, on a dark ground, 400 x 300.
 */
static void
write_photo (void)
{
  g_autoptr (WmPixels) pixels = wm_pixels_new (400, 300);
  g_autoptr (GError) error = NULL;

  for (int y = 0; y < 300; y++)
    for (int x = 0; x < 400; x++)
      {
        double share = CLAMP (MIN (x + 1, 180.75) - MAX (x, 120.25), 0.0, 1.0);
        double light = 0.05 + 0.45 * share;
        double coded = 1.055 * pow (light, 1 / 2.4) - 0.055;
        guint8 *p = pixels->data + y * pixels->stride + 4 * x;

        p[0] = p[1] = p[2] = (guint8)round (255 * coded);
        p[3] = 255;
      }

  wm_pixels_write_png (pixels, photo_path, NULL, &error);
  g_assert_no_error (error);
}

static void
test_measure (void)
{
  g_auto (Ran) ran = run ("measure", photo_path, "--scale", "50,250,350,250,30", "--span",
                          "120,150,180,150", "--json", NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonObject *object = object_of (&ran, parser);

  g_assert_cmpfloat (fabs (json_object_get_double_member (object, "value_mm") - 6.0), <,
                     1e-9);
  g_assert_cmpfloat (
      fabs (json_object_get_double_member (object, "expanded_uncertainty_mm")
            - 2.0 * json_object_get_double_member (object, "standard_uncertainty_mm")),
      <, 1e-12);
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (object, "ends")),
                    ==, 2);
}

static void
test_measure_snapped (void)
{
  g_auto (Ran) ran = run ("measure", photo_path, "--scale", "50,250,350,250,30", "--span",
                          "117,150,184,150", "--snap", "--json", NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonObject *object = object_of (&ran, parser);
  JsonArray *ends = json_object_get_array_member (object, "ends");

  g_assert_cmpfloat (fabs (json_object_get_double_member (object, "value_mm") - 6.05), <,
                     0.02);
  g_assert_cmpfloat (
      fabs (json_array_get_double_element (json_array_get_array_element (ends, 0), 0)
            - 120.25),
      <, 0.1);
}

/* Nothing to snap to: the ends stay, less certain, and it is said. */
static void
test_measure_without_edge (void)
{
  g_auto (Ran) ran = run ("measure", photo_path, "--scale", "50,250,350,250,30", "--span",
                          "250,50,330,50", "--snap", "--json", NULL);
  g_auto (Ran) words = run ("measure", photo_path, "--scale", "50,250,350,250,30",
                            "--span", "250,50,330,50", "--snap", NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonObject *object = object_of (&ran, parser);

  g_assert_false (json_array_get_boolean_element (
      json_object_get_array_member (object, "snapped"), 0));
  g_assert_cmpfloat (fabs (json_object_get_double_member (object, "value_mm") - 8.0), <,
                     1e-9);
  g_assert_cmpfloat (json_object_get_double_member (object, "from_ends_mm"), >, 0.28);
  g_assert_nonnull (strstr (words.out, "both stay as placed"));
}

static void
test_measure_plane (void)
{
  g_auto (Ran) ran =
      run ("measure", photo_path, "--plane", "50,50,350,50,350,250,50,250,30,20",
           "--span", "120,150,180,150", "--json", NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();

  g_assert_cmpfloat (
      fabs (json_object_get_double_member (object_of (&ran, parser), "value_mm") - 6.0),
      <, 1e-9);
}

/* What is said in words is in JSON too; and a photo that is cut off is not measured on.
 */
static void
test_measure_warns (void)
{
  g_auto (Ran) ran = run ("measure", photo_path, "--scale", "50,250,350,250,30", "--span",
                          "120,150,180,150", "--tilt", "30", "--json", NULL);
  g_auto (Ran) cut = { 0 };
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonArray *warnings =
      json_object_get_array_member (object_of (&ran, parser), "warnings");
  g_autofree char *cut_path = g_strconcat (photo_path, "-cut.png", NULL);
  g_autofree char *bytes = NULL;
  gsize n = 0;

  g_assert_cmpuint (json_array_get_length (warnings), ==, 1);
  g_assert_cmpstr (json_array_get_string_element (warnings, 0), ==, "tilt-large");

  g_assert_true (g_file_get_contents (photo_path, &bytes, &n, NULL));
  g_assert_true (g_file_set_contents (cut_path, bytes, (gssize)n / 2, NULL));
  cut = run ("measure", cut_path, "--scale", "50,250,350,250,30", "--span",
             "120,150,180,150", "--json", NULL);
  g_assert_cmpint (cut.code, ==, 1);
  g_assert_nonnull (strstr (cut.err, "cut off"));
  g_assert_cmpint (g_unlink (cut_path), ==, 0);
}

static void
test_measure_refusals (void)
{
  const struct
  {
    const char *file, *scale, *span, *more;
    int code;
    const char *named;
  } rows[] = {
    { NULL, "50,250,350,250,30", "120,150,180", "--json", 2, "--span" },
    { NULL, "50,250,350,250,zero", "120,150,180,150", "--json", 2, "--scale" },
    { NULL, "50,250,350,250,-30", "120,150,180,150", "--json", 1, "--scale" },
    { NULL, "50,250,350,250,0", "120,150,180,150", "--json", 1, "--scale" },
    { NULL, "50,250,60,250,30", "120,150,180,150", "--json", 1, "--scale" },
    { NULL, "50,250,350,250,30", "120,150,120,150", "--json", 1, "--span" },
    { NULL, "50,250,350,250,30", "120,150,1800,150", "--json", 1, "--span" },
    { NULL, "50,250,3500,250,30", "120,150,180,150", "--json", 1, "--scale" },
    { NULL, "50,250,350,250,30", "250,50,330,50", "--plane=1,2,3", 2, "--plane" },
    { "/nowhere/photo.jpg", "50,250,350,250,30", "120,150,180,150", "--json", 1,
      "photo.jpg" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_auto (Ran) ran =
          run ("measure", rows[i].file != NULL ? rows[i].file : photo_path, "--scale",
               rows[i].scale, "--span", rows[i].span, rows[i].more, NULL);

      g_assert_cmpint (ran.code, ==, rows[i].code);
      g_assert_cmpstr (ran.out, ==, "");
      g_assert_nonnull (strstr (ran.err, rows[i].named));
    }
}

int
main (int argc, char **argv)
{
  g_autofree char *folder = NULL;
  int status;

  if (argc > 1 && g_str_equal (argv[1], "--verb"))
    {
      setlocale (LC_ALL, "");
      argv[1] = argv[0];
      return wm_command_run (argc - 1, argv + 1, NULL);
    }

  g_test_init (&argc, &argv, NULL);
  g_setenv ("WM_TEST_SELF", argv[0], TRUE);
  folder = g_dir_make_tmp ("wm-reckon-XXXXXX", NULL);
  photo_path = g_build_filename (folder, "bar.png", NULL);
  write_photo ();
  g_test_add_func ("/command/reckon/section-json", test_section_json);
  g_test_add_func ("/command/reckon/locale", test_locale_does_not_matter);
  g_test_add_func ("/command/reckon/lists-topics", test_lists_topics);
  g_test_add_func ("/command/reckon/words", test_words);
  g_test_add_func ("/command/reckon/heat-plan-by-keys", test_heat_plan_by_keys);
  g_test_add_func ("/command/reckon/refused-by-name", test_refused_by_name);
  g_test_add_func ("/command/measure/plain", test_measure);
  g_test_add_func ("/command/measure/snapped", test_measure_snapped);
  g_test_add_func ("/command/measure/without-edge", test_measure_without_edge);
  g_test_add_func ("/command/measure/plane", test_measure_plane);
  g_test_add_func ("/command/measure/warns", test_measure_warns);
  g_test_add_func ("/command/measure/refusals", test_measure_refusals);
  status = g_test_run ();
  g_unlink (photo_path);
  g_rmdir (folder);
  g_free (photo_path);
  return status;
}

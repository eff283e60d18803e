/* test-mark-layout.c: discs never overlap, nor hide a place
 *
 * Properties over many random photos; distances are reckoned here again, not taken
 * from the layout's own code.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/mark-layout.h"

#include <math.h>

#define MOST_POINTS 8

/* What a disc paints (look book, section 4): claw end, half a claw, outline. */
#define PAINT (1.62 + 0.21 + 0.13)

typedef struct
{
  WmLayoutMark marks[64];
  WmPoint points[64][MOST_POINTS];
  gsize count;
  WmLayoutView view;
} Scene;

static double
segment_distance (WmPoint a, WmPoint b, WmPoint p)
{
  double least = G_MAXDOUBLE;

  /* By walking along it: slow and plain, so that it is no copy of our formula. */
  for (int i = 0; i <= 200; i++)
    {
      double t = i / 200.0;

      least =
          MIN (least, hypot (a.x + t * (b.x - a.x) - p.x, a.y + t * (b.y - a.y) - p.y));
    }

  return least;
}

static double
form_distance (const WmLayoutMark *mark, WmPoint p)
{
  double least = hypot (mark->points[0].x - p.x, mark->points[0].y - p.y);
  gsize edges = mark->n_points - 1;

  if (mark->shape == WM_SHAPE_OUTLINE && mark->n_points > 2)
    edges++;
  for (gsize i = 0; i < edges; i++)
    least = MIN (least, segment_distance (mark->points[i],
                                          mark->points[(i + 1) % mark->n_points], p));
  return least;
}

static void
make_scene (Scene *scene, GRand *rand, gsize count, gboolean has_forms)
{
  double r = g_rand_double_range (rand, 6, 22);

  *scene = (Scene) { .count = count };
  scene->view.width = g_rand_double_range (rand, 600, 2500);
  scene->view.height = g_rand_double_range (rand, 500, 1500);
  scene->view.radius = r;

  for (gsize i = 0; i < count; i++)
    {
      WmLayoutMark *mark = &scene->marks[i];
      double x = g_rand_double_range (rand, 0, scene->view.width);
      double y = g_rand_double_range (rand, 0, scene->view.height);

      mark->severity = g_rand_int_range (rand, 0, 6);
      mark->shape = has_forms ? (WmShape)g_rand_int_range (rand, 0, 4) : WM_SHAPE_SPOT;
      mark->n_points = mark->shape == WM_SHAPE_SPOT
                           ? 1
                           : (gsize)(mark->shape == WM_SHAPE_SPAN
                                         ? 2
                                         : g_rand_int_range (rand, 3, MOST_POINTS + 1));
      mark->points = scene->points[i];
      for (gsize p = 0; p < mark->n_points; p++)
        {
          double px = x + g_rand_double_range (rand, -4, 4) * r;
          double py = y + g_rand_double_range (rand, -4, 4) * r;

          scene->points[i][p] = (WmPoint) { CLAMP (px, 0, scene->view.width),
                                            CLAMP (py, 0, scene->view.height) };
        }
    }
}

/* The rules, for every mark that does not say it is crowded. */
static void
assert_clear (const Scene *scene)
{
  double r = scene->view.radius;

  for (gsize i = 0; i < scene->count; i++)
    {
      const WmLayoutMark *mark = &scene->marks[i];

      if (mark->crowded)
        continue;
      g_assert_cmpfloat (mark->disc.x, >=, PAINT * r - 1e-3);
      g_assert_cmpfloat (mark->disc.y, >=, PAINT * r - 1e-3);
      g_assert_cmpfloat (mark->disc.x, <=, scene->view.width - PAINT * r + 1e-3);
      g_assert_cmpfloat (mark->disc.y, <=, scene->view.height - PAINT * r + 1e-3);

      for (gsize j = 0; j < scene->count; j++)
        {
          const WmLayoutMark *other = &scene->marks[j];

          if (j != i && !other->crowded)
            g_assert_cmpfloat (
                hypot (mark->disc.x - other->disc.x, mark->disc.y - other->disc.y), >=,
                (2 * PAINT + 0.6) * r - 1e-3);
          g_assert_cmpfloat (form_distance (other, mark->disc), >=, PAINT * r - 1e-3);
        }
    }
}

static void
test_never_overlap (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20260314);

  for (int round = 0; round < 3000; round++)
    {
      Scene scene;
      int crowded;

      /* Up to as many discs as cover a fifth of the view: there is room. */
      make_scene (&scene, rand, 1, round % 2);
      {
        double disc = (2 * PAINT + 0.6) * scene.view.radius;
        double fit = scene.view.width * scene.view.height / (disc * disc) / 5;
        gsize count = (gsize)g_rand_double_range (rand, 1, CLAMP (fit, 1.5, 40));

        if (round % 2)
          count = MIN (count, 12);
        make_scene (&scene, rand, count, round % 2);
      }
      crowded = wm_mark_layout (scene.marks, scene.count, &scene.view);
      assert_clear (&scene);
      if (round % 2 == 0)
        {
          double disc = (2 * PAINT + 0.6) * scene.view.radius;
          double fit = scene.view.width * scene.view.height / (disc * disc);

          if ((double)scene.count < fit / 5)
            g_assert_cmpint (crowded, ==, 0);
        }
    }
}

/* A view that can not hold them: it ends, and says which are crowded. */
static void
test_full (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (7);

  for (int round = 0; round < 40; round++)
    {
      Scene scene;
      int crowded, said = 0;

      make_scene (&scene, rand, 64, FALSE);
      scene.view.width = 300;
      scene.view.height = 200;
      for (gsize i = 0; i < scene.count; i++)
        {
          scene.points[i][0].x = g_rand_double_range (rand, 0, 300);
          scene.points[i][0].y = g_rand_double_range (rand, 0, 200);
        }
      crowded = wm_mark_layout (scene.marks, scene.count, &scene.view);
      assert_clear (&scene);
      for (gsize i = 0; i < scene.count; i++)
        {
          said += scene.marks[i].crowded;
          g_assert_true (isfinite (scene.marks[i].disc.x));
        }
      g_assert_cmpint (crowded, ==, said);
      g_assert_cmpint (crowded, >, 0);
    }
}

static void
test_stays_put (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (11);

  for (int round = 0; round < 300; round++)
    {
      Scene scene;
      WmPoint before[64];
      gsize count;

      make_scene (&scene, rand, 12, FALSE);
      scene.view.radius = 10;
      if (wm_mark_layout (scene.marks, 12, &scene.view) != 0)
        continue;
      for (gsize i = 0; i < 12; i++)
        {
          before[i] = scene.marks[i].disc;
          scene.marks[i].has_disc = TRUE;
        }

      /* Again: nothing moves. One more, worse than all: only those in its way. */
      g_assert_cmpint (wm_mark_layout (scene.marks, 12, &scene.view), ==, 0);
      for (gsize i = 0; i < 12; i++)
        g_assert_true (before[i].x == scene.marks[i].disc.x
                       && before[i].y == scene.marks[i].disc.y);

      scene.points[12][0] = (WmPoint) { scene.view.width / 2, scene.view.height / 2 };
      scene.marks[12] = (WmLayoutMark) { .severity = WM_SEVERITY_NO_WEAR,
                                         .points = scene.points[12],
                                         .n_points = 1 };
      scene.count = count = 13;
      wm_mark_layout (scene.marks, count, &scene.view);
      assert_clear (&scene);
      for (gsize i = 0; i < 12; i++)
        if (hypot (before[i].x - scene.points[12][0].x,
                   before[i].y - scene.points[12][0].y)
            > PAINT * 10 + 1)
          g_assert_true (before[i].x == scene.marks[i].disc.x);
    }
}

static void
test_pinned (void)
{
  WmPoint tips[] = { { 300, 300 }, { 305, 300 } };
  WmLayoutView view = { .width = 800, .height = 600, .radius = 13 };
  WmLayoutMark marks[] = {
    { .severity = WM_SEVERITY_WATCH,
      .points = &tips[0],
      .n_points = 1,
      .is_pinned = TRUE,
      .disc = { 500, 123 } },
    { .severity = WM_SEVERITY_NO_WEAR, .points = &tips[1], .n_points = 1 }
  };

  g_assert_cmpint (wm_mark_layout (marks, 2, &view), ==, 0);
  g_assert_cmpfloat (marks[0].disc.x, ==, 500);
  g_assert_cmpfloat (marks[0].disc.y, ==, 123);

  /* Pinned over the other's place: stays, and says so. */
  marks[0].disc = (WmPoint) { 306, 301 };
  g_assert_cmpint (wm_mark_layout (marks, 2, &view), ==, 1);
  g_assert_true (marks[0].crowded);
  g_assert_false (marks[1].crowded);
  g_assert_cmpfloat (marks[0].disc.x, ==, 306);
}

/* One spot alone: the first ring, 3.5 R, and off the metal when there is a map. */
static void
test_choices (void)
{
  WmPoint tip = { 400, 300 };
  WmLayoutView view = { .width = 800, .height = 600, .radius = 10 };
  WmLayoutMark mark = { .severity = WM_SEVERITY_REPAIR, .points = &tip, .n_points = 1 };
  guint8 metal[4] = { 255, 255, 255, 0 };

  wm_mark_layout (&mark, 1, &view);
  g_assert_cmpfloat_with_epsilon (hypot (mark.disc.x - 400, mark.disc.y - 300), 35, 1e-6);

  view.metal = metal;
  view.metal_columns = view.metal_rows = 2;
  wm_mark_layout (&mark, 1, &view);
  g_assert_cmpfloat (mark.disc.x, >, 410);
  g_assert_cmpfloat (mark.disc.y, >, 310);
}

static void
test_taken_area (void)
{
  WmPoint tip = { 400, 300 };
  WmLayoutBox bar = { 0, 280, 800, 320 };
  WmLayoutView view = {
    .width = 800, .height = 600, .radius = 10, .taken = &bar, .n_taken = 1
  };
  WmLayoutMark mark = { .severity = WM_SEVERITY_REPAIR, .points = &tip, .n_points = 1 };

  g_assert_cmpint (wm_mark_layout (&mark, 1, &view), ==, 0);
  g_assert_cmpfloat (mark.disc.y, <=, 280 - PAINT * 10 + 1e-6);
}

static void
test_out_of_view (void)
{
  WmPoint tip = { -500, 300 };
  WmLayoutView view = { .width = 800, .height = 600, .radius = 10 };
  WmLayoutMark mark = { .severity = WM_SEVERITY_REPAIR, .points = &tip, .n_points = 1 };

  g_assert_cmpint (wm_mark_layout (&mark, 1, &view), ==, 0);
  g_assert_cmpfloat_with_epsilon (mark.disc.x, -465, 1e-9);
  g_assert_cmpint (wm_mark_layout (NULL, 0, &view), ==, 0);
}

/* Sixty marks within a frame's time, so that dragging stays smooth. */
static void
test_speed (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (3);
  Scene scene;
  double seconds;

  make_scene (&scene, rand, 60, TRUE);
  scene.view = (WmLayoutView) { .width = 2500, .height = 1500, .radius = 13 };
  g_test_timer_start ();
  for (int i = 0; i < 10; i++)
    wm_mark_layout (scene.marks, 60, &scene.view);
  seconds = g_test_timer_elapsed () / 10;
  g_test_message ("60 marks: %.2f ms", seconds * 1000);
  /* Ten times 16 ms: sanitizers and a loaded machine are slow. */
  g_assert_cmpfloat (seconds, <, 0.16);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/photo/layout/never-overlap", test_never_overlap);
  g_test_add_func ("/photo/layout/full", test_full);
  g_test_add_func ("/photo/layout/stays-put", test_stays_put);
  g_test_add_func ("/photo/layout/pinned", test_pinned);
  g_test_add_func ("/photo/layout/choices", test_choices);
  g_test_add_func ("/photo/layout/taken-area", test_taken_area);
  g_test_add_func ("/photo/layout/out-of-view", test_out_of_view);
  g_test_add_func ("/photo/layout/speed", test_speed);
  return g_test_run ();
}

/* test-joint.c: straight and angled joints, bridges
 *
 * Expected values: table of angles for S 150, T 120 MPa on a 1.2 mm wire (NumPy, Cauchy's
 * transformation and the quadratic criterion); bridges worked by hand.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/joint.h"

#include "near.h"

static WmJoint
joint_of (double angle, double wire, double gap)
{
  WmJoint joint = { .angle_deg = { angle, 0 },
                    .area_mm2 = { G_PI * wire * wire / 4, 0 },
                    .gap_mm = { gap, 0 },
                    .across_mpa = { 150, 0 },
                    .along_mpa = { 120, 0 },
                    .solder_g_cm3 = { 14, 0 },
                    .fillet = { 1.5, 0 } };

  return joint;
}

static void
test_angles (void)
{
  const double rows[][6] = {
    { 90, 1.0000, 1.0000, 0.0000, 150.000, 169.65 },
    { 60, 1.1547, 0.7500, 0.4330, 162.177, 183.42 },
    { 45, 1.4142, 0.5000, 0.5000, 187.409, 211.95 },
    { 30, 2.0000, 0.2500, 0.4330, 251.588, 284.54 },
    { 20, 2.9238, 0.1170, 0.3214, 358.486, 405.44 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      WmJoint joint = joint_of (rows[i][0], 1.2, 0.05);
      WmJointStrength s;

      g_assert_cmpint (wm_joint (&joint, &s, NULL), ==, WM_OK);
      wm_assert_near (s.area_gain.value, rows[i][1], 0.6e-4);
      wm_assert_near (s.across_share.value, rows[i][2], 0.6e-4);
      wm_assert_near (s.along_share.value, rows[i][3], 0.6e-4);
      wm_assert_near (s.allowed_mpa.value, rows[i][4], 0.6e-3);
      wm_assert_near (s.force_n.value, rows[i][5], 0.6e-2);
      wm_assert_relative (s.gain.value, s.allowed_mpa.value / 150.0, 1e-12);
    }
}

static void
test_solder (void)
{
  const double rows[][6] = { { 90, 1.2, .05, 0.056549, 0.792, 1.188 },
                             { 45, 1.2, .05, 0.079972, 1.120, 1.679 },
                             { 90, 2.0, .08, 0.251327, 3.519, 5.278 } };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      WmJoint joint = joint_of (rows[i][0], rows[i][1], rows[i][2]);
      WmJointStrength s;

      g_assert_cmpint (wm_joint (&joint, &s, NULL), ==, WM_OK);
      wm_assert_near (s.solder_mm3.value, rows[i][3], 0.6e-6);
      wm_assert_near (s.solder_mg.value, rows[i][4], 0.6e-3);
      wm_assert_near (s.solder_fillet_mg.value, rows[i][5], 0.6e-3);
    }
}

static void
test_metal_caps (void)
{
  WmJoint joint = joint_of (20, 1.2, 0.05);
  WmJointStrength s;

  joint.yield_mpa.value = 250;
  g_assert_cmpint (wm_joint (&joint, &s, NULL), ==, WM_OK);
  wm_assert_relative (s.allowed_mpa.value, 250, 1e-12);
  g_assert_true (s.is_metal_the_limit);
  joint.angle_deg.value = 90;
  g_assert_cmpint (wm_joint (&joint, &s, NULL), ==, WM_OK);
  g_assert_false (s.is_metal_the_limit);
}

static void
test_gap_and_unknown_strength (void)
{
  WmJoint joint = joint_of (45, 1.2, 0.2);
  WmJointStrength s;

  joint.along_mpa.value = 0;
  g_assert_cmpint (wm_joint (&joint, &s, NULL), ==, WM_OK);
  g_assert_true (s.is_gap_wide);
  g_assert_true (isnan (s.allowed_mpa.value));
  g_assert_true (isnan (s.force_n.value));
  wm_assert_near (s.area_gain.value, 1.4142, 0.6e-4);

  joint.gap_mm.value = 0.01;
  g_assert_cmpint (wm_joint (&joint, &s, NULL), ==, WM_OK);
  g_assert_true (s.is_gap_narrow);
}

/* Turning the plane never makes the joint weaker, and equal S and T is the worst case
 * for the gain at 45: 1 / sqrt (1/4 + 1/4) = 1.4142. */
static void
test_properties (void)
{
  double before = 0.0;

  for (double angle = 90; angle >= 10; angle -= 5)
    {
      WmJoint joint = joint_of (angle, 1.0, 0.05);
      WmJointStrength s;

      g_assert_cmpint (wm_joint (&joint, &s, NULL), ==, WM_OK);
      g_assert_cmpfloat (s.allowed_mpa.value, >=, before);
      before = s.allowed_mpa.value;
    }
}

static void
test_bridge (void)
{
  WmBridge b;
  const char *which = NULL;

  g_assert_cmpint (wm_bridge (wm_value (2.0, 0.04), wm_value (1.2, 0.03), wm_exact (2),
                              wm_exact (1), wm_exact (300), wm_exact (120), &b, NULL),
                   ==, WM_OK);
  wm_assert_relative (b.thickness_mm.value, 0.4, 1e-12);
  wm_assert_relative (b.thickness_mm.u, 0.025, 1e-9);
  wm_assert_relative (b.lap_mm.value, 1.0, 1e-12);
  wm_assert_relative (b.length_mm.value, 3.0, 1e-12);

  g_assert_cmpint (wm_bridge (wm_exact (2), wm_exact (0), wm_exact (2), wm_exact (1),
                              wm_exact (0), wm_exact (0), &b, NULL),
                   ==, WM_OK);
  wm_assert_relative (b.thickness_mm.value, 1.0, 1e-12);
  g_assert_true (isnan (b.lap_mm.value));

  g_assert_cmpint (wm_bridge (wm_exact (2), wm_exact (3), wm_exact (2), wm_exact (1),
                              wm_exact (0), wm_exact (0), &b, &which),
                   ==, WM_LARGER_THAN_NEW);
  g_assert_cmpstr (which, ==, "left");
}

static void
test_refusals (void)
{
  const struct
  {
    double angle, wire, gap;
    WmResult result;
    const char *which;
  } rows[] = {
    { 9, 1, .05, WM_OUT_OF_RANGE, "angle" },   { 91, 1, .05, WM_OUT_OF_RANGE, "angle" },
    { NAN, 1, .05, WM_NOT_A_NUMBER, "angle" }, { 90, 0, .05, WM_NOT_POSITIVE, "area" },
    { 90, 1, 0, WM_NOT_POSITIVE, "gap" },      { 90, 1, -1, WM_NOT_POSITIVE, "gap" }
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      WmJoint joint = joint_of (rows[i].angle, rows[i].wire, rows[i].gap);
      WmJointStrength s;
      const char *which = NULL;

      g_assert_cmpint (wm_joint (&joint, &s, &which), ==, rows[i].result);
      g_assert_cmpstr (which, ==, rows[i].which);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reckon/joint/angles", test_angles);
  g_test_add_func ("/reckon/joint/solder", test_solder);
  g_test_add_func ("/reckon/joint/metal-caps", test_metal_caps);
  g_test_add_func ("/reckon/joint/gap", test_gap_and_unknown_strength);
  g_test_add_func ("/reckon/joint/properties", test_properties);
  g_test_add_func ("/reckon/joint/bridge", test_bridge);
  g_test_add_func ("/reckon/joint/refusals", test_refusals);
  return g_test_run ();
}

/* section.c: cross-sections, closed forms
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/section.h"

#include <math.h>

#include "reckon/words.h"

#define MAX_MM 100.0

/* Part of a section: area, first and second moment about one common axis. */
typedef struct
{
  double area, first, second;
} Part;

/* Area, second moment about the centroid, modulus. */
typedef struct
{
  double area, second, modulus;
} Whole;

/* Segment of a circle of radius r beyond a chord, half angle alpha, the circle's centre
 * at height 0 and the segment on the positive side. */
static Part
segment (double r, double alpha)
{
  double s = sin (alpha);
  double c = cos (alpha);
  double plain = alpha - s * c;
  Part part = { r * r * plain, 2.0 * r * r * r * s * s * s / 3.0,
                r * r * r * r / 4.0 * (plain + 2.0 * s * s * s * c) };

  return part;
}

/* The same part with heights measured from a new zero: new = sign * old + shift. */
static Part
moved (Part part, double sign, double shift)
{
  Part out = { part.area, sign * part.first + shift * part.area,
               part.second + 2.0 * shift * sign * part.first
                   + shift * shift * part.area };

  return out;
}

/* Two parts about one zero; bottom and top are the extremes of the whole. */
static Whole
combine (Part a, Part b, double bottom, double top)
{
  double area = a.area + b.area;
  double centroid = (a.first + b.first) / area;
  double second = a.second + b.second - area * centroid * centroid;
  Whole whole = { area, second, second / fmax (top - centroid, centroid - bottom) };

  return whole;
}

static Whole
ellipse (double width, double height)
{
  Whole whole = { M_PI * width * height / 4.0, M_PI * width * pow (height, 3) / 64.0,
                  M_PI * width * height * height / 32.0 };

  return whole;
}

static Whole
rectangle (double width, double height)
{
  Whole whole = { width * height, width * pow (height, 3) / 12.0,
                  width * height * height / 6.0 };

  return whole;
}

/* Straight sides up to side, a dome on top. */
static Whole
domed (double width, double side, double rise)
{
  const Part block = { width * side, width * side * side / 2.0,
                       width * pow (side, 3) / 3.0 };
  double r = (width * width / 4.0 + rise * rise) / (2.0 * rise);
  double alpha = atan2 (width / 2.0, r - rise);
  Part dome = moved (segment (r, alpha), 1.0, side + rise - r);

  return combine (block, dome, 0.0, side + rise);
}

static Whole
tube (double outer, double bore)
{
  double second = M_PI * (pow (outer, 4) - pow (bore, 4)) / 64.0;
  Whole whole = { M_PI * (outer * outer - bore * bore) / 4.0, second,
                  2.0 * second / outer };

  return whole;
}

/* Circle of the wire cut by a flat that leaves the height kept. */
static Whole
flatted (double diameter, double kept)
{
  double r = diameter / 2.0;
  const Part none = { 0.0, 0.0, 0.0 };

  if (kept >= diameter)
    return ellipse (diameter, diameter);

  return combine (segment (r, acos ((r - kept) / r)), none, r - kept, r);
}

/* Overlap of the wire (radius r, centre 0) with the mate's bow (radius bow, centre
 * gap below it); the wire's far side is at +r, the groove's bottom at r - kept. */
static Whole
saddle (double diameter, double kept, double bow)
{
  double r = diameter / 2.0;
  double gap = bow - r + (diameter - kept);
  double chord;
  Part wire, mate;

  if (kept >= diameter)
    return ellipse (diameter, diameter);

  /* The bow's centre is at +gap: its near edge, the groove, is at gap - bow. The chord
   * both circles share lies at height chord above the wire's centre. */
  chord = (gap * gap + r * r - bow * bow) / (2.0 * gap);
  wire = segment (r, acos (fmax (-1.0, fmin (1.0, chord / r))));
  mate = moved (segment (bow, acos (fmax (-1.0, fmin (1.0, (gap - chord) / bow)))), -1.0,
                gap);

  return combine (wire, mate, gap - bow, r);
}

static Whole
find_whole (WmSectionShape shape, double width, double height, double extra)
{
  switch (shape)
    {
    case WM_SECTION_OVAL:
      return ellipse (width, height);
    case WM_SECTION_RECTANGLE:
      return rectangle (width, height);
    case WM_SECTION_HALF_ROUND:
      return domed (width, 0.0, height);
    case WM_SECTION_D:
      return domed (width, extra, height - extra);
    case WM_SECTION_TUBE:
      return tube (height, extra);
    case WM_SECTION_FLATTED:
      return flatted (width, height);
    case WM_SECTION_SADDLE:
      return saddle (width, height, extra);
    case WM_SECTION_ROUND:
    default:
      return ellipse (height, height);
    }
}

static int
needs_width (WmSectionShape shape)
{
  return shape != WM_SECTION_ROUND && shape != WM_SECTION_TUBE;
}

static int
needs_extra (WmSectionShape shape)
{
  return shape == WM_SECTION_D || shape == WM_SECTION_TUBE || shape == WM_SECTION_SADDLE;
}

/* What the shape itself asks of its measures. */
static WmResult
check_shape (const WmSection *s, const char *const *names, const char **which)
{
  double width = s->width_mm.value;
  double height = s->height_mm.value;
  double extra = s->extra_mm.value;

  if (s->shape == WM_SECTION_HALF_ROUND && height > width / 2.0 * (1.0 + 1e-9))
    return wm_refuse (WM_OUT_OF_RANGE, names[1], which);

  if ((s->shape == WM_SECTION_D || s->shape == WM_SECTION_TUBE) && extra >= height)
    return wm_refuse (WM_CONTRADICTION, names[2], which);

  if (s->shape == WM_SECTION_D && height - extra > width / 2.0 * (1.0 + 1e-9))
    return wm_refuse (WM_OUT_OF_RANGE, names[1], which);

  if (s->shape == WM_SECTION_SADDLE && extra < width / 2.0)
    return wm_refuse (WM_OUT_OF_RANGE, names[2], which);

  return WM_OK;
}

static WmResult
check_section (const WmSection *s, const char *const *names, const char **which)
{
  const WmInputBound bounds[] = {
    WM_ABOVE (names[1], s->height_mm, 0.0, MAX_MM),
    WM_ABOVE (names[0], s->width_mm, 0.0, MAX_MM),
    WM_ABOVE (names[2], s->extra_mm, 0.0, 10.0 * MAX_MM),
  };
  WmResult result;

  if ((int)s->shape < 0 || s->shape >= WM_N_SECTION_SHAPES)
    return wm_refuse (WM_UNKNOWN_INPUT, "shape", which);

  result = wm_bounds_check (&bounds[0], 1, which);
  if (result == WM_OK && needs_width (s->shape))
    result = wm_bounds_check (&bounds[1], 1, which);
  if (result == WM_OK && needs_extra (s->shape))
    result = wm_bounds_check (&bounds[2], 1, which);

  return result == WM_OK ? check_shape (s, names, which) : result;
}

static const char *const plain_names[] = { "width", "height", "extra" };
static const char *const made_names[] = { "made_width", "made_height", "made_extra" };

static void
properties_model (const double *x, double *y, const void *fixed)
{
  Whole whole = find_whole (*(const WmSectionShape *)fixed, x[0], x[1], x[2]);

  y[0] = whole.area;
  y[1] = whole.second;
  y[2] = whole.modulus;
}

WmResult
wm_section_properties (const WmSection *section, WmSectionProperties *out,
                       const char **which)
{
  const WmValue x[] = { section->width_mm, section->height_mm, section->extra_mm };
  WmValue y[3];
  WmResult result = check_section (section, plain_names, which);

  if (result == WM_OK && section->shape >= WM_SECTION_FLATTED
      && section->height_mm.value > section->width_mm.value)
    result = wm_refuse (WM_CONTRADICTION, "height", which);
  if (result != WM_OK)
    return result;

  wm_propagate (properties_model, &section->shape, x, 3, y, 3, WM_STEP_SLOPE);
  *out = (WmSectionProperties) { y[0], y[1], y[2] };
  return WM_OK;
}

typedef struct
{
  WmSectionShape made, worn;
} Shapes;

/* x: made width, height, extra; worn width, height, extra; yield. */
static void
left_model (const double *x, double *y, const void *fixed)
{
  const Shapes *shapes = fixed;
  int shares_wire = shapes->worn >= WM_SECTION_FLATTED;
  Whole made = find_whole (shapes->made, x[0], x[1], x[2]);
  Whole worn = find_whole (shapes->worn, shares_wire ? x[1] : x[3], x[4], x[5]);

  y[0] = x[4] / x[1];
  y[1] = worn.area / made.area;
  y[2] = worn.modulus / made.modulus;
  y[3] = worn.second / made.second;
  y[4] = made.area * x[6];
  y[5] = worn.area * x[6];
  y[6] = made.modulus * x[6];
  y[7] = worn.modulus * x[6];
}

/* Shapes that can be compared: the same, or a round wire and what wear makes of it. */
static WmResult
check_pair (const WmSection *made, const WmSection *worn, const char **which)
{
  double u = hypot (made->height_mm.u, worn->height_mm.u);

  if (made->shape >= WM_SECTION_FLATTED
      || (worn->shape >= WM_SECTION_FLATTED && made->shape != WM_SECTION_ROUND)
      || (worn->shape < WM_SECTION_FLATTED && made->shape != worn->shape))
    return wm_refuse (WM_CONTRADICTION, "shape", which);

  if (worn->height_mm.value > made->height_mm.value + WM_COVERAGE_FACTOR * u)
    return wm_refuse (WM_LARGER_THAN_NEW, "height", which);

  return WM_OK;
}

static const WmValue no_value = { NAN, 0.0 };

static void
find_left (const WmSection *made, const WmSection *worn, WmValue yield_mpa,
           WmSectionLeft *out)
{
  const Shapes shapes = { made->shape, worn->shape };
  const WmValue x[] = { made->width_mm,  made->height_mm, made->extra_mm, worn->width_mm,
                        worn->height_mm, worn->extra_mm,  yield_mpa };
  int has_yield = yield_mpa.value > 0.0;
  WmValue y[8];

  wm_propagate (left_model, &shapes, x, 7, y, 8, WM_STEP_SLOPE);
  out->height_left = y[0];
  out->area_left = y[1];
  out->bending_left = y[2];
  out->stiff_left = y[3];
  out->pull_made_n = has_yield ? y[4] : no_value;
  out->pull_left_n = has_yield ? y[5] : no_value;
  out->moment_made_nmm = has_yield ? y[6] : no_value;
  out->moment_left_nmm = has_yield ? y[7] : no_value;
}

WmResult
wm_section_left (const WmSection *made, const WmSection *worn, WmValue yield_mpa,
                 WmSectionLeft *out, const char **which)
{
  const WmInputBound yield = WM_FROM ("yield_mpa", yield_mpa, 0.0, 3000.0);
  WmSection now = *worn;
  WmSectionLeft left;
  WmResult result = check_section (made, made_names, which);

  if (now.shape >= WM_SECTION_FLATTED)
    now.width_mm = made->height_mm;
  if (result == WM_OK)
    result = check_section (&now, plain_names, which);
  if (result == WM_OK)
    result = wm_bounds_check (&yield, 1, which);
  if (result == WM_OK)
    result = check_pair (made, &now, which);
  if (result != WM_OK)
    return result;

  /* Within the uncertainty a hair more than new counts as new for a cut wire. */
  if (now.shape >= WM_SECTION_FLATTED && now.height_mm.value > now.width_mm.value)
    now.height_mm.value = now.width_mm.value;

  find_left (made, &now, yield_mpa, &left);
  wm_section_properties (made, &left.made, NULL);
  wm_section_properties (&now, &left.worn, NULL);
  *out = left;
  return WM_OK;
}

const char *
wm_section_words (double share_left)
{
  if (share_left >= 0.95)
    return N_ ("hardly any metal is gone");
  if (share_left >= 0.85)
    return N_ ("about a tenth of the metal is gone");
  if (share_left >= 0.70)
    return N_ ("about a quarter of the metal is gone");
  if (share_left >= 0.58)
    return N_ ("about a third of the metal is gone");
  if (share_left >= 0.42)
    return N_ ("about half of the metal is gone");
  if (share_left >= 0.30)
    return N_ ("about two thirds of the metal are gone");
  if (share_left >= 0.15)
    return N_ ("about three quarters of the metal are gone");

  return N_ ("almost all of the metal is gone");
}

/* stone-weight.c: estimating formulas by cut
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "reckon/stone-weight.h"

#include <math.h>

#include "reckon/words.h"

#define MAX_RATIOS 4

typedef enum
{
  SQUARE_OF_MEAN, /* mean diameter squared x depth */
  BOX,            /* length x width x depth */
  CUBE            /* diameter cubed */
} Form;

/* Factors of one cut; 0 where none is published or customary. */
typedef struct
{
  const char *key;
  const char *text;
  Form form;
  double coloured; /* times specific gravity */
  int n_ratios;    /* of the diamond factor */
  double ratio[MAX_RATIOS];
  double diamond[MAX_RATIOS];
} Cut;

/* Trade reference 7.4 (diamonds) and 7.5 (coloured). Where two lists differ the middle is
 * taken: square 0.0023 and 0.0025, marquise 0.0016 and 0.0017, cabochon 0.0026 and
 * 0.0027 (the first is the trade reference's worked one). */
static const Cut cuts[WM_N_STONE_CUTS] = {
  [WM_STONE_CUT_ROUND] = { "round",
                           N_ ("round brilliant"),
                           SQUARE_OF_MEAN,
                           0.0018,
                           1,
                           { 1 },
                           { 0.0061 } },
  [WM_STONE_CUT_ROUND_OLD] = { "round-old",
                               N_ ("round, older cut"),
                               SQUARE_OF_MEAN,
                               0.0018,
                               1,
                               { 1 },
                               { 0.0067 } },
  [WM_STONE_CUT_OVAL] = { "oval",
                          N_ ("oval"),
                          SQUARE_OF_MEAN,
                          0.0020,
                          1,
                          { 1 },
                          { 0.0062 } },
  [WM_STONE_CUT_EMERALD] = { "emerald-cut",
                             N_ ("emerald cut"),
                             BOX,
                             0.0025,
                             4,
                             { 1.0, 1.5, 2.0, 2.5 },
                             { 0.0080, 0.0092, 0.0100, 0.0106 } },
  [WM_STONE_CUT_MARQUISE] = { "marquise",
                              N_ ("marquise"),
                              BOX,
                              0.00165,
                              4,
                              { 1.5, 2.0, 2.5, 3.0 },
                              { 0.00565, 0.00580, 0.00585, 0.00595 } },
  [WM_STONE_CUT_PEAR] = { "pear",
                          N_ ("pear"),
                          BOX,
                          0.0018,
                          3,
                          { 1.25, 1.5, 2.0 },
                          { 0.00615, 0.00600, 0.00575 } },
  [WM_STONE_CUT_PRINCESS] = { "princess",
                              N_ ("princess"),
                              BOX,
                              0.0,
                              1,
                              { 1 },
                              { 0.0083 } },
  [WM_STONE_CUT_HEART] = { "heart", N_ ("heart"), BOX, 0.0018, 1, { 1 }, { 0.0059 } },
  [WM_STONE_CUT_TRIANGLE] = { "triangle",
                              N_ ("triangle"),
                              BOX,
                              0.0,
                              1,
                              { 1 },
                              { 0.0057 } },
  [WM_STONE_CUT_BAGUETTE] = { "baguette",
                              N_ ("baguette"),
                              BOX,
                              0.0026,
                              1,
                              { 1 },
                              { 0.00915 } },
  [WM_STONE_CUT_TAPERED] = { "tapered",
                             N_ ("tapered baguette"),
                             BOX,
                             0.0026,
                             1,
                             { 1 },
                             { 0.00915 } },
  [WM_STONE_CUT_RECTANGLE] = { "rectangle",
                               N_ ("rectangle"),
                               BOX,
                               0.0026,
                               0,
                               { 0 },
                               { 0 } },
  [WM_STONE_CUT_SQUARE] = { "square", N_ ("square"), BOX, 0.0024, 0, { 0 }, { 0 } },
  [WM_STONE_CUT_CABOCHON] = { "cabochon", N_ ("cabochon"), BOX, 0.0026, 0, { 0 }, { 0 } },
  /* pi / 6 mm^3, 1 mg a mm^3 and unit of gravity, 200 mg a carat: exact. */
  [WM_STONE_CUT_SPHERE] = { "sphere",
                            N_ ("round pearl or bead"),
                            CUBE,
                            M_PI / 1200.0,
                            0,
                            { 0 },
                            { 0 } },
};

/* Straight line between the printed ratios, level beyond them. */
static double
diamond_factor (const Cut *cut, double ratio)
{
  int last = cut->n_ratios - 1;

  if (ratio <= cut->ratio[0])
    return cut->diamond[0];

  for (int i = 0; i < last; i++)
    if (ratio <= cut->ratio[i + 1])
      {
        double t = (ratio - cut->ratio[i]) / (cut->ratio[i + 1] - cut->ratio[i]);

        return cut->diamond[i] + t * (cut->diamond[i + 1] - cut->diamond[i]);
      }

  return cut->diamond[last];
}

/* x: length, width, depth, gravity, method (1). */
static void
weight_model (const double *x, double *y, const void *fixed)
{
  const Cut *cut = &cuts[*(const WmStoneCut *)fixed];
  double factor = x[3] > 0.0 ? cut->coloured * x[3] : diamond_factor (cut, x[0] / x[1]);
  double mean = (x[0] + x[1]) / 2.0;
  double size;

  switch (cut->form)
    {
    case SQUARE_OF_MEAN:
      size = mean * mean * x[2];
      break;
    case CUBE:
      size = x[0] * x[0] * x[0];
      break;
    case BOX:
    default:
      size = x[0] * x[1] * x[2];
      break;
    }

  y[0] = size * factor * x[4];
  y[1] = factor;
}

static WmResult
check_ratio (const WmStoneMeasures *stone, const Cut *cut, const char **which)
{
  double ratio = stone->length_mm.value / stone->width_mm.value;
  int last = cut->n_ratios - 1;

  if (ratio < 0.95)
    return wm_refuse (WM_CONTRADICTION, "width", which);

  if (last > 0 && stone->specific_gravity.value == 0.0
      && (ratio < 0.8 * cut->ratio[0] || ratio > 1.2 * cut->ratio[last]))
    return wm_refuse (WM_OUT_OF_RANGE, "length", which);

  return WM_OK;
}

static WmResult
check_stone (const WmStoneMeasures *stone, const Cut *cut, const char **which)
{
  const WmInputBound bounds[] = {
    WM_ABOVE ("length", stone->length_mm, 0.0, 200.0),
    WM_FROM ("specific_gravity", stone->specific_gravity, 0.0, 8.0),
    WM_FROM ("correction", wm_exact (stone->correction_percent), -10.0, 20.0),
    WM_ABOVE ("width", stone->width_mm, 0.0, 200.0),
    WM_ABOVE ("depth", stone->depth_mm, 0.0, 200.0),
  };
  WmResult result = wm_bounds_check (bounds, cut->form == CUBE ? 3 : 5, which);

  if (result != WM_OK)
    return result;

  /* No gem is lighter than amber. */
  if (stone->specific_gravity.value > 0.0 && stone->specific_gravity.value < 1.0)
    return wm_refuse (WM_OUT_OF_RANGE, "specific_gravity", which);

  if (stone->specific_gravity.value > 0.0 ? cut->coloured == 0.0 : cut->n_ratios == 0)
    return wm_refuse (WM_UNKNOWN_INPUT, "cut", which);

  return cut->form == CUBE ? WM_OK : check_ratio (stone, cut, which);
}

WmResult
wm_stone_weight (const WmStoneMeasures *stone, WmStoneWeight *out, const char **which)
{
  double correction = 1.0 + stone->correction_percent / 100.0;
  const WmValue x[] = { stone->length_mm,
                        stone->width_mm,
                        stone->depth_mm,
                        stone->specific_gravity,
                        { correction, 0.0 } };
  WmValue inputs[5];
  WmValue y[2];
  WmResult result;

  if ((int)stone->cut < 0 || stone->cut >= WM_N_STONE_CUTS)
    return wm_refuse (WM_UNKNOWN_INPUT, "cut", which);

  result = check_stone (stone, &cuts[stone->cut], which);
  if (result != WM_OK)
    return result;

  for (int i = 0; i < 5; i++)
    inputs[i] = x[i];

  /* A sphere is geometry: only its measure and gravity are uncertain. */
  if (cuts[stone->cut].form != CUBE)
    inputs[4].u = correction * WM_STONE_METHOD_SHARE;

  wm_propagate (weight_model, &stone->cut, inputs, 5, y, 2, WM_STEP_SLOPE);
  out->carat = y[0];
  out->factor = y[1].value;
  return WM_OK;
}

const char *
wm_stone_cut_text (WmStoneCut cut)
{
  return (int)cut >= 0 && cut < WM_N_STONE_CUTS ? cuts[cut].text : "";
}

const char *
wm_stone_cut_key (WmStoneCut cut)
{
  return (int)cut >= 0 && cut < WM_N_STONE_CUTS ? cuts[cut].key : "";
}

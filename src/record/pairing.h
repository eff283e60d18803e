/* pairing.h: a before and an after photo in register
 *
 * m0 to m8: the 3x3 matrix, row by row, from after pixels to before pixels.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "record/record.h"

/* made_by */
#define WM_PAIRING_BY_PROGRAM "program"
#define WM_PAIRING_BY_HAND "hand"
#define WM_PAIRING_REFINED "refined"

/* reason of a pairing by the program that a person has looked at and found right: it is
 * that person's from then on */
#define WM_PAIRING_CONFIRMED "confirmed"

#define WM_TYPE_PAIRING (wm_pairing_get_type ())
G_DECLARE_FINAL_TYPE (WmPairing, wm_pairing, WM, PAIRING, WmRecord)

/* Members are read freely and written through the properties of the same name. */
struct _WmPairing
{
  WmRecord parent_instance;

  WmId before_photo_id;
  WmId after_photo_id;
  double m0;
  double m1;
  double m2;
  double m3;
  double m4;
  double m5;
  double m6;
  double m7;
  double m8;
  double residual_px; /* before-photo pixels */
  double overlap;     /* share of the before photo, 0 to 1 */
  char *made_by;      /* "program", "hand", "refined" */
  char *points;     /* before x,y and after x,y in turn, as record/points.h writes them */
  gboolean refused; /* no matrix then: m0 to m8 are NaN */
  char *reason;
  gint64 engine; /* 0: by hand */
};

WmPairing *wm_pairing_new (void);

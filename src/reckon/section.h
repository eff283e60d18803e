/* section.h: area, stiffness and strength of a cross-section, new and worn
 *
 * Pure computation: no I/O, no GLib, no state; safe on any thread.
 *
 * A area (pull), I second moment about the bending axis through the centroid
 * (stiffness), Z = I / greatest distance from that axis (bending strength). Closed
 * forms; bending is over the height. A worn link section under its mate is the overlap of
 * the wire's circle with the mate's bow (two circular segments on one chord).
 * Valid for sound metal without cracks, linear bending.
 *
 * Source: Timoshenko, Strength of Materials I; Roark's Formulas for Stress and Strain
 * (both from memory); checked against polygon integration (test-section.c).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/value.h"

/* Stored and spoken by number: never renumber. */
typedef enum
{
  WM_SECTION_ROUND = 0,      /* height: diameter */
  WM_SECTION_OVAL = 1,       /* width, height: full axes */
  WM_SECTION_RECTANGLE = 2,  /* width, height */
  WM_SECTION_HALF_ROUND = 3, /* width, height (rise of the dome, at most width / 2) */
  WM_SECTION_D = 4,       /* width, height (whole), extra: height of the straight sides */
  WM_SECTION_TUBE = 5,    /* height: outer diameter, extra: bore */
  WM_SECTION_FLATTED = 6, /* round wire worn flat: width: diameter, height: kept */
  WM_SECTION_SADDLE = 7   /* worn by its mate: width: diameter, height: kept at the
                           deepest, extra: inner radius of the mate's bow */
} WmSectionShape;

#define WM_N_SECTION_SHAPES 8

typedef struct
{
  WmSectionShape shape;
  WmValue width_mm;
  WmValue height_mm;
  WmValue extra_mm;
} WmSection;

typedef struct
{
  WmValue area_mm2;
  WmValue second_moment_mm4;
  WmValue modulus_mm3;
} WmSectionProperties;

/**
 * wm_section_properties:
 *
 * Returns: WM_OK; WM_NOT_POSITIVE, WM_NOT_A_NUMBER, WM_OUT_OF_RANGE (over 100 mm, D or
 * half-round dome higher than half the width, bow tighter than the wire);
 * WM_CONTRADICTION (bore not smaller than tube, sides higher than the whole, kept more
 * than the wire); @which is shape, width, height or extra
 */
WmResult wm_section_properties (const WmSection *section, WmSectionProperties *out,
                                const char **which);

typedef struct
{
  WmValue height_left;  /* shares of as made: thickness over the bending direction, */
  WmValue area_left;    /* pull, */
  WmValue bending_left; /* bending strength (Z), */
  WmValue stiff_left;   /* stiffness (I) */
  WmSectionProperties made;
  WmSectionProperties worn;
  /* With a yield strength, otherwise NaN: load at which the metal starts to give, in a
   * straight pull, new and now; and the bending moment likewise. */
  WmValue pull_made_n;
  WmValue pull_left_n;
  WmValue moment_made_nmm;
  WmValue moment_left_nmm;
} WmSectionLeft;

/**
 * wm_section_left:
 * @made: as made, nominal or measured on an unworn place
 * @worn: now; FLATTED and SADDLE need a ROUND @made and take its diameter (their own
 * width is not read, so that the diameter's uncertainty counts once)
 * @yield_mpa: yield strength for this alloy and state, MPa; value 0 = not known, then no
 * load is given
 *
 * Returns: WM_OK; WM_LARGER_THAN_NEW when the worn height exceeds the made one by more
 * than twice their combined uncertainty; WM_CONTRADICTION (@which shape) for shapes that
 * do not go together; otherwise as wm_section_properties, @which made_width, made_height,
 * made_extra, width, height, extra or yield_mpa
 */
WmResult wm_section_left (const WmSection *made, const WmSection *worn, WmValue yield_mpa,
                          WmSectionLeft *out, const char **which);

/**
 * wm_section_words:
 * @share_left: 0 or more
 *
 * Returns: plain words for how much metal is left, to be translated, such as "about half
 * of the metal is gone". Static.
 */
const char *wm_section_words (double share_left);

/* stock.h: weight of stock metal, and strip from wire
 *
 * Pure computation: no I/O, no GLib, no state; safe on any thread.
 *
 * Weight = volume times density (mm^3 times g/cm^3 is mg). Rolling and drawing keep the
 * volume. A round wire rolled to strip without growing longer: width = pi d^2 / (4 t)
 * with square edges, (pi d^2/4 - pi t^2/4) / t + t with round ones; real rolling also
 * makes it longer, so the width is the most that can come out.
 *
 * Source: geometry; worked numbers of the trade reference (computed).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/value.h"

typedef enum
{
  WM_STOCK_ROUND = 0,  /* a: diameter; length */
  WM_STOCK_SQUARE = 1, /* a: side; length */
  WM_STOCK_SHEET = 2,  /* a: width, b: thickness; length */
  WM_STOCK_TUBE = 3,   /* a: outer diameter, b: bore; length */
  WM_STOCK_SPHERE = 4  /* a: diameter */
} WmStockShape;

#define WM_N_STOCK_SHAPES 5

/**
 * wm_stock_weight:
 *
 * Returns: WM_OK and grams in @grams; WM_CONTRADICTION (@which second) for a bore not
 * smaller than the tube; otherwise @which shape, first, second, length, density
 */
WmResult
wm_stock_weight (WmStockShape shape, WmValue a_mm, WmValue b_mm, WmValue length_mm,
                 WmValue density_g_cm3, WmValue *grams, const char **which);

typedef enum
{
  WM_EDGE_SQUARE = 0,
  WM_EDGE_ROUND = 1
} WmStripEdge;

/**
 * wm_strip_from_wire:
 *
 * Returns: WM_OK and the width in @width_mm; WM_CONTRADICTION (@which thickness) when the
 * strip is to be thicker than the wire; otherwise @which wire, thickness
 */
WmResult wm_strip_from_wire (WmValue wire_mm, WmValue thickness_mm, WmStripEdge edge,
                             WmValue *width_mm, const char **which);

/**
 * wm_wire_for_strip:
 *
 * The wire to start from; exact inverse of wm_strip_from_wire.
 *
 * Returns: WM_OK and the diameter in @wire_mm; WM_CONTRADICTION (@which width) when the
 * strip is narrower than thick; otherwise @which width, thickness
 */
WmResult wm_wire_for_strip (WmValue width_mm, WmValue thickness_mm, WmStripEdge edge,
                            WmValue *wire_mm, const char **which);

typedef struct
{
  WmValue length_factor;     /* new length over old */
  WmValue reduction_percent; /* of the section */
} WmDrawn;

/**
 * wm_drawn_wire:
 *
 * Round wire drawn from one diameter to a smaller one.
 *
 * Returns: WM_OK; WM_CONTRADICTION (@which to) when it would grow; otherwise @which from,
 * to
 */
WmResult wm_drawn_wire (WmValue from_mm, WmValue to_mm, WmDrawn *out, const char **which);

/**
 * wm_refill_weight:
 *
 * Metal to bring a round wire worn flat to @kept_mm back to @wire_mm over @length_mm.
 *
 * Returns: WM_OK and grams; WM_LARGER_THAN_NEW (@which kept); otherwise @which wire,
 * kept, length, density
 */
WmResult wm_refill_weight (WmValue wire_mm, WmValue kept_mm, WmValue length_mm,
                           WmValue density_g_cm3, WmValue *grams, const char **which);

typedef struct
{
  double parts; /* per thousand by weight, above 0 */
  double density_g_cm3;
} WmAlloyPart;

/**
 * wm_alloy_density:
 * @parts: 1..12, adding up to 1000 within 1
 *
 * 1/density = sum of share/density: an estimate, real alloys differ by a few tenths.
 *
 * Returns: WM_OK and g/cm^3; WM_CONTRADICTION (@which parts) when they do not add up;
 * otherwise @which parts
 */
WmResult wm_alloy_density (const WmAlloyPart *parts, int n, double *density_g_cm3,
                           const char **which);

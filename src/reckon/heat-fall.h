/* heat-fall.h: how hot it may get at a distance from the flame; a warning, never a leave
 *
 * Pure computation: no I/O, no GLib, no state; safe on any thread.
 *
 * Fin along a wire or strip: m = sqrt (h P / (k A)); hot estimate = insulated end, least
 * cooling, best conduction; cool estimate = endless bar, most cooling, least conduction.
 * The two differ by a factor: the band says "may reach 370 to 670 C". It may warn of a
 * place or refuse it; it never declares a stone safe.
 * Valid as a screen only, for the steady state of a bar heated at one end.
 *
 * Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, fins (from
 * memory); checked against a boundary-value solver. The band of cooling, 20 to
 * 150 W/m2K, covers still air to flame wash (from memory, wide on purpose).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/result.h"

#define WM_HEAT_FALL_COOLING_LOW 20.0
#define WM_HEAT_FALL_COOLING_HIGH 150.0

typedef struct
{
  double source_c; /* working temperature, above ambient */
  double ambient_c;
  double wire_mm;     /* diameter of a round bar; for a strip use strip_mm */
  double strip_mm;    /* thickness of a strip free on both faces; 0 = round bar */
  double length_mm;   /* from the flame to the far end */
  double at_mm;       /* place asked about, 0..length */
  double conduct_low; /* W/m K, least and most the alloy may have */
  double conduct_high;
} WmHeatFall;

typedef struct
{
  double hot_c;
  double cool_c;
} WmHeatBand;

/**
 * wm_heat_fall:
 *
 * Returns: WM_OK; WM_CONTRADICTION (@which at, conduct_high or ambient); otherwise @which
 * source, ambient, wire, strip, length, at, conduct_low, conduct_high
 */
WmResult wm_heat_fall (const WmHeatFall *fall, WmHeatBand *out, const char **which);

/**
 * wm_heat_bar:
 * @m_per_m: sqrt (h P / (k A)), 1/m
 *
 * Returns: excess over ambient at x as a share of the excess at the flame; @length_m
 * infinite for an endless bar
 */
double wm_heat_bar (double m_per_m, double length_m, double x_m);

/* near.h: comparing with a published number
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>
#include <math.h>

/* Within @share of the expected value. */
static inline void
wm_assert_relative (double got, double expected, double share)
{
  if (!(fabs (got - expected) <= share * fabs (expected)))
    g_error ("got %.15g, expected %.15g (relative %.3g over %.3g)", got, expected,
             fabs (got - expected) / fabs (expected), share);
}

/* Within @allowed of the expected value, for numbers printed with so many decimals. */
static inline void
wm_assert_near (double got, double expected, double allowed)
{
  if (!(fabs (got - expected) <= allowed))
    g_error ("got %.15g, expected %.15g (off by %.3g, allowed %.3g)", got, expected,
             fabs (got - expected), allowed);
}

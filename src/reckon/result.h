/* result.h: how a computation says that it could not be done
 *
 * A computation answers WM_OK or the reason why not, and names the input that is
 * at fault (the name used in topics.h, on the command line and in the window).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

typedef enum
{
  WM_OK = 0,
  WM_NOT_A_NUMBER,     /* an input is NaN or infinite */
  WM_OUT_OF_RANGE,     /* an input is outside what the formula is valid for */
  WM_TOO_SHORT,        /* a length in pixels too short to be worth anything */
  WM_TOO_FEW,          /* not enough data for an answer */
  WM_DEGENERATE,       /* the data has no single answer (points on one line ...) */
  WM_NO_CONVERGENCE,   /* the iteration did not settle */
  WM_NOT_POSITIVE,     /* zero or negative where only above zero makes sense */
  WM_LARGER_THAN_NEW,  /* the worn part measures more than the part as made */
  WM_CONTRADICTION,    /* two inputs can not both be true */
  WM_TOO_BIG,          /* a sum of money beyond 64 bits */
  WM_MISSING,          /* an input without a default was not given */
  WM_UNKNOWN_INPUT,    /* the topic has no input of that name, or no such choice */
  WM_NO_EDGE,          /* no clear edge in the grey profile */
  WM_NO_NUMBER_HONEST, /* the formula blows up here: a word is given, no number */
  WM_WRONG_UNIT        /* typed with a unit that is not this input's */
} WmResult;

/**
 * wm_result_text:
 * @result: any result
 *
 * What went wrong, in plain English without a full stop, to be translated by the
 * caller and shown after the name of the input. Never NULL. Static.
 */
const char *wm_result_text (WmResult result);

/**
 * wm_result_key:
 *
 * Stable key for machines, such as "not-a-number". Never NULL. Static.
 */
const char *wm_result_key (WmResult result);

/* topics.h: every computation under one name, with its inputs, outputs and source
 *
 * The command line and the window ask through this table, so both show the same
 * function. Plain structs, no allocation; safe on any thread. Texts are English, marked
 * for translation; names are stable.
 *
 * A number may carry its standard uncertainty and its unit: "1.42", "1.42±0.02",
 * "1.42+-0.02mm". Rows are written "0:1.42:0.02,1.5:1.33:0.02"; a column may be
 * left out or "-" for not known; a date "2026-11-25" stands for its day. A row may
 * carry a name that comes back with its results: "ag_h@740:775".
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <math.h>

#include "reckon/value.h"

#define WM_TOPIC_MAX_INPUTS 20
#define WM_TOPIC_MAX_NUMBERS 4200
#define WM_TOPIC_MAX_ITEMS 600
#define WM_TOPIC_MAX_LABELS 160
#define WM_TOPIC_LABEL_SIZE 24 /* bytes, with the end */

typedef enum
{
  WM_INPUT_NUMBER = 0,
  WM_INPUT_WHOLE,  /* a number without decimals */
  WM_INPUT_CHOICE, /* value: index of the choice */
  WM_INPUT_DATE,   /* value: day number (day.h) */
  WM_INPUT_ROWS
} WmInputKind;

typedef struct
{
  const char *name;
  WmInputKind kind;
  const char *unit; /* "" = none; ROWS: one a column, separated by ":" */
  const char *text; /* label, marked for translation */
  double fallback;  /* NaN = must be given; not for ROWS, which are optional when 0 */
  double low, high; /* both allowed; the computation itself may ask for more */
  const char *const *choices; /* keys, NULL-terminated; ROWS: words of the first column */
} WmTopicInput;

typedef struct
{
  const char *name;
  const char *unit; /* "date": value is a day number; "word": see WmTopicItem.word */
  const char *text;
  int is_row; /* one a row: printed as a list */
} WmTopicOutput;

typedef struct
{
  int is_given;
  WmValue value;
  char (*labels)[WM_TOPIC_LABEL_SIZE]; /* ROWS: n_rows names, "" = none */
  const double *numbers;               /* ROWS: n_rows times n_columns, NaN = not given */
  int n_rows;
  int n_columns;
  int has_dates; /* ROWS: at least one number was a date, turned into years after 1970 */
} WmTopicGiven;

typedef struct
{
  const WmTopicOutput *output;
  int row;          /* 0 unless output->is_row */
  WmValue value;    /* NaN = no number here */
  const char *word; /* (nullable): sentence or word, marked for translation */
  char note[WM_TOPIC_LABEL_SIZE]; /* text that needs no translation, such as a ring
                                     letter; "" = none */
} WmTopicItem;

typedef struct _WmTopic WmTopic;

typedef struct
{
  const WmTopic *topic;
  WmTopicItem items[WM_TOPIC_MAX_ITEMS];
  int n_items;
  int is_full; /* more was answered than fits: wm_topic_run refuses */
} WmTopicAnswer;

typedef WmResult (*WmTopicRun) (const WmTopicGiven *in, WmTopicAnswer *out,
                                const char **which);

struct _WmTopic
{
  const char *name;
  const char *title;    /* marked for translation */
  const char *validity; /* when the number may be believed; marked for translation */
  const char *source;   /* marked for translation */
  const WmTopicInput *inputs;
  int n_inputs;
  const WmTopicOutput *outputs;
  int n_outputs;
  WmTopicRun run; /* inputs checked for presence and range before */
};

typedef struct
{
  const WmTopic *topic;
  WmTopicGiven given[WM_TOPIC_MAX_INPUTS];
  double numbers[WM_TOPIC_MAX_NUMBERS];
  int n_numbers;
  char labels[WM_TOPIC_MAX_LABELS][WM_TOPIC_LABEL_SIZE];
  int n_labels;
} WmTopicInputs;

const WmTopic *const *wm_topic_list (int *n);

/* NULL when there is none of that name. */
const WmTopic *wm_topic_find (const char *name);

/**
 * wm_topic_begin:
 *
 * Empties @inputs for @topic.
 */
void wm_topic_begin (WmTopicInputs *inputs, const WmTopic *topic);

/**
 * wm_topic_set:
 * @name: of the input
 * @text: as typed; decimal point ".", whatever the locale
 *
 * Returns: WM_OK; WM_UNKNOWN_INPUT (no such input or choice); WM_NOT_A_NUMBER;
 * WM_WRONG_UNIT; WM_OUT_OF_RANGE (too many rows, a date that does not exist)
 */
WmResult wm_topic_set (WmTopicInputs *inputs, const char *name, const char *text,
                       const char **which);

/**
 * wm_topic_set_value:
 *
 * The same for a number, whole number, date (day number) or choice (index) that the
 * caller has already.
 */
WmResult wm_topic_set_value (WmTopicInputs *inputs, const char *name, WmValue value,
                             const char **which);

/**
 * wm_topic_run:
 * @out: (out): several hundred items: not for a small stack
 *
 * Returns: WM_OK; WM_MISSING with @which the first input not given; WM_OUT_OF_RANGE;
 * WM_TOO_BIG when the answer has more rows than fit; or the computation's own refusal
 */
WmResult
wm_topic_run (const WmTopicInputs *inputs, WmTopicAnswer *out, const char **which);

/* NULL when the answer has no such item. */
const WmTopicItem *wm_topic_item (const WmTopicAnswer *answer, const char *name, int row);

/* For the topics' own run functions: @output is an index into topic->outputs. */
void wm_answer_value (WmTopicAnswer *out, int output, int row, WmValue value);
void wm_answer_number (WmTopicAnswer *out, int output, int row, double number);
void wm_answer_word (WmTopicAnswer *out, int output, int row, const char *word);
void wm_answer_note (WmTopicAnswer *out, int output, int row, const char *note);

/* Marks an input without a default. */
#define WM_REQUIRED NAN

#define WM_TOPIC_ROWS_OF(array) ((int)(sizeof (array) / sizeof ((array)[0])))

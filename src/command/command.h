/* command.h: the command line: a table of verbs, and what a verb is given
 *
 * One file a verb (verb-NAME.c) and one row in verbs.c. Options, help, exit codes and
 * the words for an archive's failures are the same for all of them and live here. No
 * display is needed.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <json-glib/json-glib.h>

#include "archive/archive.h"
#include "trade/trade.h"

typedef enum
{
  WM_EXIT_DONE = 0,
  WM_EXIT_FAILED = 1, /* refused or failed; the reason is on standard error */
  WM_EXIT_USAGE = 2   /* called wrongly */
} WmExit;

/* An option of a verb: "--name VALUE", "--name=VALUE", "-l VALUE", or a flag. */
typedef struct
{
  const char *name;       /* "scale"; NULL ends the table */
  char letter;            /* 'o', or 0 */
  const char *value_name; /* N_("FILE"), or NULL for a flag */
  const char *summary;    /* N_(): for --help */
} WmVerbOption;

typedef struct _WmCall WmCall;

typedef struct
{
  const char *name;     /* "pieces" */
  const char *operands; /* N_("[WORDS]"), or "" */
  guint min_operands;
  guint max_operands;          /* G_MAXUINT: any number */
  const char *summary;         /* N_(): one line */
  const WmVerbOption *options; /* or NULL */
  WmExit (*run) (WmCall *call);
} WmVerb;

/* All verbs in the order of --help, in verbs.c. */
extern const WmVerb *const wm_verbs[];
extern const guint wm_n_verbs;

/**
 * wm_command_run:
 * @out_folder: (out) (nullable): the folder of --archive, to be freed
 *
 * Returns: the exit code; -1 if no verb was given: the caller opens the window
 */
int wm_command_run (int argc, char **argv, char **out_folder);

/* ---- for verbs ---------------------------------------------------------- */

/* Operands in order, as bytes of the file system; NULL beyond the last. */
const char *wm_call_get_operand (WmCall *call, guint nth);
guint wm_call_count_operands (WmCall *call);

/* The value of an option, "" for a flag that was given; NULL if it was not. */
const char *wm_call_get_option (WmCall *call, const char *name);
gboolean wm_call_wants_json (WmCall *call);

/* The archive of --archive or the user's own, closed by the caller's unref; NULL when
 * the reason has been told: return WM_EXIT_FAILED. A verb that only reads uses
 * wm_call_look_at_archive (), which never writes and needs no lock. */
WmArchive *wm_call_open_archive (WmCall *call, WmArchiveMode mode);
WmArchive *wm_call_look_at_archive (WmCall *call);
/* The tables of the trade, which belong to the call; NULL as above. */
WmTrade *wm_call_get_trade (WmCall *call);

/* The piece of a number as typed; NULL as above. */
WmPiece *wm_call_find_piece (WmCall *call, WmArchive *archive, const char *number);

/* Text to standard output, in UTF-8 whatever the locale. */
void wm_call_print (WmCall *call, const char *format, ...) G_GNUC_PRINTF (2, 3);
/* One JSON value and a newline. Takes the node. */
void wm_call_print_json (WmCall *call, JsonNode *node);

/* "wearmark VERB: text" on standard error. Each returns the exit code to return. */
WmExit wm_call_fail (WmCall *call, const char *format, ...) G_GNUC_PRINTF (2, 3);
/* What happened and what to do about it, by the error's code. */
WmExit wm_call_fail_with (WmCall *call, const GError *error);
WmExit wm_call_misused (WmCall *call, const char *format, ...) G_GNUC_PRINTF (2, 3);

/* FALSE, and told, if writing @dest would replace @source, under whatever name: an
 * original is never written over. @dest may be NULL. */
gboolean wm_call_spares (WmCall *call, const char *source, const char *dest);

/* Exactly @n finite numbers in the C locale, separated by commas: "10,20,30.5". */
gboolean wm_parse_numbers (const char *text, guint n, double *out_numbers);

/* A path as it can be shown. Caller frees. */
char *wm_shown_path (const char *path);

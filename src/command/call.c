/* call.c: what a verb is given
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "command/call.h"

#include <glib/gi18n.h>
#include <glib/gstdio.h>
#include <math.h>
#include <stdio.h>

#include "command/problem.h"

void
wm_call_init (WmCall *call)
{
  call->operands = g_ptr_array_new_with_free_func (g_free);
  call->values = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, g_free);
}

void
wm_call_clear (WmCall *call)
{
  g_ptr_array_unref (call->operands);
  g_hash_table_unref (call->values);
  g_clear_pointer (&call->trade, wm_trade_unref);
}

const char *
wm_call_get_operand (WmCall *call, guint nth)
{
  return nth < call->operands->len ? call->operands->pdata[nth] : NULL;
}

guint
wm_call_count_operands (WmCall *call)
{
  return call->operands->len;
}

const char *
wm_call_get_option (WmCall *call, const char *name)
{
  return g_hash_table_lookup (call->values, name);
}

gboolean
wm_call_wants_json (WmCall *call)
{
  return wm_call_get_option (call, "json") != NULL;
}

/* ---- the archive and the tables ----------------------------------------- */

WmArchive *
wm_call_open_archive (WmCall *call, WmArchiveMode mode)
{
  g_autofree char *own = wm_archive_default_folder ();
  const char *folder = wm_call_get_option (call, "archive");
  g_autoptr (GError) error = NULL;
  WmArchive *archive = wm_archive_open (folder != NULL ? folder : own, mode, &error);

  if (archive == NULL)
    wm_call_fail_with (call, error);
  return archive;
}

WmArchive *
wm_call_look_at_archive (WmCall *call)
{
  return wm_call_open_archive (call, WM_ARCHIVE_LOOK);
}

WmTrade *
wm_call_get_trade (WmCall *call)
{
  g_autoptr (GError) error = NULL;

  if (call->trade == NULL)
    call->trade = wm_trade_new (NULL, &error);
  if (call->trade == NULL)
    wm_call_fail (call, "%s", error->message);
  return call->trade;
}

WmPiece *
wm_call_find_piece (WmCall *call, WmArchive *archive, const char *number)
{
  g_autoptr (GError) error = NULL;
  WmPiece *piece = wm_archive_find_piece (archive, number, &error);

  if (piece == NULL
      && g_error_matches (error, WM_ARCHIVE_ERROR, WM_ARCHIVE_ERROR_NOT_FOUND))
    {
      g_autofree char *shown = wm_shown_path (number);

      wm_call_fail (call,
                    _ ("There is no piece %s in this archive. “wearmark pieces” lists"
                       " all."),
                    shown);
    }
  else if (piece == NULL)
    {
      wm_call_fail_with (call, error);
    }
  return piece;
}

/* ---- out ---------------------------------------------------------------- */

void
wm_call_print (WmCall *call, const char *format, ...)
{
  g_autofree char *text = NULL;
  va_list args;

  va_start (args, format);
  text = g_strdup_vprintf (format, args);
  va_end (args);
  fputs (text, stdout);
}

void
wm_call_print_json (WmCall *call, JsonNode *node)
{
  g_autoptr (JsonGenerator) generator = json_generator_new ();
  g_autofree char *text = NULL;

  json_generator_set_pretty (generator, TRUE);
  json_generator_set_root (generator, node);
  text = json_generator_to_data (generator, NULL);
  fputs (text, stdout);
  fputc ('\n', stdout);
  json_node_unref (node);
}

static void
tell (WmCall *call, const char *text)
{
  fprintf (stderr, "wearmark%s%s: %s\n", call->verb != NULL ? " " : "",
           call->verb != NULL ? call->verb->name : "", text);
}

WmExit
wm_call_fail (WmCall *call, const char *format, ...)
{
  g_autofree char *text = NULL;
  va_list args;

  va_start (args, format);
  text = g_strdup_vprintf (format, args);
  va_end (args);
  tell (call, text);
  return WM_EXIT_FAILED;
}

WmExit
wm_call_fail_with (WmCall *call, const GError *error)
{
  g_autofree char *text = wm_problem_sentence (error);

  tell (call, text);
  return WM_EXIT_FAILED;
}

WmExit
wm_call_misused (WmCall *call, const char *format, ...)
{
  g_autofree char *text = NULL;
  va_list args;

  va_start (args, format);
  text = g_strdup_vprintf (format, args);
  va_end (args);
  tell (call, text);
  if (call->verb != NULL)
    fprintf (stderr, _ ("“wearmark %s --help” shows how it is used.\n"),
             call->verb->name);
  else
    fprintf (stderr, "%s", _ ("“wearmark --help” lists the verbs.\n"));
  return WM_EXIT_USAGE;
}

gboolean
wm_call_spares (WmCall *call, const char *source, const char *dest)
{
  g_autofree char *shown = NULL;
  GStatBuf from;
  GStatBuf to;

  if (dest == NULL || g_stat (source, &from) != 0 || g_stat (dest, &to) != 0
      || from.st_dev != to.st_dev || from.st_ino != to.st_ino)
    return TRUE;
  shown = wm_shown_path (dest);
  wm_call_fail (call,
                _ ("“%s” is the photo itself, and an original is never written over."
                   " Name another file with -o."),
                shown);
  return FALSE;
}

/* ---- in ----------------------------------------------------------------- */

gboolean
wm_parse_numbers (const char *text, guint n, double *out_numbers)
{
  g_auto (GStrv) parts = g_strsplit (text, ",", n + 1);

  if (g_strv_length (parts) != n)
    return FALSE;
  for (guint i = 0; i < n; i++)
    {
      char *end;

      out_numbers[i] = g_ascii_strtod (parts[i], &end);
      if (end == parts[i] || *end != '\0' || !isfinite (out_numbers[i]))
        return FALSE;
    }
  return TRUE;
}

char *
wm_shown_path (const char *path)
{
  g_autofree char *name = g_filename_display_name (path);
  GString *shown = g_string_new (NULL);

  /* A newline in a name must not look like a message of ours. */
  for (const char *p = name; *p != '\0'; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);

      g_string_append_unichar (shown, g_unichar_iscntrl (c) ? 0xfffd : c);
    }
  return g_string_free (shown, FALSE);
}

/* values.c: the text of one field turned into its C value
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/values.h"

#include <math.h>
#include <string.h>

static const char *const no_keys[] = { NULL };

/* A plain decimal number at the start of *text, which is moved behind it. */
static gboolean
read_number (const char **text, double *out)
{
  char *end = NULL;
  double value;

  while (g_ascii_isspace (**text))
    (*text)++;
  if (!g_ascii_isdigit (**text) && **text != '-' && **text != '.')
    return FALSE;

  value = g_ascii_strtod (*text, &end);
  if (end == *text || !isfinite (value) || memchr (*text, 'x', end - *text) != NULL)
    return FALSE;

  while (g_ascii_isspace (*end))
    end++;
  *text = end;
  *out = value;
  return TRUE;
}

static gboolean
read_range (const char *text, WmRange *out)
{
  WmRange range;

  if (!read_number (&text, &range.low))
    return FALSE;

  range.high = range.low;
  if (g_str_has_prefix (text, "to "))
    {
      text += strlen ("to ");
      if (!read_number (&text, &range.high) || range.high < range.low)
        return FALSE;
    }
  if (*text != '\0')
    return FALSE;

  *out = range;
  return TRUE;
}

static gboolean
read_bound (const char *text, WmBound *out)
{
  WmBound bound;

  if (g_str_has_prefix (text, "below "))
    bound.side = WM_BOUND_BELOW;
  else if (g_str_has_prefix (text, "above "))
    bound.side = WM_BOUND_ABOVE;
  else
    return FALSE;

  text += strlen ("below ");
  if (!read_number (&text, &bound.value) || *text != '\0')
    return FALSE;

  *out = bound;
  return TRUE;
}

static int
find_word (const char *text, const char *choice)
{
  g_auto (GStrv) words = g_strsplit (choice, " ", -1);

  for (int i = 0; words[i] != NULL; i++)
    if (strcmp (words[i], text) == 0)
      return i;
  return -1;
}

static gboolean
read_level (const char *text, WmSeverity *out)
{
  int i = find_word (text, "sound watch repair no_wear");

  if (i < 0)
    return FALSE;

  *out = (WmSeverity)(WM_SEVERITY_SOUND + i);
  return TRUE;
}

static const char *const *
read_list (WmRows *rows, const char *text)
{
  g_auto (GStrv) words = g_strsplit_set (text, " \t", -1);
  const char **list = wm_rows_alloc (rows, (g_strv_length (words) + 1) * sizeof *list);
  guint n = 0;

  for (guint i = 0; words[i] != NULL; i++)
    if (*words[i] != '\0')
      list[n++] = g_string_chunk_insert_const (rows->texts, words[i]);
  return list;
}

static gboolean
read_counted (const WmFieldSpec *spec, const char *text, gpointer at,
              const char **out_hint)
{
  const char *rest = text;
  int i;

  switch (spec->type)
    {
    case WM_FIELD_NUMBER:
      *out_hint = "a number such as 0.75";
      return read_number (&rest, at) && *rest == '\0';
    case WM_FIELD_RANGE:
      *out_hint = "a number or a range from low to high, such as 120 or 120 to 130";
      return read_range (text, at);
    case WM_FIELD_BOUND:
      *out_hint = "\"below\" or \"above\" and a number, such as below 0.8";
      return read_bound (text, at);
    case WM_FIELD_LEVEL:
      *out_hint = "one of: sound, watch, repair, no_wear";
      return read_level (text, at);
    case WM_FIELD_FLAG:
      *out_hint = "yes or no";
      i = find_word (text, "no yes");
      *(gboolean *)at = i == 1;
      return i >= 0;
    default:
      *out_hint = spec->choice;
      i = find_word (text, spec->choice);
      *(int *)at = MAX (i, 0);
      return i >= 0;
    }
}

gboolean
wm_value_read (WmRows *rows, const WmFieldSpec *spec, const char *text, gpointer row,
               const char **out_hint)
{
  gpointer at = (char *)row + spec->offset;

  *out_hint = "a text";
  if (*text == '\0')
    return FALSE;

  switch (spec->type)
    {
    case WM_FIELD_TEXT:
    case WM_FIELD_PLAIN:
      *(const char **)at = g_string_chunk_insert_const (rows->texts, text);
      return TRUE;
    case WM_FIELD_KEY:
      *out_hint = "one key";
      *(const char **)at = g_string_chunk_insert_const (rows->texts, text);
      return strpbrk (text, " \t") == NULL;
    case WM_FIELD_KEYS:
    case WM_FIELD_WORDS:
    case WM_FIELD_CHECKS:
      *(const char *const **)at = read_list (rows, text);
      return TRUE;
    default:
      return read_counted (spec, text, at, out_hint);
    }
}

void
wm_value_clear (const WmFieldSpec *spec, gpointer row)
{
  gpointer at = (char *)row + spec->offset;

  switch (spec->type)
    {
    case WM_FIELD_NUMBER:
      *(double *)at = NAN;
      break;
    case WM_FIELD_RANGE:
      *(WmRange *)at = (WmRange) { NAN, NAN };
      break;
    case WM_FIELD_KEYS:
    case WM_FIELD_WORDS:
    case WM_FIELD_CHECKS:
      *(const char *const **)at = no_keys;
      break;
    default:
      break; /* zeroed memory: NULL, FALSE, no bound, first choice */
    }
}

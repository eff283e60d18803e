/* points.c: the places of a mark as text
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/points.h"

#include <math.h>
#include <string.h>

static gboolean
parse_point (const char *word, WmPoint *out_point)
{
  char *end;
  WmPoint point;

  point.x = g_ascii_strtod (word, &end);
  if (end == word || *end != ',')
    return FALSE;
  word = end + 1;
  point.y = g_ascii_strtod (word, &end);
  if (end == word || *end != '\0' || !isfinite (point.x) || !isfinite (point.y))
    return FALSE;
  *out_point = point;
  return TRUE;
}

GArray *
wm_points_parse (const char *text)
{
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (WmPoint));
  g_auto (GStrv) words = NULL;

  if (text == NULL)
    return NULL;

  words = g_strsplit (text, " ", WM_POINTS_MAX + 1);
  for (guint i = 0; words[i] != NULL; i++)
    {
      WmPoint point;

      if (*words[i] == '\0')
        continue;
      if (i == WM_POINTS_MAX || !parse_point (words[i], &point))
        return NULL;
      g_array_append_val (points, point);
    }
  return points->len > 0 ? g_steal_pointer (&points) : NULL;
}

/* Shortest text to a hundredth: "812.5", not "812.50". */
static void
append_number (GString *text, double number)
{
  char buffer[G_ASCII_DTOSTR_BUF_SIZE];
  char *end;

  g_ascii_formatd (buffer, sizeof buffer, "%.2f", number);
  end = buffer + strlen (buffer) - 1;
  while (*end == '0')
    *end-- = '\0';
  if (*end == '.')
    *end = '\0';
  g_string_append (text, strcmp (buffer, "-0") == 0 ? "0" : buffer);
}

char *
wm_points_format (const WmPoint *points, guint n_points)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < n_points; i++)
    {
      if (i > 0)
        g_string_append_c (text, ' ');
      append_number (text, points[i].x);
      g_string_append_c (text, ',');
      append_number (text, points[i].y);
    }
  return g_string_free (text, FALSE);
}

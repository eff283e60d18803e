/* gauge-readings.c: readings of a gauge as they are typed, and what they say together
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/measuring/gauge-readings.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#include "window/measuring/typed-length.h"

/* How far off the middle one a reading may be before it is remarked on. */
#define ODD_SHARE 0.2

/* Largest error allowed, taken as a half width (rectangular: through sqrt 3), rounded up:
 * ISO 13385-1 for callipers and ISO 3611 for micrometers (figures from memory); spring
 * gauges read to a tenth, half of it either way (common practice, no source). */
static const WmGauge gauges[] = {
  { "calliper", N_ ("calliper, reads 0.01 mm"), 0.02 },
  { "micrometer", N_ ("micrometer"), 0.004 },
  { "spring", N_ ("spring gauge, reads 0.1 mm"), 0.05 },
};

const WmGauge *
wm_gauges (guint *n)
{
  *n = G_N_ELEMENTS (gauges);
  return gauges;
}

static int
compare_doubles (gconstpointer a, gconstpointer b)
{
  double x = *(const double *)a, y = *(const double *)b;

  return (x > y) - (x < y);
}

static char *
remark_on_spread (const GArray *readings)
{
  g_autoptr (GArray) sorted = g_array_copy ((GArray *)readings);
  double middle;

  if (readings->len < 2)
    return NULL;
  g_array_sort (sorted, compare_doubles);
  middle = (g_array_index (sorted, double, (readings->len - 1) / 2)
            + g_array_index (sorted, double, readings->len / 2))
           / 2;
  for (guint i = 0; i < readings->len; i++)
    {
      double one = g_array_index (readings, double, i);

      if (fabs (one - middle) > ODD_SHARE * middle)
        return g_strdup_printf (_ ("%.2f is far from the others: another place?"), one);
    }
  return NULL;
}

/* A blank before a unit does not end a reading. */
static char *
join_units (const char *text)
{
  GString *out = g_string_new (NULL);
  gunichar last = ' ';

  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);

      if (c == ';' || g_unichar_isspace (c))
        c = ' ';
      if (c != ' ' && !g_unichar_isdigit (c) && c != '.' && c != ',' && c != '-'
          && last == ' ' && out->len > 0)
        g_string_truncate (out, out->len - 1);
      if (c != ' ' || last != ' ')
        g_string_append_unichar (out, c);
      last = c;
    }
  return g_strchomp (g_string_free (out, FALSE));
}

WmFieldVerdict
wm_gauge_readings_parse (const char *text, GArray **out_readings, char **out_remark)
{
  g_autoptr (GArray) readings = g_array_new (FALSE, FALSE, sizeof (double));
  g_autofree char *joined = join_units (text);
  g_auto (GStrv) words = g_strsplit (joined, " ", -1);

  *out_remark = NULL;
  for (guint i = 0; words[i] != NULL; i++)
    {
      g_autofree char *in_mm = NULL;
      double mm = NAN;

      if (*words[i] == '\0')
        continue;
      if (wm_typed_length (words[i], &mm, &in_mm) == WM_FIELD_WRONG)
        {
          *out_remark = g_strdup_printf ("“%s”: %s", words[i], in_mm);
          return WM_FIELD_WRONG;
        }
      if (readings->len == WM_READINGS_MOST)
        {
          *out_remark =
              g_strdup_printf (_ ("%d readings of one place at most."), WM_READINGS_MOST);
          return WM_FIELD_WRONG;
        }
      g_array_append_val (readings, mm);
    }
  *out_remark = remark_on_spread (readings);
  *out_readings = g_steal_pointer (&readings);
  return *out_remark != NULL ? WM_FIELD_ODD : WM_FIELD_OK;
}

WmValue
wm_gauge_readings_value (const double *readings, guint n, double u_gauge_mm)
{
  double mean = 0, squares = 0, u_mean = 0;

  for (guint i = 0; i < n; i++)
    mean += readings[i] / n;
  for (guint i = 0; i < n; i++)
    squares += (readings[i] - mean) * (readings[i] - mean);
  if (n > 1)
    u_mean = sqrt (squares / (n - 1) / n);
  return wm_value (mean, hypot (u_mean, u_gauge_mm));
}

char *
wm_gauge_readings_format (const double *readings, guint n)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < n; i++)
    {
      char number[G_ASCII_DTOSTR_BUF_SIZE];

      g_ascii_formatd (number, sizeof number, "%.6g", readings[i]);
      g_string_append_printf (text, "%s%s", i > 0 ? " " : "", number);
    }
  return g_string_free (text, FALSE);
}

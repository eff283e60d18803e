/* block-front.c: the first page: title, facts, both photos, come back, signatures
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>
#include <math.h>

#include "report/blocks.h"
#include "report/words.h"

/* Look book, section 6. */
#define WM_OVERVIEW_WIDTH_MM 85.0
#define WM_OVERVIEW_A4_MM 59.5
#define WM_OVERVIEW_LETTER_MM 52.0
#define WM_FACT_LABEL_MM 33.0

double
wm_block_title (const WmPageContext *context, gconstpointer item, double y_mm)
{
  WmSheet *sheet = context->sheet;
  const char *title = context->finished ? N_ ("Before and after") : N_ ("What we found");
  const char *lead =
      context->finished
          ? N_ ("What we found on your piece, what we did, and how we tested it.")
          : N_ ("What we saw on your piece under the loupe.");
  double height;

  wm_sheet_tag (sheet, "H1");
  height = wm_sheet_text (sheet, 0, y_mm, WM_SHEET_WIDTH_MM, WM_TEXT_TITLE,
                          wm_say (sheet->language, title));
  wm_sheet_tag_end (sheet, "H1");
  wm_sheet_tag (sheet, "P");
  height += 1
            + wm_sheet_text (sheet, 0, y_mm + height + 1, WM_SHEET_WIDTH_MM, WM_TEXT_LEAD,
                             wm_say (sheet->language, lead));
  wm_sheet_tag_end (sheet, "P");
  return height + 3;
}

/* One line of a column of facts; nothing, and no height, if there is nothing to say. */
static double
place_fact (WmSheet *sheet, double x_mm, double y_mm, const char *label,
            const char *value)
{
  double height;

  if (value == NULL || *value == '\0')
    return 0;
  wm_sheet_tag (sheet, "P");
  wm_sheet_text (sheet, x_mm, y_mm + 0.45, WM_FACT_LABEL_MM - 2, WM_TEXT_SMALL,
                 wm_say (sheet->language, label));
  height = wm_sheet_text (sheet, x_mm + WM_FACT_LABEL_MM, y_mm,
                          WM_OVERVIEW_WIDTH_MM - WM_FACT_LABEL_MM, WM_TEXT_BODY, value);
  wm_sheet_tag_end (sheet, "P");
  return height + 0.8;
}

static char *
describe_weights (WmLanguage *language, WmVisit *visit)
{
  g_autofree char *in = NULL;
  g_autofree char *out = NULL;

  if (visit->mass_in_mg == WM_UNKNOWN)
    return NULL;
  in = wm_words_mass (language, visit->mass_in_mg);
  if (visit->mass_out_mg == WM_UNKNOWN)
    return g_steal_pointer (&in);
  out = wm_words_mass (language, visit->mass_out_mg);
  return g_strdup_printf (wm_say (language, N_ ("%s before, %s after")), in, out);
}

static char *
describe_piece (WmLanguage *language, WmVisitData *data)
{
  GString *text = g_string_new (wm_piece_type_words (language, data));
  WmPiece *piece = data->piece;

  if (isfinite (piece->length_mm))
    {
      g_autofree char *length = wm_words_mm (language, piece->length_mm, 1);

      g_string_append_printf (text, ", %s", length);
    }
  if (piece->size != NULL)
    g_string_append_printf (text, ", %s", piece->size);
  if (piece->description != NULL)
    g_string_append_printf (text, ". %s", piece->description);
  return g_string_free (text, FALSE);
}

static char *
day_or_null (WmLanguage *language, gint64 at_s)
{
  return at_s != WM_UNKNOWN ? wm_words_day_of (language, at_s) : NULL;
}

double
wm_block_facts (const WmPageContext *context, gconstpointer item, double y_mm)
{
  WmSheet *sheet = context->sheet;
  WmLanguage *language = sheet->language;
  WmVisitData *data = context->data;
  WmVisit *visit = data->visit;
  g_autofree char *piece = describe_piece (language, data);
  g_autofree char *metal = wm_piece_metal_words (language, data);
  g_autofree char *stones = wm_piece_stone_words (language, data);
  g_autofree char *taken = day_or_null (language, visit->taken_in_at_s);
  g_autofree char *looked = day_or_null (language, visit->inspected_at_s);
  g_autofree char *handed = day_or_null (language, visit->handed_back_at_s);
  g_autofree char *weight = describe_weights (language, visit);
  const char *inspector = wm_visit_data_get_name (data, &visit->inspected_by);
  double right = WM_OVERVIEW_WIDTH_MM + WM_SHEET_GUTTER_MM;
  double a = 0;
  double b = 0;

  a += place_fact (sheet, 0, y_mm + a, N_ ("Owner"),
                   data->owner != NULL ? data->owner->name : NULL);
  a += place_fact (sheet, 0, y_mm + a, N_ ("Piece"), piece);
  a += place_fact (sheet, 0, y_mm + a, N_ ("Metal"), metal);
  a += place_fact (sheet, 0, y_mm + a, N_ ("Stones"), stones);
  a += place_fact (sheet, 0, y_mm + a, N_ ("Its own signs"), data->piece->unlike);

  b += place_fact (sheet, right, y_mm + b, N_ ("Taken in"), taken);
  b += place_fact (sheet, right, y_mm + b, N_ ("Looked at"), looked);
  b += place_fact (sheet, right, y_mm + b, N_ ("Looked at by"), inspector);
  b += place_fact (sheet, right, y_mm + b, N_ ("Handed back"), handed);
  b += place_fact (sheet, right, y_mm + b, N_ ("Weight"), weight);
  b += place_fact (sheet, right, y_mm + b, N_ ("Your wish"), visit->wishes);
  return MAX (a, b) + 3;
}

/* Every mark of a finding on @photo; on an after photo with what it is now. */
static GArray *
collect_marks (WmVisitData *data, WmPhoto *photo, gboolean after)
{
  GArray *marks = g_array_new (FALSE, FALSE, sizeof (WmBoxMark));
  const WmId *id = wm_record_get_id (WM_RECORD (photo));

  for (guint i = 0; i < data->findings->len; i++)
    {
      const WmFinding *finding = g_ptr_array_index (data->findings, i);
      GPtrArray *of = after ? finding->after : finding->before;

      for (guint k = 0; k < of->len; k++)
        {
          WmMark *mark = g_ptr_array_index (of, k);
          WmBoxMark box = { mark, (int)MAX (finding->check->number, 0),
                            after ? finding->check->after_severity
                                  : finding->check->severity };

          if (wm_id_equal (&mark->photo_id, id))
            g_array_append_val (marks, box);
        }
    }
  return marks;
}

static double
place_overview (const WmPageContext *context, WmPhoto *photo, gboolean after, double x_mm,
                double y_mm, double height_mm)
{
  WmSheet *sheet = context->sheet;
  WmLanguage *language = sheet->language;
  g_autoptr (GArray) marks = collect_marks (context->data, photo, after);
  g_autofree char *day = day_or_null (language, photo->taken_at_s);
  g_autofree char *caption = NULL;
  const char *word = wm_say (language, after ? N_ ("After") : N_ ("Before"));
  WmBoxView view;

  caption = g_strjoin (", ", word, day != NULL ? day : photo->caption,
                       day != NULL ? photo->caption : NULL, NULL);
  if (g_strcmp0 (photo->made_from, "stack") == 0)
    {
      g_autofree char *taken = g_steal_pointer (&caption);

      caption = g_strjoin (", ", taken,
                           wm_say (language, N_ ("stacked from several photos")), NULL);
    }
  wm_box_view_fit (&view, photo, WM_OVERVIEW_WIDTH_MM, height_mm);
  wm_sheet_tag (sheet, "Figure");
  wm_photo_box_draw (context->boxes, sheet, &view, x_mm, y_mm, WM_OVERVIEW_WIDTH_MM,
                     height_mm, (const WmBoxMark *)marks->data, marks->len, FALSE);
  wm_sheet_tag_end (sheet, "Figure");
  wm_sheet_tag (sheet, "Caption");
  height_mm += 1.6;
  height_mm += wm_sheet_text (sheet, x_mm, y_mm + height_mm, WM_OVERVIEW_WIDTH_MM,
                              WM_TEXT_SMALL, caption);
  wm_sheet_tag_end (sheet, "Caption");
  return height_mm;
}

/* As high as the photos need, so that a landscape photo leaves no mat beside it. */
static double
choose_height (WmSheet *sheet, WmPhoto *left, WmPhoto *right)
{
  double most = sheet->height_mm < 290 ? WM_OVERVIEW_LETTER_MM : WM_OVERVIEW_A4_MM;
  WmPhoto *photos[] = { left, right };
  double height = 0;

  for (int i = 0; i < 2; i++)
    if (photos[i] != NULL)
      {
        WmPhoto *photo = photos[i];
        gboolean lying = (photo->quarter_turns & 1) != 0;
        double aspect = (double)photo->height / (double)photo->width;
        double wanted = WM_OVERVIEW_WIDTH_MM * (lying ? 1 / aspect : aspect);

        height = MAX (height, MIN (wanted, most));
      }
  return height;
}

/* Before at the left, after at the right; without an after the second before photo. */
double
wm_block_overview (const WmPageContext *context, gconstpointer item, double y_mm)
{
  WmSheet *sheet = context->sheet;
  WmVisitData *data = context->data;
  WmPhoto *before = wm_visit_data_find_overview (data, WM_PHOTO_BEFORE);
  WmPhoto *after = wm_visit_data_find_overview (data, WM_PHOTO_AFTER);
  WmPhoto *second = NULL;
  double height = 0;
  double box;

  for (guint i = 0; after == NULL && second == NULL && i < data->photos->len; i++)
    if (g_ptr_array_index (data->photos, i) != before)
      second = g_ptr_array_index (data->photos, i);
  box = choose_height (sheet, before, after != NULL ? after : second);

  if (before != NULL)
    height = place_overview (context, before, FALSE, 0, y_mm, box);
  if (after != NULL || second != NULL)
    {
      double right =
          place_overview (context, after != NULL ? after : second, after != NULL,
                          WM_OVERVIEW_WIDTH_MM + WM_SHEET_GUTTER_MM, y_mm, box);

      height = MAX (height, right);
    }
  if (height == 0)
    {
      wm_sheet_tag (sheet, "P");
      height = wm_sheet_text (sheet, 0, y_mm, WM_SHEET_WIDTH_MM, WM_TEXT_BODY,
                              wm_say (sheet->language, N_ ("No photo was taken.")));
      wm_sheet_tag_end (sheet, "P");
    }
  return height + 4;
}

double
wm_block_come_back (const WmPageContext *context, gconstpointer item, double y_mm)
{
  WmSheet *sheet = context->sheet;
  WmLanguage *language = sheet->language;
  WmVisit *visit = context->data->visit;
  g_autofree char *day = wm_words_date (language, visit->next_check_on);
  g_autofree char *heading =
      g_strdup_printf (wm_say (language, N_ ("Please come back by %s")), day);
  const double above = 5;
  double inner = WM_SHEET_WIDTH_MM - 8;
  double height = above + 3;

  wm_sheet_tag (sheet, "H2");
  height += wm_sheet_text (sheet, 4, y_mm + height, inner, WM_TEXT_SENTENCE, heading);
  wm_sheet_tag_end (sheet, "H2");
  if (visit->next_check_reason != NULL)
    {
      wm_sheet_tag (sheet, "P");
      height += 0.6;
      height += wm_sheet_text (sheet, 4, y_mm + height, inner, WM_TEXT_BODY,
                               visit->next_check_reason);
      wm_sheet_tag_end (sheet, "P");
    }
  height += 3;
  wm_sheet_frame (sheet, 0, y_mm + above, WM_SHEET_WIDTH_MM, height - above);
  return height;
}

/* How many checks are at @severity as the piece goes out: after the work where that was
 * looked at, else as it came. An after photo alone mends nothing. */
static guint
count_now (WmVisitData *data, WmSeverity severity)
{
  guint n = 0;

  for (guint i = 0; i < data->checks->len; i++)
    {
      const WmCheck *check = g_ptr_array_index (data->checks, i);
      gint64 now = check->after_severity != WM_SEVERITY_NOT_LOOKED_AT
                       ? check->after_severity
                       : check->severity;

      n += now == (gint64)severity;
    }
  return n;
}

/* The phrases of the tables that fit this visit, one after the other. "Nothing needs
 * doing" speaks of a measurement and of the date in the box above it. */
double
wm_block_good_to_know (const WmPageContext *context, gconstpointer item, double y_mm)
{
  WmSheet *sheet = context->sheet;
  WmVisitData *data = context->data;
  const struct
  {
    const char *key;
    gboolean fits;
  } phrases[] = {
    { "tx_wear", count_now (data, WM_SEVERITY_NO_WEAR) > 0 },
    { "tx_watch", count_now (data, WM_SEVERITY_WATCH) > 0 && !context->finished
                      && count_now (data, WM_SEVERITY_REPAIR) == 0
                      && count_now (data, WM_SEVERITY_NO_WEAR) == 0
                      && data->measurements->len > 0
                      && data->visit->next_check_on != NULL },
    { "tx_limit", TRUE },
    { "tx_pool", TRUE },
  };
  GString *text = g_string_new (NULL);
  double height;

  for (guint i = 0; i < G_N_ELEMENTS (phrases); i++)
    {
      const WmPhrase *phrase = wm_trade_find_phrase (data->trade, phrases[i].key);

      if (phrase == NULL || !phrases[i].fits)
        continue;
      if (text->len > 0)
        g_string_append_c (text, ' ');
      g_string_append (text, wm_say (sheet->language, phrase->text));
    }
  wm_sheet_tag (sheet, "H2");
  height = 5;
  height += wm_sheet_text (sheet, 0, y_mm + height, WM_SHEET_WIDTH_MM, WM_TEXT_STRONG,
                           wm_say (sheet->language, N_ ("Good to know")));
  wm_sheet_tag_end (sheet, "H2");
  wm_sheet_tag (sheet, "P");
  height += 0.5
            + wm_sheet_text (sheet, 0, y_mm + height + 0.5, WM_SHEET_WIDTH_MM,
                             WM_TEXT_SMALL, text->str);
  wm_sheet_tag_end (sheet, "P");
  g_string_free (text, TRUE);
  return height + 4;
}

double
wm_block_signatures (const WmPageContext *context, gconstpointer item, double y_mm)
{
  WmSheet *sheet = context->sheet;
  const char *who[] = { N_ ("For the bench"), N_ ("Received, with thanks") };
  const double room = 11; /* for a hand to sign in */
  double height = 0;

  for (int i = 0; i < 2; i++)
    {
      double x = i * (WM_OVERVIEW_WIDTH_MM + WM_SHEET_GUTTER_MM);

      wm_sheet_line (sheet, x, y_mm + room, WM_OVERVIEW_WIDTH_MM, 0.3);
      wm_sheet_tag (sheet, "P");
      height = wm_sheet_text (sheet, x, y_mm + room + 1.2, 0, WM_TEXT_SMALL,
                              wm_say (sheet->language, who[i]));
      wm_sheet_text_right (sheet, x + WM_OVERVIEW_WIDTH_MM, y_mm + room + 1.2,
                           WM_TEXT_SMALL, wm_say (sheet->language, N_ ("date")));
      wm_sheet_tag_end (sheet, "P");
    }
  return room + 1.2 + height + 3;
}

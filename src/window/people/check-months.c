/* check-months.c: the shop's own months to the next check, for each kind of piece
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/people/check-months.h"

#include <glib/gi18n.h>
#include <math.h>

#include "report/outlook.h"

#define N_WORN 3

static const struct
{
  WmWorn worn;
  const char *label; /* N_() */
} kinds[N_WORN] = {
  { WM_WORN_DAILY, N_ ("worn daily") },
  { WM_WORN_OFTEN, N_ ("worn often") },
  { WM_WORN_SELDOM, N_ ("worn now and then") },
};

typedef struct
{
  WmSession *session; /* outlives the page: the settings window holds it */
  const WmPieceType *type;
  GtkSpinButton *spins[N_WORN];
} Row;

static int
table_months (const WmPieceType *type, WmWorn worn)
{
  const WmRange *range = worn == WM_WORN_SELDOM  ? &type->months_seldom
                         : worn == WM_WORN_OFTEN ? &type->months_often
                                                 : &type->months_daily;

  return isfinite (range->low) ? (int)range->low : 0;
}

/* A value that is the tables' own is no setting: a better table is then followed. */
static void
on_value_changed (GtkSpinButton *spin, Row *row)
{
  WmArchive *archive = wm_session_get_archive (row->session);
  g_autoptr (GPtrArray) settings =
      wm_archive_list (archive, WM_KIND_SETTING, NULL, NULL, NULL);
  g_autoptr (WmSetting) setting = NULL;
  g_autoptr (WmSetting) copy = NULL;
  g_autofree char *name = NULL, *text = NULL;
  WmEdit *edit;
  int i = 0, months = gtk_spin_button_get_value_as_int (spin);

  while (i + 1 < N_WORN && row->spins[i] != spin)
    i++;
  if (months == wm_outlook_months (archive, row->type, kinds[i].worn, NULL))
    return;
  name = wm_outlook_setting (row->type->key, kinds[i].worn);
  if (months != table_months (row->type, kinds[i].worn))
    text = g_strdup_printf ("%d", months);
  for (guint k = 0; settings != NULL && k < settings->len && setting == NULL; k++)
    if (g_strcmp0 (((WmSetting *)settings->pdata[k])->name, name) == 0)
      setting = g_object_ref (settings->pdata[k]);
  if (setting == NULL)
    {
      setting = wm_setting_new ();
      wm_record_set_text (WM_RECORD (setting), "name", name);
    }
  copy = wm_session_copy (row->session, setting);
  wm_record_set_text (WM_RECORD (copy), "value", text);
  edit = wm_session_begin_shop (row->session, N_ ("Months to the next check"));
  wm_session_put (row->session, edit, copy);
  wm_session_commit (row->session, edit);
}

static void
show_row (Row *row)
{
  for (int i = 0; i < N_WORN; i++)
    {
      g_signal_handlers_block_by_func (row->spins[i], on_value_changed, row);
      gtk_spin_button_set_value (row->spins[i],
                                 wm_outlook_months (wm_session_get_archive (row->session),
                                                    row->type, kinds[i].worn, NULL));
      g_signal_handlers_unblock_by_func (row->spins[i], on_value_changed, row);
    }
}

static void
on_rows_changed (WmSession *session, const WmChange *change, gpointer page)
{
  GPtrArray *rows = g_object_get_data (G_OBJECT (page), "rows");

  if (wm_change_touches (change, WM_KIND_SETTING))
    for (guint i = 0; i < rows->len; i++)
      show_row (rows->pdata[i]);
}

static char *
describe_tables (WmTrade *trade, const WmPieceType *type)
{
  g_autofree char *sources =
      wm_trade_describe_sources (trade, type->sources, type->source_note);

  /* Translators: months for worn daily, often, now and then; source */
  return g_strdup_printf (
      _ ("Tables: %d, %d, %d (%s)"), table_months (type, WM_WORN_DAILY),
      table_months (type, WM_WORN_OFTEN), table_months (type, WM_WORN_SELDOM), sources);
}

static Row *
add_row (AdwPreferencesGroup *group, WmSession *session, const WmPieceType *type)
{
  Row *row = g_new0 (Row, 1);
  GtkWidget *line = adw_action_row_new ();
  const char *name = wm_trade_text (type->name);
  g_autofree char *tables = describe_tables (wm_session_get_trade (session), type);

  row->session = session;
  row->type = type;
  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (line), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (line), name);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (line), tables);
  for (int i = 0; i < N_WORN; i++)
    {
      GtkWidget *spin = gtk_spin_button_new_with_range (1, 120, 1);
      g_autofree char *label = g_strdup_printf ("%s, %s", name, _ (kinds[i].label));

      gtk_widget_set_valign (spin, GTK_ALIGN_CENTER);
      gtk_widget_set_tooltip_text (spin, _ (kinds[i].label));
      gtk_widget_set_sensitive (spin, !wm_session_is_read_only (session));
      gtk_accessible_update_property (GTK_ACCESSIBLE (spin),
                                      GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
      row->spins[i] = GTK_SPIN_BUTTON (spin);
      g_signal_connect (spin, "value-changed", G_CALLBACK (on_value_changed), row);
      adw_action_row_add_suffix (ADW_ACTION_ROW (line), spin);
    }
  show_row (row);
  adw_preferences_group_add (group, line);
  return row;
}

AdwPreferencesPage *
wm_check_months_page_new (WmSession *session)
{
  WmTrade *trade = wm_session_get_trade (session);
  AdwPreferencesPage *page = ADW_PREFERENCES_PAGE (adw_preferences_page_new ());
  AdwPreferencesGroup *group = ADW_PREFERENCES_GROUP (adw_preferences_group_new ());
  GPtrArray *rows = g_ptr_array_new_with_free_func (g_free);
  guint n = 0;
  const WmPieceType *const *types =
      trade != NULL ? wm_trade_list_piece_types (trade, &n) : NULL;

  adw_preferences_page_set_name (page, "checks");
  adw_preferences_page_set_title (page, _ ("Next checks"));
  adw_preferences_page_set_icon_name (page, "wm-diary-symbolic");
  adw_preferences_group_set_title (group, _ ("Months to the next check"));
  adw_preferences_group_set_description (
      group, _ ("For a piece worn daily, often, now and then. A suggested date is never "
                "later; what the record says may make it sooner."));
  for (guint i = 0; i < n; i++)
    g_ptr_array_add (rows, add_row (group, session, types[i]));
  adw_preferences_page_add (page, group);
  g_object_set_data_full (G_OBJECT (page), "rows", rows,
                          (GDestroyNotify)g_ptr_array_unref);
  g_signal_connect_object (session, "rows-changed", G_CALLBACK (on_rows_changed), page,
                           0);
  return page;
}

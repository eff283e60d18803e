/* money-settings.c: the shop's hourly rate, tax and metal prices
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/people/money-settings.h"

#include <glib/gi18n.h>

#include "trade/trade.h"
#include "window/bench-work/shop-prices.h"
#include "window/form/form-field.h"

/* The setting as it is kept, or a new one that says nothing yet. (transfer full) */
static WmSetting *
find_setting (WmSession *session, const char *name)
{
  g_autoptr (GPtrArray) settings = wm_archive_list (wm_session_get_archive (session),
                                                    WM_KIND_SETTING, NULL, NULL, NULL);
  WmSetting *setting;

  for (guint i = 0; settings != NULL && i < settings->len; i++)
    if (g_strcmp0 (((WmSetting *)settings->pdata[i])->name, name) == 0)
      return g_object_ref (settings->pdata[i]);

  setting = wm_setting_new ();
  wm_record_set_text (WM_RECORD (setting), "name", name);
  return setting;
}

static void
show_fields (GPtrArray *fields, WmSession *session)
{
  for (guint i = 0; i < fields->len; i++)
    {
      g_autoptr (WmSetting) setting =
          find_setting (session, g_object_get_data (fields->pdata[i], "setting"));

      wm_form_field_bind (fields->pdata[i], session, setting);
    }
}

static void
on_rows_changed (WmSession *session, const WmChange *change, gpointer page)
{
  if (wm_change_touches (change, WM_KIND_SETTING))
    show_fields (g_object_get_data (G_OBJECT (page), "fields"), session);
}

static void
add_field (GtkBox *box, GPtrArray *fields, const char *title, const char *setting,
           WmFormKind kind)
{
  GtkWidget *field = g_object_new (WM_TYPE_FORM_FIELD, "title", title, "field", "value",
                                   "kind", kind, NULL);

  if (gtk_widget_get_first_child (GTK_WIDGET (box)) != NULL)
    gtk_box_append (box, gtk_separator_new (GTK_ORIENTATION_HORIZONTAL));
  g_object_set_data_full (G_OBJECT (field), "setting", g_strdup (setting), g_free);
  gtk_box_append (box, field);
  g_ptr_array_add (fields, field);
}

static GtkBox *
add_group (AdwPreferencesPage *page, const char *title, const char *description)
{
  AdwPreferencesGroup *group = ADW_PREFERENCES_GROUP (adw_preferences_group_new ());
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  adw_preferences_group_set_title (group, title);
  adw_preferences_group_set_description (group, description);
  gtk_widget_add_css_class (box, "card-list");
  adw_preferences_group_add (group, box);
  adw_preferences_page_add (page, group);
  return GTK_BOX (box);
}

AdwPreferencesPage *
wm_money_settings_page_new (WmSession *session)
{
  WmTrade *trade = wm_session_get_trade (session);
  AdwPreferencesPage *page = ADW_PREFERENCES_PAGE (adw_preferences_page_new ());
  GPtrArray *fields = g_ptr_array_new ();
  GtkBox *box;

  adw_preferences_page_set_name (page, "money");
  adw_preferences_page_set_title (page, _ ("Prices"));
  adw_preferences_page_set_icon_name (page, "wm-quote-symbolic");
  box = add_group (page, _ ("Work"), _ ("Prices are before tax."));
  add_field (box, fields, _ ("Hourly rate"), WM_SETTING_HOURLY_RATE, WM_FORM_SHOP_MONEY);
  add_field (box, fields, _ ("Tax in per cent"), WM_SETTING_TAX_BP, WM_FORM_PERCENT);
  box = add_group (page, _ ("Metal, price a gram"),
                   _ ("What the customer pays for a gram of each alloy."));
  for (const WmMetal *const *row = trade != NULL ? wm_trade_list_metals (trade, NULL)
                                                 : NULL;
       row != NULL && *row != NULL; row++)
    if (!(*row)->is_pure)
      {
        g_autofree char *setting = g_strconcat (WM_SETTING_GRAM_PRICE, (*row)->key, NULL);

        add_field (box, fields, wm_trade_text ((*row)->name), setting,
                   WM_FORM_SHOP_MONEY);
      }
  show_fields (fields, session);
  g_object_set_data_full (G_OBJECT (page), "fields", fields,
                          (GDestroyNotify)g_ptr_array_unref);
  g_signal_connect_object (session, "rows-changed", G_CALLBACK (on_rows_changed), page,
                           0);
  return page;
}

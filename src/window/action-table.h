/* action-table.h: every action of the window, once
 *
 * Keys, menus and the help overlay are made from this table; a page adds its
 * actions here and installs them under the same names. No two rows that can be
 * live at the same time share a key, and every row has one (a test sees to both).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

/* Where the keys of a row are live. A key of WM_PLACE_WINDOW works everywhere, also
 * while text is being typed, so it has Control, Alt or is a function key. Keys of a
 * page reach it only when no entry has taken them. */
typedef enum
{
  WM_PLACE_WINDOW = 1 << 0,
  WM_PLACE_PIECES = 1 << 1,
  WM_PLACE_PHOTOS = 1 << 2,    /* anywhere on a page with photos */
  WM_PLACE_CHECKLIST = 1 << 3, /* anywhere on the inspection page */
  WM_PLACE_COUNTER = 1 << 4,   /* counter view: its own window */
  WM_PLACE_COMPARE = 1 << 5,   /* anywhere on the page of the proof */
  WM_PLACE_TAKE_IN = 1 << 6,
  WM_PLACE_WORK = 1 << 7,
  WM_PLACE_PROOF = 1 << 8,
  WM_PLACE_HAND_BACK = 1 << 9,
  WM_PLACE_SETTINGS = 1 << 11, /* preferences: its own window */
  WM_PLACE_SEAM = 1 << 12,     /* the handle of the seam has the focus */
  WM_PLACE_RECKON = 1 << 13,   /* computations: their own window */
  WM_PLACE_CANVAS = 1 << 10    /* a photo or one of its marks has the focus */
} WmActionPlace;

/* Headings of the help overlay, in this order. */
typedef enum
{
  WM_GROUP_PROGRAM,
  WM_GROUP_PIECES,
  WM_GROUP_MOMENTS,
  WM_GROUP_EDIT,
  WM_GROUP_PAPERS,
  WM_GROUP_CHECKLIST,
  WM_GROUP_PHOTOS,
  WM_GROUP_MARKS,
  WM_GROUP_COMPARE,
  WM_GROUP_COUNTER,
  WM_N_GROUPS
} WmActionGroup;

/* Sections of the window's menu, in this order. */
typedef enum
{
  WM_MENU_NONE,
  WM_MENU_TAKE_IN,
  WM_MENU_EDIT,
  WM_MENU_PAPERS,
  WM_MENU_SHOP,
  WM_MENU_PROGRAM,
  WM_N_MENUS
} WmActionMenu;

typedef struct
{
  const char *name;  /* with its prefix and target: "win.moment::proof" */
  const char *label; /* N_() */
  const char *keys;  /* as gtk_accelerator_parse () reads them, separated by blanks */
  WmActionGroup group;
  guint places; /* WmActionPlace together */
  WmActionMenu menu;
} WmActionRow;

const WmActionRow *wm_action_table (guint *n_rows);
/* NULL if there is no such action. */
const WmActionRow *wm_action_find (const char *name);

/* "Undo (Ctrl+Z)", for a tooltip. Translated; caller frees. */
char *wm_action_describe (const char *name);
/* Sets that as tooltip, and the label as accessible name, of a widget whose action
 * is @name. */
void wm_action_name_widget (GtkWidget *widget, const char *name);

/* The keys of WM_PLACE_WINDOW. */
void wm_action_add_window_keys (GtkApplication *application);
/* Makes the keys of @place act on @widget and what is inside it; @widget (or a
 * parent) has the actions. */
void wm_action_add_keys (GtkWidget *widget, WmActionPlace place);

/* The window's menu. */
GMenuModel *wm_action_make_menu (void);
/* The help overlay; destroyed when it is closed. Returns: (transfer none) */
GtkWindow *wm_action_make_help (void);

/* Whether a row's key is live together with another's. */
gboolean wm_action_places_meet (guint a, guint b);

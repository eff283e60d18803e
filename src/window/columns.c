/* columns.c: up to three columns beside each other, as many as there is room for
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/columns.h"

/* Look book, section 2: 24 to 36 at the page edge; section 5: forms at most 1280 wide. */
#define GAP 28
#define MAX_WIDTH 1280
#define MAX_CHILDREN 3

struct _WmColumns
{
  GtkWidget parent_instance;
};

typedef struct
{
  GtkWidget *child[MAX_CHILDREN];
  int least[MAX_CHILDREN];
  int width[MAX_CHILDREN];
  int column[MAX_CHILDREN];
  int n;
  int n_columns;
} Plan;

G_DEFINE_FINAL_TYPE (WmColumns, wm_columns, GTK_TYPE_WIDGET)

static int
count_width (const Plan *plan, int n)
{
  int width = (n - 1) * GAP;

  for (int i = 0; i < n; i++)
    width += plan->least[i];
  return width;
}

/* Who stands in which column, and how wide. */
static void
make_plan (GtkWidget *widget, int width, Plan *plan)
{
  int used = MIN (width, MAX_WIDTH), spare, first;

  plan->n = 0;
  for (GtkWidget *child = gtk_widget_get_first_child (widget);
       child != NULL && plan->n < MAX_CHILDREN;
       child = gtk_widget_get_next_sibling (child))
    {
      if (!gtk_widget_should_layout (child))
        continue;
      gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &plan->least[plan->n],
                          NULL, NULL, NULL);
      plan->child[plan->n++] = child;
    }

  plan->n_columns = plan->n;
  while (plan->n_columns > 1 && count_width (plan, plan->n_columns) > used)
    plan->n_columns--;

  spare = used - count_width (plan, plan->n_columns);
  for (int i = 0; i < plan->n; i++)
    {
      plan->column[i] = MIN (i, plan->n_columns - 1);
      plan->width[i] = plan->n_columns == 1 ? used : plan->least[plan->column[i]];
    }
  /* Two columns share what is left, each by its width; of three the middle one has it. */
  first = plan->n_columns == 2
              ? spare * plan->least[0] / (plan->least[0] + plan->least[1])
              : 0;
  for (int i = 0; i < plan->n && plan->n_columns > 1; i++)
    if (plan->n_columns == 2)
      plan->width[i] += plan->column[i] == 0 ? first : spare - first;
    else if (plan->column[i] == 1)
      plan->width[i] += spare;
}

static void
wm_columns_measure (GtkWidget *widget, GtkOrientation orientation, int for_size,
                    int *minimum, int *natural, int *minimum_baseline,
                    int *natural_baseline)
{
  Plan plan;
  int height[MAX_CHILDREN] = { 0 };

  make_plan (widget,
             orientation == GTK_ORIENTATION_VERTICAL && for_size > 0 ? for_size
                                                                     : MAX_WIDTH,
             &plan);
  *minimum = *natural = 0;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      for (int i = 0; i < plan.n; i++)
        *minimum = MAX (*minimum, plan.least[i]);
      *natural = MAX (*minimum, count_width (&plan, plan.n));
      return;
    }

  for (int i = 0; i < plan.n; i++)
    {
      int child_height;

      gtk_widget_measure (plan.child[i], GTK_ORIENTATION_VERTICAL, plan.width[i],
                          &child_height, NULL, NULL, NULL);
      height[plan.column[i]] += child_height + (height[plan.column[i]] > 0 ? GAP : 0);
    }
  for (int i = 0; i < plan.n_columns; i++)
    *minimum = *natural = MAX (*minimum, height[i]);
}

static void
wm_columns_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  Plan plan;
  int x[MAX_CHILDREN] = { 0 }, y[MAX_CHILDREN] = { 0 };

  make_plan (widget, width, &plan);
  x[0] = MAX (0, (width - MAX_WIDTH) / 2);
  for (int i = 1; i < plan.n_columns; i++)
    x[i] = x[i - 1] + plan.width[i - 1] + GAP;

  for (int i = 0; i < plan.n; i++)
    {
      int column = plan.column[i];
      GtkAllocation place = { x[column], y[column], plan.width[i], 0 };

      gtk_widget_measure (plan.child[i], GTK_ORIENTATION_VERTICAL, plan.width[i],
                          &place.height, NULL, NULL, NULL);
      gtk_widget_size_allocate (plan.child[i], &place, -1);
      y[column] += place.height + GAP;
    }
}

static GtkSizeRequestMode
wm_columns_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
wm_columns_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);

  G_OBJECT_CLASS (wm_columns_parent_class)->dispose (object);
}

static void
wm_columns_class_init (WmColumnsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_columns_dispose;
  widget_class->measure = wm_columns_measure;
  widget_class->size_allocate = wm_columns_size_allocate;
  widget_class->get_request_mode = wm_columns_get_request_mode;
}

static void
wm_columns_init (WmColumns *self)
{
}

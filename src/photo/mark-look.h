/* mark-look.h: how a mark looks: its measures, colours and states
 *
 * A stone held by claws on a thin leader whose tip is exactly on the place. All
 * measures are in disc radii (R), angles clockwise from east, y down. One look
 * for the window, paper, pictures and icons; the numbers are those of the look
 * book, section 4, and every contrast is checked in tests/photo.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "reckon/point.h"
#include "reckon/severity.h"
#include "reckon/shape.h"

#include <glib.h>

#define WM_MARK_DISC_LINE 0.10 /* line round the disc of radius 1 */
#define WM_MARK_RING 1.30      /* radius of the ring's middle line */
#define WM_MARK_RING_LINE 0.13
#define WM_MARK_CLAW_INNER 0.84
#define WM_MARK_CLAW_OUTER 1.62
#define WM_MARK_CLAW_LINE 0.42
#define WM_MARK_SPRUNG 0.20      /* how far the broken ring's arcs stand off */
#define WM_MARK_SPRUNG_ARC 120.0 /* degrees of each arc */
#define WM_MARK_HALO 0.13        /* light outline outside everything, >= 1 px */
#define WM_MARK_LEADER_LINE 0.18
#define WM_MARK_LEADER_FROM 1.20
#define WM_MARK_LEADER_POINT 0.80 /* length over which it narrows to the tip */
#define WM_MARK_NUMBER_1 1.28     /* type size for one, two, three figures */
#define WM_MARK_NUMBER_2 1.06
#define WM_MARK_NUMBER_3 0.78
#define WM_MARK_FORM_LINE 0.20
#define WM_MARK_JAW 1.80       /* length of a span's jaw */
#define WM_MARK_PLATE_GAP 0.90 /* from the span to its value */
#define WM_MARK_HANDLE 0.45    /* circle round a corner of the scale */

/* Everything a disc paints lies within this many R of its middle, from R 8 on: claw
 * end 1.62, half a claw 0.21, outline 0.13 grown by half when hovered. */
#define WM_MARK_REACH 2.05

/* Disc radius in logical px, by place (look book, "Size"); on paper in mm. */
#define WM_MARK_R_CHIP 6.0
#define WM_MARK_R_ROW 9.0
#define WM_MARK_R_PHOTO 13.0
#define WM_MARK_R_TOUCH 16.0
#define WM_MARK_R_COUNTER 22.0
#define WM_MARK_R_PAPER_PICTURE_MM 2.3
#define WM_MARK_R_PAPER_LINE_MM 1.7
#define WM_MARK_R_PAPER_LEAST_MM 1.5

typedef enum
{
  WM_MARK_PLAIN = 0,
  WM_MARK_HOVERED = 1 << 0,     /* outline and leader grow by half */
  WM_MARK_SELECTED = 1 << 1,    /* or has the keyboard focus */
  WM_MARK_CARRIED = 1 << 2,     /* from an earlier visit: a ghost */
  WM_MARK_UNCONFIRMED = 1 << 3, /* hollow stone, "2?", open tip */
  WM_MARK_MEASURING = 1 << 4,   /* a span while it is being measured: blue jaws */
  WM_MARK_BARE = 1 << 5         /* no disc, no leader: the scale, or not a mark yet */
} WmMarkState;

typedef struct
{
  double red, green, blue; /* 0..1, sRGB */
} WmColour;

/* What one drawing is for. Start from wm_mark_style_init (). */
typedef struct
{
  gboolean grey;     /* print fills in grey; claws and words stay the same */
  double px;         /* one device pixel in drawing units; 1 on screen, 0.24 in a
                      * PDF (a 300 dpi dot in points) */
  const char *font;  /* family of the number; NULL: "Cantarell, Sans" */
  gboolean no_words; /* draw no number (icons) */
} WmMarkStyle;

/* One mark in drawing units (view px, page points ...). Nothing is owned. */
typedef struct
{
  WmSeverity severity;
  WmShape shape;
  const WmPoint *points; /* the place(s) */
  gsize n_points;
  WmPoint disc;      /* middle of the disc */
  double radius;     /* R */
  int number;        /* 1..999; 0: a plain disc */
  guint state;       /* WmMarkState together */
  const char *value; /* span: what is written on the plate, or NULL */
} WmMarkLook;

void wm_mark_style_init (WmMarkStyle *style);

/* The stone's fill; not looked at and not present have none and give white. */
WmColour wm_severity_fill (WmSeverity severity, gboolean grey);
WmColour wm_severity_number_colour (WmSeverity severity, gboolean grey);

/* wm_edge #1A1A1A, wm_halo #FFFFFF, wm_gauge #56B4E9, the plate #1E1E1E. */
extern const WmColour wm_mark_edge;
extern const WmColour wm_mark_halo;
extern const WmColour wm_mark_gauge;
extern const WmColour wm_mark_plate;

/* Claws of a severity: how many and their angles in degrees (at most 4). */
int wm_severity_claws (WmSeverity severity, double angles[4]);

/* Where the leader goes: the vertex of the form nearest to the disc (a span: the
 * nearest place on it). */
WmPoint wm_mark_tip (const WmMarkLook *look);

/* Smallest box round all ink of the mark: x, y, width, height. */
void wm_mark_extents (const WmMarkLook *look, const WmMarkStyle *style, double box[4]);

typedef enum
{
  WM_MARK_PART_NONE,
  WM_MARK_PART_DISC,
  WM_MARK_PART_VERTEX, /* *vertex says which */
  WM_MARK_PART_FORM,   /* a stroke or the inside of nothing: *vertex begins the edge */
  WM_MARK_PART_LEADER
} WmMarkPart;

/**
 * wm_mark_part_at:
 * @slack: how far off still counts, drawing units
 * @vertex: (out) (optional)
 *
 * What of the mark is at @at: the disc first, then vertices, strokes, leader.
 */
WmMarkPart
wm_mark_part_at (const WmMarkLook *look, WmPoint at, double slack, int *vertex);

/* align-inspect.c: a second look at the answer, for what speaks against it
 *
 * Most of a piece can agree and the answer still be wrong. Three signs of it, each
 * met on rendered pairs (tests/align/README.md):
 *
 * A part lies together elsewhere: the chain fits the matrix, the plate of the
 * pendant lies 5 pixels beside it, for it is higher. Its places are found well
 * alike, all off the same way. New reflections are off too, but not together.
 *
 * A part is barren: hook and bar of two earrings agree, in the rest nothing does.
 *
 * The outline agrees, what lies inside does not: two signets with other letters.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/align-decide.h"

#include <math.h>
#include <string.h>

/* Pixels of level 1 that are looked at each way: 10 of the photo 1600 wide. */
#define REACH 5

/* The likeness of a place that can tell where it is; the fit asks 0.45, here a
 * place must speak against the fit. */
#define SURE_LIKENESS 0.5

/* Off by the demand of 3 level 0 pixels; together: within half of that. */
#define OFF_PX 3.0
#define TOGETHER_PX 1.5

/* So many of the nearest sure places are asked, so many must be off together. */
#define NEIGHBOURS 8
#define LEAST_TOGETHER 3

/* Barren: of a place and its nearest 15 fewer than this share agree; by accident one
 * in eight does (different pieces). */
#define AROUND 16
#define BARREN_SHARE 0.15

/* Inside: so far from the rim, share of the radius of the piece. */
#define INSIDE_SHARE 0.20

/* Step of the rings that are looked around a place, level 0 pixels: those of the
 * mask; directions a ring has. One may be off the piece: the mask is frayed. */
#define RING_STEP 4
#define DIRECTIONS 24

/* As far as a place can be off to agree inside; likeness as for the fit. */
#define LEAST_LIKENESS 0.45

typedef struct
{
  const WmSighting *s;
  double far2;
} Neighbour;

/* The nearest to @s with at least @likeness, nearest first. Returns how many. */
static int
find_neighbours (const WmSighting *sightings, int n, const WmSighting *s, double likeness,
                 Neighbour *near, int most)
{
  int found = 0;

  for (int k = 0; k < n; k++)
    {
      const WmSighting *other = &sightings[k];
      double dx = other->at.x - s->at.x, dy = other->at.y - s->at.y;
      double far2 = dx * dx + dy * dy;
      int at = found;

      if (other == s || other->likeness < likeness)
        continue;
      while (at > 0 && near[at - 1].far2 > far2)
        at--;
      if (at == most)
        continue;
      if (found < most)
        found++;
      memmove (near + at + 1, near + at, sizeof *near * (gsize)(found - 1 - at));
      near[at] = (Neighbour) { other, far2 };
    }
  return found;
}

static gboolean
is_elsewhere (const WmSighting *sightings, int n, const WmSighting *s)
{
  Neighbour near[NEIGHBOURS];
  int found, together = 0;

  if (s->likeness < SURE_LIKENESS || s->off <= OFF_PX)
    return FALSE;
  found = find_neighbours (sightings, n, s, SURE_LIKENESS, near, NEIGHBOURS);
  for (int k = 0; k < found; k++)
    {
      const WmSighting *other = near[k].s;
      double apart2 = wm_place_off2 (&other->place, other->shift.x - s->shift.x,
                                     other->shift.y - s->shift.y);

      together += other->off > TOGETHER_PX && apart2 < TOGETHER_PX * TOGETHER_PX;
    }
  return together >= LEAST_TOGETHER;
}

static gboolean
is_barren (const WmSighting *sightings, int n, const WmSighting *s)
{
  Neighbour near[AROUND - 1];
  int found = find_neighbours (sightings, n, s, -1, near, AROUND - 1);
  double all = wm_place_weight (&s->place);
  double agreed = s->agrees ? all : 0;

  for (int k = 0; k < found; k++)
    {
      double weight = wm_place_weight (&near[k].s->place);

      all += weight;
      agreed += near[k].s->agrees ? weight : 0;
    }
  return agreed < BARREN_SHARE * all;
}

static gboolean
is_inside (const WmPieceMask *piece, WmPoint at)
{
  for (double r = RING_STEP; r < INSIDE_SHARE * piece->radius; r += RING_STEP)
    {
      int off = 0;

      for (int k = 0; k < DIRECTIONS; k++)
        {
          double angle = 2 * G_PI * k / DIRECTIONS;

          off +=
              !wm_piece_mask_has (piece, at.x + r * cos (angle), at.y + r * sin (angle));
        }
      if (off > 1)
        return FALSE;
    }
  return TRUE;
}

/* One way; FALSE when nothing was seen. */
static gboolean
inspect_one_way (const double m[9], const WmSide *before, const WmSide *after,
                 WmInspection *out)
{
  int n = (int)before->places[1]->len;
  g_autofree WmSighting *sightings = g_new (WmSighting, (gsize)n + 1);
  WmTrack track;
  double seen = 0, all = 0, elsewhere = 0, barren = 0;
  double inside = 0, inside_agreed = 0;
  int inside_places = 0;

  wm_track_places (before->squares[1], after->planes->grey, 1, m, before->places[1], n,
                   REACH, sightings);
  wm_track_judge (sightings, n, 1, &track);
  for (int k = 0; k < n; k++)
    {
      const WmSighting *s = &sightings[k];
      double weight = wm_place_weight (&s->place);

      if (s->likeness < -1)
        continue;
      seen++;
      all += weight;
      elsewhere += is_elsewhere (sightings, n, s) ? weight : 0;
      barren += is_barren (sightings, n, s);
      if (!is_inside (before->piece, s->at))
        continue;
      inside_places++;
      inside += weight;
      if (s->likeness >= LEAST_LIKENESS && s->off < OFF_PX)
        inside_agreed += weight;
    }
  if (!(all > 0))
    return FALSE;
  *out = (WmInspection) { .elsewhere = elsewhere / all,
                          .barren = barren / seen,
                          .inside = inside > 0 ? inside_agreed / inside : 0,
                          .inside_places = inside_places };
  return TRUE;
}

gboolean
wm_candidate_inspect (const WmCandidate *candidate, const WmSide *before,
                      const WmSide *after, WmInspection *out)
{
  WmInspection there, back;
  double to_before[9];

  if (!wm_align_invert (candidate->to_after, to_before)
      || !inspect_one_way (candidate->to_after, before, after, &there)
      || !inspect_one_way (to_before, after, before, &back))
    return FALSE;
  out->elsewhere = 0.5 * (there.elsewhere + back.elsewhere);
  out->barren = 0.5 * (there.barren + back.barren);
  out->inside = 0.5 * (there.inside + back.inside);
  out->inside_places = MIN (there.inside_places, back.inside_places);
  return TRUE;
}

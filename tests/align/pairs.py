"""pairs.py: pairs of photos of invented pieces with an exactly known truth

Renders every pair of the campaign with POV-Ray into a folder outside the
repository and writes pairs.json beside them. A photo that is already there is
not rendered again. Run by tests/align/run.

The truth of a pair: every visible detail of the piece on the before photo is
known in the frame of the piece (a second rendering paints each surface with its
own coordinates), and so is where that point falls on the after photo. The true
matrix is the projective one that fits these pairs of points best; what it
leaves over is the parallax of a piece that is not flat ("floor_px").

SPDX-License-Identifier: GPL-3.0-or-later
"""
import json
import math
import os
import subprocess
import sys

import cv2
import numpy as np

HERE = os.path.dirname(os.path.abspath(__file__))
WIDTH, HEIGHT = 1600, 1067
DISTANCE = 260.0      # mm from camera to cloth
STEP = 4              # coordinates are rendered at a quarter of the size

PIECES = ['ring', 'cluster', 'pendant', 'brooch', 'bangle', 'earring', 'line',
          'signet', 'locket']
# Heights are reduced: for a tall piece seen from two sides no one matrix is true.
FLAT = [0.25, 0.2, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5]
FIELD = [62, 62, 78, 66, 98, 66, 92, 62, 66]    # mm across the photo at zoom 1


class Shot:
    """One photo: what lies there, how, under which light, seen from where."""

    def __init__(self, piece, variant=0, cloth=0, mended=0, light=0, at=(0, 0), turn=0,
                 tilt=0, azimuth=0, roll=0, zoom=1, look=(0, 0), gain=(1, 1, 1), gamma=1,
                 field=None):
        self.__dict__.update(locals())
        del self.__dict__['self']
        self.field = field or FIELD[piece]

    def camera(self):
        """Location, right, up, forward (right and up as long as the field is)."""
        tilt, azimuth, roll = map(math.radians, (self.tilt, self.azimuth, self.roll))
        back = np.array([math.sin(tilt) * math.cos(azimuth),
                         math.sin(tilt) * math.sin(azimuth), -math.cos(tilt)])
        target = np.array([self.look[0], self.look[1], 0.0])
        forward = -back
        up = np.array([0.0, 1.0, 0.0])
        up -= forward * (up @ forward)
        up /= np.linalg.norm(up)
        right = np.cross(up, forward)
        right, up = (math.cos(roll) * right + math.sin(roll) * up,
                     math.cos(roll) * up - math.sin(roll) * right)
        span = self.field / DISTANCE
        location = target + back * DISTANCE / self.zoom
        return location, right * span, up * span * HEIGHT / WIDTH, forward

    def place(self, points):
        """Coordinates of the piece (height up) to those of the scene."""
        turn = math.radians(self.turn)
        x = points[:, 0] * math.cos(turn) - points[:, 1] * math.sin(turn) + self.at[0]
        y = points[:, 0] * math.sin(turn) + points[:, 1] * math.cos(turn) + self.at[1]
        return np.stack([x, y, -points[:, 2] * FLAT[self.piece]], 1)

    def project(self, points):
        location, right, up, forward = self.camera()
        basis = np.stack([right, up, forward], 1)
        a, b, c = np.linalg.solve(basis, (self.place(points) - location).T)
        return np.stack([(a / c + 0.5) * WIDTH, (0.5 - b / c) * HEIGHT], 1)

    def scene(self, coordinates):
        location, right, up, forward = self.camera()
        vec = lambda v: '<%.9f, %.9f, %.9f>' % tuple(v)
        lamps = [((-180, 260, -330), (260, 60, -300)),
                 ((240, 200, -300), (-240, -120, -330)),
                 ((20, -280, -320), (120, 300, -260))][self.light]
        text = ['#version 3.7;',
                'global_settings { assumed_gamma 1.0 max_trace_level 4 }',
                '#declare Variant = %d; #declare Mended = %d; #declare PosMap = %d;'
                % (self.variant, self.mended, coordinates),
                '#declare Piece = %d; #declare Cloth = %d;' % (self.piece, self.cloth),
                '#include "pieces.inc"',
                'camera { perspective location %s right %s up %s direction %s }'
                % (vec(location), vec(right), vec(up), vec(forward)),
                'union { ThePiece () %s rotate z * %g translate <%g, %g, 0> scale <1, 1, -%g> }'
                % ('texture { T_Pos }' if coordinates else '', self.turn, *self.at, FLAT[self.piece])]
        if coordinates:
            return '\n'.join(text)
        text += ['#include "cloth.inc"',
                 'plane { -z, 0 texture { T_Cloth } }',
                 'sky_sphere { pigment { gradient z color_map { [0 rgb 0.55] [0.5 rgb 0.08] [1 rgb 0.03] }'
                 ' scale 2 translate -z } }']
        for lamp, power, soft in zip(lamps, (1.0, 0.55), ('area_light 50 * x, 50 * y, 2, 2 adaptive 0', '')):
            text += ['light_source { %s rgb %g %s }' % (vec(lamp), power, soft),
                     'box { <-70, -45, -1>, <70, 45, 1> pigment { rgb 1 } finish { emission 2.2 diffuse 0 ambient 0 }'
                     ' translate %s no_image no_shadow }' % vec(lamp)]
        return '\n'.join(text)

    def key(self, coordinates=False):
        import hashlib
        words = self.scene(coordinates)
        for name in ('pieces.inc', 'cloth.inc'):
            words += open(os.path.join(HERE, name)).read()
        if not coordinates:
            words += repr((self.gain, self.gamma))
        return hashlib.sha256(words.encode()).hexdigest()[:16]


def povray(scene, output, width, height, extra):
    with open(output + '.pov', 'w') as file:
        file.write(scene)
    command = ['nice', '-n', '10', 'povray', '+I' + output + '.pov', '+O' + output + '.png', '+W%d' % width,
               '+H%d' % height, '-D', '+WT1', '+L' + HERE, 'File_Gamma=1.0' if '+FN16' in extra else 'File_Gamma=sRGB'] + extra
    for attempt in range(3):
        try:    # a rendering now and then never ends; the next one of the same does
            done = subprocess.run(command, capture_output=True, text=True, timeout=400)
            break
        except subprocess.TimeoutExpired:
            if attempt == 2:
                raise
    if done.returncode:
        sys.exit('povray failed on %s:\n%s' % (output, done.stderr[-3000:]))
    os.unlink(output + '.pov')


def photo(shot, folder):
    name = os.path.join(folder, shot.key() + '.jpg')
    if not os.path.exists(name):
        raw = os.path.join(folder, 'raw-' + shot.key())
        povray(shot.scene(0), raw, WIDTH, HEIGHT, ['-A'])
        image = cv2.imread(raw + '.png').astype(np.float32) / 255
        image = (np.clip(image, 0, 1) ** shot.gamma) * np.array(shot.gain[::-1], np.float32)
        noise = np.random.default_rng(int(shot.key()[:8], 16))
        image = cv2.GaussianBlur(image, (0, 0), 0.8) * 255 + noise.normal(0, 2.0, image.shape)
        cv2.imwrite(name, np.clip(image + 0.5, 0, 255).astype(np.uint8), [cv2.IMWRITE_JPEG_QUALITY, 93])
        os.unlink(raw + '.png')
    return name


def coordinates(shot, folder):
    """Visible points of the piece (mm, its own frame) and where they are seen."""
    name = os.path.join(folder, 'xyz-' + shot.key(True))
    width, height = WIDTH // STEP, HEIGHT // STEP
    if not os.path.exists(name + '.png'):
        povray(shot.scene(1), name, width, height, ['-A', '+FN16'])
    image = cv2.imread(name + '.png', cv2.IMREAD_UNCHANGED).astype(np.float64)[:, :, ::-1]
    rows, columns = np.nonzero(image[:, :, 2] > 10000)
    points = image[rows, columns] / 65535 * 120 - 60
    return points


def truth(before, after, folder):
    points = coordinates(before, folder)
    seen = np.clip(before.project(points), 0, (WIDTH - 1, HEIGHT - 1)).astype(int)
    grey = cv2.GaussianBlur(cv2.imread(photo(before, folder), 0).astype(np.float32), (0, 0), 2)
    slope = np.hypot(cv2.Sobel(grey, cv2.CV_32F, 1, 0), cv2.Sobel(grey, cv2.CV_32F, 0, 1))
    slope = slope[seen[:, 1], seen[:, 0]]
    points = points[slope > np.median(slope)]    # details, not smooth metal
    pick = np.random.default_rng(7).permutation(len(points))[:1500]
    points = points[pick]
    seen_before, seen_after = before.project(points), after.project(points)
    inside = ((seen_after > 4) & (seen_after < (WIDTH - 4, HEIGHT - 4)) &
              (seen_before > 4) & (seen_before < (WIDTH - 4, HEIGHT - 4))).all(1)
    seen_before, seen_after = seen_before[inside], seen_after[inside]
    matrix, _ = cv2.findHomography(seen_after, seen_before, 0)
    mapped = cv2.perspectiveTransform(seen_after[:, None], matrix)[:, 0]
    floor = float(np.mean(np.linalg.norm(mapped - seen_before, axis=1)))
    return dict(matrix=matrix.ravel().tolist(), floor_px=floor, share_inside=float(inside.mean()),
                points_after=seen_after[:200].round(3).tolist(),
                points_before=seen_before[:200].round(3).tolist())


def families():
    """(family, before, after, same piece, decidable) of every pair."""
    out = []

    def pair(family, before, change, same=True, decidable=True):
        settings = dict(before.__dict__)
        settings.update(change)
        out.append((family, before, Shot(**settings), same, decidable))

    ring = Shot(0, 1, cloth=0, at=(-2, 1), turn=20)
    cluster = Shot(1, 2, cloth=2, at=(1, 0), turn=-15)
    pendant = Shot(2, 1, cloth=1, at=(0, 1), turn=10)
    brooch = Shot(3, 1, cloth=3, at=(0, 0), turn=-8)
    bangle = Shot(4, 1, cloth=0, at=(0, 0))
    earring = Shot(5, 1, cloth=5, at=(0, 1), turn=5)
    line = Shot(6, 1, cloth=0, at=(0, 0), turn=0)
    signet = Shot(7, 1, cloth=2, at=(0, 3), turn=12)
    locket = Shot(8, 1, cloth=1, at=(0, 0), turn=-10)
    small_ring = Shot(0, 3, cloth=1, at=(6, -4), turn=-40, field=95)
    small_brooch = Shot(3, 4, cloth=5, at=(-8, 5), turn=30, field=110)
    cluster_paper = Shot(1, 6, cloth=4, at=(0, 0), turn=33)

    moved = 'moved, cloth stayed'
    pair(moved, ring, dict(at=(3, -1), turn=27))
    pair(moved, ring, dict(at=(-4, 2), turn=2, light=1))
    pair(moved, cluster, dict(at=(-2, 1), turn=-9))
    pair(moved, pendant, dict(at=(3, -2), turn=22))
    pair(moved, brooch, dict(at=(-2, 3), turn=4))
    pair(moved, brooch, dict(at=(1, -1), turn=-11.5))
    pair(moved, earring, dict(at=(-4, 2), turn=-20))
    pair(moved, line, dict(at=(2, 1), turn=6))
    pair(moved, small_ring, dict(at=(0, 3), turn=-31))
    pair(moved, small_brooch, dict(at=(-3, 0), turn=38, light=1))

    hand = 'by hand'
    pair(hand, ring, dict(tilt=12, azimuth=40, zoom=1.15, look=(2, -1), roll=5))
    pair(hand, ring, dict(tilt=18, azimuth=200, zoom=0.8, look=(-2, 2), roll=-9))
    pair(hand, cluster, dict(tilt=15, azimuth=120, zoom=1.3, roll=12, light=1))
    pair(hand, cluster_paper, dict(tilt=8, azimuth=300, zoom=0.7, roll=-20))
    pair(hand, pendant, dict(tilt=14, azimuth=80, zoom=0.9, look=(3, 3), roll=3))
    pair(hand, pendant, dict(tilt=20, azimuth=10, zoom=0.75, roll=-6))
    pair(hand, brooch, dict(tilt=16, azimuth=260, zoom=1.2, look=(1, 2), roll=14))
    pair(hand, brooch, dict(tilt=6, azimuth=30, zoom=0.62, roll=4, light=2))
    pair(hand, earring, dict(tilt=10, azimuth=180, zoom=1.1, look=(2, 0), roll=-15))
    pair(hand, line, dict(tilt=12, azimuth=330, zoom=0.85, look=(-3, 2), roll=8))
    pair(hand, small_ring, dict(tilt=15, azimuth=150, zoom=1.65, look=(5, -4), roll=-5))
    pair(hand, small_brooch, dict(tilt=12, azimuth=45, zoom=1.5, look=(-7, 4), roll=10))

    mended = 'repaired'
    pair(mended, ring, dict(mended=1, at=(0, 2), turn=32, tilt=6, azimuth=70, light=1))
    pair(mended, cluster, dict(mended=1, at=(0, -2), turn=3, zoom=1.1))
    pair(mended, pendant, dict(mended=1, at=(2, 0), turn=-6, light=2))
    pair(mended, brooch, dict(mended=1, at=(2, 2), turn=9, tilt=8, azimuth=200))
    pair(mended, earring, dict(mended=1, at=(1, -2), turn=25, light=1))
    pair(mended, line, dict(mended=1, at=(-2, 2), turn=-12, zoom=0.92))
    pair(mended, signet, dict(mended=1, at=(2, 2), turn=30))
    pair(mended, small_brooch, dict(mended=1, at=(-6, 8), turn=45, light=2, zoom=1.2))

    turned = 'turned'
    pair(turned, ring, dict(turn=110, at=(1, 1)))
    pair(turned, ring, dict(roll=90))
    pair(turned, ring, dict(turn=200))
    pair(turned, cluster, dict(turn=165, at=(2, -1)))
    pair(turned, pendant, dict(roll=180, tilt=7, azimuth=90, zoom=0.9))
    pair(turned, pendant, dict(turn=-80, at=(-1, 1), zoom=0.85))
    pair(turned, brooch, dict(turn=82, zoom=0.8))
    pair(turned, brooch, dict(turn=172, light=1))
    pair(turned, earring, dict(roll=-90, zoom=0.85))
    pair(turned, line, dict(turn=180, at=(1, -1)))

    plain = 'low texture'
    pair(plain, bangle, dict(turn=65, at=(2, 1)), decidable=False)
    pair(plain, bangle, dict(cloth=2, turn=20, tilt=8, azimuth=50), decidable=False)
    pair(plain, bangle, dict(light=1, at=(-3, 2)), decidable=False)
    pair(plain, signet, dict(at=(2, -1), turn=25))
    pair(plain, signet, dict(cloth=0, turn=40, tilt=8, azimuth=120))
    pair(plain, locket, dict(at=(-2, 1), turn=4))
    pair(plain, locket, dict(cloth=0, turn=-30, tilt=10, azimuth=20, light=1))

    light = 'exposure'
    pair(light, ring, dict(gain=(0.55, 0.62, 0.8), at=(1, 1), turn=26))
    pair(light, cluster, dict(gain=(1.5, 1.35, 1.1), tilt=5, azimuth=100, roll=4))
    pair(light, pendant, dict(gain=(1.3, 1.1, 0.8), gamma=1.3, light=1))
    pair(light, brooch, dict(gain=(0.7, 0.8, 1.05), gamma=0.8, light=2, turn=0))
    pair(light, earring, dict(gain=(0.5, 0.5, 0.55), light=1, roll=6))
    pair(light, line, dict(gain=(1.25, 1.25, 1.4), light=2, at=(1, 1), turn=3))

    other = 'other cloth'
    pair(other, ring, dict(cloth=2, turn=35, light=1))
    pair(other, ring, dict(cloth=1, turn=-20, tilt=8, azimuth=200, zoom=1.1))
    pair(other, cluster, dict(cloth=0, turn=10, at=(2, 2)))
    pair(other, cluster_paper, dict(cloth=3, turn=60, zoom=0.9))
    pair(other, pendant, dict(cloth=2, turn=-15, tilt=6, azimuth=90))
    pair(other, brooch, dict(cloth=4, turn=12, light=2))
    pair(other, earring, dict(cloth=0, turn=40, tilt=9, azimuth=330, zoom=1.1))
    pair(other, line, dict(cloth=5, turn=20, zoom=0.9))
    pair(other, small_ring, dict(cloth=2, turn=15, zoom=1.4, look=(4, -3), light=1))
    pair(other, small_brooch, dict(cloth=0, turn=-60, zoom=1.3, look=(-5, 3)))

    differ = 'different pieces'
    pair(differ, ring, dict(variant=8, turn=30), same=False)
    pair(differ, ring, dict(piece=1, variant=2), same=False)
    pair(differ, cluster, dict(variant=9, turn=-10), same=False)
    pair(differ, pendant, dict(variant=7, at=(1, 1)), same=False)
    pair(differ, brooch, dict(variant=9), same=False)
    pair(differ, brooch, dict(piece=5, variant=1, cloth=0), same=False)
    pair(differ, earring, dict(variant=9, cloth=2, turn=30), same=False)
    pair(differ, line, dict(piece=2, variant=1, cloth=1), same=False)
    pair(differ, signet, dict(variant=9, turn=20), same=False)
    pair(differ, bangle, dict(piece=6, variant=1), same=False)
    return out


def fresh_families():
    """As families (), of other pieces: nothing in src/photo was chosen on these."""
    ring = Shot(0, 5, cloth=2, at=(1, -1), turn=-35)
    cluster = Shot(1, 4, cloth=5, at=(-1, 1), turn=50)
    pendant = Shot(2, 3, cloth=0, at=(1, 0), turn=-12)
    brooch = Shot(3, 6, cloth=1, at=(1, 1), turn=15)
    earring = Shot(5, 3, cloth=2, at=(-1, 2), turn=-10)
    line = Shot(6, 4, cloth=3, at=(1, -1), turn=8)
    signet = Shot(7, 6, cloth=0, at=(-1, 3), turn=-20)
    locket = Shot(8, 3, cloth=5, at=(1, 0), turn=14)
    changes = [
        ('different pieces', signet, dict(variant=1, turn=8, light=1)),
        ('moved, cloth stayed', brooch, dict(at=(-2, -1), turn=24)),
        ('different pieces', pendant, dict(variant=8)),
        ('by hand', pendant, dict(tilt=17, azimuth=140, zoom=1.1, roll=7)),
        ('repaired', signet, dict(mended=1, at=(2, 2), turn=5, light=2)),
        ('different pieces', earring, dict(variant=6)),
        ('by hand', brooch, dict(tilt=10, azimuth=300, zoom=0.85, roll=-8)),
        ('turned', earring, dict(turn=80, at=(1, 0))),
        ('different pieces', line, dict(variant=6, turn=20)),
        ('different pieces', locket, dict(variant=7, turn=3)),
        ('other cloth', signet, dict(cloth=5, turn=10, tilt=6, azimuth=60)),
        ('repaired', brooch, dict(mended=1, at=(0, -2), turn=32)),
        ('different pieces', ring, dict(variant=6)),
        ('by hand', cluster, dict(tilt=19, azimuth=80, zoom=0.8, roll=10)),
        ('moved, cloth stayed', locket, dict(at=(-2, 2), turn=24)),
        ('different pieces', brooch, dict(variant=2)),
        ('exposure', pendant, dict(gain=(0.6, 0.65, 0.8), light=1, turn=-10)),
        ('turned', brooch, dict(turn=-85, at=(0, 1), light=1)),
        ('different pieces', cluster, dict(variant=7, turn=30)),
        ('by hand', line, dict(tilt=15, azimuth=220, zoom=1.05, roll=-6)),
        ('repaired', pendant, dict(mended=1, at=(0, 1), turn=4, light=2)),
        ('moved, cloth stayed', ring, dict(at=(-2, 1), turn=-28)),
        ('different pieces', signet, dict(variant=2, cloth=1, tilt=5, azimuth=40)),
        ('other cloth', cluster, dict(cloth=1, turn=75, light=1)),
        ('repaired', ring, dict(mended=1, at=(2, 1), turn=-50, tilt=5, azimuth=20)),
        ('other cloth', brooch, dict(cloth=2, turn=-10)),
    ]
    return changed(changes)


def last_families():
    """The last word: mostly other pieces of one type, rendered after all was chosen."""
    ring = Shot(0, 4, cloth=5, at=(1, 1), turn=60)
    signet = Shot(7, 3, cloth=3, at=(1, 2), turn=25)
    earring = Shot(5, 7, cloth=1, at=(0, 2), turn=-25)
    line = Shot(6, 8, cloth=2, at=(-1, 1), turn=-6)
    pendant = Shot(2, 9, cloth=3, at=(1, 1), turn=20)
    cluster = Shot(1, 8, cloth=0, at=(0, 1), turn=10)
    return changed([
        ('different pieces', signet, dict(variant=8, turn=40, at=(0, 1))),
        ('different pieces', earring, dict(variant=2, turn=-5)),
        ('different pieces', line, dict(variant=3)),
        ('moved, cloth stayed', earring, dict(at=(2, 0), turn=-12)),
        ('repaired', signet, dict(mended=1, turn=10, light=1)),
        ('different pieces', ring, dict(variant=9, turn=72)),
        ('different pieces', signet, dict(variant=7, light=2, cloth=5)),
        ('different pieces', earring, dict(variant=4, light=1, turn=-25)),
        ('moved, cloth stayed', ring, dict(at=(-1, 2), turn=50)),
        ('other cloth', line, dict(cloth=0, turn=12, light=1)),
        ('repaired', pendant, dict(mended=1, at=(-1, 1), turn=31)),
        ('different pieces', cluster, dict(variant=3)),
    ])


def changed(changes):
    return [(family, before, Shot(**{**before.__dict__, **change}), family != 'different pieces', True)
            for family, before, change in changes]


def main():
    folder = sys.argv[1]
    for name, entries in (('pairs', families), ('fresh', fresh_families), ('last', last_families)):
        if name in sys.argv[2:] or not sys.argv[2:]:
            render(entries(), folder, name + '.json')


def render(entries, folder, listing):
    os.makedirs(folder, exist_ok=True)
    listed = list(enumerate(entries, 1))
    order, count = [], {}
    for number, entry in listed:    # a pair of every family first, then the next of each
        count[entry[0]] = count.get(entry[0], 0) + 1
        order.append((count[entry[0]], number, entry))
    rows = []
    for _, number, (family, before, after, same, decidable) in sorted(order, key=lambda item: item[:2]):
        row = dict(number=number, family=family, piece=PIECES[before.piece], same=same, decidable=decidable,
                   before=photo(before, folder), after=photo(after, folder))
        if same:
            row.update(truth(before, after, folder))
        rows.append(row)
        with open(os.path.join(folder, listing + '.new'), 'w') as file:
            json.dump(sorted(rows, key=lambda row: row['number']), file)
        os.replace(os.path.join(folder, listing + '.new'), os.path.join(folder, listing))
        print('%3d %-20s %-8s %s' % (number, family, row['piece'],
                                     'floor %.2f px, %.0f %% inside' % (row['floor_px'], 100 * row['share_inside'])
                                     if same else 'different'), flush=True)


if __name__ == '__main__':
    main()

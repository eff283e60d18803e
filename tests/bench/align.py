"""align.py: Wearmark beside OpenCV on the same pairs in the same run

Usage: align.py ALIGN-MEASURE FOLDER. Peers: ORB 2000 + RANSAC at full size, SIFT and
AKAZE + MAGSAC at half size, each alone and followed by ECC. A peer says yes with at
least 15 inliers that are a quarter of its matches (reckoning-reference, section 9) and a
matrix that does not turn the picture over; with ECC it keeps the coarse matrix unless the
correlation rises and is at least 0.6, as recommended there.

SPDX-License-Identifier: GPL-3.0-or-later
"""
import json
import os
import subprocess
import sys
import time

import cv2
import numpy as np

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), '..', 'align'))
import score    # noqa: E402 (its folder is known only now)


def half(image):
    return cv2.resize(image, None, fx=0.5, fy=0.5, interpolation=cv2.INTER_AREA)


# Pixel index x (middle of the first pixel 0) to photo pixels (middle 0.5) and back.
def to_photo(matrix, factor):
    into = np.array([[factor, 0, 0.5 * factor], [0, factor, 0.5 * factor], [0, 0, 1]])
    result = into @ matrix @ np.linalg.inv(into)
    return result / result[2, 2]


def coarse(make, norm, size_factor, method):
    def run(before, after):
        if size_factor == 2:
            before, after = half(before), half(after)
        detector = make()
        k1, d1 = detector.detectAndCompute(before, None)
        k2, d2 = detector.detectAndCompute(after, None)
        if d1 is None or d2 is None or len(k1) < 4 or len(k2) < 4:
            return None, before, after
        matches = [m for m in cv2.BFMatcher(norm).knnMatch(d2, d1, k=2) if len(m) == 2]
        good = [m for m, n in matches if m.distance < 0.75 * n.distance]
        if len(good) < 4:
            return None, before, after
        matrix, mask = cv2.findHomography(np.float32([k2[m.queryIdx].pt for m in good]),
                                          np.float32([k1[m.trainIdx].pt for m in good]),
                                          method, 3.0, maxIters=5000, confidence=0.999)
        inliers = 0 if mask is None else int(mask.sum())
        if matrix is None or inliers < 15 or inliers < 0.25 * len(good) \
                or np.linalg.det(matrix[:2, :2]) <= 0:
            return None, before, after
        return matrix, before, after
    return run


def correlation(before, after, matrix):
    warped = cv2.warpPerspective(after, matrix, before.shape[::-1])
    inside = cv2.warpPerspective(np.full_like(after, 255), matrix, before.shape[::-1]) == 255
    if inside.sum() < 1000:
        return -1
    return float(np.corrcoef(before[inside].astype(float), warped[inside].astype(float))[0, 1])


def refine(matrix, before, after):
    back = np.linalg.inv(matrix)
    start = (back / back[2, 2]).astype(np.float32)
    stop = (cv2.TERM_CRITERIA_EPS | cv2.TERM_CRITERIA_COUNT, 100, 1e-6)
    try:
        value, found = cv2.findTransformECC(before, after, start.copy(), cv2.MOTION_HOMOGRAPHY, stop, None, 5)
    except cv2.error:
        return matrix
    found = np.linalg.inv(found.astype(float))
    if value < 0.6 or correlation(before, after, found) <= correlation(before, after, matrix):
        return matrix
    return found / found[2, 2]


PEERS = [('ORB 2000 + RANSAC', coarse(lambda: cv2.ORB_create(2000), cv2.NORM_HAMMING, 1, cv2.RANSAC), 1),
         ('SIFT + MAGSAC, half', coarse(cv2.SIFT_create, cv2.NORM_L2, 2, cv2.USAC_MAGSAC), 2),
         ('AKAZE + MAGSAC, half', coarse(cv2.AKAZE_create, cv2.NORM_HAMMING, 2, cv2.USAC_MAGSAC), 2)]


def run_peers(pair):
    """{name: (matrix or None, seconds, processor seconds)}"""
    before, after = (cv2.imread(pair[which], cv2.IMREAD_GRAYSCALE) for which in ('before', 'after'))
    out = {}
    for name, method, factor in PEERS:
        best = (1e9, 1e9)
        for _ in range(2):      # the lesser of two runs, as align-measure does
            wall, cpu = time.perf_counter(), time.process_time()
            matrix, small_before, small_after = method(before, after)
            best = (min(best[0], time.perf_counter() - wall), min(best[1], time.process_time() - cpu))
        out[name] = (None if matrix is None else to_photo(matrix, factor), *best)
        wall, cpu = time.perf_counter(), time.process_time()
        refined = None if matrix is None else refine(matrix, small_before, small_after)
        out[name + ' + ECC'] = (None if matrix is None else to_photo(refined, factor),
                                best[0] + time.perf_counter() - wall, best[1] + time.process_time() - cpu)
    return out


def main():
    tool, folder = sys.argv[1:3]
    with open(os.path.join(folder, 'pairs.json')) as file:
        pairs = json.load(file)
    results = {}
    process = subprocess.Popen([tool], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)
    for pair in pairs:      # in turn, so that the machine's load falls on all alike
        process.stdin.write('%s %s\n' % (pair['before'], pair['after']))
        process.stdin.flush()
        answer = json.loads(process.stdout.readline())
        row = {'Wearmark': (answer['matrix'] if answer['aligned'] else None, answer['seconds'], answer['cpu_seconds'])}
        row.update(run_peers(pair))
        for name, (matrix, wall, cpu) in row.items():
            results.setdefault(name, []).append((*score.judge(pair, matrix), wall, cpu))
    process.stdin.close()
    process.wait()
    print('%-28s %6s %9s %6s %6s %10s %11s %9s %9s' % ('', 'right', 'right no', 'no', 'wrong', 'false yes',
                                                       'median px', 's', 'cpu s'))
    for name, rows in results.items():
        count = lambda verdict: sum(row[0] == verdict for row in rows)
        errors = [row[1] for row in rows if row[0] == 'right']
        print('%-28s %6d %9d %6d %6d %10d %11s %9.3f %9.3f' % (
            name, count('right'), count('right no'), count('no'), count('wrong'), count('false yes'),
            '%.2f' % np.median(errors) if errors else '-', np.median([row[2] for row in rows]),
            np.median([row[3] for row in rows])))
    both = [(a[1], name, b[1]) for name, rows in results.items() if name != 'Wearmark'
            for a, b in zip(results['Wearmark'], rows) if a[0] == b[0] == 'right']
    print('\nOn the pairs both got right, median error (Wearmark, peer, pairs):')
    for name in results:
        common = [(a, b) for a, other, b in both if other == name]
        if common:
            print('%-28s %.2f  %.2f  %d' % (name, *np.median(np.array(common), 0), len(common)))


if __name__ == '__main__':
    main()

"""people.py OUT WAD...: songs that people wrote, to check ears by, never to train on; see README.md beside this file.

WAD are the files of the Debian packages freedoom and freedm (BSD licence), which hold MIDI songs. Writes OUT/midi/ID.mid, OUT/truth/ID.json and
OUT/manifest.json for the songs whose own bar lines can be trusted: the notes lie on the grid, the meter stays 3/4 or 4/4, and the harmony changes
more at the beginning of the notated bar than anywhere else in it. Every song's first two minutes.
"""
import hashlib
import json
import os
import struct
import sys
from bisect import bisect_right

import midi

LONGEST, LEAD, DRUMS = 120.0, 0.5, 9


def songs(path):
    with open(path, 'rb') as file:
        data = file.read()
    count, at = struct.unpack('<II', data[4:12])
    for i in range(count):
        start, size, name = struct.unpack('<II8s', data[at + 16 * i:at + 16 * i + 16])
        name = name.rstrip(b'\0').decode('latin-1')
        if name.startswith('D_') and data[start:start + 4] == b'MThd':
            yield f'{os.path.basename(path)[:-4]}-{name[2:].lower()}', data[start:start + size]


def harmony(notes, ticks):
    """How much the pitches of two beats differ from those of the two before, for every beat."""
    chroma = [[0.0] * 12 for _ in ticks]
    step = ticks[1] - ticks[0]
    for on, off, channel, pitch, _, _ in notes:
        beat = bisect_right(ticks, on + 0.06 * step) - 1
        while channel != DRUMS and 0 <= beat < len(ticks) and ticks[beat] < off - 0.1 * step:
            chroma[beat][pitch % 12] += 2 if pitch < 52 else 1
            beat += 1
    for row in chroma:
        size = sum(v * v for v in row) ** 0.5 or 1
        row[:] = [v / size for v in row]
    return [sum((chroma[i][p] + chroma[i + 1][p] - chroma[i - 1][p] - chroma[i - 2][p]) ** 2 for p in range(12)) if 2 <= i < len(ticks) - 1 else 0
            for i in range(len(ticks))]


def build(data):
    """(events, truth) of a song, or why its bar lines are not trusted."""
    quarter, notes, tempos, meters = midi.read(data)
    if len(notes) < 100:
        return None, 'few notes'
    if len({m[1:] for m in meters}) > 1 or (meters and meters[0][1:] not in ((3, 4), (4, 4))):
        return None, 'meter'
    beats = meters[0][1] if meters else 4
    grid = [k / 4 for k in range(5)] + [1 / 3, 2 / 3]
    if sum(min(abs(n[0] % quarter / quarter - g) for g in grid) < 0.03 for n in notes) < 0.8 * len(notes):
        return None, 'off the grid'
    ticks = [k * quarter for k in range(notes[-1][0] // quarter + 2)]
    changes = harmony(notes, ticks)
    share = [sum(changes[p::beats]) / max(1, len(changes[p::beats])) for p in range(beats)]
    share = [s / (sum(share) or 1) for s in share]
    if share[0] < max(share[1:]) + 0.05:
        return None, 'harmony changes elsewhere ' + ' '.join(f'{s:.2f}' for s in share)
    if not tempos or tempos[0][0] > 0:
        tempos.insert(0, (0, 500000))
    at = [0.0]
    for (a, us), (b, _) in zip(tempos, tempos[1:]):
        at.append(at[-1] + (b - a) * us / 1e6 / quarter)
    starts = [t[0] for t in tempos]

    def seconds(tick):
        i = bisect_right(starts, tick) - 1
        return at[i] + (tick - starts[i]) * tempos[i][1] / 1e6 / quarter
    first = notes[0][0] // quarter
    begin = seconds(first * quarter) - LEAD
    events, program = [], {}
    last = 0
    for on, off, channel, pitch, velocity, which in notes:
        a, b = seconds(on) - begin, seconds(off) - begin
        if a >= LONGEST:
            continue
        if channel != DRUMS and program.get(channel) != which:
            program[channel] = which
            events.append((int(a * 1000) - 1, 1, bytes([0xC0 | channel, which])))
        events += [(int(a * 1000), 3, bytes([0x90 | channel, pitch, velocity])), (int(min(b, LONGEST) * 1000), 2, bytes([0x80 | channel, pitch, 0]))]
        last = on
    number = range(first, last // quarter + 1)
    times = [round(seconds(k * quarter) - begin, 4) for k in number]
    middle = sorted(b - a for a, b in zip(times, times[1:]))[len(times) // 2]
    position = [k % beats + 1 for k in number]
    ones = [t for t, p in zip(times, position) if p == 1]
    return events, dict(group='real', style='people', meter=beats, soundfont='', beats=times, bar_position=position,
                        beats_in_bar=[beats] * len(times), downbeats=ones, counts=[], count_cycle=0, tempo_bpm=round(60 / middle, 3),
                        tempo_nominal=round(60 / middle, 3), sections=[], breaks=[], swing_ratio=None, swing_level='', features={},
                        checks=dict(beats=True, downbeats=True, tempo=True, swing=False, counts=False, sections=False))


def main():
    if len(sys.argv) < 3:
        sys.exit(__doc__)
    out, seen, kept = sys.argv[1], set(), []
    for part in ('midi', 'truth'):
        os.makedirs(f'{out}/{part}', exist_ok=True)
    for path in sys.argv[2:]:
        for name, data in songs(path):
            digest = hashlib.sha256(data).digest()
            if digest in seen:
                continue
            seen.add(digest)
            events, truth = build(data)
            if events is None:
                print(name, truth)
                continue
            midi.write(f'{out}/midi/{name}.mid', events)
            with open(f'{out}/truth/{name}.json', 'w') as file:
                json.dump(dict(id=name, **truth), file)
            kept.append(name)
    with open(f'{out}/manifest.json', 'w') as file:
        json.dump(dict(seed='people', songs=[dict(id=n, group='real', style='', audio=f'audio/{n}.wav', base=None, how=None) for n in kept]), file)
    print(len(kept), 'songs')


if __name__ == '__main__':
    main()

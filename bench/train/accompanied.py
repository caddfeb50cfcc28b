"""accompanied.py OUT --seed S --count N [--unseen]: songs for training, played after the grooves of MMA (Debian package mma).

Forms, chords, tunes, riffs, broken chords and long chords are drawn here; drums, basses and chord playing are those that people wrote into the
grooves of MMA's library, of one groove or of two crossed, or our own. Every twelfth
family of grooves is kept for checking (--unseen). The tempo is near the one that people write such music in. Writes OUT/midi/ID.mid and
OUT/truth/ID.json, as "bench songs" does.
"""
import argparse
import glob
import json
import math
import multiprocessing
import os
import random
import re
import subprocess
import tempfile

import midi

LIBRARY = '/usr/share/mma/lib'
DRUMS = 9
ODD = re.compile(r'metronome|/none|jazz-54|count\.mma|ending\.mma|intro\.mma')
NAMES = 'C Db D Eb E F Gb G Ab A Bb B'.split()
QUALITIES = {'': (0, 4, 7), 'm': (0, 3, 7), '7': (0, 4, 7, 10), 'm7': (0, 3, 7, 10), 'maj7': (0, 4, 7, 11), 'dim': (0, 3, 6), 'sus4': (0, 5, 7),
              'm6': (0, 3, 7, 9), '6': (0, 4, 7, 9), '9': (0, 4, 7, 10, 14), 'm7b5': (0, 3, 6, 10), 'aug': (0, 4, 8), '5': (0, 7, 12)}
MAJOR, MINOR = (0, 2, 4, 5, 7, 9, 11), (0, 2, 3, 5, 7, 8, 10)

# rows of chords as semitones above the key and qualities; each stands for as many units as it has chords
ROWS = {
    'major': ['0 7 9m 5', '0 9m 5 7', '0 5 7 0', '0 5 0 7', '0 4m 5 7', '9m 5 0 7', '0 0 5 7', '0 10 5 0', '2m7 77 0maj7 0maj7', '0maj7 9m7 2m7 77',
              '4m7 97 2m7 77', '0 07 5 5m',
              '0 7 9m 4m 5 0 5 7', '0 5 0 0 5 5 0 0 7 5 0 7', '07 57 07 07 57 57 07 97 2m7 77 07 77', '0 7 0 7', '0 0 7 7 7 7 0 0', '0 2m 0 2m', '5 7 4m 9m',
              '0 7 5 5', '0 0 0 7',
              '97 27 77 0', '0 3 5 8', '0 10', '0', '0sus4 0', '0 57', '07 57', '0 8 10 0', '5maj7 4m7 2m7 0maj7', '0 11m7b5 9m 7', '0 2 5 0', '0 9 2 7',
              '0 5 10 3', '0 0 5 0 7 5 0 7'],
    'minor': ['0m 8 3 10', '0m 10 8 7', '0m 10 8 10', '0m 5m 7 0m', '0m 5m 0m 7', '0m 3 10 5', '0m 0m 5m 7', '2m7b5 77 0m 0m', '0m7 5m7 10 3maj7', '0m 10',
              '0m 8', '0m', '0m7 57', '0m 5', '05 35 55 65',
              '05 105 85 75', '0m 7 0m 7', '0m 0m 7 7 7 7 0m 0m', '0m7 0m7 5m7 0m7 87 77 0m7 77', '0m 8 5m 7', '0m 3 8 7', '0m 1', '0m 10 3 8', '05 05 35 55',
              '0m6 5m6 77 0m', '8 10 0m 0m', '0m 2m7b5 7 0m'],
}
FORMS = ['iAABA', 'iABAB', 'iABABCB', 'AABBAA', 'iAABAC', 'ABCD', 'iAAAA', 'iABCABC', 'AABBCC', 'ABACA', 'iABABAB', 'iABBCAB', 'AAAAAA', 'iAiABA', 'ABCABD',
         'iAABBC']
BASSES = list(range(32, 40)) + [58, 38, 33, 87]
LEADS = [0, 4, 6, 11, 21, 22, 24, 25, 26, 27, 28, 29, 30, 40, 41, 42, 48, 52, 53, 56, 57, 59, 60, 61, 64, 65, 66, 67, 68, 71, 72, 73, 75, 79, 80, 81, 82, 84,
         87, 104, 105, 109, 110]
STRUCK = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 15, 16, 17, 18, 21, 24, 25, 26, 27, 28, 29, 30, 45, 46, 55, 61, 62, 80, 81, 88, 98, 104, 105, 107, 108]
LONG = [16, 18, 19, 21, 44, 48, 49, 50, 51, 52, 54, 60, 61, 89, 90, 91, 92, 94, 95]
OTHERS = (('broken', STRUCK), ('held', LONG), ('chords', STRUCK), ('riff', STRUCK + LEADS))
LOW = dict(bass=[28, 31, 36], broken=[48, 55, 60], held=[48, 52, 55], after=[48, 52, 57], chords=[48, 52, 57], riff=[40, 48, 60])

# The usual tempo of a groove in the beats that people write it in, by its file's name: the first that fits. From the notes in the library where it tells one.
USUAL = [(re.compile(names), tempo) for names, tempo in (
    # three beats, and six eighths as two beats
    ('bald34|lullaby', 84), ('blues34|arpeggiowaltz', 104), ('countrywaltz|popwaltz', 112), ('rock34|rockwaltz|latinwaltz', 130), ('modernjazzwaltz', 142),
    ('fastwaltz|fastjazzwaltz|vienese', 178), ('frenchwaltz|broadwaywaltz', 162), ('waltz', 146), ('68march', 116), ('68swing', 108), ('68|128', 66),
    ('afro-cuban', 140),
    # in two: half as fast as the library counts
    ('stdlib/polka', 116), ('merengue', 132), ('stdlib/samba', 104), ('bwmarch|stdlib/march|dixiemarch', 116), ('stdlib/ska', 122), ('stdlib/broadway$', 132),
    # four beats
    ('germanmarch|march1|polka', 118), ('ragtime|dixie|quickstep', 190), ('charleston', 208), ('bebop|fastbig|fastswing', 200), ('gypsy', 196),
    ('ballad|bald|serenade|hymn|nitejazz|slowrock|slowblues|slowbolero|slowjazz', 72), ('slow', 82), ('mellow|middlebigband|hip-?hop|trip|beguine|bolero', 92),
    ('dnb', 168), ('punk|thr$', 164), ('techno|trance|rave', 134), ('house|dance|disco|digital|electric|boneym', 124), ('metal|mtl|hrk', 130),
    ('fasttwist|twist|twi$|jive|boggie|boogie|fastblues|rockabilly|zydeco', 156), ('westernswing|bluegrass|highfive|strut|showtune|calypso', 150),
    ('spiritual', 140),
    ('tango', 122), ('chacha|rhumba|cuban|son$|mambo|salsa', 116), ('quando', 92), ('bossa', 124), ('reggae', 84), ('zoom/samba|zoom/latin|latin', 112),
    ('afro|mide|desert', 108),
    ('foxtrot|softshoe', 126), ('bigband|swing|jazz|basie|bouncy|evans', 142), ('16|funk|fus|soul|r.?b|rnb', 102), ('blues', 104),
    ('folk|country|cntry|western|hill', 118),
    ('shuffle', 120), ('rock|pop|8beat|beat8|happy|motown', 122), ('ambient|arpeggio', 92), ('', 112))]
IN_TWO = re.compile(r'stdlib/(polka|merengue|samba|bwmarch|march|dixiemarch|ska|broadway)$')


# ---- grooves ----

def grooves(library, is_unseen):
    """The families of grooves: file, beats in a bar, names of what is played through, of fills and of intros."""
    found = []
    for number, path in enumerate(sorted(glob.glob(library + '/*/*.mma'))):
        if ODD.search(path) or (number % 12 == 5) != is_unseen:
            continue
        text = open(path, encoding='latin-1').read()
        time = re.search(r'^\s*time\s+(\d+)', text, re.M | re.I)
        beats = int(time.group(1)) if time else 4
        parts = dict(main=[], fill=[], intro=[])
        for name, note in re.findall(r'^\s*DefGroove\s+(\S+)(.*)$', text, re.M):
            kind = 'fill' if re.search(r'fill|F[AB]$', name + note, re.I) else 'intro' if re.search(r'intro', name, re.I) \
                else None if re.search(r'end|ending|E$', name + note) else 'main'
            if kind:
                parts[kind].append(name)
        if parts['main'] and beats in (3, 4, 6):
            name = os.path.relpath(path, library)[:-4]
            step = 1 / 3 if beats == 6 else 1 / 2 if IN_TWO.search(name.lower()) else 1      # beats of ours to one of the library's
            found.append(dict(file=name, beats=beats, step=step, tempo=next(t for names, t in USUAL if names.search(name.lower())), **parts))
    return found


def compiled(family, plan, chords, tempo, seed):
    """The notes of a family of grooves over bars: [(on, off, channel, pitch, velocity, program)], in beats of MMA."""
    lines = [f'RndSeed {seed}', f'Tempo {tempo:.0f}', f'Use {family["file"]}']
    now = None
    for bar, (groove, chord) in enumerate(zip(plan, chords)):
        if groove != now:
            lines.append(f'Groove {groove}')
            now = groove
        lines.append(f'{bar + 1} {chord}')
    with tempfile.TemporaryDirectory() as folder:
        with open(folder + '/a.mma', 'w') as file:
            file.write('\n'.join(lines) + '\n')
        done = subprocess.run(['mma', '-f', folder + '/a.mid', folder + '/a.mma'], capture_output=True, timeout=120)
        if done.returncode or not os.path.exists(folder + '/a.mid'):
            return None
        with open(folder + '/a.mid', 'rb') as file:
            quarter, notes, _, _ = midi.read(file.read())
        return [(n[0] / quarter, n[1] / quarter) + n[2:] for n in notes]


# ---- what is drawn here ----

class Chord:
    def __init__(self, text, key):
        root = re.match(r'1[01]|\d', text).group()
        if text[len(root):] not in QUALITIES:
            root = text[0]
        self.root, self.quality = (int(root) + key) % 12, text[len(root):]
        self.pitches = [(self.root + q) % 12 for q in QUALITIES[self.quality]]

    def name(self):
        return NAMES[self.root] + self.quality


def rhythm(dice, beats, grid, busy, off):
    """Onsets in a bar, in beats: what falls on the beat more often than what does not, the more so the less it is syncopated."""
    spots = [k / grid for k in range(beats * grid)]
    chosen = []
    for spot in spots:
        weight = 1.3 if spot == 0 else 1.0 if spot == beats / 2 else 0.85 if spot % 1 == 0 else (0.55 if (spot * 2) % 1 == 0 else 0.3) * (0.4 + 1.6 * off)
        if spot % 1 == 0:
            weight *= 1.15 - 0.6 * off
        if dice.random() < weight * busy:
            chosen.append(spot)
    return chosen or [0]


def near(pitch, classes, low, high):
    return min((p for p in range(low, high + 1) if p % 12 in classes), key=lambda p: (abs(p - pitch), p))


def tune(dice, bars, beats, chords, scale, tempo, swung):
    """A tune over bars in phrases of four: motifs that come back, long ends, now and then an upbeat."""
    grid = 4 if tempo < 84 and dice.random() < 0.6 else 2
    busy, off = dice.uniform(0.35, 0.95), dice.choice([0, 0.1, 0.3, 0.6, 1]) * dice.random()
    cells = [rhythm(dice, beats, grid, busy, off) for _ in range(3)] + [rhythm(dice, beats, grid, busy * 0.3, 0)]
    plan = dice.choice([(0, 0, 1, 3), (0, 1, 0, 3), (0, 1, 2, 3), (0, 3, 1, 3), (0, 0, 0, 3), (0, 1, 0, 1), (3, 0, 3, 1), (0, 0, 1, 2)])
    upbeat = dice.choice([0, 0, 0, 0.5, 1, 1, 1.5, 2]) if dice.random() < 0.7 else 0
    upbeat = min(upbeat, beats - 1)
    length = dice.choice([0.5, 0.85, 0.95, 1.0])
    late = dice.choice([0, 0, 0, beats / 2, 1])
    low, high = dice.choice([(55, 76), (60, 81), (65, 88), (48, 69)])
    pitch, memory, events = dice.randint(low + 5, high - 5), {}, []
    for bar in range(bars):
        which = plan[bar % 4]
        again = memory.get((which, bar % 4 if dice.random() < 0.5 else 0)) if dice.random() < 0.75 else None
        steps = again or [dice.choice([-2, -1, -1, 0, 1, 1, 2, dice.randint(-5, 5)]) for _ in range(16)]
        memory[which, bar % 4] = memory[which, 0] = steps
        spots = [s + (late if bar % 4 == 0 and s < late else 0) for s in cells[which]]
        for spot, step in zip(sorted(set(spots)), steps):
            chord = chords(bar + spot / beats)
            pitch = max(low, min(high, pitch + step * 2))
            strong = spot % 1 == 0 and dice.random() < 0.75
            pitch = near(pitch, chord.pitches if strong else scale, low, high)
            events.append((bar * beats + spot, pitch))
        if upbeat and bar % 4 == 3:
            begin = (bar + 1) * beats - upbeat
            events = [e for e in events if e[0] < begin]
            for k in range(int(upbeat * 2)) if upbeat % 1 or dice.random() < 0.6 else range(0, int(upbeat * 2), 2):
                pitch = near(max(low, min(high, pitch + dice.choice([-2, 1, 2, 2, 3]))), scale, low, high)
                events.append((begin + k / 2, pitch))
    if upbeat and dice.random() < 0.6:
        for k in range(int(upbeat * 2)):
            events.insert(k, (-upbeat + k / 2, near(events[0][1] - 2 * (int(upbeat * 2) - k), scale, low - 12, high)))
    loud = dice.randint(75, 115)
    ends = [e[0] for e in events[1:]] + [bars * beats]
    return [(a, a + max(0.1, min(b - a, beats * 1.5) * length), p, min(127, max(30, loud + dice.randint(-8, 8) + (6 if a % beats == 0 else 0))))
            for (a, p), b in zip(events, ends) if b > a]


def riff(dice, bars, beats, chords, tempo, low, is_chordal):
    """A figure of one bar or two that stays, moved along with the chord."""
    span = dice.choice([1, 1, 2, 2])
    grid = 4 if tempo < 118 and dice.random() < 0.6 else 2
    spots = rhythm(dice, beats * span, grid, dice.uniform(0.3, 0.8), dice.choice([0, 0.3, 0.7, 1]))
    if dice.random() < 0.85 and 0 not in spots:
        spots.insert(0, 0)
    figure = [dice.choice([0, 0, 0, 7, 12, 10, 5, 3]) if s else 0 for s in spots]
    length, loud, events = dice.choice([0.3, 0.6, 0.95]), dice.randint(70, 110), []
    is_even = dice.random() < 0.4
    for start in range(0, bars, span):
        ends = spots[1:] + [beats * span]
        for spot, end, step in zip(spots, ends, figure):
            bar = start + spot / beats
            if bar >= bars:
                continue
            chord = chords(bar)
            root = low + (chord.root - low) % 12
            at, stop = start * beats + spot, start * beats + spot + (end - spot) * length
            velocity = min(127, loud + (0 if is_even else 10 if spot % beats == 0 else dice.randint(-10, 4)))
            if is_chordal:
                events += [(at, stop, low + (p - low) % 12, velocity) for p in chord.pitches]
            else:
                events.append((at, stop, near(root + step, chord.pitches, low, low + 26) if step not in (0, 12) else root + step, velocity))
    return events


def broken(dice, bars, beats, chords, tempo, low):
    """Chords one note after the other, without an end."""
    grid = dice.choice([2, 2, 4, 3]) if tempo < 125 else 2
    shape = dice.choice([(0, 1, 2, 3), (0, 1, 2, 1), (0, 2, 1, 2), (0, 2, 3, 2), (0, 1, 2, 3, 4, 3, 2, 1), (0, 2, 4, 3, 2, 1), (3, 2, 1, 0), (0, 1, 2), (0, 3,
                         2, 3, 1, 3, 2, 3)])
    restarts = dice.random() < 0.8
    loud, accent, events = dice.randint(60, 100), dice.choice([0, 0, 8, 15]), []
    for k in range(bars * beats * grid):
        at = k / grid
        chord = chords(at / beats)
        tones = sorted(low + (p - low) % 12 for p in chord.pitches)
        tones += [t + 12 for t in tones]
        place = shape[(k % (beats * grid) if restarts else k) % len(shape)]
        end = at + dice.choice([0.9, 0.9, 1.5]) / grid
        events.append((at, end, tones[place % len(tones)], min(127, loud + (accent if at % beats == 0 else 0) + dice.randint(-5, 5))))
    return events


def held(dice, bars, beats, chords, low):
    """Long chords, struck anew where the chord changes, or at every bar."""
    events, now, start, is_anew, loud = [], None, 0, dice.random() < 0.3, dice.randint(50, 90)
    for half in range(bars * 2 + 1):
        chord = chords(half / 2) if half < bars * 2 else None
        if chord is None or now is None or chord.name() != now.name() or (is_anew and half % 2 == 0):
            if now is not None:
                events += [(start, half * beats / 2 - 0.05, low + (p - low) % 12, loud) for p in now.pitches]
            now, start = chord, half * beats / 2
    return events


def walked(dice, bars, beats, chords, low):
    """A plain bass: roots and fifths in one of a few ways."""
    way = dice.choice(['root', 'root', 'fifth', 'beats', 'eighths', 'walk', 'tresillo', 'dotted'])
    events, loud, pitch = [], dice.randint(75, 110), low + 5
    length = dice.choice([0.5, 0.9])
    for bar in range(bars):
        half = beats // 2 if beats == 4 else 1
        spots = dict(root=[0], fifth=[0, half], beats=list(range(beats)), eighths=[k / 2 for k in range(2 * beats)], walk=list(range(beats)),
                     tresillo=[0, 1.5, 3] if beats == 4 else [0, 1.5], dotted=[0, beats / 2 - 0.5, beats / 2] if beats == 4 else [0, 2])[way]
        if way == 'root' and chords(bar).name() != chords(bar + 0.5).name():
            spots = [0, beats / 2]
        for spot, end in zip(spots, spots[1:] + [beats]):
            chord = chords(bar + spot / beats)
            root = low + (chord.root - low) % 12
            if way == 'walk':
                pitch = root if spot == 0 else near(pitch + dice.choice([-3, -2, 2, 3]), chord.pitches, low, low + 19)
            else:
                pitch = root + (7 if way in ('fifth', 'tresillo') and spot and dice.random() < 0.8 else 0)
            events.append((bar * beats + spot, bar * beats + spot + (end - spot) * length, pitch, loud + dice.randint(-6, 6)))
    return events


def after(dice, bars, beats, chords, tempo, low):
    """Chords after the beat: on every second half of it, or on every beat that the bass leaves out."""
    spots = [k + 0.5 for k in range(beats)] if tempo < 160 and dice.random() < 0.6 else [1, 2] if beats == 3 else [1, 3]
    length, loud, skipped = dice.choice([0.15, 0.3, 0.45]), dice.randint(70, 110), dice.choice([0, 0, 0, 0.1])
    return [(bar * beats + spot, bar * beats + spot + length, low + (p - low) % 12, loud + dice.randint(-6, 6))
            for bar in range(bars) for spot in spots if dice.random() >= skipped for p in chords(bar + spot / beats).pitches]


def progression(dice, bars, beats, key, mode):
    """Chords of so many bars: a function of the bar, and the same as MMA writes it."""
    row = [Chord(c, key) for c in dice.choice(ROWS[mode]).split()]
    unit = dice.choice([0.5, 1, 1, 1, 1, 2, 2, 4]) if len(row) <= 4 else dice.choice([0.5, 1, 1])
    if beats == 3:
        unit = max(1, unit)
    end = Chord(dice.choice(['7', '77', '5', '10', '0'] if mode == 'major' else ['7', '77', '10', '0m', '8']), key) if dice.random() < 0.5 else None

    def chord(bar):
        if end is not None and bar % 8 >= 7.5 - 0.5 * (unit >= 1):
            return end
        return row[int(bar / unit + 1e-6) % len(row)]
    return chord


class Song:
    def __init__(self, seed, number, families):
        dice = self.dice = random.Random(f'{seed}/{number}')
        self.notes, self.programs = [], {}
        family = dice.choice(families)
        drums = family if dice.random() < 0.65 else dice.choice([f for f in families if f['beats'] == family['beats'] and f['step'] == family['step']
                                                                 and abs(math.log(f['tempo'] / family['tempo'])) < 0.3])
        is_short = family['step'] < 1
        self.beats = 3 if family['beats'] == 3 else 4        # a bar of six eighths or in two is half a bar of four beats
        self.tempo = math.sqrt(family['tempo'] * drums['tempo']) * math.exp(dice.uniform(-0.12, 0.12))
        mode, key = dice.choice(['major', 'major', 'minor']), dice.randrange(12)
        scale = [(key + s) % 12 for s in (MAJOR if mode == 'major' else MINOR)]
        bars_of = {l: dice.choice([4, 8, 8, 8, 8, 12, 16]) for l in 'ABCD'} | {'i': dice.choice([2, 4, 4, 8])}
        rows = {}
        for label in 'iABCD':
            rows[label] = progression(dice, bars_of[label], self.beats, key, mode if dice.random() < 0.8 else 'minor' if mode == 'major' else 'major')
        if dice.random() < 0.6:
            rows['i'] = rows['A']
        if dice.random() < 0.25:
            rows['B'] = rows['C'] = rows['A']
        form, limit, self.sections, total = dice.choice(FORMS), dice.uniform(75, 125) * self.tempo / 60 / self.beats, [], 0
        for label in form * 2:
            if total >= limit:
                break
            extra = dice.choice([1, 1, 2, -1]) if dice.random() < 0.06 and bars_of[label] >= 8 else 0
            self.sections.append((label, total, bars_of[label] + extra))
            total += bars_of[label] + extra
        self.bars = total
        kind = dice.choices(['both', 'band', 'drums', 'own'], [6, 2.2, 2, 1])[0]      # whose playing it is
        of_label = {l: (dice.choice(family['main']), dice.choice(drums['main'])) for l in 'iABCD'}
        if dice.random() < 0.4:
            of_label = {l: of_label['A'] for l in 'iABCD'}
        is_filled = dice.random() < 0.6
        plan, beat_plan, chords = [], [], []
        for label, start, bars in self.sections:
            for bar in range(bars):
                last = bar == bars - 1 and is_filled
                for to, whose, usual in zip((plan, beat_plan), (family, drums), of_label[label]):
                    is_intro = label == 'i' and whose['intro'] and bars == 4
                    to.append(dice.choice(whose['fill']) if last and whose['fill'] else whose['intro'][0] if is_intro else usual)
                chords.append((rows[label], bar))
        self.is_mute = {}
        if kind != 'own':
            slashes = lambda text, beats: [text(b) for b in range(beats)]
            written = []
            for row, bar in chords:
                if is_short:
                    for half in (0, 0.5):
                        written.append(row(bar + half).name())
                else:
                    names = [row(bar + b / self.beats).name() for b in range(self.beats)]
                    written.append(' '.join(n if i == 0 or n != names[i - 1] else '/' for i, n in enumerate(names)))
            twice = lambda p: [g for g in p for _ in range(2)] if is_short else p
            step = family['step']
            mma_tempo = self.tempo / step
            if kind in ('both', 'band'):
                found = compiled(family, twice(plan), written, mma_tempo, number + 1)
                if found is None:
                    raise ValueError(family['file'])
                cross = kind == 'both' and drums is not family
                self.take(found, step, lambda c: c != DRUMS or (kind == 'both' and not cross))
            if kind == 'drums' or (kind == 'both' and drums is not family):
                found = compiled(drums, twice(beat_plan), written, mma_tempo, number + 1)
                if found is None:
                    raise ValueError(drums['file'])
                self.take(found, step, lambda c: c == DRUMS)
        self.melodic = sorted({n[2] for n in self.notes} - {DRUMS})
        if len(self.melodic) > 10:
            for channel in self.melodic[10:]:
                self.notes = [n for n in self.notes if n[2] != channel]
            self.melodic = self.melodic[:10]
        self.free = [c for c in range(16) if c != DRUMS and c not in self.melodic]
        swung = self.swing()
        bare = kind in ('own', 'drums') or len(self.melodic) < 2
        layers = []
        if bare:
            layers.append(('bass', dice.choice(BASSES)))
            layers += [(k, dice.choice(p)) for k, p in (('after', STRUCK), *OTHERS) if dice.random() < 0.4]
        else:
            layers += [(k, dice.choice(p)) for k, p in OTHERS if dice.random() < 0.09]
        if dice.random() < 0.85 or len(layers) < 2 and bare:
            layers.append(('tune', dice.choice(LEADS)))
            if dice.random() < 0.3:
                layers.append(('tune', dice.choice(LEADS + STRUCK)))
        bass_way = dice.random() < 0.5
        for what, program in layers:
            if not self.free:
                break
            channel, made = self.free.pop(), {}
            self.programs[channel] = program
            base = {k: dice.choice(lows) for k, lows in LOW.items()}.get(what)
            for label, start, bars in self.sections:
                if what == 'tune' and (label == 'i' and dice.random() < 0.6 or dice.random() < 0.12):
                    continue
                if label not in made:
                    # drawn for the usual length of the section, so that a section a bar longer has the same music
                    n, row = bars_of[label] + 2, rows[label]
                    made[label] = tune(dice, n, self.beats, row, scale, self.tempo, swung) if what == 'tune' \
                        else riff(dice, n, self.beats, row, self.tempo, base, False) if what == 'bass' and bass_way \
                        else walked(dice, n, self.beats, row, base) if what == 'bass' \
                        else broken(dice, n, self.beats, row, self.tempo, base) if what == 'broken' \
                        else after(dice, n, self.beats, row, self.tempo, base) if what == 'after' \
                        else held(dice, n, self.beats, row, base) if what == 'held' else riff(dice, n, self.beats, row, self.tempo, base, what == 'chords')
                for a, b, pitch, velocity in made[label]:
                    if a < bars * self.beats - 1e-6 and (a >= 0 or start > 0 or what == 'tune'):
                        a, b = self.swayed(a, swung), min(self.swayed(b, swung), bars * self.beats + 0.5)
                        self.notes.append((start * self.beats + a, start * self.beats + max(b, a + 0.05), channel, pitch, velocity, program))
        if dice.random() < 0.18:
            self.push(swung)
        self.arrange()

    def take(self, found, step, is_wanted):
        for a, b, channel, pitch, velocity, program in found:
            if is_wanted(channel) and a * step < self.bars * self.beats - 1e-6:
                self.notes.append((max(0, a * step), b * step, channel, pitch, velocity, program))

    def swing(self):
        """Where in the beat its second half falls, as the players have it."""
        halves = sum(1 for n in self.notes if 0.47 < n[0] % 1 < 0.53)
        thirds = sum(1 for n in self.notes if 0.62 < n[0] % 1 < 0.70)
        if halves + thirds == 0:
            return self.dice.choice([0.5, 0.5, 0.62, 0.667])
        return 0.667 if thirds > halves else 0.5

    @staticmethod
    def swayed(at, swung):
        whole, part = at // 1, at % 1
        return whole + (part / 0.5 * swung if part < 0.5 else swung + (part - 0.5) / 0.5 * (1 - swung))

    def push(self, swung):
        """Some players come in half a beat before the bar, nearly always or now and then, as people do."""
        dice = self.dice
        ahead = {c: dice.choice([0.3, 0.6, 0.95]) for c in {n[2] for n in self.notes} - {DRUMS} if dice.random() < 0.5}
        early, when = dice.choice([1 - swung, 1 - swung, 0.25]), {}
        moved = []
        for a, b, channel, *rest in self.notes:
            place = round(a * 2 / self.beats)
            if channel in ahead and place > 0 and abs(a - place * self.beats / 2) < 0.08 and (self.beats == 4 or place % 2 == 0):
                if when.setdefault((channel, place), dice.random()) < ahead[channel] * (1 if place % 2 == 0 else 0.5):
                    a -= early
            moved.append((a, b, channel, *rest))
        self.notes = sorted(moved)

    def arrange(self):
        """Who is silent when; other instruments than those written; louder and softer players."""
        dice = self.dice
        channels = sorted({n[2] for n in self.notes})
        others = [c for c in channels if c != DRUMS]
        gone = set()
        if DRUMS in channels and dice.random() < 0.25 and len(others) > 1:
            gone.add(DRUMS)
        for c in others:
            if len(others) - len(gone) > 2 and dice.random() < 0.1:
                gone.add(c)
        quiet = {}
        is_layered, is_sparse = dice.random() < 0.4, dice.random() < 0.4
        entered = set(dice.sample(channels, max(1, len(channels) // 3))) if is_layered else set(channels)
        for i, (label, start, bars) in enumerate(self.sections):
            plays = set(entered)
            if is_sparse and label != 'A':
                plays = {c for c in plays if dice.random() < 0.8} or plays
            quiet[i] = set(channels) - plays
            left = [c for c in channels if c not in entered]
            dice.shuffle(left)
            entered |= set(left[:dice.choice([1, 2, 3])])
        swap = {}
        if dice.random() < 0.5:
            for c in others:
                if dice.random() < 0.5:
                    pitches = sorted(n[3] for n in self.notes if n[2] == c)
                    middle = pitches[len(pitches) // 2]
                    swap[c] = dice.choice(BASSES if middle < 46 else STRUCK + LONG + LEADS)
        kept, edges = [], [s[1] * self.beats for s in self.sections]
        for n in self.notes:
            section = max((i for i, e in enumerate(edges) if n[0] >= e - 1e-6), default=0)
            if n[2] in gone or n[2] in quiet[section]:
                continue
            kept.append(n[:5] + (swap.get(n[2], n[5]),))
        self.notes = sorted(kept)
        self.level = {c: dice.randint(70, 127) for c in channels}
        self.kit = dice.choice([0, 0, 0, 0, 8, 16, 24, 25, 32, 40])

    def write(self, folder, name):
        dice, beats = self.dice, self.beats
        if len(self.notes) < 60:
            raise ValueError('next to nothing is played')
        first = int(min(n[0] for n in self.notes) // 1)
        first = min(0, first) if first > -beats else 0
        count = self.bars * beats
        drift = 0 if dice.random() < 0.6 else dice.uniform(0, 0.025)
        times, now, bend = {}, dice.uniform(0.2, 2.5), 0
        slows = dice.random() < 0.2
        for beat in range(first, count + 9):
            times[beat] = now
            bend = 0.93 * bend + dice.gauss(0, 0.37) * drift
            late = max(0, beat - (count - 8)) * 0.02 if slows else 0
            now += 60 / self.tempo * (1 + bend + late)

        def at(beat):
            beat = min(max(beat, first), count + 7.9)
            whole = int(beat // 1)
            return times[whole] + (times[whole + 1] - times[whole]) * (beat - whole)
        jitter = dice.choice([0, 0, 0.003, 0.006, 0.01])
        drag = {c: dice.gauss(0, 0.004) if jitter else 0 for c in range(16)}
        events = []
        for c, level in self.level.items():
            events += [(0, 0, bytes([0xB0 | c, 7, level])), (0, 0, bytes([0xB0 | c, 10, dice.randint(30, 97)]))]
        events.append((0, 0, bytes([0xC0 | DRUMS, self.kit])))
        program = {}
        played = [n for n in self.notes if n[0] >= first]
        for a, b, c, pitch, velocity, which in played:
            start = max(0.02, at(a) + drag[c] + dice.gauss(0, jitter))
            end = max(start + 0.03, at(b) + drag[c] - 0.004)
            if c != DRUMS and program.get(c) != which:
                program[c] = which
                events.append((max(0, int(start * 1000) - 2), 1, bytes([0xC0 | c, which])))
            pitch = pitch if 0 <= pitch < 128 else pitch % 12 + 60
            events.append((int(start * 1000), 3, bytes([0x90 | c, pitch, max(1, min(127, velocity))])))
            events.append((int(end * 1000), 2, bytes([0x80 | c, pitch, 0])))
        midi.write(f'{folder}/midi/{name}.mid', events)

        # beats from the first to the last that is played
        begin = max(first, int(min(n[0] for n in played) // 1)) if min(n[0] for n in played) < 0 else int(min(n[0] for n in played) / beats + 1e-6) * beats
        end = min(count, int(max(n[0] for n in played)) + 1)
        cycle = 6 if beats == 3 else 8
        starts = [s[1] * beats for s in self.sections]
        counts = []
        for beat in range(begin, end):
            last = max((s for s in starts if s <= beat), default=0)
            counts.append((beat - last) % cycle + 1)
        sections = []
        for i, (label, start, bars) in enumerate(self.sections):
            a, b = start * beats, min((start + bars) * beats, end)
            if a >= begin and a < end:
                sections.append(dict(start=round(times[a], 4), end=round(times[b], 4), label=label, name=label, beats=b - a))
        truth = dict(beats=[round(times[b], 4) for b in range(begin, end)], bar_position=[b % beats + 1 for b in range(begin, end)], beats_in_bar=beats,
                     counts=counts, count_cycle=cycle, tempo_bpm=round(self.tempo, 3), sections=sections, breaks=None)
        with open(f'{folder}/truth/{name}.json', 'w') as file:
            json.dump(truth, file)


def make(job):
    out, seed, number, library, is_unseen = job
    families, name = grooves(library, is_unseen), f'groove-{seed}-{number:04d}'
    for retry in range(8):
        try:
            Song(seed, number + 100000 * retry, families).write(out, name)
            return ''
        except (ValueError, subprocess.TimeoutExpired) as error:
            told = str(error)
    return f'{name}: {told}'


def main():
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument('out')
    parser.add_argument('--seed', required=True)
    parser.add_argument('--count', type=int, required=True)
    parser.add_argument('--unseen', action='store_true', help='only the families of grooves that are kept for checking')
    parser.add_argument('--library', default=LIBRARY)
    parser.add_argument('--jobs', type=int, default=1)
    asked = parser.parse_args()
    for part in ('midi', 'truth'):
        os.makedirs(f'{asked.out}/{part}', exist_ok=True)
    with multiprocessing.Pool(asked.jobs) as pool:
        for told in pool.imap_unordered(make, [(asked.out, asked.seed, n, asked.library, asked.unseen) for n in range(asked.count)]):
            if told:
                print(told, flush=True)


if __name__ == '__main__':
    main()

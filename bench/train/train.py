"""train.py OUT --train SONGS SOUND --check SONGS SOUND [--seconds 350] [--seed 4] [--after EAR] [--shape 16 32 48]: trains an ear.

See README.md beside this file.
"""
import argparse
import glob
import json
import math
import multiprocessing
import os
import struct
import time

import numpy as np
import torch
import torch.nn as nn
import torch.nn.functional as F

import hearing

BANDS, HEADS, KERNEL, LAYERS = 72, 5, 5, 10
SHAPE = 16, 32, 48                          # what the first, the second and all further layers put out
CROP, BATCH, RATE, DROP, STRETCH = 2048, 32, 3e-3, 0.1, 0.12
WEIGHTS = (1, 1.2, 1.5, 2.0, 0.3)          # of the heads in the loss: beat, one, eight, start, stopped
DEVICE = 'cuda' if torch.cuda.is_available() else 'cpu'
CONTEXT = multiprocessing.get_context('spawn')


def read(songs, sound, is_waiting=False, but=()):
    """
    The songs with what is heard of them, which is kept beside the sound, but for those of some names. While the rest is still being played, only
    those that are there.
    """
    table, found = hearing.bands(), []
    for path in sorted(glob.glob(songs + '/truth/*.json')):
        name = os.path.basename(path)[:-5]
        kept = f'{sound}/{name}.levels.npy'
        if name in but or (is_waiting and not os.path.exists(kept)):
            continue
        truth = json.load(open(path))
        if not os.path.exists(kept):
            part = f'{kept}.{os.getpid()}.npy'
            np.save(part, hearing.kept(hearing.hear(np.load(f'{sound}/{name}.npy').astype(np.float32) / 32768, table)))
            os.replace(part, kept)
        beats, counts = np.array(truth['beats']), np.array(truth['counts'] or [0] * len(truth['beats']))
        levels = np.load(kept)
        found.append(dict(
            name=name,
            kind=next((k + ' ' for k in ('crossed', 'strange', 'groove', 'free') if k in name), ''),
            levels=torch.from_numpy(levels),
            seconds=len(levels) / hearing.FRAMES_A_SECOND,
            events=[beats, beats[np.array(truth['bar_position']) == 1], beats[counts == 1], np.array([s['start'] for s in truth['sections']])],
            stops=None if truth['breaks'] is None else [(b['start'], b['end']) for b in truth['breaks'] if b['kind'] == 'stop']))
    return found


def labels(song, start, stretch, count):
    """What is true of a crop, fifty times a second, and where it counts: [heads x count] each."""
    y, mask = np.zeros((HEADS, count), np.float32), np.ones((HEADS, count), np.float32)

    def place(seconds):
        return ((np.asarray(seconds) * hearing.FRAMES_A_SECOND - start) / stretch - 0.5) / 2
    for head, events in enumerate(song['events']):
        at = np.rint(place(events)).astype(int)
        reach = 1 if head < 2 else 2
        for d in range(-reach, reach + 1):
            near = at + d
            near = near[(near >= 0) & (near < count)]
            y[head, near] = np.maximum(y[head, near], (1, 0.5, 0.25)[abs(d)])
    if song['stops'] is None:                   # nobody knows
        mask[4] = 0
    for a, b in song['stops'] or ():
        a, b = (int(round(float(place(t)))) for t in (a, b))
        y[4, max(0, a):max(0, min(count, b))] = 1
    steps, end = np.arange(count), float(place(song['seconds']))
    mask[:, (steps > end) | (steps < float(place(0)) - 60)] = 0
    return y, mask


class Ear(nn.Module):
    """The network of src/Scuff.Audio/Ears/Ear.cs."""

    def __init__(self, shape):
        super().__init__()
        shapes, figures, width = shape
        self.c1 = nn.Conv2d(1, shapes, (3, 3), padding=(1, 0))
        self.c2 = nn.Conv2d(shapes, figures, (1, 10))
        self.c3 = nn.Conv2d(figures, width, (3, 4), padding=(1, 0))
        self.dil = nn.ModuleList([nn.Conv1d(width, width, KERNEL, padding=2 * 2 ** i, dilation=2 ** i) for i in range(LAYERS)])
        self.mix = nn.ModuleList([nn.Conv1d(width, width, 1) for _ in range(LAYERS)])
        self.head = nn.Conv1d(width, HEADS, 1)
        self.drop = nn.Dropout1d(DROP)
        with torch.no_grad():
            self.head.bias[:] = -2.5

    def forward(self, levels):
        # bending grows with what it bends, so that the largest may be taken before
        x = F.dropout(F.elu(F.max_pool2d(self.c1(levels.unsqueeze(1)), (1, 3))), DROP, self.training)
        x = F.dropout(F.elu(F.max_pool2d(self.c2(x), (1, 3))), DROP, self.training)
        x = self.drop(F.avg_pool1d(F.elu(self.c3(x)).squeeze(3), 2))
        for far, mix in zip(self.dil, self.mix):
            x = x + mix(self.drop(F.elu(far(x))))
        return self.head(F.elu(x))


def curves(chance, n, points, deviation):
    return np.stack([np.interp(np.arange(BANDS), np.linspace(0, BANDS - 1, points), r) for r in chance.normal(0, deviation, (n, points))])[:, None]


def plan(songs, lengths, firsts, chance, which):
    """What a batch of some songs is made of: which stretches of them, how each is changed, and what is true of it."""
    frames, n = CROP * 2, len(which)
    y, mask = np.zeros((n, HEADS, CROP), np.float32), np.zeros((n, HEADS, CROP), np.float32)
    starts, stretches = np.zeros((n, 1)), np.ones((n, 1))
    keep, floors = np.ones((n, 1, BANDS)), chance.uniform(-1.5, 1.2, (n, 1, 1)) + curves(chance, n, 4, 0.5)
    for i, k in enumerate(which):
        stretch = float(np.exp(chance.uniform(-STRETCH, STRETCH))) if chance.random() < 0.7 else 1.0
        span = frames * stretch
        start = chance.uniform(-150, max(1, lengths[k] - span + 300)) if lengths[k] > span * 0.6 else 0.0
        starts[i], stretches[i] = start, stretch
        y[i], mask[i] = labels(songs[k], start, stretch, CROP)

        # bands that a recording lacks
        if chance.random() < 0.15:
            keep[i, 0, int(chance.integers(40, 70)):] = 0
        if chance.random() < 0.15:
            keep[i, 0, :int(chance.integers(3, 14))] = 0
        if chance.random() < 0.2:
            a = int(chance.integers(0, BANDS - 8))
            keep[i, 0, a:a + int(chance.integers(3, 8))] = 0
    falls = np.where(chance.random((n, 1, 1)) < 0.2, chance.uniform(0.08, 0.4, (n, 1, 1)), 1e3)
    colours = curves(chance, n, 6, 0.6) + chance.normal(0, 0.4, (n, 1, 1))
    numbers = [y, mask, keep, floors, chance.random((n, 1, 1)) < 0.25, falls, colours, starts, stretches]
    return [np.ascontiguousarray(a, np.float32) for a in numbers] + [firsts[which][:, None], lengths[which][:, None], chance.integers(-4, 5, (n, 1, 1))]


def keep_planning(queue, songs, lengths, firsts, seed, often):
    torch.set_num_threads(1)
    chance = np.random.default_rng(seed)
    lots = np.repeat(np.arange(len(songs)), [1 if s['kind'] == 'groove ' else often for s in songs])
    while True:
        queue.put(plan(songs, lengths, firsts, chance, chance.choice(lots, BATCH)))


class Crops:
    """Stretches of songs, each changed by chance, in batches, which processes beside this one plan."""

    def __init__(self, songs, seed, planners, often):
        self.songs, self.seed, self.planners, self.often, self.turn = [], seed, planners, often, 0
        self.all, self.lengths, self.running, self.coming = None, np.zeros(0, int), [], []
        self.take(songs)

    def take(self, songs):
        """More songs beside those that are there."""
        levels = [s.pop('levels') for s in songs]
        self.songs += songs
        self.all = torch.cat(([] if self.all is None else [self.all]) + [l.to(DEVICE) for l in levels])
        self.lengths = np.concatenate([self.lengths, [len(l) for l in levels]])
        firsts = np.cumsum([0, *self.lengths])[:-1]

        # what was planned with fewer songs stays right, so it goes on until all new planners have something
        for queue, process in self.coming:
            process.kill()
        self.coming = []
        for i in range(self.planners):
            queue = CONTEXT.Queue(6)
            asked = queue, self.songs, self.lengths, firsts, [self.seed, i, len(self.songs)], self.often
            process = CONTEXT.Process(target=keep_planning, args=asked, daemon=True)
            process.start()
            self.coming.append((queue, process))

    def batch(self):
        if self.coming and (not self.running or not any(queue.empty() for queue, _ in self.coming)):
            for _, process in self.running:
                process.kill()
            self.running, self.coming = self.coming, []
        self.turn += 1
        given = [torch.from_numpy(a) for a in self.running[self.turn % len(self.running)][0].get()]
        if DEVICE == 'cuda':
            given = [t.pin_memory().to(DEVICE, non_blocking=True) for t in given]
        y, mask, keep, floor, is_noisy, fall, colour, start, stretch, first, length, up = given
        n, frames = len(y), CROP * 2
        at = start + torch.arange(frames, device=DEVICE) * stretch
        whole = at.floor().long()
        part, inside = (at - whole).unsqueeze(2), ((whole >= 0) & (whole < length - 1)).unsqueeze(2)
        row = torch.minimum(whole.clamp(min=0), length - 2) + first
        x = (self.all[row].float() * (1 - part) + self.all[row + 1].float() * part) / hearing.STEPS_A_LEVEL * inside

        # another key
        x = torch.gather(x, 2, (torch.arange(BANDS, device=DEVICE).view(1, 1, BANDS) - up).clamp(0, BANDS - 1).expand(n, frames, BANDS))

        # another colour and loudness
        x = (x + colour * x.clamp(max=1)).clamp(min=0)

        # noise
        x = torch.where(is_noisy > 0, torch.logaddexp(x, floor + 0.3 * torch.randn_like(x)).clamp(min=0), x)

        # a hall
        for lag in (1, 2, 4, 8):
            x = torch.maximum(x, F.pad(x[:, :-lag], (0, 0, lag, 0)) - fall * lag)
        return x * keep, y, mask


def f_measure(truth, heard, tolerance):
    i = j = hits = 0
    while i < len(truth) and j < len(heard):
        d = heard[j] - truth[i]
        hits, i, j = (hits + 1, i + 1, j + 1) if abs(d) <= tolerance else (hits, i, j + 1) if d < 0 else (hits, i + 1, j)
    return 2 * hits / max(1, len(truth) + len(heard))


def peaks(likely, threshold):
    tops = np.where((likely > threshold) & (likely >= np.pad(likely, (1, 0))[:-1]) & (likely > np.pad(likely, (0, 1))[1:]))[0]
    kept = []
    for top in tops:
        if kept and top - kept[-1] < 8:
            kept[-1] = top if likely[top] > likely[kept[-1]] else kept[-1]
        else:
            kept.append(top)
    return (np.array(kept) * 2 + 0.5) / hearing.FRAMES_A_SECOND


def check(ear, songs):
    torch.backends.cudnn.benchmark = False
    ear.eval()
    scores = {}
    with torch.no_grad():
        for song in songs:
            likely = torch.sigmoid(ear(song['levels'].to(DEVICE).float().unsqueeze(0) / hearing.STEPS_A_LEVEL))[0].cpu().numpy()
            for head, (name, threshold, tolerance) in enumerate((('beat', .4, .07), ('one', .35, .07), ('eight', .3, .07), ('start', .25, .5))):
                key = song['kind'] + name
                scores.setdefault(key, []).append(f_measure(song['events'][head], peaks(likely[head], threshold), tolerance))
    ear.train()
    torch.backends.cudnn.benchmark = True
    return {k: round(float(np.mean(v)), 3) for k, v in scores.items()}


def reload(ear, path):
    """Takes over the weights of a file of write()."""
    with open(path, 'rb') as file:
        head = json.loads(file.read(struct.unpack('<I', file.read(4))[0]))
        for tensor in head['tensors']:
            numbers = np.frombuffer(file.read(4 * math.prod(tensor['shape'])), '<f4').reshape(tensor['shape'])
            ear.state_dict()[tensor['name']].copy_(torch.from_numpy(numbers.copy()))


def write(ear, path):
    header, body = [], b''
    for name, value in ear.state_dict().items():
        numbers = value.detach().float().cpu().numpy()
        header.append(dict(name=name, shape=list(numbers.shape)))
        body += numbers.astype('<f4').tobytes()
    head = json.dumps(dict(c1=ear.c1.out_channels, c2=ear.c2.out_channels, c=ear.c3.out_channels, layers=LAYERS, tensors=header)).encode()
    with open(path, 'wb') as file:
        file.write(struct.pack('<I', len(head)) + head + body)


def main():
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument('out')
    parser.add_argument('--train', nargs=2, required=True, action='append', metavar=('SONGS', 'SOUND'), help='may be given several times')
    parser.add_argument('--check', nargs=2, required=True, metavar=('SONGS', 'SOUND'))
    parser.add_argument('--seconds', type=float, default=350, help='from the start of the program to the end of training')
    parser.add_argument('--seed', type=int, default=4)
    parser.add_argument('--after', help='an ear that has been trained before and goes on from there')
    parser.add_argument('--shape', type=int, nargs=3, default=SHAPE, help='how wide the layers are')
    parser.add_argument('--until', type=float, help='seconds since 1970 at which training ends, in place of --seconds')
    parser.add_argument('--compile', action='store_true', help='let PyTorch compile the network first')
    parser.add_argument('--rate', type=float, default=RATE, help='how far a step goes at most')
    parser.add_argument('--grow', type=float, default=0, help='look again every so many seconds whether more of the songs have been played')
    parser.add_argument('--own', type=int, default=1, help='how much more often a song of ours is taken than one over grooves')
    asked = parser.parse_args()
    begun = time.time()
    if asked.until:
        asked.seconds = asked.until - begun
    torch.manual_seed(asked.seed)
    torch.backends.cuda.matmul.allow_tf32 = torch.backends.cudnn.allow_tf32 = torch.backends.cudnn.benchmark = True
    crops, songs = Crops([s for pair in asked.train for s in read(*pair, asked.grow > 0)], asked.seed, 2, asked.own), read(*asked.check)
    ear, mean = Ear(asked.shape).to(DEVICE), Ear(asked.shape).to(DEVICE)
    if asked.after:
        reload(ear, asked.after)
    mean.load_state_dict(ear.state_dict())
    step, told, started = 0, 0.0, time.time()
    looked = started
    print(len(crops.songs), 'songs read in', round(started - begun), 's', flush=True)
    heard = torch.compile(ear) if asked.compile else ear
    descent = torch.optim.AdamW(ear.parameters(), lr=asked.rate, weight_decay=1e-2, betas=(0.9, 0.98), **(dict(fused=True) if DEVICE == 'cuda' else {}))
    weights = torch.tensor(WEIGHTS, device=DEVICE).view(1, HEADS, 1)
    while (passed := (time.time() - started) / (asked.seconds - started + begun)) < 1:
        for group in descent.param_groups:
            group['lr'] = asked.rate * min(1, (step + 1) / 200) * (0.5 + 0.5 * math.cos(math.pi * passed)) + 1e-5
        if asked.grow and time.time() - looked > asked.grow:
            names = {s['name'] for s in crops.songs}
            more = [s for pair in asked.train for s in read(*pair, True, names)]
            if more:
                crops.take(more)
                print(step, len(crops.songs), 'songs', flush=True)
            looked = time.time()
        x, y, mask = crops.batch()
        with torch.autocast(DEVICE, dtype=torch.bfloat16, enabled=DEVICE == 'cuda'):
            z = heard(x)
        loss = (F.binary_cross_entropy_with_logits(z.float(), y, reduction='none') * mask * weights).sum() / mask.sum() * HEADS
        descent.zero_grad()
        loss.backward()
        nn.utils.clip_grad_norm_(ear.parameters(), 1.0)
        descent.step()
        step += 1
        keep = min(0.999, 1 - 1 / (step / 10 + 1))
        with torch.no_grad():
            torch._foreach_mul_(list(mean.parameters()), keep)
            torch._foreach_add_(list(mean.parameters()), list(ear.parameters()), alpha=1 - keep)
        if passed - told > 0.2:
            told = passed
            print(step, round(float(loss.detach()), 4), check(mean, songs), flush=True)
            write(mean, asked.out)
    print('end', step, check(mean, songs))
    mean.eval()
    write(mean, asked.out)


if __name__ == '__main__':
    main()

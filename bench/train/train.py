"""train.py OUT --train SONGS SOUND --check SONGS SOUND [--seconds 350] [--seed 4] [--after EAR]: trains an ear; see README.md beside this file."""
import argparse
import glob
import json
import math
import os
import struct
import time

import numpy as np
import torch
import torch.nn as nn
import torch.nn.functional as F

import hearing

BANDS, HEADS, KERNEL, LAYERS = 72, 5, 5, 10
SHAPES, FIGURES, WIDTH = 16, 32, 48
CROP, BATCH, RATE, DROP = 2048, 32, 3e-3, 0.1
WEIGHTS = (1, 1.2, 1.5, 2.0, 0.3)          # of the heads in the loss: beat, one, eight, start, stopped
STEPS_A_LEVEL = 8                           # levels are kept in eighths, in a byte
DEVICE = 'cuda' if torch.cuda.is_available() else 'cpu'


def read(songs, sound, part=0, parts=1):
    """The songs with what is heard of them, which is kept beside the sound for the next ear; of several processes each may do its part."""
    table, found = hearing.bands(), []
    for path in sorted(glob.glob(songs + '/truth/*.json'))[part::parts]:
        name = os.path.basename(path)[:-5]
        truth = json.load(open(path))
        kept = f'{sound}/{name}.levels.npy'
        if not os.path.exists(kept):
            levels = hearing.hear(np.load(f'{sound}/{name}.npy').astype(np.float32) / 32768, table, torch, DEVICE)
            np.save(kept + f'.{os.getpid()}.npy', (levels * STEPS_A_LEVEL).round().clamp(0, 255).to(torch.uint8).cpu().numpy())
            os.replace(kept + f'.{os.getpid()}.npy', kept)
        beats, counts = np.array(truth['beats']), np.array(truth['counts'] or [0] * len(truth['beats']))
        found.append(dict(
            kind=next((k + ' ' for k in ('crossed', 'strange', 'groove', 'free') if k in name), ''),
            levels=torch.from_numpy(np.load(kept)).to(DEVICE),
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
    steps, end = np.arange(count), float(place(song['levels'].shape[0] / hearing.FRAMES_A_SECOND))
    mask[:, (steps > end) | (steps < float(place(0)) - 60)] = 0
    return y, mask


class Ear(nn.Module):
    """The network of src/Scuff.Audio/Ears/Ear.cs."""

    def __init__(self):
        super().__init__()
        self.c1 = nn.Conv2d(1, SHAPES, (3, 3), padding=(1, 0))
        self.c2 = nn.Conv2d(SHAPES, FIGURES, (1, 10))
        self.c3 = nn.Conv2d(FIGURES, WIDTH, (3, 4), padding=(1, 0))
        self.dil = nn.ModuleList([nn.Conv1d(WIDTH, WIDTH, KERNEL, padding=2 * 2 ** i, dilation=2 ** i) for i in range(LAYERS)])
        self.mix = nn.ModuleList([nn.Conv1d(WIDTH, WIDTH, 1) for _ in range(LAYERS)])
        self.head = nn.Conv1d(WIDTH, HEADS, 1)
        self.drop = nn.Dropout1d(DROP)
        with torch.no_grad():
            self.head.bias[:] = -2.5

    def forward(self, levels):
        x = levels.unsqueeze(1)
        x = F.dropout(F.max_pool2d(F.elu(self.c1(x)), (1, 3)), DROP, self.training)
        x = F.dropout(F.max_pool2d(F.elu(self.c2(x)), (1, 3)), DROP, self.training)
        x = self.drop(F.avg_pool1d(F.elu(self.c3(x)).squeeze(3), 2))
        for far, mix in zip(self.dil, self.mix):
            x = x + mix(self.drop(F.elu(far(x))))
        return self.head(F.elu(x))


class Crops:
    """Stretches of songs, each changed by chance, in batches."""

    def __init__(self, songs, chance):
        self.songs, self.chance = songs, chance
        self.all = torch.cat([s['levels'] for s in songs])
        self.first = np.cumsum([0] + [s['levels'].shape[0] for s in songs])

    def on(self, n, share):
        return torch.from_numpy((self.chance.random(n) < share).astype(np.float32)).to(DEVICE).view(n, 1, 1)

    def evenly(self, n, low, high):
        return torch.from_numpy(self.chance.uniform(low, high, (n, 1, 1)).astype(np.float32)).to(DEVICE)

    def curve(self, n, points, deviation):
        rows = [np.interp(np.arange(BANDS), np.linspace(0, BANDS - 1, points), r) for r in self.chance.normal(0, deviation, (n, points))]
        return torch.from_numpy(np.stack(rows).astype(np.float32)).to(DEVICE).unsqueeze(1)

    def batch(self, n):
        chance, frames = self.chance, CROP * 2
        y, mask = np.zeros((n, HEADS, CROP), np.float32), np.zeros((n, HEADS, CROP), np.float32)
        stretches, starts, firsts, lengths = [], [], [], []
        for i in range(n):
            k = int(chance.integers(len(self.songs)))
            length = self.songs[k]['levels'].shape[0]
            stretch = float(np.exp(chance.uniform(-0.18, 0.18))) if chance.random() < 0.7 else 1.0
            span = frames * stretch
            start = chance.uniform(-150, max(1, length - span + 300)) if length > span * 0.6 else 0.0
            for to, value in zip((stretches, starts, firsts, lengths), (stretch, start, int(self.first[k]), length)):
                to.append(value)
            y[i], mask[i] = labels(self.songs[k], start, stretch, CROP)

        def column(values, kind):
            return torch.tensor(values, device=DEVICE, dtype=kind).view(n, 1)
        at = column(starts, torch.float32) + torch.arange(frames, device=DEVICE).float().view(1, frames) * column(stretches, torch.float32)
        whole, length = at.floor().long(), column(lengths, torch.long)
        part, inside = (at - whole).unsqueeze(2), ((whole >= 0) & (whole < length - 1)).unsqueeze(2)
        row = torch.minimum(whole.clamp(min=0), length - 2) + column(firsts, torch.long)
        x = (self.all[row].float() * (1 - part) + self.all[row + 1].float() * part) / STEPS_A_LEVEL * inside

        # another key
        up = torch.from_numpy(chance.integers(-4, 5, n)).to(DEVICE).view(n, 1, 1)
        x = torch.gather(x, 2, (torch.arange(BANDS, device=DEVICE).view(1, 1, BANDS) - up).clamp(0, BANDS - 1).expand(n, frames, BANDS))

        # another colour and loudness
        louder = torch.from_numpy(chance.normal(0, 0.4, (n, 1, 1)).astype(np.float32)).to(DEVICE)
        x = (x + (self.curve(n, 6, 0.6) + louder) * x.clamp(max=1)).clamp(min=0)

        # noise
        floor = self.evenly(n, -1.5, 1.2) + self.curve(n, 4, 0.5)
        x = torch.where(self.on(n, 0.25) > 0, torch.logaddexp(x, floor + 0.3 * torch.randn_like(x)).clamp(min=0), x)

        # a hall
        fall = self.evenly(n, 0.08, 0.4) + (1 - self.on(n, 0.2)) * 1e3
        for lag in (1, 2, 4, 8):
            x = torch.maximum(x, F.pad(x[:, :-lag], (0, 0, lag, 0)) - fall * lag)

        # bands that a recording lacks
        keep = np.ones((n, 1, BANDS), np.float32)
        for i in range(n):
            if chance.random() < 0.15:
                keep[i, 0, int(chance.integers(40, 70)):] = 0
            if chance.random() < 0.15:
                keep[i, 0, :int(chance.integers(3, 14))] = 0
            if chance.random() < 0.2:
                a = int(chance.integers(0, BANDS - 8))
                keep[i, 0, a:a + int(chance.integers(3, 8))] = 0
        return x * torch.from_numpy(keep).to(DEVICE), torch.from_numpy(y).to(DEVICE), torch.from_numpy(mask).to(DEVICE)


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
            likely = torch.sigmoid(ear(song['levels'].float().unsqueeze(0) / STEPS_A_LEVEL))[0].cpu().numpy()
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
    head = json.dumps(dict(c1=SHAPES, c2=FIGURES, c=WIDTH, layers=LAYERS, tensors=header)).encode()
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
    parser.add_argument('--rate', type=float, default=RATE, help='how far a step goes at most')
    asked = parser.parse_args()
    begun = time.time()
    torch.manual_seed(asked.seed)
    torch.backends.cuda.matmul.allow_tf32 = torch.backends.cudnn.allow_tf32 = torch.backends.cudnn.benchmark = True
    crops, songs = Crops([s for pair in asked.train for s in read(*pair)], np.random.default_rng(asked.seed)), read(*asked.check)
    ear, mean = Ear().to(DEVICE), Ear().to(DEVICE)
    if asked.after:
        reload(ear, asked.after)
    mean.load_state_dict(ear.state_dict())
    step, told, started = 0, 0.0, time.time()
    print(len(crops.songs), 'songs read in', round(started - begun), 's', flush=True)
    descent = torch.optim.AdamW(ear.parameters(), lr=asked.rate, weight_decay=1e-2, betas=(0.9, 0.98))
    weights = torch.tensor(WEIGHTS, device=DEVICE).view(1, HEADS, 1)
    while (passed := (time.time() - started) / (asked.seconds - started + begun)) < 1:
        for group in descent.param_groups:
            group['lr'] = asked.rate * min(1, (step + 1) / 200) * (0.5 + 0.5 * math.cos(math.pi * passed)) + 1e-5
        x, y, mask = crops.batch(BATCH)
        with torch.autocast(DEVICE, dtype=torch.bfloat16, enabled=DEVICE == 'cuda'):
            z = ear(x)
        loss = (F.binary_cross_entropy_with_logits(z.float(), y, reduction='none') * mask * weights).sum() / mask.sum() * HEADS
        descent.zero_grad()
        loss.backward()
        nn.utils.clip_grad_norm_(ear.parameters(), 1.0)
        descent.step()
        step += 1
        keep = min(0.999, 1 - 1 / (step / 10 + 1))
        with torch.no_grad():
            for a, b in zip(mean.parameters(), ear.parameters()):
                a.lerp_(b, 1 - keep)
        if passed - told > 0.3:
            told = passed
            print(step, round(float(loss.detach()), 4), check(mean, songs), flush=True)
            write(mean, asked.out)
    print('end', step, check(mean, songs))
    mean.eval()
    write(mean, asked.out)


if __name__ == '__main__':
    main()

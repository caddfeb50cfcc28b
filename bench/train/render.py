"""render.py SONGS SOUND FONT... [--seed 7] [--jobs N] [--levels | --wav]: plays SONGS/midi/*.mid through libfluidsynth with the sound fonts in turn.

Leaves SOUND/ID.npy: 22050 samples a second, one channel, 16 bits; with --wav the same as SOUND/ID.wav, for bench/estimate (SOUND is then SONGS/audio);
with --levels what is heard of them instead, SOUND/ID.levels.npy, as train.py keeps it, and the songs in an order of chance, so that training can begin
while the rest is played. Uses all processors unless told otherwise.
"""
import argparse
import ctypes
import glob
import multiprocessing
import os
import random
import sys
import wave

import numpy as np

import hearing

RATE = 44100
BLOCK = 8820
TAPS = 63


def half_band():
    n = np.arange(TAPS) - TAPS // 2
    taps = np.sinc(n / 2.15) * np.hamming(TAPS)
    return (taps / taps.sum()).astype(np.float32)


def library():
    lib = ctypes.CDLL(os.environ.get('FLUIDSYNTH', 'libfluidsynth.so.3'))
    pointer, text, number, whole = ctypes.c_void_p, ctypes.c_char_p, ctypes.c_double, ctypes.c_int
    for name in ('new_fluid_settings', 'new_fluid_synth', 'new_fluid_player'):
        getattr(lib, name).restype = pointer
    for name, types in {
        'new_fluid_synth': [pointer], 'fluid_synth_sfload': [pointer, text, whole], 'new_fluid_player': [pointer],
        'fluid_player_add': [pointer, text], 'fluid_player_play': [pointer], 'fluid_player_get_status': [pointer],
        'delete_fluid_player': [pointer], 'fluid_synth_system_reset': [pointer],
        'fluid_synth_write_s16': [pointer, whole, pointer, whole, whole, pointer, whole, whole],
        'fluid_settings_setnum': [pointer, text, number], 'fluid_settings_setint': [pointer, text, whole],
        'fluid_settings_setstr': [pointer, text, text],
    }.items():
        getattr(lib, name).argtypes = types
    return lib


def synth(lib, font, has_reverb):
    settings = lib.new_fluid_settings()
    lib.fluid_settings_setnum(settings, b'synth.sample-rate', float(RATE))
    lib.fluid_settings_setnum(settings, b'synth.gain', 0.4)
    lib.fluid_settings_setint(settings, b'synth.reverb.active', has_reverb)
    lib.fluid_settings_setint(settings, b'synth.chorus.active', 0)
    lib.fluid_settings_setint(settings, b'synth.cpu-cores', 1)
    lib.fluid_settings_setint(settings, b'synth.polyphony', 128)
    lib.fluid_settings_setstr(settings, b'player.timing-source', b'sample')
    made = lib.new_fluid_synth(settings)
    if lib.fluid_synth_sfload(made, font.encode(), 1) < 0:
        sys.exit(f'The sound font {font} could not be loaded.')
    return made


def save(path, numbers):
    """Whole or not at all: somebody may be waiting for it."""
    np.save(path + '.part.npy', numbers)
    os.replace(path + '.part.npy', path)


def save_wav(path, samples):
    """Sound for `bench/estimate`: one channel of 16 bits; whole or not at all."""
    with wave.open(path + '.part', 'wb') as file:
        file.setnchannels(1)
        file.setsampwidth(2)
        file.setframerate(RATE // 2)
        file.writeframes(samples.astype('<i2').tobytes())
    os.replace(path + '.part', path)


def play(jobs, sound, kept):
    lib, taps, table, synths = library(), half_band(), hearing.bands(), {}
    block = np.zeros((BLOCK, 2), np.int16)
    out = block.ctypes.data_as(ctypes.c_void_p)
    for midi, font, has_reverb in jobs:
        key = (font, has_reverb)
        if key not in synths:
            synths[key] = synth(lib, font, has_reverb)
        lib.fluid_synth_system_reset(synths[key])
        player = lib.new_fluid_player(synths[key])
        lib.fluid_player_add(player, midi.encode())
        lib.fluid_player_play(player)
        parts, tail = [], 0
        while tail < 8 and len(parts) < 3000:
            lib.fluid_synth_write_s16(synths[key], BLOCK, out, 0, 2, out, 1, 2)
            parts.append(block.mean(1).astype(np.float32))
            tail += lib.fluid_player_get_status(player) != 1
        lib.delete_fluid_player(player)
        samples = np.convolve(np.concatenate(parts), taps, 'same')[::2]
        samples *= 28000 / max(1, np.abs(samples).max())
        samples, path = samples.astype(np.int16), os.path.join(sound, os.path.basename(midi)[:-4])
        if kept == '.levels.npy':
            save(path + kept, hearing.kept(hearing.hear(samples.astype(np.float32) / 32768, table)))
        elif kept == '.wav':
            save_wav(path + kept, samples)
        else:
            save(path + kept, samples)


def main():
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument('songs')
    parser.add_argument('sound')
    parser.add_argument('fonts', nargs='+')
    parser.add_argument('--seed', type=int, default=7, help='which font plays which song')
    parser.add_argument('--jobs', type=int, default=os.cpu_count() or 1)
    parser.add_argument('--levels', action='store_true', help='keep what is heard, not the sound')
    parser.add_argument('--wav', action='store_true', help='keep the sound as .wav, to hear it with bench/estimate')
    asked = parser.parse_args()
    songs, sound, fonts, count = asked.songs, asked.sound, asked.fonts, asked.jobs
    os.makedirs(sound, exist_ok=True)
    chance = random.Random(asked.seed)
    jobs = [(m, chance.choice(fonts), int(chance.random() < 0.67)) for m in sorted(glob.glob(songs + '/midi/*.mid'))]
    kept = '.levels.npy' if asked.levels else '.wav' if asked.wav else '.npy'
    jobs = [job for job in jobs if not os.path.exists(os.path.join(sound, os.path.basename(job[0])[:-4] + kept))]
    if asked.levels:
        chance.shuffle(jobs)
    workers = [multiprocessing.Process(target=play, args=(jobs[i::count], sound, kept)) for i in range(count)]
    for worker in workers:
        worker.start()
    for worker in workers:
        worker.join()
    sys.exit(any(w.exitcode for w in workers))


if __name__ == '__main__':
    main()

"""The spectrum of src/Scuff.Audio/Signals (Hearing.Spectrum), once more for training: the two must agree."""
import numpy as np

RATE, HOP, WINDOW = 22050, 220, 1024
FRAMES_A_SECOND = RATE / HOP
COMPRESSION, USUAL = 1000, 0.12
STEPS_A_LEVEL = 8                           # levels are kept in eighths, in a byte


def bands(low=21.0, high=10000.0):
    """Triangles a semitone wide, or a bin where that is wider: [bins x bands]."""
    width = RATE / WINDOW
    top = min(high, RATE / 2 - width)
    middles, hertz = [], max(low, width)
    while hertz < top:
        middles.append(hertz)
        hertz = max(hertz * 2 ** (1 / 12), hertz + width)
    table = np.zeros((WINDOW // 2, len(middles) - 2), np.float32)
    for i in range(1, len(middles) - 1):
        a, m, b = (middles[k] / width for k in (i - 1, i, i + 1))
        for k in range(int(np.ceil(a)), min(int(np.floor(b)), WINDOW // 2 - 1) + 1):
            table[k, i - 1] = max(0, (k - a) / (m - a) if k <= m else (b - k) / (b - m))
    return table


def gain(samples):
    block = RATE // 4
    whole = len(samples) // block * block
    powers = [*np.mean(samples[:whole].astype(np.float64).reshape(-1, block) ** 2, 1)]
    powers = sorted(powers + ([np.mean(samples[whole:].astype(np.float64) ** 2)] if whole < len(samples) else []))
    power = np.mean(powers[len(powers) // 2:])
    return 1.0 if power < 1e-12 else USUAL / np.sqrt(power)


def hear(samples, table):
    """ln(1 + 1000 m) of every band a hundred times a second: [frames x bands]."""
    hann = 0.5 - 0.5 * np.cos(2 * np.pi * np.arange(WINDOW) / WINDOW)
    hann = (hann * 2 / hann.sum()).astype(np.float32)
    frames = len(samples) // HOP + 1
    padded = np.zeros(WINDOW // 2 + frames * HOP + WINDOW, np.float32)
    padded[WINDOW // 2:WINDOW // 2 + len(samples)] = samples
    windows = np.lib.stride_tricks.sliding_window_view(padded, WINDOW)[:frames * HOP:HOP]
    scale, heard = COMPRESSION * gain(samples), np.empty((frames, table.shape[1]), np.float32)
    for a in range(0, frames, 1000):
        magnitudes = np.abs(np.fft.rfft(windows[a:a + 1000] * hann))[:, :WINDOW // 2].astype(np.float32)
        heard[a:a + 1000] = np.log1p(scale * (magnitudes @ table))
    return heard


def kept(levels):
    """In eighths, a byte each."""
    return np.clip(np.rint(levels * STEPS_A_LEVEL), 0, 255).astype(np.uint8)

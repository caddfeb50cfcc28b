"""The spectrum of src/Scuff.Audio/Signals (Hearing.Spectrum), once more for training: the two must agree."""
import numpy as np

RATE, HOP, WINDOW = 22050, 220, 1024
FRAMES_A_SECOND = RATE / HOP
COMPRESSION, USUAL = 1000, 0.12


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


def hear(samples, table, torch, device):
    """ln(1 + 1000 m) of every band a hundred times a second: [frames x bands], on the device."""
    hann = 0.5 - 0.5 * np.cos(2 * np.pi * np.arange(WINDOW) / WINDOW)
    hann = torch.from_numpy((hann * 2 / hann.sum()).astype(np.float32)).to(device)
    frames = len(samples) // HOP + 1
    padded = np.zeros(WINDOW // 2 + frames * HOP + WINDOW, np.float32)
    padded[WINDOW // 2:WINDOW // 2 + len(samples)] = samples
    windows = torch.from_numpy(padded).to(device).unfold(0, WINDOW, HOP)[:frames] * hann
    magnitudes = torch.fft.rfft(windows).abs()[:, :WINDOW // 2] @ torch.from_numpy(table).to(device)
    return torch.log1p(COMPRESSION * gain(samples) * magnitudes)

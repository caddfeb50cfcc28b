/** Clicks of wood, put on the clock of the sound ahead of time. */

const SECONDS = 0.14;

// Partials of a struck bar of wood with free ends, as multiples of the lowest, each dying away faster than the one below; by ear.
const PARTIALS = [
  { ratio: 1, level: 1, decay: 0.026 },
  { ratio: 2.76, level: 0.42, decay: 0.011 },
  { ratio: 5.4, level: 0.16, decay: 0.005 },
] as const;

const STRIKE_SECONDS = 0.0025;
const STRIKE_LEVEL = 0.5;
const PEAK = 0.85;

/** Lowest partial of the one, in hertz. */
export const LOW_HERTZ = 620;

/** Lowest partial of the other counts, in hertz. */
export const HIGH_HERTZ = 1040;

/**
 * A click: the ring of the wood and the noise of the strike.
 * @param rate Samples a second.
 * @param hertz Lowest partial.
 * @returns Samples from -1 to 1; the last ones are silent.
 */
export function woodSamples(rate: number, hertz: number): Float32Array<ArrayBuffer> {
  const samples = new Float32Array(Math.ceil(SECONDS * rate));
  // always the same noise, so that no click sounds unlike another
  let seed = 9;
  let peak = 0;
  for (let i = 0; i < samples.length; i++) {
    const t = i / rate;
    let value = 0;
    for (const p of PARTIALS) value += p.level * Math.exp(-t / p.decay) * Math.sin(2 * Math.PI * hertz * p.ratio * t);
    seed = (seed * 16807) % 2147483647;
    value += STRIKE_LEVEL * Math.exp(-t / STRIKE_SECONDS) * (seed / 1073741823.5 - 1);
    value *= Math.min(1, (SECONDS - t) / 0.02);
    samples[i] = value;
    peak = Math.max(peak, Math.abs(value));
  }
  for (let i = 0; i < samples.length; i++) samples[i]! *= PEAK / peak;
  return samples;
}

/** Strikes wood at given times of an audio context. */
export class Clicks {
  private readonly low: AudioBuffer;
  private readonly high: AudioBuffer;
  private readonly gain: GainNode;
  private readonly waiting = new Set<AudioBufferSourceNode>();

  /** @param context Where they sound. */
  constructor(private readonly context: AudioContext) {
    this.low = this.make(LOW_HERTZ);
    this.high = this.make(HIGH_HERTZ);
    this.gain = context.createGain();
    this.gain.connect(context.destination);
  }

  /**
   * Strikes.
   * @param time Seconds of the context.
   * @param isOne Whether it is the one, which is lower.
   */
  strike(time: number, isOne: boolean): void {
    const source = this.context.createBufferSource();
    source.buffer = isOne ? this.low : this.high;
    source.connect(this.gain);
    source.onended = () => {
      this.waiting.delete(source);
      source.disconnect();
    };
    this.waiting.add(source);
    source.start(Math.max(time, this.context.currentTime));
  }

  /** Silences what was struck and what was put ahead. */
  cancel(): void {
    for (const source of this.waiting) source.stop();
    this.waiting.clear();
  }

  /** Loudness, 0 to 1. */
  set level(value: number) {
    this.gain.gain.value = value;
  }

  private make(hertz: number): AudioBuffer {
    const samples = woodSamples(this.context.sampleRate, hertz);
    const buffer = this.context.createBuffer(1, samples.length, this.context.sampleRate);
    buffer.copyToChannel(samples, 0);
    return buffer;
  }
}

/** A small piece of music for tests: two bars of intro, a verse of four eights, then one that is cut to four counts. */
import type { TrackMusic } from '../lib/contract';

export function sample(): TrackMusic {
  const many = 16 + 32 + 4 + 8;
  const beats = Array.from({ length: many }, (_, i) => 0.5 + i * 0.5);
  const starts = [0, 8, 16, 24, 32, 40, 48, 52];
  const counts = beats.map((_, i) => i - starts.findLast((s) => s <= i)! + 1);
  const end = (i: number) => (i < many ? beats[i]! : 0.5 + many * 0.5);
  const section = (i: number) => (i < 16 ? 0 : i < 52 ? 1 : 2);
  const part = (beat: number, to: number, label: string, name: string) => ({
    beat,
    beats: to - beat,
    start: beats[beat]!,
    end: end(to),
    label,
    name,
    words: `${label} ${name}`,
    sure: 'sure',
    confidence: 0.95,
  });
  const heard = { words: '', sure: 'sure', confidence: 0.95, isSaid: false, others: [] };
  return {
    seconds: 31,
    beats,
    counts,
    bars: counts.map((c) => ((c - 1) % 4) + 1),
    eight: 8,
    eights: starts.map((beat, i) => {
      const to = starts[i + 1] ?? many;
      return {
        beat,
        beats: to - beat,
        start: beats[beat]!,
        end: end(to),
        section: section(beat),
        beginsSection: beat === 0 || beat === 16 || beat === 52,
        isOdd: to - beat !== 8,
      };
    }),
    sections: [part(0, 16, 'A', ''), part(16, 52, 'B', 'verse'), part(52, many, 'A', '')],
    breaks: [{ start: beats[48]!, end: beats[52]!, isStop: true, words: 'stop' }],
    loudness: Array.from({ length: 310 }, (_, i) => (i < 20 ? 0 : 80)),
    loudnessPerSecond: 10,
    tempo: heard,
    meter: heard,
    swing: heard,
    start: heard,
    startBeat: 16,
    and: 0.5,
  };
}

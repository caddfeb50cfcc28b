/** Draws the strip of a track: how loud it is, its beats, eights, sections, and where it stops. All is said by shape and word. */
import type { TrackMusic } from '../lib/contract';
import type { Colours } from '../floor/colours';
import { columns, seen, type Strip } from './strip';

/** Heights of the strip in pixels. */
export const STRIP = { height: 196, ribbon: 36, waveEnd: 150, counts: 176 } as const;

const HATCH = 8;

/** Draws what is seen of the strip. */
export function drawStrip(
  pen: CanvasRenderingContext2D,
  music: TrackMusic,
  strip: Strip,
  colours: Colours,
  left: number,
  view: number,
): void {
  const from = strip.secondsOf(left);
  const to = Math.min(music.seconds, (left + view) / strip.perSecond);
  const x = (seconds: number) => strip.xOf(seconds) - left;
  pen.clearRect(0, 0, view, STRIP.height);
  wave(pen, music, colours, from, to, x);
  for (const gap of music.breaks) {
    if (gap.end < from || gap.start > to) continue;
    hatch(pen, colours, x(gap.start), x(gap.end), STRIP.ribbon + 2, STRIP.waveEnd, gap.isStop);
    word(
      pen,
      colours,
      gap.isStop ? 'stop' : 'no drums',
      x(gap.start) + 6,
      STRIP.ribbon + 18,
      x(gap.end) - x(gap.start) - 8,
    );
  }
  beats(pen, music, colours, from, to, x);
  for (const section of music.sections) {
    if (section.end < from || section.start > to) continue;
    pen.fillStyle = colours.ink;
    pen.fillRect(Math.round(x(section.start)) - 1, 0, 2.5, STRIP.waveEnd + 6);
    const at = Math.max(x(section.start) + 12, 8);
    const room = x(section.end) - at - 14;
    pen.font = `650 16px ${colours.type}`;
    const letter = section.label;
    pen.fillText(letter, at, 24);
    const width = pen.measureText(letter).width;
    pen.font = `400 16px ${colours.type}`;
    pen.fillStyle = colours.soft;
    const name = section.name || `${section.beats} counts`;
    if (pen.measureText(name).width < room - width - 8) pen.fillText(name, at + width + 8, 24);
  }
  const start = music.beats[music.startBeat];
  if (start !== undefined && start >= from - 1 && start <= to) flag(pen, colours, x(start));
}

function wave(
  pen: CanvasRenderingContext2D,
  music: TrackMusic,
  colours: Colours,
  from: number,
  to: number,
  x: (seconds: number) => number,
): void {
  const begin = Math.floor(x(from) / 3) * 3;
  const many = Math.max(1, Math.ceil((x(to) - begin) / 3));
  const tops = columns(music.loudness, music.loudnessPerSecond, from, to, many);
  const middle = (STRIP.ribbon + STRIP.waveEnd) / 2;
  const half = (STRIP.waveEnd - STRIP.ribbon) / 2 - 6;
  pen.fillStyle = colours.line;
  pen.globalAlpha = 0.55;
  for (let i = 0; i < many; i++) {
    const high = Math.max(1, tops[i]! * half);
    pen.fillRect(begin + i * 3, middle - high, 2, 2 * high);
  }
  pen.globalAlpha = 1;
}

function beats(
  pen: CanvasRenderingContext2D,
  music: TrackMusic,
  colours: Colours,
  from: number,
  to: number,
  x: (seconds: number) => number,
): void {
  const [first, end] = seen(music.beats, from, to);
  const a = music.beats[first];
  const b = music.beats[Math.min(end, music.beats.length - 1)];
  const wide = a !== undefined && b !== undefined && end > first ? (x(b) - x(a)) / (end - first) : 0;
  pen.textAlign = 'center';
  for (let i = first; i < end; i++) {
    const count = music.counts[i] ?? 0;
    const at = x(music.beats[i]!);
    const isOne = count === 1;
    pen.fillStyle = isOne ? colours.ink : colours.line;
    pen.fillRect(
      Math.round(at) - 0.5,
      isOne ? STRIP.ribbon + 4 : STRIP.waveEnd - 8,
      isOne ? 1.5 : 1,
      isOne ? STRIP.waveEnd - STRIP.ribbon + 4 : 14,
    );
    if (count > 0 && (wide >= 15 || isOne || (wide >= 8 && count % 4 === 1))) {
      pen.font = `${isOne ? 700 : 400} ${isOne ? 16 : 14}px ${colours.type}`;
      pen.fillStyle = isOne ? colours.ink : colours.soft;
      pen.fillText(String(count), at, STRIP.counts);
    }
  }
  pen.textAlign = 'left';
  for (const eight of music.eights) {
    if (!eight.isOdd || eight.end < from || eight.start > to) continue;
    pen.strokeStyle = colours.ink;
    pen.lineWidth = 1.5;
    pen.setLineDash([4, 3]);
    pen.strokeRect(
      x(eight.start) + 3,
      STRIP.ribbon + 4,
      x(eight.end) - x(eight.start) - 6,
      STRIP.waveEnd - STRIP.ribbon - 8,
    );
    pen.setLineDash([]);
    word(
      pen,
      colours,
      `only ${eight.beats}`,
      x(eight.start) + 8,
      STRIP.waveEnd - 10,
      x(eight.end) - x(eight.start) - 12,
    );
  }
}

function hatch(
  pen: CanvasRenderingContext2D,
  colours: Colours,
  from: number,
  to: number,
  top: number,
  bottom: number,
  isDense: boolean,
): void {
  pen.save();
  pen.beginPath();
  pen.rect(from, top, to - from, bottom - top);
  pen.clip();
  pen.fillStyle = colours.paper;
  if (isDense) pen.fillRect(from, top, to - from, bottom - top);
  pen.strokeStyle = colours.line;
  pen.lineWidth = 1.5;
  const gap = isDense ? HATCH : 2 * HATCH;
  pen.beginPath();
  for (let at = Math.floor((from - (bottom - top)) / gap) * gap; at < to; at += gap) {
    pen.moveTo(at, bottom);
    pen.lineTo(at + (bottom - top), top);
  }
  pen.stroke();
  pen.restore();
}

function word(pen: CanvasRenderingContext2D, colours: Colours, text: string, x: number, y: number, room: number): void {
  pen.font = `400 14px ${colours.type}`;
  const width = pen.measureText(text).width;
  if (width > room) return;
  pen.fillStyle = colours.paper;
  pen.fillRect(x - 2, y - 13, width + 4, 17);
  pen.fillStyle = colours.ink;
  pen.fillText(text, x, y);
}

// Where the dance starts: a foot's mark would be small, a flag is seen.
function flag(pen: CanvasRenderingContext2D, colours: Colours, x: number): void {
  pen.fillStyle = colours.tide;
  pen.fillRect(x - 1, STRIP.ribbon, 3, STRIP.waveEnd - STRIP.ribbon + 6);
  pen.beginPath();
  pen.moveTo(x + 2, STRIP.waveEnd - 26);
  pen.lineTo(x + 18, STRIP.waveEnd - 18);
  pen.lineTo(x + 2, STRIP.waveEnd - 10);
  pen.fill();
}

/** Draws the whole track in one line: its sections as a row, how loud they are, and where it stops. */
export function drawWhole(
  pen: CanvasRenderingContext2D,
  music: TrackMusic,
  colours: Colours,
  width: number,
  height: number,
): void {
  const x = (seconds: number) => (seconds / music.seconds) * width;
  pen.clearRect(0, 0, width, height);
  const many = Math.max(1, Math.floor(width / 2));
  const tops = columns(music.loudness, music.loudnessPerSecond, 0, music.seconds, many);
  const foot = height - 20;
  pen.fillStyle = colours.line;
  pen.globalAlpha = 0.6;
  for (let i = 0; i < many; i++) {
    const high = Math.max(1, tops[i]! * (foot - 6));
    pen.fillRect((i * width) / many, foot - high, Math.max(1, width / many - 0.7), high);
  }
  pen.globalAlpha = 1;
  for (const gap of music.breaks) {
    if (gap.isStop) hatch(pen, colours, x(gap.start), Math.max(x(gap.start) + 3, x(gap.end)), 2, foot, true);
  }
  music.sections.forEach((section, i) => {
    const at = x(section.start);
    pen.fillStyle = colours.ink;
    pen.fillRect(Math.round(at), 0, 1.5, height);
    const room = x(section.end) - at;
    pen.font = `600 14px ${colours.type}`;
    const text = section.label;
    if (pen.measureText(text).width < room - 6) pen.fillText(text, at + 5, height - 4);
    if (i % 2 === 1) {
      pen.globalAlpha = 0.08;
      pen.fillRect(at, 0, room, height);
      pen.globalAlpha = 1;
    }
  });
}

/** The plan laid over the track like a page of text: where every row and band stands. Counts are those of the music. */
import type { FitChartBand, FitChartLine, FitChartRows, TrackMusic } from '../lib/contract';

/** Sizes in pixels. */
export const PAGE = { margin: 46, band: 40, row: 66, sectionGap: 10 } as const;

/** A row of the page. */
export interface PageRow {
  line: FitChartLine;
  /** Its top in pixels. */
  y: number;
}

/** The page: rows one below the other, a little apart where a section begins. */
export interface Page {
  rows: PageRow[];
  height: number;
  /** Pixels a count. */
  perCount: number;
  /** Counts that the widest row holds. */
  counts: number;
}

/** A piece of a band within one row. */
export interface Piece {
  band: FitChartBand;
  /** The row, an index into those of the page. */
  row: number;
  from: number;
  to: number;
  /** Whether the band begins with it. */
  isFirst: boolean;
  /** Whether the band ends with it. */
  isLast: boolean;
}

/** Lays the rows out over a width. */
export function pageOf(chart: FitChartRows, width: number): Page {
  const counts = Math.max(4 * chart.eight, ...chart.rows.map((r) => r.counts));
  const rows: PageRow[] = [];
  let y = 0;
  chart.rows.forEach((line, i) => {
    if (i > 0 && line.beginsSection) y += PAGE.sectionGap;
    rows.push({ line, y });
    y += PAGE.row;
  });
  return { rows, height: y, perCount: Math.max(4, (width - PAGE.margin - 8) / counts), counts };
}

/** The row of a count; -1 where there is none. */
export function rowOf(page: Page, count: number): number {
  let low = 0;
  let high = page.rows.length - 1;
  if (high < 0) return -1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (page.rows[middle]!.line.from <= count) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Where a count stands. */
export function placeOf(page: Page, count: number): { x: number; y: number; row: number } {
  const row = Math.max(0, rowOf(page, count));
  const at = page.rows[row];
  return { x: PAGE.margin + (count - (at?.line.from ?? 0)) * page.perCount, y: at?.y ?? 0, row };
}

/** The count at a place, put on a grid that begins anew with each row; never beyond the music. */
export function countAt(page: Page, x: number, y: number, grid: number): number {
  let row = 0;
  for (let i = 0; i < page.rows.length; i++) if (page.rows[i]!.y <= y) row = i;
  const line = page.rows[row]?.line;
  if (!line) return 0;
  const within = Math.round((x - PAGE.margin) / page.perCount / grid) * grid;
  return line.from + Math.min(line.counts, Math.max(0, within));
}

/** A band cut into rows. */
export function piecesOf(page: Page, bands: readonly FitChartBand[]): Piece[] {
  const pieces: Piece[] = [];
  for (const band of bands) {
    if (band.to <= band.from) continue;
    for (let row = Math.max(0, rowOf(page, band.from)); row < page.rows.length; row++) {
      const line = page.rows[row]!.line;
      if (line.from >= band.to) break;
      const from = Math.max(band.from, line.from);
      const to = Math.min(band.to, line.from + line.counts);
      if (to > from) pieces.push({ band, row, from, to, isFirst: from === band.from, isLast: to === band.to });
    }
  }
  return pieces;
}

/** The next place on the grid of eights for a key, seen from a count: rows begin eights of their own. */
export function step(page: Page, eight: number, count: number, way: 1 | -1, byCount: boolean): number {
  const first = page.rows[0]?.line.from ?? 0;
  const end = page.rows.at(-1);
  const last = end ? end.line.from + end.line.counts - 1 : 0;
  if (byCount) return Math.min(last, Math.max(first, count + way));
  const starts = page.rows.flatMap((r) =>
    Array.from({ length: Math.ceil(r.line.counts / eight) }, (_, i) => r.line.from + i * eight),
  );
  const found = way > 0 ? starts.find((s) => s > count) : starts.findLast((s) => s < count);
  return found ?? count;
}

/** Notches of a clock word: 0 at 12, 1 at 3, 2 at 6, 3 at 9. */
export function notches(facing: string | null): number {
  const hour = facing === null ? Number.NaN : Number.parseInt(facing, 10);
  return Number.isNaN(hour) ? 0 : Math.floor((hour % 12) / 3);
}

/** A gap of the music in counts. */
export interface Gap {
  from: number;
  to: number;
  isStop: boolean;
  words: string;
}

/** Where the music stops, in counts: those whose middle falls into the gap. */
export function gapsOf(music: TrackMusic, seconds: readonly number[]): Gap[] {
  const gaps: Gap[] = [];
  for (const gap of music.breaks) {
    let from = -1;
    let to = -1;
    for (let i = 0; i + 1 < seconds.length; i++) {
      const middle = (seconds[i]! + seconds[i + 1]!) / 2;
      if (middle < gap.start || middle >= gap.end) continue;
      if (from < 0) from = i;
      to = i + 1;
    }
    if (from >= 0) gaps.push({ from, to, isStop: gap.isStop, words: gap.words });
  }
  return gaps;
}

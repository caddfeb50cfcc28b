/** Practice with a class: what is danced, what is called, what is gone over again and again. Components only show. */
import type { CalledWords, FloorAnswer } from '../lib/contract';
import type { Player, Section } from '../lib/player';
import { playedOf } from '../floor/steps';
import { CallBook, type Calling, type Said } from './calling';
import {
  chainOf,
  type ChainWay,
  type HelpChoice,
  linesOf,
  type Piece,
  spanOf,
  type Wall,
  wallAt,
  wallsOf,
} from './pieces';
import type { Voice } from './voice';

/** What is danced again and again. */
export type Going =
  | { kind: 'all' }
  /** From the beginning of a line of the wall to the end of another. */
  | { kind: 'span'; first: number; last: number }
  /** A link of the chain. */
  | { kind: 'chain'; way: ChainWay; link: number };

/** Rounds of a link before the chain goes on by itself; 0 leaves it to her. */
export const ROUNDS = [0, 1, 2, 3, 4] as const;

const NEAR = 1e-6;

/** So many counts before, a break of the pattern is warned of on the screen. */
const WARNED = 16;

export class Practice {
  floor = $state.raw<FloorAnswer | null>(null);
  calls = $state.raw<CalledWords[]>([]);
  help = $state<HelpChoice>('every-step');
  isEasier = $state(false);
  isSpoken = $state(false);
  /** The wall she works on, as a place in `walls`. */
  wall = $state(0);
  /** The wall she began on last. */
  begun = $state(0);
  going = $state.raw<Going>({ kind: 'all' });
  rounds = $state<number>(2);
  /** How often the link was danced. */
  danced = $state(0);
  /** What is called now; changes with calls and whole counts only. */
  calling = $state.raw<Calling>({ now: null, next: null, inCounts: Infinity, isSaid: false });
  warning = $state.raw<{ call: CalledWords; inCounts: number } | null>(null);
  /** Index of the action danced now; -1 before the first. */
  step = $state(-1);
  countingIn = $state(0);
  /** The count as it goes on where nothing lands: whole counts of the dance. */
  count = $state(0);

  readonly walls = $derived<Wall[]>(this.floor ? wallsOf(this.floor) : []);
  readonly now = $derived<Wall | null>(this.walls[Math.min(this.wall, this.walls.length - 1)] ?? null);
  /** The lines of that wall. */
  readonly lines = $derived<Piece[]>(linesOf(this.now?.sections ?? []));
  /** What is danced again and again, as counts; null for all of it. */
  readonly section = $derived.by<Section | null>(() => {
    const { now, going } = this;
    if (!now || going.kind === 'all') return null;
    if (going.kind === 'span') return spanOf(this.lines, going.first, Math.min(going.last, this.lines.length - 1));
    return chainOf(now.sections, going.way)[Math.min(going.link, now.sections.length - 1)] ?? null;
  });
  readonly book = $derived(new CallBook(this.calls));
  readonly links = $derived(this.now?.sections.length ?? 0);

  private before = NaN;
  private said: Said = { now: new Set(), next: new Set() };

  /**
   * @param player The playhead.
   * @param voice What says the calls; null where there is none.
   */
  constructor(
    readonly player: Player,
    public voice: Voice | null = null,
  ) {}

  /** Takes a dance, or the same changed. */
  take(floor: FloorAnswer, eight: number): void {
    this.floor = floor;
    this.player.setDance(playedOf(floor, eight));
    if (this.wall >= this.walls.length) this.wall = 0;
    const { going } = this;
    if (going.kind === 'chain' && going.link >= this.links)
      this.going = { ...going, link: Math.max(0, this.links - 1) };
    if (going.kind === 'span' && going.last >= this.lines.length) this.going = { kind: 'all' };
    this.apply(false);
  }

  /** Begins on another wall. */
  startOn(wall: number): void {
    this.wall = wall;
    this.begun = wall;
    this.apply(true);
    const { now } = this;
    if (now && !this.section) this.player.seek(now.from);
  }

  /** Dances something else again and again. */
  goOver(going: Going): void {
    this.going = going;
    this.apply(true);
  }

  /**
   * Goes over the lines of a wall that hold some counts of it.
   * @param number The wall, from 1; the first where there is none of that number.
   * @param from First count within the wall, from zero.
   * @param to The count after the last.
   */
  goOverCounts(number: number, from: number, to: number): void {
    this.startOn(
      Math.max(
        0,
        this.walls.findIndex((w) => w.number === number),
      ),
    );
    const start = this.now?.from ?? 0;
    const first = this.lines.findIndex((l) => l.at + l.counts > start + from + NEAR);
    const last = this.lines.findLastIndex((l) => l.at < start + to - NEAR);
    this.goOver(first >= 0 && last >= first ? { kind: 'span', first, last } : { kind: 'all' });
  }

  /** The next link of the chain, or the one before. */
  chain(by: 1 | -1): void {
    const { going } = this;
    if (going.kind !== 'chain') return;
    const link = Math.min(this.links - 1, Math.max(0, going.link + by));
    if (link !== going.link) this.goOver({ ...going, link });
  }

  /** From the beginning of what is danced. */
  again(): void {
    const { player } = this;
    const from = this.section?.from ?? this.now?.from ?? player.first;
    const was = player.playing;
    player.pause();
    player.seek(from);
    if (was) player.play();
  }

  /** Where the dance is, below its beginning while it is counted in. */
  place(): number {
    const { heading } = this.player.heading();
    return heading.count - heading.waits;
  }

  /** Looks where the dance is: from the frames of the playhead. */
  look(count: number): void {
    const { player, floor } = this;
    if (!floor) return;
    const place = this.place();
    const round = player.loop ?? (floor.goesRound ? { from: 0, to: floor.length } : null);
    if (player.playing && player.loop && this.before - count > (player.loop.to - player.loop.from) / 2)
      this.wentRound();
    if (!player.loop && player.playing && wallAt(this.walls, count) !== this.wall)
      this.wall = wallAt(this.walls, count);
    this.before = count;
    const calling = this.book.about(place, round);
    const had = this.calling;
    const isOther = calling.now !== had.now || calling.next !== had.next || calling.isSaid !== had.isSaid;
    if (isOther || Math.ceil(calling.inCounts) !== Math.ceil(had.inCounts)) this.calling = calling;
    const warning = this.book.warning(place, player.loop, WARNED);
    if (
      warning?.call !== this.warning?.call ||
      Math.ceil(warning?.inCounts ?? 0) !== Math.ceil(this.warning?.inCounts ?? 0)
    )
      this.warning = warning;
    const step = floor.steps.findLastIndex((s) => s.at <= count + NEAR);
    if (step !== this.step) this.step = step;
    const counted = player.countingIn();
    if (counted !== this.countingIn) this.countingIn = counted;
    const whole = Math.floor(count + NEAR);
    if (whole !== this.count) this.count = whole;
    this.speak(place, round);
  }

  /** Silences the voice: it stands, or somebody leaves. */
  hush(): void {
    this.said = { now: new Set(), next: new Set() };
    this.voice?.hush();
  }

  private speak(place: number, round: Section | null): void {
    const { player, voice, said } = this;
    if (!voice || !this.isSpoken || !player.playing) return;
    const { pace } = player.heading().heading;
    if (!(pace > 0)) return;
    const goesOn = !(player.loop && player.countIn && player.countInEach);
    const next = this.book.toSay(place, round, goesOn, said);
    if (next && voice.offer(next.call.words, next.inCounts / pace, next.wished / pace))
      (next.isAhead ? said.next : said.now).add(next.call);
  }

  private wentRound(): void {
    this.danced++;
    const { going } = this;
    if (going.kind !== 'chain' || this.rounds === 0 || this.danced < this.rounds || going.link >= this.links - 1)
      return;
    this.goOver({ ...going, link: going.link + 1 });
  }

  private apply(isNew: boolean): void {
    const { player, section } = this;
    if (isNew) this.danced = 0;
    // what follows is no round that was danced to its end
    this.before = NaN;
    this.said = { now: new Set(), next: new Set() };
    const has = player.loop;
    const isSame = has?.from === section?.from && has?.to === section?.to;
    if (isSame && !isNew) return;
    const wasPlaying = player.playing;
    // what is begun anew is counted in as any beginning is
    if (wasPlaying && section && player.countIn) player.pause();
    player.loop = section;
    if (section && isNew) player.seek(section.from);
    if (wasPlaying) player.play();
  }
}

/** What a remote in the hall asks, and what the page that leads does about it. */
import { VIEWS, type View } from '../floor/views';
import type { HallAsk } from '../lib/contract';
import type { Player } from '../lib/player';
import { HELPS, linesOf } from '../teach/pieces';
import type { Practice } from '../teach/practice.svelte';

const NEAR = 1e-6;

/** All fields of what is asked: the program wants them named. */
export function asked(kind: string, ask: Partial<Omit<HallAsk, 'kind'>> = {}): HallAsk {
  return { kind, number: null, to: null, word: null, ...ask };
}

/** What it may do it with. */
export interface Asked {
  player: Player;
  /** The practice of the room Teach; null in another room. */
  practice: Practice | null;
  see(view: View): void;
}

/** Does what a remote asks. */
export function answer(ask: HallAsk, { player, practice, see }: Asked): void {
  switch (ask.kind) {
    case 'play':
      player.play();
      break;
    case 'stop':
      player.pause();
      break;
    case 'again':
      if (practice) practice.again();
      else player.seek(player.loop?.from ?? 0);
      break;
    case 'speed':
      if (ask.number !== null) player.speed = ask.number;
      break;
    case 'view': {
      const view = VIEWS.find((v) => v.view === ask.word);
      if (view) see(view.view);
      break;
    }
    case 'help': {
      const help = HELPS.find((h) => h.help === ask.word);
      if (help && practice) practice.help = help.help;
      break;
    }
    case 'wall': {
      const wall = practice?.walls.findIndex((w) => w.number === ask.number) ?? -1;
      if (wall >= 0) practice?.startOn(wall);
      break;
    }
    case 'section':
      goOver(ask, player, practice);
      break;
  }
}

function goOver(ask: HallAsk, player: Player, practice: Practice | null): void {
  const { number: from, to } = ask;
  if (from === null || to === null) {
    if (practice) practice.goOver({ kind: 'all' });
    else player.loop = null;
    return;
  }
  const wall = practice?.walls.findIndex((w) => w.from <= from + NEAR && from < w.to - NEAR) ?? -1;
  const lines = linesOf(practice?.walls[wall]?.sections ?? []);
  const first = lines.findIndex((s) => Math.abs(s.at - from) < NEAR);
  const last = lines.findIndex((s) => Math.abs(s.at + s.counts - to) < NEAR);
  if (practice && first >= 0 && last >= first) {
    if (wall !== practice.wall) practice.startOn(wall);
    practice.goOver({ kind: 'span', first, last });
  } else player.loop = { from, to };
}

/** The danced dance as the playhead wants it. */
import type { FloorAnswer, ReadAnswer } from '../lib/contract';
import type { PlayedDance } from '../lib/player';

/** What the player needs of an answer. */
export function danceOf(floor: FloorAnswer, reading: ReadAnswer | null): PlayedDance {
  const places = new Set<number>(floor.steps.map((s) => s.at));
  return {
    first: floor.first,
    length: floor.length,
    goesRound: floor.goesRound,
    stops: [...places].sort((a, b) => a - b),
    eight: reading?.beatsPerBar === 3 ? 6 : 8,
    ones: floor.stretches.map((s) => s.at),
  };
}

/** From where the dance is seen. */
export type View = 'above' | 'behind' | 'front' | 'mirror';

/** Dancers beside and behind each other. */
export interface Rows {
  across: number;
  deep: number;
}

/** Views in the order offered, with their words. */
export const VIEWS: readonly { view: View; name: string; about: string }[] = [
  { view: 'above', name: 'From above', about: 'The feet seen from above, 12 at the top' },
  { view: 'behind', name: 'From behind', about: 'The dancer from behind, turning with the wall' },
  { view: 'front', name: 'From the front', about: 'The dancer from the front, as the class sees her' },
  { view: 'mirror', name: 'Mirrored', about: 'From the front as in a mirror: her left is your left' },
];

/** One dancer alone. */
export const ALONE: Rows = { across: 1, deep: 1 };

/** A class. */
export const CLASS: Rows = { across: 4, deep: 3 };

/** Metres between dancers of a class. */
export const SPACING = 1.4;

/** The view after this one, and from the last the first. */
export function viewAfter(view: View): View {
  const at = VIEWS.findIndex((v) => v.view === view);
  return VIEWS[(at + 1) % VIEWS.length]!.view;
}

/** How many notches tell a wall: none for 12:00, one for 3:00, two for 6:00, three for 9:00; null between the walls. */
export function notchesOf(facing: string | null): number | null {
  const at = ['12:00', '3:00', '6:00', '9:00'].indexOf(facing ?? '');
  return at < 0 ? null : at;
}

/** A stretch of danced counts that can be danced again and again. */
export interface LoopChoice {
  /** `section 2`. */
  name: string;
  from: number;
  /** Its end, which is not part of it. */
  to: number;
}

/** What the program answers when asked how a dance looks on the floor. Mirrors FloorAnswer.cs until these types are generated. */

/** A foot at every moment: millimetres, tenths of a degree, and a letter each for the part that meets the floor. */
export interface FloorFoot {
  /** Its ball, to the right of the start. */
  x: number[];
  /** Its ball, forward of the start. */
  y: number[];
  /** Where the toe points, clockwise from 12:00, not reduced. */
  angle: number[];
  /** Above the floor. */
  lift: number[];
  /** f flat, b ball, h heel, t toe, a air. */
  contact: string;
}

/** The body at every moment: millimetres and tenths of a degree. */
export interface FloorBody {
  /** Below the hips, to the right of the start. */
  x: number[];
  /** Below the hips, forward of the start. */
  y: number[];
  /** Height of the hips. */
  hips: number[];
  /** Where the dance faces. */
  facing: number[];
  /** Styling turn of the body against it. */
  turned: number[];
  /** L, R, B both, ? unknown. */
  weight: string;
}

/** A wall, a tag or the ending as danced. */
export interface FloorStretch {
  at: number;
  counts: number;
  /** From 1. */
  wall: number;
  /** wall, tag, quote, wait or ending. */
  kind: string;
  name: string;
  /** At its start, `9:00`; null when not known. */
  facing: string | null;
  words: string;
  startsWall: boolean;
}

/** An action as danced. */
export interface FloorStep {
  at: number;
  /** The printed count: `3&`. */
  count: string;
  /** L, R, both or none. */
  foot: string;
  words: string;
  weight: string;
  facing: string | null;
  /** Its words in the text. */
  from: number;
  to: number;
  line: number;
}

/** The dance danced, ready to draw. Single lengths in metres; moments stand `1 / perCount` counts apart, the first at `first`. */
export interface FloorAnswer {
  perCount: number;
  first: number;
  /** Counts danced. */
  length: number;
  /** Whether after the last count the first comes again without a jump in weight or facing. */
  goesRound: boolean;
  height: number;
  heelToBall: number;
  /** From hip to floor, standing. */
  leg: number;
  left: FloorFoot;
  right: FloorFoot;
  body: FloorBody;
  stretches: FloorStretch[];
  steps: FloorStep[];
}

/** Lists of numbers come to the page for students as a first number and differences, which are short to write. */
import type { CalledWords, FloorAnswer, FloorFoot, StudentCall } from '../lib/contract';

/** The numbers themselves. */
export function unfold(steps: readonly number[]): number[] {
  let sum = 0;
  return steps.map((s) => (sum += s));
}

function foot(of: FloorFoot): FloorFoot {
  return { ...of, x: unfold(of.x), y: unfold(of.y), angle: unfold(of.angle), lift: unfold(of.lift) };
}

/** The floor as the studio has it; the hips, which are not seen from above, at their height standing. */
export function unfoldFloor(floor: FloorAnswer): FloorAnswer {
  const { body } = floor;
  const x = unfold(body.x);
  return {
    ...floor,
    left: foot(floor.left),
    right: foot(floor.right),
    body: {
      ...body,
      x,
      y: unfold(body.y),
      hips: x.map(() => Math.round(floor.leg * 1000)),
      facing: unfold(body.facing),
      turned: unfold(body.turned),
    },
  };
}

/** A call as the studio has it; its seconds are not asked for here. */
export function unfoldCall(call: StudentCall): CalledWords {
  return { ...call, until: call.for, seconds: 0, due: 0, from: 0, to: 0 };
}

/** Lists of numbers come to the page for students as a first number and differences, which are short to write. */
import type { CalledWords, FloorAnswer, FloorFoot, FloorStep, StudentCall, StudentSteps } from '../lib/contract';

/** The numbers themselves. */
export function unfold(steps: readonly number[]): number[] {
  let sum = 0;
  return steps.map((s) => (sum += s));
}

function foot(of: FloorFoot): FloorFoot {
  return { ...of, x: unfold(of.x), y: unfold(of.y), angle: unfold(of.angle), lift: unfold(of.lift) };
}

/** Actions as the studio has them; their words and weights are not asked for here. */
function unfoldSteps(steps: StudentSteps): FloorStep[] {
  return steps.at.map((at, i) => ({
    at,
    count: steps.count[i]!,
    facing: steps.facing[i] || null,
    foot: '',
    words: '',
    weight: '',
    from: 0,
    to: 0,
    line: 0,
  }));
}

/** The floor as the studio has it; the hips, which are not seen from above, at their height standing. */
export function unfoldFloor(floor: FloorAnswer, steps: StudentSteps): FloorAnswer {
  const { body } = floor;
  const x = unfold(body.x);
  return {
    ...floor,
    steps: unfoldSteps(steps),
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

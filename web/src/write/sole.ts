/** The signs beside a line: a small sole for the weight after it, and a clock hand for the facing. */

const SVG = 'http://www.w3.org/2000/svg';

/** A sole, toe upwards, in a box of 10 by 22: right foot; the left one is its mirror image. */
export const SOLE =
  'M5 1C7.6 1 9.4 3.6 9.2 7c-.2 2.6-1.3 4-1.1 6.4.2 2.400.6 3 .6 4.8C8.700 20.400 7.300 21.500 5.500 21.500S2.500 20.200 2.600 18c.1-1.900.5-3 .3-5.400C2.700 10 1.200 8.600 1.200 6.200 1.200 3.200 2.800 1 5 1Z';

const FACES: Record<string, string> = { L: 'left', R: 'right', both: 'both feet', unknown: 'unknown' };

function shape(name: string, attributes: Record<string, string>): SVGElement {
  const element = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  return element;
}

/** Degrees of a clock time: 3:00 is 90. */
export function clockDegrees(facing: string): number {
  const [hours = '12', minutes = '0'] = facing.split(':');
  return ((Number(hours) % 12) + Number(minutes) / 60) * 30;
}

/** The two signs with their spoken name. */
export function soleMark(weight: string, facing: string | null): HTMLElement {
  const box = document.createElement('span');
  box.className = 'line-end';
  const words = `weight ${weight === 'L' || weight === 'R' ? 'on ' : ''}${FACES[weight] ?? weight}, facing ${facing ?? 'unknown'}`;
  box.setAttribute('role', 'img');
  box.setAttribute('aria-label', words);
  box.title = words;
  const svg = shape('svg', { viewBox: '0 0 52 24', width: '52', height: '24', 'aria-hidden': 'true' });
  const left = shape('path', {
    d: SOLE,
    transform: 'translate(11 1) scale(-1 1)',
    fill: 'none',
    stroke: 'currentColor',
    'stroke-width': '1.4',
    opacity: weight === 'L' || weight === 'both' ? '1' : '0.28',
  });
  const right = shape('path', {
    d: SOLE,
    transform: 'translate(13 1)',
    fill: 'currentColor',
    opacity: weight === 'R' || weight === 'both' ? '1' : '0.28',
  });
  svg.append(left, right);
  if (facing) {
    const hand = shape('g', { transform: `translate(40 12) rotate(${clockDegrees(facing)})` });
    hand.append(
      shape('circle', { r: '10', fill: 'none', stroke: 'currentColor', 'stroke-width': '1.2', opacity: '0.5' }),
      shape('path', { d: 'M0 3V-8M-3-5L0-8.500L3-5', fill: 'none', stroke: 'currentColor', 'stroke-width': '1.800' }),
    );
    svg.append(hand);
  }
  box.append(svg);
  return box;
}

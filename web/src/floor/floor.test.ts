import { describe, expect, it } from 'vitest';
import type { FloorAnswer, FloorStep } from '../lib/contract';
import { Camera } from './camera';
import { rgb } from './colours';
import answer from './fixtures/tin-lantern.json';
import { BAR, CORE, FOREFOOT, HEEL, HEEL_END, type Outline, TOE, trace, WHOLE } from './sole';
import { lastAt, partsOf, playedOf, spoken, Steps } from './steps';
import { notchesOf, VIEWS, viewAfter } from './views';

const floor: FloorAnswer = answer;

describe('the steps', () => {
  const steps = new Steps(floor);

  it('are found by the count they land on', () => {
    floor.steps.forEach((step, i) => {
      const next = floor.steps[i + 1]?.at ?? Infinity;
      if (next === step.at) return;
      expect(steps.indexAt(step.at)).toBe(i);
      expect(steps.indexAt(Math.min(next, step.at + 1) - 0.01)).toBe(i);
    });
    expect(steps.indexAt(-3)).toBe(-1);
  });

  it('stand in lines of an eight', () => {
    expect(steps.lines).toHaveLength(4);
    expect(steps.countsOf(steps.indexAt(2.5)).map((c) => c.count)).toEqual([
      '1',
      '2',
      '3',
      '3&',
      '4',
      '5',
      '6',
      '7',
      '7&',
      '8',
    ]);
    expect(steps.countsOf(steps.indexAt(2.5)).filter((c) => c.isNow)).toEqual([{ count: '3&', isNow: true }]);
    expect(steps.countsOf(-1)).toEqual([]);
  });

  it('are none beyond the end of a dance that has become shorter', () => {
    const beyond = floor.steps.length + 5;
    expect(steps.wordsOf(beyond)).toBe('');
    expect(steps.countsOf(beyond)).toEqual([]);
    expect(steps.step(beyond)).toBeNull();
  });

  it('on one count are told together', () => {
    const step = (at: number, count: string, words: string): FloorStep => ({ ...floor.steps[0]!, at, count, words });
    const both = new Steps({
      ...floor,
      goesRound: false,
      steps: [step(0, '1', 'stomp R'), step(0, '1', 'clap'), step(1, '2', 'hold')],
    });
    expect(both.wordsOf(both.indexAt(0.5))).toBe('stomp R, clap');
    expect(both.countsOf(1).map((c) => c.count)).toEqual(['1', '2']);
    expect(both.after(0)).toBe(2);
    expect(both.after(2)).toBe(-1);
  });

  it('come again after the last where the dance goes round', () => {
    expect(steps.after(floor.steps.length - 1)).toBe(0);
    expect(steps.after(-1)).toBe(0);
  });

  it('give still pictures at what has landed', () => {
    expect(steps.landed(2.49)).toBe(2);
    expect(steps.landed(2.5)).toBe(2.5);
    expect(steps.landed(2.99)).toBe(2.5);
    expect(steps.landed(31.4)).toBe(31);
  });

  it('know the stretch they are in', () => {
    expect(steps.stretchAt(4)?.wall).toBe(1);
  });
});

describe('what the playhead knows', () => {
  it('are the counts that are danced and the ones', () => {
    const played = playedOf(floor, 8);
    expect(played.ones).toEqual([0, 8, 16, 24]);
    expect(played.stops).toContain(2.5);
    expect(played.stops).toEqual([...played.stops].sort((a, b) => a - b));
    expect([played.first, played.length, played.goesRound, played.eight]).toEqual([0, 32, true, 8]);
  });

  it('is where the one would be when a wall goes on in the middle of an eight', () => {
    const step = (at: number, count: string): FloorStep => ({ ...floor.steps[0]!, at, count });
    const stretch = (at: number) => ({ ...floor.stretches[0]!, at });
    const cut = {
      ...floor,
      steps: [step(0, '1'), step(3, '4'), step(4, '1'), step(7, '4'), step(7.5, '4&'), step(8, '5'), step(12, '1')],
      stretches: [stretch(0), stretch(4), stretch(7.5)],
    };
    expect(playedOf(cut, 8).ones).toEqual([0, 4, 12]);
  });
});

describe('a printed count', () => {
  it('is split in its number and what is smaller', () => {
    expect(partsOf('3&')).toEqual({ number: '3', rest: '&' });
    expect(partsOf('&')).toEqual({ number: '', rest: '&' });
    expect(partsOf('8')).toEqual({ number: '8', rest: '' });
  });

  it('is said in words', () => {
    expect(spoken('3&')).toBe('3 and');
    expect(spoken('1a')).toBe('1 a');
  });
});

describe('rising places', () => {
  it('are searched for the last that is not after', () => {
    expect([-1, 0, 0.99, 1, 7].map((c) => lastAt([0, 1, 1, 4], c))).toEqual([-1, 0, 0, 2, 3]);
    expect(lastAt([], 1)).toBe(-1);
  });
});

describe('the sole', () => {
  const all: Record<string, Outline> = { FOREFOOT, HEEL, TOE, WHOLE, CORE, BAR };

  it.each(Object.entries(all))('%s is closed and made of whole curves', (_, outline) => {
    expect((outline.length - 2) % 6).toBe(0);
    expect(outline.slice(-2)).toEqual(outline.slice(0, 2));
  });

  it('has its heel where the program says', () => {
    expect(Math.min(...WHOLE.filter((_, i) => i % 2 === 1))).toBe(-HEEL_END);
    expect(Math.min(...HEEL.filter((_, i) => i % 2 === 1))).toBe(-HEEL_END);
    expect(floor.heelToBall / HEEL_END / floor.height).toBeCloseTo(0.15, 3);
  });

  it('is turned over for the left foot', () => {
    const drawn = (mirror: 1 | -1) => {
      const points: [number, number][] = [];
      trace(WHOLE, {
        moveTo: (x, y) => void points.push([x, y]),
        bezierCurveTo: (_a, _b, _c, _d, x, y) => void points.push([x, y]),
        closePath: () => undefined,
      }, mirror, -1); // prettier-ignore
      return points;
    };
    expect(drawn(-1)).toEqual(drawn(1).map(([x, y]) => [-x, y]));
    // the toe is up on a screen
    expect(Math.min(...drawn(1).map(([, y]) => y))).toBeCloseTo(-0.28, 9);
  });
});

describe('the camera', () => {
  it('is where it should be the first time, and gently after that', () => {
    const camera = new Camera();
    expect(camera.toward(1, 2, 0, 0.016, false)).toBe(false);
    expect([camera.x, camera.y]).toEqual([1, 2]);
    expect(camera.toward(2, 2, 0, 0.016, false)).toBe(true);
    expect(camera.x).toBeGreaterThan(1);
    expect(camera.x).toBeLessThan(1.1);
    let frames = 0;
    while (camera.toward(2, 2, 0, 1 / 60, false)) frames++;
    expect(frames).toBeLessThan(60 * 6);
    expect(camera.x).toBeCloseTo(2, 2);
  });

  it('goes as fast at any number of frames', () => {
    const [slow, fast] = [new Camera(), new Camera()];
    for (const camera of [slow, fast]) camera.toward(0, 0, 0, 0, false);
    for (let i = 0; i < 30; i++) slow.toward(1, 0, 0, 1 / 30, false);
    for (let i = 0; i < 120; i++) fast.toward(1, 0, 0, 1 / 120, false);
    expect(slow.x).toBeCloseTo(fast.x, 9);
  });

  it('turns the short way', () => {
    const camera = new Camera();
    camera.toward(0, 0, 0.2, 0, false);
    camera.toward(0, 0, 2 * Math.PI - 0.2, 0.1, false);
    expect(camera.yaw).toBeLessThan(0.2);
    expect(camera.yaw).toBeGreaterThan(-0.2);
  });

  it('is at once where nothing may glide', () => {
    const camera = new Camera();
    camera.toward(0, 0, 0, 0, false);
    expect(camera.toward(5, 5, 1, 0.016, true)).toBe(false);
    expect([camera.x, camera.y, camera.yaw]).toEqual([5, 5, 1]);
  });

  it('goes along with a small leap of the dance and not with a large one', () => {
    const camera = new Camera();
    camera.toward(1, 1, 0, 0, false);
    camera.shift([0.5, 0], 1);
    camera.shift([5, 0], 1);
    expect([camera.x, camera.y]).toEqual([1.5, 1]);
  });
});

describe('views and walls', () => {
  it('follow each other and come round', () => {
    let view = VIEWS[0]!.view;
    const seen = VIEWS.map(() => (view = viewAfter(view)));
    expect(new Set(seen).size).toBe(VIEWS.length);
    expect(view).toBe(VIEWS[0]!.view);
  });

  it('have notches', () => {
    expect(['12:00', '3:00', '6:00', '9:00', '1:30', null].map(notchesOf)).toEqual([0, 1, 2, 3, null, null]);
  });
});

describe('a colour', () => {
  it('is read in every way that a page writes it', () => {
    expect(rgb('#0f5e6b')).toEqual([15, 94, 107]);
    expect(rgb('#fff')).toEqual([255, 255, 255]);
    expect(rgb('rgb(1, 2, 3)')).toEqual([1, 2, 3]);
  });
});

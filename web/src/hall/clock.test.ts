import { expect, test } from 'vitest';
import { HallClock } from './clock';

/** A network whose ways take what is said, one after the other, there and back. */
function network(ahead: number, ways: [there: number, back: number][]) {
  let here = 1000;
  let i = 0;
  const ask = () => {
    const [there, back] = ways[i++ % ways.length]!;
    here += there;
    const told = here + ahead;
    here += back;
    return Promise.resolve(told);
  };
  return { ask, here: () => here, pass: (ms: number) => (here += ms) };
}

test('an even way gives the very time', async () => {
  const net = network(50_000, [[20, 20]]);
  const clock = new HallClock(net.ask, net.here);
  expect(clock.isSet).toBe(false);
  await clock.sync(1);
  net.pass(123);
  expect(clock.now()).toBe(net.here() + 50_000);
  expect(clock.isSet).toBe(true);
});

test('the quickest answer counts, so that a busy network does not make it wrong', async () => {
  const net = network(-700, [
    [300, 5],
    [4, 6],
    [5, 400],
    [90, 10],
  ]);
  const clock = new HallClock(net.ask, net.here);
  await clock.sync(4);
  expect(Math.abs(clock.now() - (net.here() - 700))).toBeLessThanOrEqual(clock.error);
  expect(clock.error).toBe(5);
});

test('it is never more wrong than it says, whatever the network does', async () => {
  let seed = 7;
  const random = () => (seed = (seed * 48_271) % 2_147_483_647) / 2_147_483_647;
  for (let run = 0; run < 200; run++) {
    const ahead = random() * 10_000;
    const net = network(
      ahead,
      Array.from({ length: 8 }, () => [random() ** 4 * 500, random() ** 4 * 500]),
    );
    const clock = new HallClock(net.ask, net.here);
    await clock.sync(8);
    expect(Math.abs(clock.now() - net.here() - ahead)).toBeLessThanOrEqual(clock.error + 1e-6);
  }
});

test('after a new start of the program the old answers do not count', async () => {
  const net = network(0, [[1, 1]]);
  let ahead = 5000;
  const clock = new HallClock(() => net.ask().then((t) => t + ahead), net.here);
  await clock.sync(2);
  ahead = 9000;
  clock.reset();
  await clock.sync(1);
  expect(clock.now()).toBe(net.here() + 9000);
});

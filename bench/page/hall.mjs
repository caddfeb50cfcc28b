// Measures by how much screens in the hall are apart from her page: the count that each shows, taken at the same moment of one machine's clock,
// while a dance plays with the click. Prints a table; docs/performance.md says what it was and where.
//   node bench/page/hall.mjs [SCREENS]            (after ./test has been run once; CHROME names the browser)
import { chromium } from '../../tests/browser/node_modules/playwright-core/index.mjs';
import { Studio } from '../../tests/browser/studio.mjs';

const SCREENS = Number(process.argv[2] ?? 3);
const SAMPLES = 120;

const studio = await Studio.start(['--hall', '127.0.0.1:7660']);
const browser = await chromium.launch({
  executablePath: process.env.CHROME,
  args: ['--no-sandbox', '--autoplay-policy=no-user-gesture-required', '--disable-background-timer-throttling', '--disable-renderer-backgrounding'],
});

const open = async (address) => {
  const page = await (await browser.newContext({ viewport: { width: 900, height: 600 } })).newPage();
  await page.goto(address);
  return page;
};

/** The count a page shows, and when: the clocks of all pages are that of the machine. */
const shown = (page, player) => page.evaluate((name) => {
  const one = name === 'hers' ? window.scuff.player : window.scuffHall.player;
  return { at: performance.timeOrigin + performance.now(), count: one.count(), length: one.length };
}, player);

try {
  const page = await open(`${studio.address}/write`);
  await page.waitForFunction(() => window.scuff?.work.reading && window.scuff.work.floor);
  const answer = await page.evaluate(() => window.scuff.hall.open('floor').then(() => window.scuff.hall.answer));
  const screens = [];
  for (let i = 0; i < SCREENS; i++) {
    const screen = await open(answer.addresses[0].address);
    await screen.getByLabel('The six digits that stand on her page').fill(answer.code);
    await screen.getByRole('button', { name: 'Let this device in' }).click();
    await screen.locator('.words .count').waitFor();
    screens.push(screen);
  }
  const pace = await page.evaluate(() => {
    window.scuff.player.play();
    return window.scuff.player.tempo / 60;
  });
  await page.waitForTimeout(3000);
  const skews = [];
  for (let i = 0; i < SAMPLES; i++) {
    const hers = await shown(page, 'hers');
    for (const screen of screens) {
      const theirs = await shown(screen, 'theirs');
      const expected = (hers.count + ((theirs.at - hers.at) / 1000) * pace) % hers.length;
      let apart = theirs.count - expected;
      apart -= Math.round(apart / hers.length) * hers.length;
      skews.push((apart / pace) * 1000);
    }
    await page.waitForTimeout(200);
  }
  const sizes = skews.map(Math.abs).sort((a, b) => a - b);
  const at = (part) => sizes[Math.min(sizes.length - 1, Math.floor(part * sizes.length))].toFixed(1);
  console.log(`${SCREENS} screens, ${skews.length} samples: apart from her page by ${at(0.5)} ms (p50), ${at(0.95)} ms (p95), ${at(1)} ms (most)`);
  console.log(`mean with its sign ${(skews.reduce((a, b) => a + b, 0) / skews.length).toFixed(1)} ms`);
} finally {
  await browser.close();
  await studio.stop();
}

// Measures the studio in a real browser: how long a letter takes to be answered, how soon the first page is usable after the program was started, what a
// frame of the dancing floor costs, what the page weighs. Prints a table; docs/performance.md says what it was and where.
//   node bench/page/measure.mjs            (after ./scuff open and ./test have been run once; CHROME names the browser)
import { spawn } from 'node:child_process';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { chromium } from '../../tests/browser/node_modules/playwright-core/index.mjs';

const root = new URL('../../', import.meta.url).pathname;
const build = (await readFile(join(root, 'artifacts/run/current'), 'utf8')).trim();
const program = join(root, 'artifacts/run', build, 'Scuff.App.dll');
const LETTERS = 120;
const STARTS = 5;
const FRAMES = 600;

async function start(home) {
  const child = spawn('dotnet', [program, 'open', '--no-browser', '--port', '0'], {
    env: { ...process.env, SCUFF_HOME: home },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const address = await new Promise((resolve) => {
    let out = '';
    child.stdout.on('data', (d) => {
      out += d;
      const found = /http:\/\/127\.0\.0\.1:\d+/.exec(out);
      if (found) resolve(found[0]);
    });
  });
  return { address, stop: () => new Promise((resolve) => (child.once('exit', resolve), child.kill('SIGKILL'))) };
}

const at = (sorted, part) => sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))];
const told = (values) => {
  const sorted = [...values].sort((a, b) => a - b);
  return { median: at(sorted, 0.5), p95: at(sorted, 0.95), most: sorted.at(-1) };
};
const row = (name, v, unit = 'ms') => console.log(`${name.padEnd(58)} ${v.median.toFixed(1).padStart(8)} ${v.p95.toFixed(1).padStart(8)} ${v.most.toFixed(1).padStart(8)} ${unit}`);

const browser = await chromium.launch({
  executablePath: process.env.CHROME ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-quic', '--autoplay-policy=no-user-gesture-required'],
});
console.log(`${''.padEnd(58)} ${'median'.padStart(8)} ${'95 %'.padStart(8)} ${'most'.padStart(8)}`);

// the reference of this run: a page that holds one line, from a server that is there already
const bare = [];
{
  const page = await (await browser.newContext()).newPage();
  for (let i = 0; i < STARTS; i++) {
    const began = performance.now();
    await page.goto('data:text/html,<p>there');
    await page.waitForSelector('p');
    bare.push(performance.now() - began);
  }
}
row('an empty page (the browser alone)', told(bare));

const first = [];
const again = [];
for (let i = 0; i < STARTS; i++) {
  const home = await mkdtemp(join(tmpdir(), 'scuff-bench-'));
  for (const list of [first, again]) {
    const context = await browser.newContext();
    const page = await context.newPage();
    const began = performance.now();
    const studio = await start(home);
    await page.goto(studio.address);
    await page.waitForFunction(() => window.scuff?.work.reading && document.querySelector('.cm-line .t-move'));
    list.push(performance.now() - began);
    await context.close();
    await studio.stop();
  }
  await rm(home, { recursive: true, force: true });
}
row('start of the program to usable page, first time ever', told(first));
row('start of the program to usable page, later', told(again));

const home = await mkdtemp(join(tmpdir(), 'scuff-bench-'));
const studio = await start(home);
const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
await context.addInitScript(() => localStorage.setItem('scuff.guided', 'yes'));
const page = await context.newPage();
let weight = 0;
page.on('response', async (r) => {
  if (!r.url().startsWith(studio.address) || r.url().includes('/api/') || r.fromServiceWorker()) return;
  const body = await r.body().catch(() => null);
  // a font is compressed already
  if (body) weight += r.url().endsWith('.woff2') ? body.length : gzipSync(body).length;
});
await page.goto(studio.address);
await page.waitForFunction(() => window.scuff?.work.floor);
await page.waitForTimeout(500);
console.log(`weight of the first page, compressed: ${(weight / 1000).toFixed(0)} kB`);

// 128 counts: the demo dance four times over
const lantern = await readFile(join(root, 'demo/dances/tin-lantern.dance'), 'utf8');
const head = lantern.slice(0, lantern.indexOf('section 1')).replace('counts: 32', 'counts: 128');
const sections = lantern.slice(lantern.indexOf('section 1'), lantern.indexOf('tag "')).split(/(?=^section \d)/m);
const long = head + [0, 1, 2, 3].flatMap((n) => sections.map((s, i) => s.replace(/^section \d/, `section ${n * 4 + i + 1}`))).join('');
await page.evaluate((text) => window.scuff.work.replace(text), long);
await page.waitForFunction(() => window.scuff.work.reading?.counts === 128);
const letters = await page.evaluate(() => {
  window.letters = [];
  document.querySelector('.cm-content').addEventListener(
    'keydown',
    () => {
      const began = performance.now();
      const old = window.scuff.work.reading;
      // shown is what the frame after the answer has drawn
      const look = () => (window.scuff.work.reading !== old ? requestAnimationFrame(() => window.letters.push(performance.now() - began)) : setTimeout(look, 1));
      look();
    },
    true,
  );
  return window.letters.length;
});
if (letters !== 0) throw new Error('letters were counted before any was typed');
await page.locator('.cm-line', { hasText: '5-6   step L to side, step R together' }).last().click();
await page.keyboard.press('End');
for (let i = 0; i < LETTERS; i++) {
  await page.keyboard.press(i % 2 === 0 ? 'x' : 'Backspace');
  await page.waitForFunction((n) => window.letters.length > n, i);
  await page.waitForTimeout(60);
}
const all = await page.evaluate(() => window.letters);
row('letter to updated complaints on the screen, 128 counts', told(all.slice(10)));

await page.evaluate((text) => window.scuff.work.replace(text), lantern);
await page.waitForFunction(() => window.scuff.work.reading?.counts === 32);
await page.waitForTimeout(500);
for (const view of ['From above', 'From behind']) {
  const more = page.getByText('Speed, section and view');
  if (!(await page.getByRole('button', { name: view }).isVisible())) await more.click();
  await page.getByRole('button', { name: view }).click();
  await page.waitForTimeout(1500);
  await page.evaluate(() => {
    window.frames = [];
    window.asked ??= window.requestAnimationFrame.bind(window);
    window.requestAnimationFrame = (work) =>
      window.asked((t) => {
        const began = performance.now();
        work(t);
        window.frames.push(performance.now() - began);
      });
  });
  await page.evaluate(() => window.scuff.player.play());
  await page.waitForFunction((n) => window.frames.length > n, FRAMES, { timeout: 120_000 });
  const frames = await page.evaluate(() => (window.scuff.player.pause(), window.frames));
  row(`script in a frame, ${view.toLowerCase()}`, told(frames.slice(30)));
}

await browser.close();
await studio.stop();
await rm(home, { recursive: true, force: true });

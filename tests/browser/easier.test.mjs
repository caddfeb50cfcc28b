// Something easier, offered for the line she stands on and taken as an option; the dance in the other foot as a new one.
import assert from 'node:assert/strict';
import { mkdir, readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { after, before, test } from 'node:test';
import { openBrowser, Studio } from './studio.mjs';

const axe = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const SHOTS = new URL('../../artifacts/browser/shots/', import.meta.url).pathname;

const TEXT = `Weathercock

by: Scuff demo
counts: 8
walls: 1
start: weight on L

section 1
1-4   rolling vine right, touch L together
5-8   rolling vine left, touch R together
`;

let studio;
let browser;
let page;

before(async () => {
  await mkdir(SHOTS, { recursive: true });
  studio = await Studio.start();
  browser = await openBrowser();
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  // a small machine that does other work as well may be slow to answer; nothing here is a measure of time
  context.setDefaultTimeout(90_000);
  page = await context.newPage();
  page.faults = [];
  page.on('pageerror', (e) => page.faults.push(e.message));
  await page.goto(`${studio.address}/write`);
  await page.evaluate(() => localStorage.setItem('scuff.guided', 'yes'));
  await page.reload();
  await page.waitForFunction(() => window.scuff?.work.reading);
  await page.evaluate((text) => window.scuff.work.create(text), TEXT);
  await page.waitForFunction(() => window.scuff.work.reading?.title === 'Weathercock');
});

after(async () => {
  await browser?.close();
  await studio?.stop();
});

async function perform(words) {
  await page.keyboard.press('Control+K');
  await page.getByRole('searchbox', { name: 'Look for an action' }).fill(words);
  await page.keyboard.press('Enter');
}

const text = () => page.evaluate(() => window.scuff.work.text);

test('an easier way is offered for the line with its reasons, taken as an option, and taken back', async () => {
  await page.locator('.cm-line', { hasText: 'rolling vine left' }).click();
  await perform('something easier');
  const dialog = page.getByRole('dialog', { name: 'Something easier' });
  const offer = dialog.getByRole('button', { name: /^5-7: vine left/ });
  await offer.waitFor();
  assert.match(await offer.innerText(), /no turn instead of a full turn/);
  assert.equal(await dialog.getByText('rolling vine right').count(), 0);
  await page.evaluate(axe);
  const found = await page.evaluate(() => window.axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'] }));
  assert.deepEqual(
    found.violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target).join(' ')}`),
    [],
  );
  await page.screenshot({ path: `${SHOTS}easier.png` });

  await dialog.getByLabel('Where').selectOption('in the whole dance');
  await dialog.getByText('rolling vine right').waitFor();

  await offer.click();
  await dialog.getByText('Undo takes it back').waitFor();
  assert.match(await text(), /option 5-7 "easier": vine left\n/);
  await page.keyboard.press('Escape');
  await page.waitForFunction(() => window.scuff.work.reading?.isClean);

  await page.locator('.cm-content').click();
  await page.keyboard.press('Control+Z');
  assert.equal(await text(), TEXT);
});

test('the dance in the other foot is a new dance of the book', async () => {
  await perform('mirror the dance');
  await page.waitForFunction(() => window.scuff.work.reading?.title === 'Weathercock (mirrored)');
  assert.match(await text(), /start: weight on R/);
  assert.match(await text(), /1-4 {3}rolling vine left, touch R together/);
  const titles = (await studio.json('/api/dances?words=weathercock')).rows.map((r) => r.title);
  assert.ok(titles.includes('Weathercock') && titles.includes('Weathercock (mirrored)'), titles.join());
  assert.deepEqual(page.faults, []);
});

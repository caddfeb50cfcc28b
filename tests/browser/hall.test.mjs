// The hall: opened from her page, a screen paired with the code, what she dances seen there, shut again.
import assert from 'node:assert/strict';
import { mkdir, readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { after, before, test } from 'node:test';
import { openBrowser, Studio } from './studio.mjs';

const axe = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const SHOTS = new URL('../../artifacts/browser/shots/', import.meta.url).pathname;

let studio;
let browser;

before(async () => {
  await mkdir(SHOTS, { recursive: true });
  // this machine alone: a test opens no door to the network it runs in
  studio = await Studio.start(['--hall', '127.0.0.1:7640']);
  browser = await openBrowser();
});

after(async () => {
  await browser?.close();
  await studio?.stop();
});

async function open(address, options = {}) {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, ...options });
  // a small machine that does other work as well may be slow to answer; nothing here is a measure of time
  context.setDefaultTimeout(90_000);
  const page = await context.newPage();
  page.faults = [];
  page.on('pageerror', (e) => page.faults.push(e.message));
  await page.goto(address);
  return page;
}

/** A device in the hall: its address is none that a browser trusts, so much of what browsers can do is not there. */
async function device(address, options = {}) {
  const context = await browser.newContext({ viewport: { width: 1180, height: 820 }, hasTouch: true, ...options });
  // a small machine that does other work as well may be slow to answer; nothing here is a measure of time
  context.setDefaultTimeout(90_000);
  await context.addInitScript(() => {
    Object.defineProperty(Crypto.prototype, 'randomUUID', { value: undefined });
    for (const name of ['serviceWorker', 'clipboard', 'wakeLock']) delete Navigator.prototype[name];
  });
  const page = await context.newPage();
  page.faults = [];
  page.on('pageerror', (e) => page.faults.push(e.message));
  await page.goto(address);
  return page;
}

async function shut(page) {
  assert.deepEqual(page.faults, []);
  await page.context().close();
}

async function violations(page) {
  await page.evaluate(axe);
  const found = await page.evaluate(() =>
    window.axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] }),
  );
  return found.violations.map((v) => `${v.id}: ${v.nodes.map((n) => `${n.target} ${n.failureSummary}`).join('; ')}`);
}

const known = (page) => page.waitForFunction(() => window.scuff?.work.reading && window.scuff.work.floor);

async function her() {
  const page = await open(`${studio.address}/write`);
  await page.evaluate(() => localStorage.setItem('scuff.guided', 'yes'));
  await page.reload();
  await known(page);
  return page;
}

/** Opens the panel and the hall for these guests; gives its address and code. */
async function openHall(page, guests) {
  if (await page.getByRole('button', { name: 'Hall open' }).isVisible()) await page.getByRole('button', { name: 'Hall open' }).click();
  else {
    await page.getByRole('button', { name: 'More', exact: true }).click();
    await page.getByRole('button', { name: 'The hall: tablet and screens' }).click();
  }
  const dialog = page.getByRole('dialog', { name: 'The hall' });
  const first = dialog.getByRole('button', { name: guests === 'tablet' ? 'Open for my tablet' : 'Open for screens that watch' });
  const again = dialog.getByRole('button', { name: guests === 'tablet' ? 'New code for a tablet' : 'New code for screens' });
  await first.or(again).click();
  await page.waitForFunction((g) => {
    const { answer } = window.scuff.hall;
    return answer?.isOpen && answer.guests === g && answer.code;
  }, guests);
  const [address, code] = await page.evaluate(() => [window.scuff.hall.answer.addresses[0].address, window.scuff.hall.answer.code]);
  assert.equal((await dialog.locator('.code').innerText()).replace(/\s/g, ''), code);
  assert.match(await dialog.locator('.address').first().innerText(), new RegExp(address.replaceAll('.', '\\.')));
  return { address, code, dialog };
}

async function shutHall(page, dialog) {
  await dialog.getByRole('button', { name: 'Shut the hall' }).click();
  await dialog.getByText('Shut: nothing but this machine is answered.').waitFor();
  await page.keyboard.press('Escape');
}

/** Waits until the screen says the same words as her page; a slow machine may show them later than the count on either. */
async function sameWords(page, screen) {
  let hers = '';
  let theirs = '';
  for (let i = 0; i < 150; i++) {
    hers = await page.locator('.write-room .what').innerText();
    theirs = (await screen.locator('.words .what').textContent()) ?? '';
    if (hers === theirs) return;
    await page.waitForTimeout(100);
  }
  assert.equal(theirs, hers);
}

async function pair(page, code) {
  await page.getByLabel('The six digits that stand on her page').fill(code);
  await page.getByRole('button', { name: 'Let this device in' }).click();
}

test('a screen is paired, sees each step as she dances it, and is out when she shuts the hall', async () => {
  const page = await her();
  const { address, code, dialog } = await openHall(page, 'floor');
  assert.deepEqual(await violations(page), []);
  await page.screenshot({ path: `${SHOTS}hall-panel.png` });
  assert.match(await dialog.innerText(), /could read along/);

  const screen = await device(address);
  await screen.getByRole('heading', { name: 'The hall of Scuff' }).waitFor();
  assert.deepEqual(await violations(screen), []);
  await screen.screenshot({ path: `${SHOTS}hall-pairing.png` });

  // a wrong code lets nobody in, and says so
  await pair(screen, code === '111111' ? '222222' : '111111');
  await screen.getByText('This is not the code.').waitFor();
  await pair(screen, `${code.slice(0, 3)} ${code.slice(3)}`);
  const title = await page.evaluate(() => window.scuff.work.reading.title);
  await screen.getByRole('heading', { name: title }).waitFor();
  await dialog.getByText('There now: 1 screen.').waitFor();
  await page.keyboard.press('Escape');

  // step by step, the same count and the same words
  for (let i = 0; i < 3; i++) {
    await page.keyboard.press('Alt+.');
    const count = await page.evaluate(() => window.scuff.player.count());
    await screen.waitForFunction((c) => Math.abs(window.scuffHall.player.count() - c) < 1e-6, count);
    await sameWords(page, screen);
  }
  assert.deepEqual(await violations(screen), []);
  await screen.screenshot({ path: `${SHOTS}hall-screen.png` });

  // it plays there too, at her speed
  await page.evaluate(() => {
    window.scuff.player.setClickOn(false);
    window.scuff.player.speed = 0.8;
  });
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await screen.waitForFunction(() => window.scuffHall.player.playing && document.querySelector('.words .stretch').textContent.includes('80 % speed'));
  await page.getByRole('button', { name: 'Pause', exact: true }).click();
  await screen.waitForFunction(() => !window.scuffHall.player.playing);
  const stood = await page.evaluate(() => window.scuff.player.count());
  await screen.waitForFunction((c) => Math.abs(window.scuffHall.player.count() - c) < 1e-6, stood);

  // what she writes is danced there
  await page.locator('.cm-content').click();
  await page.keyboard.press('Control+A');
  await page.keyboard.insertText('Written While They Watch\n\nsection 1\n1-2   step R forward, touch L together\n');
  await screen.getByRole('heading', { name: 'Written While They Watch' }).waitFor();
  await screen.waitForFunction(() => window.scuffHall.hall.dance.floor.length === 2);

  await page.keyboard.press('Control+Z');
  await screen.getByRole('heading', { name: title }).waitFor();
  await page.waitForFunction(() => window.scuff.work.standing === 'kept');

  // the screen may look, not touch
  const refused = await screen.evaluate(async () => (await fetch('/api/dances')).status);
  assert.equal(refused, 403);
  await screen.goto(address.replace('/hall', '/book'));
  assert.equal(new URL(screen.url()).pathname, '/hall');
  await screen.getByRole('heading', { name: title }).waitFor();

  await page.getByRole('button', { name: 'Hall open' }).click();
  await shutHall(page, page.getByRole('dialog', { name: 'The hall' }));
  await screen.getByText('The hall is shut.').waitFor();
  assert.equal(await screen.evaluate(() => fetch('/api/hall/me').then((a) => a.status, () => 'nobody answers')), 'nobody answers');
  assert.equal(await page.getByRole('button', { name: 'Hall open' }).count(), 0);
  await shut(screen);
  await shut(page);
});

test('each screen keeps its own view and colours, in the sizes of tablets, phones and projectors', async () => {
  const page = await her();
  const { address, code, dialog } = await openHall(page, 'floor');
  for (const [name, width, height, colours] of [
    ['phone', 390, 844, 'dark'],
    ['tablet', 1180, 820, 'light'],
    ['projector', 1920, 1080, 'contrast'],
  ]) {
    const screen = await device(address, { viewport: { width, height } });
    await pair(screen, code);
    await screen.locator('.words .count').waitFor();
    await screen.getByText('This screen').click();
    await screen.getByRole('button', { name: 'Mirrored' }).click();
    await screen.getByRole('combobox', { name: 'Colours' }).selectOption(colours);
    await screen.waitForFunction(() => document.querySelector('[role=img]').getAttribute('aria-label').startsWith('From the front as in a mirror'));
    assert.deepEqual(await violations(screen), [], name);
    await screen.reload();
    await screen.waitForFunction(() => document.querySelector('[role=img]')?.getAttribute('aria-label').startsWith('From the front as in a mirror'));
    assert.equal(await screen.evaluate(() => document.documentElement.dataset.theme), colours);
    // nothing is cut off: the page is as wide as the screen, and so are its words
    const wide = await screen.evaluate(() => [
      document.documentElement.scrollWidth - innerWidth,
      ...[...document.querySelectorAll('.words *')].map((e) => Math.round(e.getBoundingClientRect().right - innerWidth)),
    ]);
    assert.ok(Math.max(...wide) <= 0, `${name}: ${wide}`);
    await screen.screenshot({ path: `${SHOTS}hall-${name}.png` });
    await shut(screen);
  }
  await shutHall(page, dialog);
  await shut(page);
});

test('her tablet is paired once with a code of its own, and does what the page does', async () => {
  const page = await her();
  const { address, code, dialog } = await openHall(page, 'tablet');
  const tablet = await device(address);
  await pair(tablet, code);
  await known(tablet);
  assert.equal(new URL(tablet.url()).pathname.split('/')[1], 'write');
  await dialog.getByText('The code has let a tablet in.').waitFor();
  const other = await device(address);
  await pair(other, code);
  await other.getByText('The code is used up.').waitFor();
  await shut(other);

  // pressing play on it takes the hall: a screen on this machine follows
  const screen = await open(`${studio.address}/hall`);
  await screen.locator('.words .count').waitFor();
  await tablet.evaluate(() => {
    localStorage.setItem('scuff.guided', 'yes');
    window.scuff.player.setClickOn(false);
    window.scuff.player.seek(8);
    window.scuff.player.play();
  });
  await screen.waitForFunction(() => window.scuffHall.player.playing && window.scuffHall.player.count() >= 8);
  await tablet.evaluate(() => window.scuff.player.pause());
  await screen.waitForFunction(() => !window.scuffHall.player.playing);

  await shutHall(page, dialog);
  assert.equal(await tablet.evaluate(() => fetch('/api/club').then((a) => a.status, () => 'nobody answers')), 'nobody answers');
  await shut(screen);
  await shut(tablet);
  await shut(page);
});

test('a screen that loses the program comes back by itself', async () => {
  const page = await her();
  const { dialog } = await openHall(page, 'floor');
  await page.keyboard.press('Escape');
  const screen = await open(`${studio.address}/hall`);
  await screen.locator('.words .count').waitFor();
  await screen.context().setOffline(true);
  await screen.evaluate(() => window.scuffHall.hall.stream.onerror());
  await screen.getByText('The network is lost; it comes back by itself.').waitFor();
  await page.keyboard.press('Alt+.');
  const count = await page.evaluate(() => window.scuff.player.count());
  await screen.context().setOffline(false);
  await screen.waitForFunction((c) => window.scuffHall.hall.standing === 'following' && Math.abs(window.scuffHall.player.count() - c) < 1e-6, count);
  await page.getByRole('button', { name: 'Hall open' }).click();
  await shutHall(page, dialog);
  await shut(screen);
  await shut(page);
});

// The studio as she uses it, in a real browser: writing, mending, keeping, printing, with the mouse and with the keyboard alone.
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
  studio = await Studio.start();
  browser = await openBrowser();
});

after(async () => {
  await browser?.close();
  await studio?.stop();
});

/** A page whose faults are faults of the test, and whose requests all stay here. */
async function open(path, { isFirst = false, isDeaf = false, ...options } = {}) {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, ...options });
  // a small machine that does other work as well may be slow to answer; nothing here is a measure of time
  context.setDefaultTimeout(90_000);
  if (!isFirst) await context.addInitScript(() => location.protocol === 'http:' && localStorage.setItem('scuff.guided', 'yes'));
  const page = await context.newPage();
  page.faults = [];
  if (isDeaf) await page.route('**/api/news', (route) => route.abort());
  page.on('pageerror', (e) => page.faults.push(e.message));
  page.on('request', (r) => {
    const url = new URL(r.url());
    if (!['blob:', 'data:', 'about:'].includes(url.protocol) && url.origin !== studio.address) page.faults.push(`asked ${r.url()}`);
  });
  await page.goto(studio.address + path);
  return page;
}

async function shut(page) {
  assert.deepEqual(page.faults, []);
  await page.context().close();
}

const textOf = (page) => page.evaluate(() => window.scuff.work.text);
const idOf = (page) => page.evaluate(() => window.scuff.work.dance.id);
const kept = (page) => page.waitForFunction(() => window.scuff.work.standing === 'kept' && window.scuff.work.reading !== null);

/** Waits until the program has answered for the very text that stands there. */
async function answered(page, has) {
  await page.waitForFunction(has, undefined, { timeout: 15_000 });
}

async function newDance(page) {
  await page.getByRole('button', { name: 'Write a dance of 32 counts' }).click();
  await page.waitForSelector('.cm-content');
  await page.waitForFunction(() => window.scuff.work.text.startsWith('New dance'));
  await page.locator('.cm-content').click();
}

test('a dance is written from nothing, with offers taken and a complaint mended by its button', async () => {
  const page = await open('/book');
  await newDance(page);
  await page.keyboard.press('Control+A');
  await page.keyboard.insertText('Harbour Steps\n\ncounts: 8\nwalls: 4\nstart: weight on L\n\nsection 1\n1-4   ');
  await page.keyboard.type('vine ri', { delay: 30 });
  await page.locator('.cm-tooltip-autocomplete li', { hasText: 'vine right' }).first().waitFor();
  // a list that has only just come takes no key, so that she does not take what she did not see
  await page.waitForTimeout(200);
  await page.keyboard.press('Enter');
  assert.match(await textOf(page), /1-4 {3}vine right$/);
  // the weight is on R after it: R cannot step
  await page.keyboard.insertText('\n5-6   step R forward, step L together\n7-8   step R to side, pivot 1/4 left');
  await answered(page, () => window.scuff.work.reading?.complaints.some((c) => c.id === 'weight/foot-not-free'));
  const note = page.locator('.margin .note.n-error').first();
  await note.waitFor();
  const before = await textOf(page);
  await note.locator('.note-mend').first().click();
  await page.waitForFunction((t) => window.scuff.work.text !== t, before);
  await kept(page);
  const stored = await studio.json(`/api/dances/${await idOf(page)}`);
  assert.equal(stored.text, await textOf(page));
  // and the mend can be undone
  await page.keyboard.press('Control+Z');
  await page.waitForFunction((t) => window.scuff.work.text === t, before);
  await shut(page);
});

test('what possible moves are offered follows the free foot', async () => {
  const page = await open('/book');
  await newDance(page);
  await page.keyboard.press('Control+A');
  await page.keyboard.insertText('Free Foot\n\nstart: weight on R\n\nsection 1\n1     ');
  await page.keyboard.type('to', { delay: 30 });
  await page.locator('.cm-tooltip-autocomplete li', { hasText: 'touch L' }).first().waitFor();
  assert.equal(await page.locator('.cm-tooltip-autocomplete li', { hasText: /^touch R/ }).count(), 0);
  await page.keyboard.press('Escape');
  await shut(page);
});

test('the program is killed in mid-edit, and everything is there again', async () => {
  const page = await open('/book');
  await newDance(page);
  await kept(page);
  const id = await idOf(page);
  await page.keyboard.press('Control+End');
  await page.keyboard.type('1-2   step R forward');
  await studio.kill();
  await page.keyboard.type(', touch L together');
  const typed = await textOf(page);
  await page.waitForFunction(() => window.scuff.work.standing === 'away');
  assert.match(await page.locator('.standing').innerText(), /away; kept in this page/);

  // she shuts the page too, and opens it when the program runs again
  const address = page.url();
  await page.goto('about:blank');
  await studio.run();
  await page.goto(address);
  await page.waitForFunction((t) => window.scuff?.work.text === t, typed);
  await kept(page);
  await page.waitForFunction(() => !Object.keys(localStorage).some((k) => k.startsWith('scuff.draft.')));
  assert.equal((await studio.json(`/api/dances/${id}`)).text, typed);
  await shut(page);
});

test('while the program is away an open page goes on, and catches up by itself', async () => {
  const page = await open('/write');
  await page.waitForSelector('.cm-content');
  await kept(page);
  await studio.kill();
  await page.locator('.cm-content').click();
  await page.keyboard.press('Control+End');
  await page.keyboard.type('\nnote: written while away');
  await page.waitForFunction(() => window.scuff.work.standing === 'away');
  await studio.run();
  await kept(page);
  assert.match((await studio.json(`/api/dances/${await idOf(page)}`)).text, /written while away/);
  await shut(page);
});

test('two pages edit one dance: nothing is written over unseen, and both texts stay', async () => {
  const one = await open('/book');
  await newDance(one);
  await kept(one);
  const id = await idOf(one);
  // a page that hears nothing of the others, as when the machine slept
  const two = await open('/write', { isDeaf: true });
  await two.goto(`${studio.address}/write/${id}`);
  await two.waitForSelector('.cm-content');
  await kept(two);
  await one.locator('.cm-content').click();
  await one.keyboard.press('Control+End');
  await one.keyboard.type('1-2   step R forward, touch L together');
  await kept(one);
  await two.locator('.cm-content').click();
  await two.keyboard.press('Control+End');
  await two.keyboard.type('1-2   step L back, touch R together');
  const panel = two.getByRole('alertdialog');
  await panel.waitFor();
  assert.match((await studio.json(`/api/dances/${id}`)).text, /step R forward/);
  await panel.getByRole('button', { name: 'Go on with the text of this page' }).click();
  await kept(two);
  assert.match((await studio.json(`/api/dances/${id}`)).text, /step L back/);
  const versions = (await studio.json(`/api/dances/${id}/versions`)).rows;
  const texts = await Promise.all(versions.map((v) => studio.json(`/api/dances/${id}/versions/${v.number}`)));
  assert.ok(texts.some((t) => t.text.includes('step R forward')), 'the other text is not among the versions');
  await shut(one);
  await shut(two);
});

test('an open page hears what another changes, as long as it has nothing of its own', async () => {
  const page = await open('/book');
  await newDance(page);
  await kept(page);
  const id = await idOf(page);
  const { revision } = await studio.json(`/api/dances/${id}`);
  await studio.ask(`/api/dances/${id}`, {
    method: 'PUT',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify({ text: 'From Elsewhere\n', revision, hand: 'another' }),
  });
  await page.waitForFunction(() => window.scuff.work.text === 'From Elsewhere\n');
  await kept(page);
  await shut(page);
});

test('a version tells what changed since, in dance terms, and can be gone back to', async () => {
  const page = await open('/write/d1');
  await page.waitForSelector('.cm-content');
  await kept(page);
  await page.getByRole('button', { name: 'More' }).click();
  await page.getByRole('button', { name: 'Versions of this dance' }).click();
  await page.getByLabel('Name').fill('as first danced');
  await page.getByRole('button', { name: 'Keep this version' }).click();
  await page.getByText('as first danced').waitFor();
  await page.getByRole('button', { name: 'Close' }).click();
  const first = await textOf(page);
  await page.evaluate(() => window.scuff.work.replace(window.scuff.work.text.replace('shuffle R forward', 'mambo R forward')));
  await kept(page);
  await page.getByRole('button', { name: 'More' }).click();
  await page.getByRole('button', { name: 'Versions of this dance' }).click();
  await page.getByText('as first danced').click();
  await page.getByText(/Section 1, counts 3.*mambo/).waitFor();
  await page.getByRole('button', { name: 'Go back to this version' }).click();
  await page.waitForFunction((t) => window.scuff.work.text === t, first);
  await kept(page);
  await shut(page);
});

test('the sheet is seen, in German, and comes as a PDF', async () => {
  const page = await open('/print/d1');
  const frame = page.frameLocator('iframe');
  await frame.getByRole('heading', { level: 1 }).waitFor();
  await page.getByLabel('Language').selectOption('de');
  await frame.locator('html[lang=de]').waitFor();
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'PDF, to print' }).click()]);
  assert.match(download.suggestedFilename(), /\.de\.pdf$/);
  const bytes = await readFile(await download.path());
  assert.equal(bytes.subarray(0, 5).toString('latin1'), '%PDF-');
  await shut(page);
});

test('the dance is danced: the playhead moves with the click, steps count by count, and lights the text', async () => {
  const page = await open('/write/d1');
  await page.waitForFunction(() => window.scuff?.work.floor !== null);
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await page.waitForFunction(() => window.scuff.player.count() > 2, undefined, { timeout: 15_000 });
  await page.waitForSelector('.t-now');
  await page.getByRole('button', { name: 'Pause' }).click();
  const at = await page.evaluate(() => window.scuff.player.count());
  await page.getByRole('button', { name: 'On a count' }).click();
  assert.ok((await page.evaluate(() => window.scuff.player.count())) > at);
  await shut(page);
});

test('the guide of the first minutes lets her try things, and stays away once it was left', async () => {
  const page = await open('/write/d1', { isFirst: true });
  const guide = page.getByRole('complementary', { name: 'Guide for the first minutes' });
  await guide.waitFor();
  assert.deepEqual(await faultsOf(page), []);
  await page.screenshot({ path: `${SHOTS}guide.png` });
  await guide.getByRole('button', { name: 'Next' }).click();
  await guide.getByRole('button', { name: 'Print a wrong wall' }).click();
  await page.waitForFunction(() => window.scuff.work.reading?.complaints.some((c) => c.id === 'facing/claim-differs'));
  await guide.getByRole('button', { name: 'Next' }).click();
  await guide.getByRole('button', { name: 'Mend it' }).click();
  await page.waitForFunction(() => window.scuff.work.reading?.isClean);
  await guide.getByRole('button', { name: 'Leave the guide' }).click();
  await kept(page);
  await page.reload();
  await page.waitForFunction(() => window.scuff?.work.floor !== null);
  assert.equal(await guide.count(), 0);
  await shut(page);
});

test('the main job is done with the keyboard alone', async () => {
  const page = await open('/book');
  await page.waitForSelector('.book');
  // the list of everything that can be done is a key away
  await page.keyboard.press('Control+K');
  await page.keyboard.type('write a new dance');
  await page.keyboard.press('Enter');
  await page.waitForFunction(() => window.scuff.work.text.startsWith('New dance'));
  await page.keyboard.press('Alt+T');
  await page.keyboard.press('Control+A');
  await page.keyboard.insertText('Keys Only\n\ncounts: 9\nwalls: 1\nstart: weight on L\n\nsection 1\n1-4   vine right, touch L\n5-8   vine left, touch R\n');
  await answered(page, () => window.scuff.work.reading?.title === 'Keys Only' && window.scuff.work.reading.complaints.some((c) => c.fixes.length > 0));
  await page.keyboard.press('Control+.');
  await page.waitForFunction(() => window.scuff.work.text.includes('counts: 8'));
  await kept(page);
  await page.keyboard.press('Alt+P');
  await page.waitForFunction(() => window.scuff.player.playing);
  await page.keyboard.press('Alt+P');
  await page.keyboard.press('Alt+5');
  await page.frameLocator('iframe').getByRole('heading', { level: 1, name: 'Keys Only' }).waitFor();
  // on to the first button with Tab, which is never caught by the text
  let reached = false;
  for (let i = 0; i < 40 && !reached; i++) {
    await page.keyboard.press('Tab');
    reached = await page.evaluate(() => document.activeElement?.textContent?.trim() === 'PDF, to print');
  }
  assert.ok(reached, 'Tab never came to the PDF');
  const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')]);
  assert.match(download.suggestedFilename(), /^keys-only\.pdf$/);
  await shut(page);
});

test('a track is dropped, heard, set right, and the dance is fitted to it; the plan goes into the text and onto the sheet', async () => {
  const page = await open('/listen/d1');
  await page.waitForFunction(() => window.scuff?.work.isOpening === false);
  await page.getByRole('heading', { name: 'Which track is it to be?' }).waitFor();
  assert.deepEqual(await faultsOf(page), [], 'listen, empty');
  const song = await aSong();
  // dropped onto the room, as from a folder of hers
  const handed = await page.evaluateHandle(
    async ([name, bytes]) => {
      const data = new DataTransfer();
      data.items.add(new File([Uint8Array.from(atob(bytes), (c) => c.charCodeAt(0))], name, { type: 'audio/wav' }));
      return data;
    },
    [song.name, song.bytes],
  );
  await page.dispatchEvent('section.listen', 'drop', { dataTransfer: handed });
  await page.waitForFunction(() => window.scuff.shelf.track?.music, undefined, { timeout: 120_000 });
  await page.waitForTimeout(500);
  await page.screenshot({ path: `${SHOTS}listen-laptop.png` });
  assert.deepEqual(await faultsOf(page), [], 'listen, heard');

  // the one is a beat later, and back again
  const ones = () => page.evaluate(() => window.scuff.shelf.track.music.counts.indexOf(1));
  const before = await ones();
  await page.getByRole('button', { name: 'One beat later' }).click();
  await page.waitForFunction((b) => window.scuff.shelf.track.music.counts.indexOf(1) !== b, before);
  await page.getByRole('button', { name: /^Take back/ }).first().click();
  await page.waitForFunction((b) => window.scuff.shelf.track.music.counts.indexOf(1) === b, before);

  await page.getByRole('button', { name: 'Fit', exact: true }).click();
  const put = page.getByRole('button', { name: 'Put this plan into the text' });
  await put.waitFor({ timeout: 30_000 });
  await page.waitForTimeout(800);
  await page.screenshot({ path: `${SHOTS}fit-laptop.png` });
  assert.deepEqual(await faultsOf(page), [], 'fit');
  // the chosen plan is danced to the track itself
  await page.getByRole('button', { name: 'See it danced' }).click();
  await page.locator('.around').getByRole('button', { name: 'Play', exact: true }).click();
  await page.waitForFunction(() => window.scuff.player.playing && window.scuff.shelf.sound.currentTime > 0.3 && !window.scuff.shelf.sound.paused);
  const [counted, due] = await page.evaluate(() => {
    const { player, shelf } = window.scuff;
    const { beats } = shelf.track.music;
    const at = shelf.sound.currentTime;
    // between which beats the sound is, against which count the playhead shows
    const beat = beats.findLastIndex((b) => b <= at);
    return [player.count(), beat - shelf.track.music.startBeat];
  });
  assert.ok(Math.abs(counted - due) < 2, `the playhead shows ${counted} where the track is at ${due}`);
  await page.screenshot({ path: `${SHOTS}fit-danced.png` });
  await page.locator('.around').getByRole('button', { name: 'Pause', exact: true }).click();
  const text = await textOf(page);
  await put.click();
  await page.waitForFunction((t) => window.scuff.work.text !== t, text);
  assert.match(await textOf(page), /track: .*intro/);
  await page.getByRole('button', { name: 'Print', exact: true }).first().click();
  await page.frameLocator('iframe').getByRole('heading', { name: 'Music' }).waitFor();
  await kept(page);
  await shut(page);
});

for (const [size, viewport] of Object.entries({
  laptop: { width: 1440, height: 900 },
  tablet: { width: 820, height: 1180 },
  phone: { width: 390, height: 844 },
})) {
  for (const scheme of ['light', 'dark']) {
    test(`every room on a ${size}, ${scheme}: no fault of accessibility, nothing wider than the page`, async () => {
      for (const room of ['write', 'listen', 'fit', 'teach', 'print', 'book', 'classes', 'evening']) {
        const isOfDance = room !== 'classes' && room !== 'evening';
        const page = await open(isOfDance ? `/${room}/d1` : `/${room}`, { viewport, colorScheme: scheme });
        await page.waitForFunction(() => window.scuff?.work.isOpening === false && window.scuff.work.reading !== null && window.scuff.work.floor !== null);
        if (room === 'listen' || room === 'fit') await chooseTrack(page);
        await page.waitForTimeout(400);
        await page.screenshot({ path: `${SHOTS}${room}-${size}-${scheme}.png` });
        assert.deepEqual(await faultsOf(page), [], `${room} ${size} ${scheme}`);
        const around = page.getByRole('group', { name: 'What is in front' }).getByRole('button').nth(1);
        if (await around.isVisible()) {
          await around.click();
          await page.waitForTimeout(300);
          await page.screenshot({ path: `${SHOTS}${room}-around-${size}-${scheme}.png` });
          assert.deepEqual(await faultsOf(page), [], `${room} around ${size} ${scheme}`);
        }
        const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
        assert.ok(wide <= 0, `${room} is ${wide} pixels wider than a ${size}`);
        await shut(page);
      }
    });
  }
}

test('high contrast has no fault of accessibility either', async () => {
  const page = await open('/write/d1');
  await page.waitForFunction(() => window.scuff?.work.floor !== null);
  await page.evaluate(() => (document.documentElement.dataset.theme = 'contrast'));
  assert.deepEqual(await faultsOf(page), []);
  await page.screenshot({ path: `${SHOTS}write-contrast.png` });
  await shut(page);
});

async function faultsOf(page) {
  // the policy of the page allows no script that is not its own, so the checker comes by the door of the debugger
  await page.evaluate(axe);
  return page.evaluate(async () => {
    const found = await window.axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'], iframes: false });
    return found.violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(', ')}`);
  });
}

/** The track that was taken in before. */
async function chooseTrack(page) {
  await page.waitForFunction(() => window.scuff.shelf.rows.length > 0);
  await page.evaluate(() => window.scuff.shelf.choose(window.scuff.shelf.rows[0].id));
  await page.waitForFunction(() => window.scuff.shelf.track?.music);
}

/** A song of the demo club, played by our own band. */
async function aSong() {
  const { execFileSync } = await import('node:child_process');
  const { readdir } = await import('node:fs/promises');
  const { join } = await import('node:path');
  const folder = join(studio.home, 'songs');
  execFileSync('dotnet', [process.env.SCUFF_PROGRAM ?? new URL('../../artifacts/bin/Scuff.App/debug/Scuff.App.dll', import.meta.url).pathname, 'songs', '--output', folder, 'first-tide']);
  const name = (await readdir(folder)).find((n) => n.endsWith('.wav'));
  return { name, bytes: (await readFile(join(folder, name))).toString('base64') };
}

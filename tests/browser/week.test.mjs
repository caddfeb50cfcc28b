// The week of a teacher: a class planned, taught and recorded, a sheet that changes, what is forgotten, a social planned and lived through.
import assert from 'node:assert/strict';
import { mkdir, readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { after, before, test } from 'node:test';
import ICAL from 'ical.js';
import { openBrowser, Studio } from './studio.mjs';

const require = createRequire(import.meta.url);
const { Parser } = require('m3u8-parser');
const axe = await readFile(require.resolve('axe-core/axe.min.js'), 'utf8');
const SHOTS = new URL('../../artifacts/browser/shots/', import.meta.url).pathname;
const SIZES = { laptop: { width: 1366, height: 768 }, tablet: { width: 1024, height: 768 }, phone: { width: 390, height: 844 } };

let studio;
let browser;

before(async () => {
  await mkdir(SHOTS, { recursive: true });
  studio = await Studio.start();
  browser = await openBrowser();
  // the book of the demo club is filled in while she looks at the first dance
  const page = await open('/classes');
  await page.waitForFunction(async () => (await (await fetch('/api/evenings')).json()).total > 0, undefined, { polling: 200 });
  await shut(page);
});

after(async () => {
  await browser?.close();
  await studio?.stop();
});

async function open(path, options = {}, prepare = async () => {}) {
  const context = await browser.newContext({ viewport: SIZES.laptop, ...options });
  // a small machine that does other work as well may be slow to answer; nothing here is a measure of time
  context.setDefaultTimeout(90_000);
  await context.addInitScript(() => localStorage.setItem('scuff.guided', 'yes'));
  const page = await context.newPage();
  page.faults = [];
  page.on('pageerror', (e) => page.faults.push(e.message));
  await prepare(page);
  await page.goto(studio.address + path);
  await page.waitForFunction(() => window.scuff?.work.isOpening === false);
  return page;
}

async function shut(page) {
  assert.deepEqual(page.faults, []);
  await page.context().close();
}

async function violations(page) {
  await page.evaluate(axe);
  const found = await page.evaluate(() =>
    window.axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'], iframes: false }),
  );
  return found.violations.map((v) => `${v.id}: ${v.nodes.map((n) => `${n.target} ${n.failureSummary}`).join('; ')}`);
}

async function noWider(page) {
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  assert.ok(wide <= 0, `${wide} pixels wider than the page`);
}

async function classOf(title) {
  const { classes } = await studio.json('/api/classes');
  return classes.find((c) => c.title === title).id;
}

const theEvening = async () => (await studio.json('/api/evenings')).rows.find((e) => e.title === 'Harbour social').id;
const plan = (page) => page.getByRole('region', { name: 'Plan of the next session' });
const kept = (page) => plan(page).getByRole('status').getByText('Kept', { exact: true }).waitFor();
const known = (page) => page.getByRole('region', { name: 'What they know' });

/** Picks a dance where a picker is open. */
async function pick(page, title) {
  await page.locator('.pick input').fill(title);
  await page.locator('.pick').getByRole('button', { name: title }).first().click();
}

test('Monday: a new class is added, and one that meets is opened', async () => {
  const page = await open('/classes');
  await page.getByRole('heading', { name: 'First steps', level: 1 }).waitFor();
  await page.getByRole('button', { name: 'Add a class' }).click();
  await page.getByRole('textbox', { name: 'Title' }).fill('Saturday juniors');
  await page.getByRole('combobox', { name: 'Day' }).selectOption({ label: 'Saturday' });
  await page.getByLabel('Begins', { exact: true }).fill('10:30');
  await page.getByRole('button', { name: 'Add the class' }).click();
  await page.getByRole('heading', { name: 'Saturday juniors' }).waitFor();
  await page.getByText('Saturdays at 10:30, 60 minutes').first().waitFor();
  await page.getByText('No session was held yet.').waitFor();
  await page.goBack();
  await page.getByRole('heading', { name: 'First steps', level: 1 }).waitFor();
  await shut(page);
});

test('Monday: the next session is planned, its minutes add up, and a pulled plug loses none of it', async () => {
  const page = await open(`/classes/${await classOf('Tuesday improvers')}`);
  await plan(page).waitFor();
  const offered = await page.locator('.offer li').allTextContents();
  assert.ok(offered.length > 0 && offered.every((o) => o.trim().endsWith('.')), offered.join(' | '));
  await page.getByRole('button', { name: /^Take (it|them all) into the plan/ }).click();
  await plan(page).getByRole('button', { name: /Add a dance ?: Teach/ }).click();
  await pick(page, 'Gull on the Rail');
  await plan(page).getByLabel('Minutes for Gull on the Rail').waitFor();
  await page.waitForFunction(() => Number(document.querySelector('[aria-label="Minutes for Gull on the Rail"]').value) > 4);
  await plan(page).getByRole('button', { name: /Add a dance ?: Warm up with/ }).click();
  await page.locator('.pick input').fill('Rope');
  await page.locator('.pick').getByText('Rope Walk').waitFor();
  await page.keyboard.press('Enter');
  await plan(page).getByLabel('Minutes for Rope Walk').waitFor();
  await plan(page).getByLabel('Minutes for Rope Walk').fill('5');
  await kept(page);

  const sum = await plan(page).evaluate((p) => [...p.querySelectorAll('[aria-label^="Minutes for"]')].reduce((s, i) => s + Number(i.value), 0));
  await plan(page).getByText(`${sum} of 90 minutes; ${90 - sum} are free.`).waitFor();
  const titles = () => plan(page).locator('.title').evaluateAll((t) => t.map((b) => b.firstChild.textContent));
  const planned = await titles();
  assert.equal(planned.length, offered.length + 2);
  await page.screenshot({ path: `${SHOTS}week-plan.png` });

  await studio.kill();
  await studio.run();
  await page.reload();
  await plan(page).getByLabel('Minutes for Rope Walk').waitFor();
  assert.deepEqual(await titles(), planned);
  await shut(page);
});

test('Tuesday: the dance is taught from the plan, and a step of its lesson ticked', async () => {
  const page = await open(`/classes/${await classOf('Tuesday improvers')}`);
  await plan(page).getByRole('button', { name: /Gull on the Rail ?: open it to teach/ }).click();
  await page.waitForFunction(() => window.scuff.work.room === 'teach' && window.scuff.work.reading?.title === 'Gull on the Rail');
  await page.getByRole('button', { name: 'Lesson', exact: true }).click();
  await page.locator('.teach').getByRole('checkbox').first().waitFor();
  await page.locator('.teach input[type=checkbox]').first().check();
  await page.getByRole('button', { name: 'Classes', exact: true }).click();
  await plan(page).getByLabel('Minutes for Gull on the Rail').waitFor();
  await shut(page);
});

test('Tuesday night: the plan becomes what was held, corrected and marked', async () => {
  const page = await open(`/classes/${await classOf('Tuesday improvers')}`);
  await plan(page).getByRole('button', { name: 'Another time' }).click();
  const { today } = await studio.json('/api/classes');
  await plan(page).getByRole('textbox', { name: 'Day' }).fill(today);
  await plan(page).getByRole('button', { name: 'It was held like this' }).click();
  const held = page.getByRole('region', { name: 'What was danced' });
  await held.getByLabel('People').fill('15');
  await held.getByLabel('How well they know Gull on the Rail').selectOption({ label: 'knows the start' });
  await held.getByLabel('Note on Gull on the Rail').fill('lost at the turn');
  await held.getByRole('button', { name: 'Leave out Rope Walk' }).click();
  await held.getByLabel('How it went').fill('Good air tonight.');
  await page.screenshot({ path: `${SHOTS}week-held.png` });
  await held.getByRole('button', { name: 'Done: plan the next' }).click();

  const was = page.getByRole('region', { name: 'What was', exact: true });
  await was.getByText('Taught Gull on the Rail.').waitFor();
  await was.getByText('Good air tonight.').waitFor();
  await was.getByText('15 people').first().waitFor();
  assert.doesNotMatch(await was.locator('li').first().textContent(), /Rope Walk/, 'what was left out is not told');
  await plan(page).getByRole('button', { name: 'It was held like this' }).waitFor();
  const mark = known(page).getByLabel('How well they know Gull on the Rail');
  assert.equal(await mark.evaluate((s) => s.selectedOptions[0].textContent), 'knows the start');
  await known(page).getByText('danced today').first().waitFor();
  await mark.selectOption({ label: 'knows it with cues' });
  await page.reload();
  await page.waitForFunction(() => document.querySelector('[aria-label="How well they know Gull on the Rail"]')?.value === '3');
  await shut(page);
});

test('Wednesday: the sheet is changed, and the class is warned that it was taught another', async () => {
  const { rows } = await studio.json('/api/dances?words=Gull');
  const { item, revision, text } = await studio.json(`/api/dances/${rows[0].id}`);
  const changed = text.replace('rock R forward, recover', 'rock R to side, recover');
  assert.notEqual(changed, text);
  const saved = await studio.ask(`/api/dances/${item.id}`, {
    method: 'PUT',
    headers: { 'Content-Type': 'application/json', Origin: studio.address },
    body: JSON.stringify({ text: changed, revision, hand: 'week' }),
  });
  assert.equal(saved.status, 200, saved.body);

  const page = await open(`/classes/${await classOf('Tuesday improvers')}`);
  await known(page).getByText('Steps changed since you taught it on').waitFor();
  await known(page).getByRole('button', { name: 'Look at what changed in Gull on the Rail' }).click();
  const dialog = page.getByRole('dialog', { name: 'Gull on the Rail' });
  await dialog.locator('.changes li').first().waitFor();
  await page.screenshot({ path: `${SHOTS}week-sheet.png` });
  assert.deepEqual(await violations(page), []);
  await dialog.getByRole('button', { name: 'Close' }).click();
  await shut(page);
});

test('Thursday: what a class is likely to have forgotten is offered with its reason and taken by one button', async () => {
  const page = await open(`/classes/${await classOf('Thursday regulars')}`);
  await page.locator('.offer li').first().waitFor();
  const offered = await page.locator('.offer strong').allTextContents();
  await page.getByRole('button', { name: /^Take (it|them all) into the plan/ }).click();
  await kept(page);
  for (const title of offered) await plan(page).getByLabel(`Minutes for ${title.replace(/\.$/, '')}`).waitFor();
  // what is planned is no longer offered
  await page.locator('.offer strong', { hasText: offered[0] }).waitFor({ state: 'detached' });
  const left = await known(page).locator('.left').allTextContents();
  assert.ok(left.every((l) => /danced|not danced/.test(l)), left.join(' | '));
  assert.ok((await known(page).locator('.bar').count()) > 0);
  await shut(page);
});

test('Saturday: a social is planned, every line says why, and what she decides is obeyed at once', async () => {
  const page = await open(`/evening/${await theEvening()}`);
  await page.getByRole('button', { name: 'Add a request' }).click();
  await pick(page, 'Lighthouse Keeper');
  await page.getByLabel('How many asked for Lighthouse Keeper').fill('3');
  await page.getByText('steady').click();
  await page.getByRole('button', { name: 'Plan the evening' }).click();
  const lines = page.locator('.programme .line');
  await lines.nth(4).waitFor({ timeout: 30_000 });
  await page.locator('.sure').getByText(/^(Proven|At most)/).waitFor();
  assert.ok((await lines.filter({ hasText: 'asked for' }).count()) > 0);

  const many = await lines.count();
  for (let i = 0; i < Math.min(4, many); i++) {
    await lines.nth(i).click();
    const why = page.locator('.why');
    await why.waitFor();
    assert.match((await why.locator('p').first().textContent()).trim(), /\.$/);
  }
  await page.screenshot({ path: `${SHOTS}week-programme.png` });

  const titleAt = (i) => lines.nth(i).locator('strong').first().textContent();
  const done = () => page.waitForFunction(() => document.querySelector('.programme')?.getAttribute('aria-busy') === 'false');
  const first = await titleAt(0);
  // the second goes to the front: by a key, as by the button or by dragging
  const second = await titleAt(1);
  await lines.nth(1).focus();
  await page.keyboard.press('Alt+ArrowUp');
  await page.waitForFunction((t) => document.querySelector('.programme .line strong')?.textContent === t, second, { timeout: 20_000 });
  await done();
  await lines.first().getByText('pinned').waitFor();

  const unwanted = first === second ? await titleAt(1) : first;
  const line = lines.filter({ hasText: unwanted });
  if ((await line.count()) > 0) {
    await line.first().click();
    await page.getByRole('button', { name: 'Not tonight' }).click();
    await page.waitForFunction((t) => ![...document.querySelectorAll('.programme .line strong')].some((s) => s.textContent === t), unwanted, { timeout: 20_000 });
    await done();
  }
  assert.equal(await titleAt(0), second, 'the pin holds');
  await page.getByText(`${unwanted} is not danced.`, { exact: true }).waitFor();

  // wishes that change are kept, and the programme says that it is of before
  await page.getByLabel('How many of First steps').fill('20');
  await page.getByText('Your wishes have changed since.').waitFor();
  await page.getByRole('button', { name: 'Plan it anew' }).first().click();
  await page.getByText('Your wishes have changed since.').waitFor({ state: 'hidden', timeout: 30_000 });
  await page.reload();
  await lines.first().waitFor();
  assert.equal(await titleAt(0), second);
  await shut(page);
});

test('Saturday: it is taken along in every form, and parsers that are not ours read it', async () => {
  const evening = await theEvening();
  const { files, programme } = await studio.json(`/api/evenings/${evening}`);
  const danced = programme.stretches.flatMap((s) => s.lines).filter((l) => l.songKey);
  const book = (await studio.json('/api/classes')).files;
  assert.ok(files.length > 5 && book.length > 2);
  const begins = { '.pdf': '%PDF-', '.xlsx': 'PK', '.docx': 'PK', '.html': '<!' };
  const taken = {};
  for (const [path, offer] of [...files.map((f) => [`/api/evenings/${evening}/file/`, f]), ...book.map((f) => ['/api/book/file/', f])]) {
    const answer = await fetch(studio.address + path + offer.name);
    const bytes = Buffer.from(await answer.arrayBuffer());
    taken[offer.name] = bytes;
    if (offer.extension === '.zip') {
      // the demo club has no music: that is said, not packed
      assert.equal(answer.status, 409, offer.name);
      assert.match(JSON.parse(bytes.toString()).sentence, /\.$/);
      continue;
    }
    assert.equal(answer.status, 200, offer.name);
    assert.match(answer.headers.get('content-disposition'), /^attachment/);
    const begin = begins[offer.extension];
    if (begin) assert.equal(bytes.subarray(0, begin.length).toString('latin1'), begin, offer.name);
  }

  const calendar = new ICAL.Component(ICAL.parse(taken['evening.ics'].toString()));
  const event = new ICAL.Event(calendar.getFirstSubcomponent('vevent'));
  assert.equal(event.summary, 'Harbour social');
  for (const line of danced) assert.ok(event.description.includes(line.title), line.title);
  const classes = new ICAL.Component(ICAL.parse(taken['classes.ics'].toString()));
  assert.ok(classes.getAllSubcomponents('vevent').length >= 3);
  const parser = new Parser();
  parser.push(taken['playlist.m3u8'].toString());
  parser.end();
  const page = await open(`/evening/${evening}`);
  const titles = await page.evaluate((xspf) => {
    const list = new DOMParser().parseFromString(xspf, 'application/xml');
    return list.querySelector('parsererror') ? ['not well made'] : [...list.querySelectorAll('track > title')].map((t) => t.textContent);
  }, taken['playlist.xspf'].toString());
  assert.ok(!titles.includes('not well made'));

  // and by her own hand
  await page.getByText('Take along').click();
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: /^PDF ?: Programme/ }).click()]);
  assert.match(download.suggestedFilename(), /Harbour.*\.pdf$/i);
  await page.getByRole('button', { name: /^ZIP/ }).click();
  await page.locator('.said.trouble').waitFor();
  assert.deepEqual(await violations(page), []);
  await shut(page);
});

test('Saturday night: the list leads through it, runs late, survives a pulled plug, and ends when it must', async () => {
  const page = await open(`/evening/${await theEvening()}`, {}, (p) => p.clock.install());
  await page.getByRole('button', { name: 'Live list' }).click();
  await page.getByRole('button', { name: 'Begin the evening' }).click();
  const now = page.locator('.present h2').first();
  await now.waitFor();
  const present = await now.textContent();
  const next = await page.locator('.live ol strong').first().textContent();
  await page.getByText('On time').waitFor();

  // the clock goes on although nothing is ticked
  await page.clock.fastForward('12:00');
  await page.getByText(/Running \d+ minutes late/).waitFor();
  await page.screenshot({ path: `${SHOTS}week-late.png` });

  await page.getByRole('button', { name: 'Danced', exact: true }).click();
  await page.waitForFunction((t) => document.querySelector('.present h2')?.textContent === t, next);
  await page.locator('.done').getByText(present).waitFor();
  await studio.kill();
  await studio.run();
  await page.reload();
  // the list comes back where it was
  await page.waitForFunction((t) => document.querySelector('.present h2')?.textContent === t, next);
  await page.locator('.done').getByText(present).waitFor();

  await page.getByRole('button', { name: 'Take the last tick back' }).click();
  await page.waitForFunction((t) => document.querySelector('.present h2')?.textContent === t, present);
  await page.getByRole('button', { name: 'Danced', exact: true }).click();
  await page.waitForFunction((t) => document.querySelector('.present h2')?.textContent === t, next);

  const lines = page.locator('.live ol li');
  const many = await lines.count();
  const gone = await page.locator('.live ol strong').nth(1).textContent();
  await page.getByRole('button', { name: `Skip ${gone}`, exact: true }).click();
  await page.locator('.done').getByText(gone).waitFor({ timeout: 20_000 });
  await page.getByText('left out').first().waitFor();
  assert.equal(await now.textContent(), next, 'the present dance stays');

  // an hour less
  const { night } = await studio.json(`/api/evenings/${await theEvening()}`);
  const end = new Date(Date.parse(night.origin) + (night.endSecond - 3600) * 1000);
  await page.getByLabel('We must end at').fill(`${String(end.getHours()).padStart(2, '0')}:${String(end.getMinutes()).padStart(2, '0')}`);
  await page.getByRole('button', { name: 'Plan the rest anew' }).click();
  await page.waitForFunction((n) => document.querySelectorAll('.live ol li').length < n, many - 4, { timeout: 20_000 });
  assert.equal(await now.textContent(), next);

  await page.getByRole('button', { name: 'Close the evening' }).click();
  await page.getByText(/1 dance danced, 1 left out\./).waitFor();
  await page.getByRole('button', { name: 'It goes on' }).click();
  await now.waitFor();
  await shut(page);
});

test('two pages show one night: what one ticks, the other sees', async () => {
  const path = `/evening/${await theEvening()}`;
  const laptop = await open(path);
  const tablet = await open(path, { viewport: SIZES.tablet, hasTouch: true });
  await laptop.locator('.present h2').first().waitFor();
  await tablet.locator('.present h2').first().waitFor();
  const next = await tablet.locator('.live ol strong').first().textContent();
  await tablet.getByRole('button', { name: 'Danced', exact: true }).click();
  await laptop.waitForFunction((t) => document.querySelector('.present h2')?.textContent === t, next);
  await shut(laptop);
  await shut(tablet);
});

for (const scheme of ['light', 'dark']) {
  for (const [size, viewport] of Object.entries(SIZES)) {
    test(`classes and the evening on a ${size}, ${scheme}: no fault of accessibility, nothing wider than the page`, async () => {
      const page = await open(`/classes/${await classOf('Tuesday improvers')}`, { viewport, colorScheme: scheme });
      await plan(page).waitFor();
      const check = async (what) => {
        assert.deepEqual(await violations(page), [], `${what} ${size} ${scheme}`);
        await noWider(page);
        await page.screenshot({ path: `${SHOTS}week-${what}-${size}-${scheme}.png` });
      };
      await check('class');
      await plan(page).getByRole('button', { name: /Add a dance ?: Teach/ }).click();
      await page.locator('.pick li').first().waitFor();
      await check('class-pick');
      await page.keyboard.press('Escape');
      await page.getByRole('button', { name: 'Correct the session' }).first().click();
      await check('class-correct');
      await page.getByRole('button', { name: 'Change', exact: true }).click();
      await check('class-change');

      await page.goto(`${studio.address}/evening/${await theEvening()}`);
      await page.locator('.present h2').first().waitFor();
      await check('live');
      await page.getByRole('button', { name: 'Plan', exact: true }).click();
      await page.locator('.programme .line').first().click();
      await page.locator('.why').waitFor();
      await page.getByText('More wishes').click();
      await check('evening');
      await page.getByRole('button', { name: 'All evenings' }).click();
      await page.getByRole('button', { name: 'Add an evening' }).waitFor();
      await check('evenings');
      await shut(page);
    });
  }
}

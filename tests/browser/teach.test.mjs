// Teaching: practice with a class, the page for students from a file, the screen of calls with its remote.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdir, readFile, stat } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { pathToFileURL } from 'node:url';
import { openBrowser, PROGRAM, Studio } from './studio.mjs';

const axe = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const SHOTS = new URL('../../artifacts/browser/shots/', import.meta.url).pathname;
const PHONE = { width: 390, height: 844 };

let studio;
let browser;

before(async () => {
  await mkdir(SHOTS, { recursive: true });
  // this machine alone: a test opens no door to the network it runs in
  studio = await Studio.start(['--hall', '127.0.0.1:7641']);
  browser = await openBrowser();
});

after(async () => {
  await browser?.close();
  await studio?.stop();
});

async function open(address, options = {}, init = null) {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, ...options });
  // a small machine that does other work as well may be slow to answer; nothing here is a measure of time
  context.setDefaultTimeout(90_000);
  await context.addInitScript(() => location.protocol === 'http:' && localStorage.setItem('scuff.guided', 'yes'));
  if (init) await context.addInitScript(init);
  const page = await context.newPage();
  page.faults = [];
  page.asked = [];
  page.on('pageerror', (e) => page.faults.push(e.message));
  page.on('request', (r) => page.asked.push(r.url()));
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
    window.axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'], iframes: false }),
  );
  return found.violations.map((v) => `${v.id}: ${v.nodes.map((n) => `${n.target} ${n.failureSummary}`).join('; ')}`);
}

async function noWider(page) {
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  assert.ok(wide <= 0, `${wide} pixels wider than the page`);
}

/** The dance of the demo club with this title. */
async function idOf(title) {
  const { rows } = await studio.json('/api/dances?words=' + encodeURIComponent(title));
  return rows.find((r) => r.title === title).id;
}

/** The room Teach with its calls there. */
async function teach(options = {}, init = null, title = 'Tin Lantern') {
  const page = await open(`${studio.address}/teach/${await idOf(title)}`, options, init);
  await page.waitForFunction(() => window.scuff?.hall.practice?.calls.length > 0);
  return page;
}

const practice = (page, what) => page.evaluate(`window.scuff.hall.practice.${what}`);

test('the next call stands there in large words before it is due, and the sheet goes along', async () => {
  const page = await teach();
  await page.evaluate(() => {
    const { practice } = window.scuff.hall;
    const seen = (window.seen = { firstShown: {}, late: [], calls: 0 });
    window.scuff.player.onFrame((count) => {
      const { next } = practice.calling;
      if (next) seen.firstShown[next.for] ??= practice.place();
      for (const [due, at] of Object.entries(seen.firstShown)) {
        if (at > Number(due)) seen.late.push([due, at]);
      }
      seen.calls = Object.keys(seen.firstShown).length;
    });
  });
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await page.locator('.danced', { hasText: 'Count-in' }).waitFor();
  await page.waitForFunction(() => window.seen.calls >= 6, undefined, { timeout: 30_000 });
  assert.deepEqual(await page.evaluate(() => window.seen.late), []);
  const [shown, called] = await page.evaluate(() => [document.querySelector('.call').textContent.trim(), window.scuff.hall.practice.calling.next.words]);
  assert.equal(shown, called);
  await page.locator('.cm-content .t-now').waitFor();
  await page.screenshot({ path: `${SHOTS}teach-playing.png` });
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await shut(page);
});

test('slower by the ladder of speeds, with a plain warning below 75 percent', async () => {
  const page = await teach();
  for (const percent of [60, 70, 75, 80, 85, 90, 95, 100, 105]) {
    await page.getByRole('button', { name: `${percent} percent` }).click();
    assert.equal(await page.evaluate(() => Math.round(window.scuff.player.speed * 100)), percent);
    assert.equal(await page.getByText('Below 75 %').isVisible(), percent < 75, `${percent}`);
  }
  await shut(page);
});

test('a chain grows by itself, forward and from the end, counted in before every round', async () => {
  const page = await teach();
  await page.getByRole('combobox', { name: 'Dance', exact: true }).selectOption('forward');
  assert.deepEqual(await practice(page, 'section'), { from: 0, to: 8 });
  await page.getByRole('combobox', { name: 'Goes on' }).selectOption('1');
  await page.evaluate(() => {
    window.scuff.player.setClickOn(false);
    window.scuff.player.setTempo(400);
    window.scuff.player.speed = 1.25;
  });
  await page.getByRole('button', { name: 'Before every round' }).click();
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  for (const to of [16, 24, 32]) {
    await page.waitForFunction((t) => window.scuff.player.loop?.to === t, to, { timeout: 15_000 });
    assert.ok((await page.evaluate(() => window.scuff.player.countingIn())) > 0, 'a link is counted in');
  }
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await page.getByRole('combobox', { name: 'Dance', exact: true }).selectOption('backward');
  assert.deepEqual(await practice(page, 'section'), { from: 24, to: 32 });
  await page.getByRole('button', { name: 'One more' }).click();
  assert.deepEqual(await practice(page, 'section'), { from: 16, to: 32 });
  await shut(page);
});

test('on any wall, some sections of it, easier, with less said', async () => {
  const page = await teach();
  await page.getByRole('combobox', { name: 'Start on' }).selectOption({ label: 'wall 2, facing 9:00' });
  assert.equal(await page.evaluate(() => window.scuff.player.count()), 32);
  await page.getByText('facing 9:00').first().waitFor();
  await page.getByRole('combobox', { name: 'Dance', exact: true }).selectOption('span');
  assert.deepEqual(await page.evaluate(() => window.scuff.player.loop), { from: 32, to: 40 });
  await page.getByRole('combobox', { name: 'to the end of' }).selectOption({ index: 7 });
  assert.deepEqual(await page.evaluate(() => window.scuff.player.loop), { from: 32, to: 48 });
  await page.getByRole('combobox', { name: 'From', exact: true }).selectOption({ index: 6 });
  assert.deepEqual(await page.evaluate(() => window.scuff.player.loop), { from: 44, to: 48 });

  const wordsAt = (count) => page.evaluate((c) => window.scuff.hall.practice.floor.steps.filter((s) => s.at >= c && s.at < c + 2).map((s) => s.words).join(', '), count);
  assert.match(await wordsAt(14), /cross/);
  await page.getByRole('button', { name: 'Easier options' }).click();
  await page.waitForFunction(() => !window.scuff.hall.practice.floor.steps.some((s) => s.at === 15 && s.words.includes('cross')));
  assert.doesNotMatch(await wordsAt(14), /cross/);

  await page.getByRole('combobox', { name: 'Called' }).selectOption('warnings');
  await page.waitForFunction(() => {
    const kinds = new Set(window.scuff.hall.practice.calls.map((c) => c.kind));
    return kinds.has('tag') && !kinds.has('heading') && window.scuff.hall.practice.calls.length < 30;
  });
  await page.getByRole('combobox', { name: 'Called' }).selectOption('silent');
  await page.waitForFunction(() => window.scuff.hall.practice.calls.every((c) => c.kind === 'count-in'));
  await page.getByText('Nothing is called').first().waitFor();
  await shut(page);
});

test('the browser’s own voice says the calls so early that they end before the move', async () => {
  // a voice that takes half a second to a call, and says when
  const page = await teach({}, () => {
    window.spoken = [];
    const voice = { name: 'Own', lang: 'en-GB', localService: true, default: true, voiceURI: 'own' };
    const synth = {
      getVoices: () => [voice],
      cancel() {},
      addEventListener() {},
      removeEventListener() {},
      speak(u) {
        const { hall } = window.scuff;
        const at = hall.practice.place();
        window.spoken.push({ words: u.text, at, due: hall.practice.calls.find((c) => c.words === u.text && c.for > at)?.for });
        setTimeout(() => u.onstart?.(), 20);
        setTimeout(() => u.onend?.(), 420);
      },
    };
    Object.defineProperty(window, 'speechSynthesis', { value: synth });
    window.SpeechSynthesisUtterance = function (text) {
      this.text = text;
      this.rate = 1;
    };
  });
  await page.getByRole('button', { name: 'Spoken' }).click();
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await page.waitForFunction(() => window.spoken.length >= 5, undefined, { timeout: 30_000 });
  const [spoken, pace] = await page.evaluate(() => [window.spoken, window.scuff.player.heading().heading.pace]);
  for (const one of spoken) assert.ok(one.at + 0.4 * pace < one.due + 0.5, JSON.stringify(one));
  for (const one of spoken) assert.ok(one.at < one.due, JSON.stringify(one));
  await shut(page);
});

test('a browser without a voice says so', async () => {
  const page = await teach({}, () => Object.defineProperty(window, 'speechSynthesis', { value: { getVoices: () => [] } }));
  await page.getByText('no voice of its own').waitFor();
  assert.equal(await page.getByRole('button', { name: 'Spoken' }).count(), 0);
  await shut(page);
});

test('a step of the lesson is practised as the plan wants it', async () => {
  const page = await teach();
  await page.getByRole('button', { name: 'Lesson', exact: true }).click();
  const practise = page.getByRole('button', { name: 'Practise this step' });
  // the first steps of a lesson walk no counts: what comes before the first that does is ticked off
  const boxes = page.locator('.teach').getByRole('checkbox');
  await boxes.first().waitFor();
  for (let i = 0; !(await practise.isVisible()) && i < 12; i++) await page.locator('.teach input[type=checkbox]:not(:checked)').nth(0).check();
  await practise.click();
  const loop = await page.evaluate(() => window.scuff.player.loop);
  assert.ok(loop && loop.to - loop.from >= 2, JSON.stringify(loop));
  await page.locator('.calls .call').waitFor();
  await shut(page);
});

test('it is danced and called to her track, slower too', async () => {
  const folder = join(studio.home, 'songs');
  execFileSync('dotnet', [PROGRAM, 'songs', '--output', folder, 'first-tide']);
  const page = await open(`${studio.address}/listen/${await idOf('First Tide')}`);
  await page.waitForFunction(() => window.scuff?.shelf.isLoaded);
  const wav = (await import('node:fs')).readdirSync(folder).find((n) => n.endsWith('.wav'));
  await page.locator('input[type=file]').first().setInputFiles(join(folder, wav));
  await page.waitForFunction(() => window.scuff.shelf.track?.music, undefined, { timeout: 120_000 });
  await page.getByRole('button', { name: 'Teach', exact: true }).click();
  await page.waitForFunction(() => window.scuff.hall.practice?.calls.length > 0);
  const to = page.getByRole('combobox', { name: 'To', exact: true });
  await page.waitForFunction(() => document.querySelectorAll('.more select option').length > 2);
  await to.selectOption({ index: 1 });
  await page.waitForFunction(() => window.scuff.player.hasTrack);
  await page.getByRole('button', { name: '80 percent' }).click();
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await page.waitForFunction(() => window.scuff.player.playing && window.scuff.player.count() > 3, undefined, { timeout: 60_000 });
  const calls = await practice(page, 'calls.length');
  assert.ok(calls > 10);
  await page.getByRole('button', { name: 'Stop', exact: true }).click();

  // and in the room Write as well
  await page.getByRole('button', { name: 'Write', exact: true }).click();
  assert.equal(await page.evaluate(() => window.scuff.player.hasTrack), false);
  await page.getByRole('combobox', { name: 'Sound' }).selectOption({ index: 1 });
  await page.waitForFunction(() => window.scuff.player.hasTrack);
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await page.waitForFunction(() => window.scuff.player.playing && window.scuff.player.count() > 1, undefined, { timeout: 60_000 });
  await page.getByRole('button', { name: 'Pause', exact: true }).click();
  await shut(page);
});

for (const scheme of ['light', 'dark']) {
  test(`the room Teach has no fault of accessibility while a chain is danced, ${scheme}`, async () => {
    for (const [size, viewport] of [
      ['laptop', { width: 1440, height: 900 }],
      ['tablet', { width: 820, height: 1180 }],
      ['phone', PHONE],
    ]) {
      const page = await teach({ viewport, colorScheme: scheme });
      if (size !== 'laptop') await page.getByRole('button', { name: 'Practice', exact: true }).click();
      await page.getByRole('combobox', { name: 'Dance', exact: true }).selectOption('forward');
      await page.getByRole('button', { name: '70 percent' }).click();
      await page.getByRole('button', { name: 'Play', exact: true }).click();
      await page.waitForTimeout(1200);
      assert.deepEqual(await violations(page), [], `${size} ${scheme}`);
      await noWider(page);
      await page.screenshot({ path: `${SHOTS}teach-chain-${size}-${scheme}.png` });
      await page.getByRole('button', { name: 'Lesson', exact: true }).click();
      await page.locator('.teach').getByRole('checkbox').first().waitFor();
      assert.deepEqual(await violations(page), [], `lesson ${size} ${scheme}`);
      await noWider(page);
      await page.screenshot({ path: `${SHOTS}teach-lesson-${size}-${scheme}.png` });
      await shut(page);
    }
  });
}

/** The page for students of a dance, made by the command. */
async function studentFile(dance = 'tin-lantern') {
  const file = join(studio.home, `${dance}.html`);
  const source = new URL(`../../demo/dances/${dance}.dance`, import.meta.url).pathname;
  execFileSync('dotnet', [PROGRAM, 'student', '--output', file, '--address', 'https://club.example/lantern', source]);
  return file;
}

test('the page for students works from a file on a telephone, and asks nobody for anything', async () => {
  const file = await studentFile();
  assert.ok((await stat(file)).size < 400_000);
  const page = await open(pathToFileURL(file).href, { viewport: PHONE, hasTouch: true, isMobile: true });
  await page.getByRole('heading', { name: 'Tin Lantern' }).waitFor();
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await page.waitForFunction(() => window.scuffStudent.player.playing && window.scuffStudent.player.count() > 2, undefined, { timeout: 30_000 });
  // the line that is danced is lit, and the next call is there before its time
  const now = await page.evaluate(() => {
    const { practice } = window.scuffStudent;
    return { lit: document.querySelector('li.lit .words')?.textContent, next: practice.calling.next?.words, shown: document.querySelector('.call').textContent.trim() };
  });
  assert.match(now.lit, /step R to side|shuffle R forward/);
  assert.equal(now.shown, now.next);
  await page.screenshot({ path: `${SHOTS}student-phone.png` });
  await page.getByRole('button', { name: 'Stop', exact: true }).click();

  await page.getByText('Pieces, walls and calls').click();
  await page.getByRole('button', { name: '80 percent' }).click();
  await page.getByRole('combobox', { name: 'Dance', exact: true }).selectOption('forward');
  assert.deepEqual(await page.evaluate(() => window.scuffStudent.player.loop), { from: 0, to: 8 });
  await page.getByRole('combobox', { name: 'Dance', exact: true }).selectOption('all');
  await page.getByRole('combobox', { name: 'Start on' }).selectOption({ label: 'wall 2, facing 9:00' });
  assert.equal(await page.evaluate(() => window.scuffStudent.player.count()), 32);
  await page.getByRole('button', { name: 'Easier options' }).click();
  await page.getByRole('button', { name: 'Mirrored' }).click();
  // a line of the sheet brings the feet to it, on that wall
  await page.locator('li button', { hasText: 'rock R back' }).click();
  assert.equal(await page.evaluate(() => window.scuffStudent.player.count()), 40);
  await noWider(page);
  await page.screenshot({ path: `${SHOTS}student-phone-pieces.png`, fullPage: true });
  assert.deepEqual(
    page.asked.filter((u) => !u.startsWith('file:') && !u.startsWith('data:')),
    [],
  );
  assert.equal(page.asked.filter((u) => u.startsWith('file:')).length, 1);
  await shut(page);
});

test('the page for students has no fault of accessibility, light and dark, narrow and broad', async () => {
  const file = await studentFile('lighthouse-keeper');
  for (const colorScheme of ['light', 'dark']) {
    for (const [size, viewport] of [
      ['phone', PHONE],
      ['laptop', { width: 1280, height: 800 }],
    ]) {
      const page = await open(pathToFileURL(file).href, { viewport, colorScheme });
      await page.getByRole('button', { name: 'Play', exact: true }).click();
      await page.waitForTimeout(600);
      assert.deepEqual(await violations(page), [], `${size} ${colorScheme}`);
      await noWider(page);
      await page.screenshot({ path: `${SHOTS}student-${size}-${colorScheme}.png` });
      await shut(page);
    }
  }
});

test('a class sees the calls from the back row, and her telephone leads them', async () => {
  const her = await teach();
  await her.evaluate(() => window.scuff.player.setClickOn(false));
  await her.evaluate(() => window.scuff.hall.open('tablet'));
  await her.waitForFunction(() => window.scuff.hall.answer?.code);
  const [address, code] = await her.evaluate(() => [window.scuff.hall.answer.addresses[0].address, window.scuff.hall.answer.code]);

  // the projector hangs on the laptop: no code is needed there
  const screen = await open(`${studio.address}/hall?as=calls`, { viewport: { width: 1920, height: 1080 } });
  await screen.locator('.calls .call').waitFor();
  assert.equal(await screen.evaluate(() => document.documentElement.dataset.theme), 'dark');

  const phone = await open(address, { viewport: PHONE, hasTouch: true });
  await phone.getByLabel('The six digits that stand on her page').fill(code);
  await phone.getByRole('button', { name: 'Let this device in' }).click();
  await phone.waitForURL((url) => url.pathname !== '/hall');
  await phone.goto(`${address}?as=remote`);
  await phone.getByRole('heading', { name: 'Tin Lantern' }).waitFor();

  await phone.getByRole('button', { name: 'Play', exact: true }).click();
  await her.waitForFunction(() => window.scuff.player.playing);
  await screen.waitForFunction(() => window.scuffHall.player.playing && window.scuffHall.player.countingIn() > 0);
  await screen.waitForFunction(() => window.scuffHall.player.count() > 2, undefined, { timeout: 20_000 });
  await screen.screenshot({ path: `${SHOTS}hall-calls.png` });
  await phone.screenshot({ path: `${SHOTS}hall-remote.png` });
  await phone.getByRole('button', { name: 'Stop', exact: true }).click();
  await her.waitForFunction(() => !window.scuff.player.playing);

  await phone.getByRole('button', { name: '80 percent' }).click();
  await her.waitForFunction(() => window.scuff.player.speed === 0.8);
  await phone.getByRole('combobox', { name: 'Dance' }).selectOption({ index: 2 });
  await her.waitForFunction(() => window.scuff.player.loop?.from === 8 && window.scuff.player.loop.to === 16);
  await screen.waitForFunction(() => window.scuffHall.player.loop?.from === 8);
  await phone.getByRole('combobox', { name: 'Dance' }).selectOption('-1');
  await her.waitForFunction(() => window.scuff.player.loop === null);
  await phone.getByRole('combobox', { name: 'Start on' }).selectOption({ label: 'wall 2, facing 9:00' });
  await screen.waitForFunction(() => window.scuffHall.player.count() === 32);
  await screen.getByText('Wall 2').waitFor();
  await phone.getByRole('combobox', { name: 'Called' }).selectOption('warnings');
  await her.waitForFunction(() => window.scuff.hall.practice.help === 'warnings');
  await screen.waitForFunction(() => window.scuffHall.hall.dance.help === 'warnings');
  await phone.getByRole('combobox', { name: 'Seen' }).selectOption('mirror');
  await her.waitForFunction(() => window.scuff.work.view === 'mirror');

  // the tag after wall 2 is warned of before it comes
  await phone.getByRole('combobox', { name: 'Called' }).selectOption('every-step');
  await screen.waitForFunction(() => window.scuffHall.hall.dance.help === 'every-step');
  await her.evaluate(() => window.scuff.player.seek(52));
  await screen.waitForFunction(() => /tag/i.test(document.querySelector('.warned').textContent));
  await screen.screenshot({ path: `${SHOTS}hall-calls-warned.png` });
  assert.deepEqual(await violations(screen), []);
  assert.deepEqual(await violations(phone), []);

  // 20 minutes of arc from 15 m, on a picture 2 m wide: capitals of 87 mm
  const millimetres = await screen.evaluate(() => {
    const pen = document.createElement('canvas').getContext('2d');
    const out = {};
    for (const name of ['count', 'call', 'in', 'wall', 'facing', 'warned']) {
      const style = getComputedStyle(document.querySelector(`.calls .${name}`));
      pen.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
      out[name] = (pen.measureText('H').actualBoundingBoxAscent / innerWidth) * 2000;
    }
    return out;
  });
  for (const [name, height] of Object.entries(millimetres)) assert.ok(height >= 87, `${name}: ${height.toFixed(1)} mm`);

  // light, for a bright hall
  await screen.getByText('This screen').click();
  await screen.getByRole('combobox', { name: 'Colours' }).selectOption('light');
  assert.deepEqual(await violations(screen), []);
  await screen.screenshot({ path: `${SHOTS}hall-calls-light.png` });
  await her.evaluate(() => window.scuff.hall.shut());
  await phone.getByText('The hall is shut.').waitFor();
  for (const page of [her, screen, phone]) await shut(page);
});

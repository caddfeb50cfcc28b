// The sheets as pages, as people meet them: by day and in a dark hall, on a phone, a laptop and on paper.
// SHEETS is the folder with the pages, CHROME the browser; ./test sets both.
import { after, before, describe, test } from 'node:test';
import assert from 'node:assert/strict';
import { readdirSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import { complaintsAboutBoxes } from './boxes.mjs';

const axePath = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

// WCAG 2.0, 2.1 and 2.2, levels A and AA.
const levels = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

// The checker looks at every dance in every look; at the hard texts, large print and cards, whose markup is the same, in two.
// 665 px is what 15 mm and 17 mm of margin leave of A4 at 96 px an inch.
const looks = [
  { name: 'laptop by day', width: 1280, height: 800, colorScheme: 'light', media: 'screen', isForAll: true },
  { name: 'laptop in the dark', width: 1280, height: 800, colorScheme: 'dark', media: 'screen' },
  { name: 'phone by day', width: 360, height: 740, colorScheme: 'light', media: 'screen' },
  { name: 'phone in the dark', width: 360, height: 740, colorScheme: 'dark', media: 'screen', isForAll: true },
  { name: 'paper', width: 665, height: 1000, colorScheme: 'light', media: 'print' },
];

const folder = resolve(process.env.SHEETS ?? '');
const pages = readdirSync(folder, { recursive: true }).filter((name) => name.endsWith('.html')).sort();
let browser;

before(async () => {
  browser = await chromium.launch({
    executablePath: process.env.CHROME,
    headless: true,
    // without a sandbox, since a build server often runs as root; the pages are our own and have no script
    args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
  });
});

after(async () => {
  await browser?.close();
});

test('there are pages to look at', () => {
  assert.ok(pages.length > 0, `no pages in ${folder}`);
});

// two at a time, as small machines have two cores
describe('sheets', { concurrency: 2 }, () => {
  for (const name of pages) {
    describe(name, { concurrency: false }, () => {
      const asked = [];
      let page;

      before(async () => {
        page = await browser.newPage();
        page.on('request', (request) => asked.push(request.url()));
        await page.goto(pathToFileURL(join(folder, name)).href);
        await page.addScriptTag({ path: axePath });
      });

      after(() => page.close());

      test(`${name} asks for nothing but itself`, () => {
        assert.deepEqual(asked.filter((url) => !url.startsWith('data:')), [pathToFileURL(join(folder, name)).href]);
      });

      for (const look of looks) {
        test(`${name}: ${look.name}`, async () => {
          await page.setViewportSize({ width: look.width, height: look.height });
          await page.emulateMedia({ media: look.media, colorScheme: look.colorScheme });
          await page.evaluate(() => document.fonts.ready);
          assert.deepEqual(await page.evaluate(complaintsAboutBoxes), []);
          if (name.includes('/') && !look.isForAll) return;
          const found = await page.evaluate(
            (tags) => globalThis.axe.run(document, { runOnly: { type: 'tag', values: tags }, resultTypes: ['violations'] }),
            levels,
          );
          assert.ok(found.passes.length > 5, 'the checker found next to nothing to check');
          assert.deepEqual(found.violations.map((v) => `${v.id}: ${v.help}: ${v.nodes.map((n) => n.html.slice(0, 120)).join(' | ')}`), []);
        });
      }
    });
  }
});

test('a card of 64 counts has one side on paper', async () => {
  const page = await browser.newPage();
  await page.goto(pathToFileURL(join(folder, 'card', 'lighthouse-keeper.html')).href);
  const paper = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  await page.close();

  assert.equal(paper.match(/\/Type\s*\/Page\b/g).length, 1);
});

test('a page with faults is told from one without', async () => {
  const page = await browser.newPage({ viewport: { width: 360, height: 740 } });
  await page.setContent('<html><body><p style="color:#aaa;background:#fff;width:600px">faint and too wide</p><p>one text</p><p style="margin-top:-1.8em">another on it</p><svg role="img" width="9" height="9"></svg></body></html>');
  await page.addScriptTag({ path: axePath });
  const boxes = await page.evaluate(complaintsAboutBoxes);
  const found = await page.evaluate((tags) => globalThis.axe.run(document, { runOnly: { type: 'tag', values: tags } }), levels);
  await page.close();

  assert.ok(boxes.some((c) => c.startsWith('the page is')), boxes.join('\n'));
  assert.ok(boxes.some((c) => c.startsWith('on each other')), boxes.join('\n'));
  const ids = found.violations.map((v) => v.id);
  for (const id of ['color-contrast', 'html-has-lang', 'svg-img-alt', 'document-title']) assert.ok(ids.includes(id), ids.join(', '));
});

// Captions and chapter marks, read by two parsers that are not ours: the validator of the standard's authors (npm webvtt-parser), strict, and the
// browser that shows the film. W3C, WebVTT: The Web Video Text Tracks Format, Candidate Recommendation, 4 April 2019.
import { after, before, describe, test } from 'node:test';
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { createRequire } from 'node:module';
import { readdirSync } from 'node:fs';
import { openBrowser, PROGRAM } from './studio.mjs';

const { WebVTTParser } = createRequire(import.meta.url)('webvtt-parser');
const demo = new URL('../../demo/dances/', import.meta.url).pathname;
const dances = readdirSync(demo).filter((name) => name.endsWith('.dance')).sort();

function written(dance, format) {
  return execFileSync('dotnet', [PROGRAM, 'calls', '--format', format, demo + dance], { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] });
}

/** The same, where the program ends with 1 because the dance has complaints. */
function told(dance, format) {
  try {
    return written(dance, format);
  } catch (trouble) {
    if (trouble.status === 1 && trouble.stdout) return trouble.stdout;
    throw trouble;
  }
}

let browser;
let page;
before(async () => {
  browser = await openBrowser();
  page = await browser.newPage();
});
after(async () => {
  await browser?.close();
});

/** What the browser understands of a file: it fires load only for one that it could parse. */
function shown(file, kind) {
  return page.evaluate(
    ([text, kind]) =>
      new Promise((resolve, reject) => {
        const video = document.createElement('video');
        const track = document.createElement('track');
        track.kind = kind;
        track.src = URL.createObjectURL(new Blob([text], { type: 'text/vtt' }));
        track.addEventListener('load', () =>
          resolve([...track.track.cues].map((c) => ({ start: c.startTime, end: c.endTime, words: c.getCueAsHTML().textContent }))),
        );
        track.addEventListener('error', () => reject(new Error('the browser does not take the file')));
        video.append(track);
        document.body.append(video);
        track.track.mode = 'hidden';
      }),
    [file, kind],
  );
}

describe('captions', () => {
  for (const dance of dances.filter((_, i) => i % 4 === 0 || dances[i] === 'tin-lantern.dance')) {
    test(dance, async () => {
      const { calls } = JSON.parse(told(dance, 'json'));
      const captions = told(dance, 'vtt');

      const strict = new WebVTTParser().parse(captions, 'captions');
      assert.deepEqual(strict.errors, []);
      assert.equal(strict.cues.length, calls.length);

      const seen = await shown(captions, 'captions');
      assert.deepEqual(seen.map((c) => c.words), calls.map((c) => c.words));
      seen.forEach((cue, i) => {
        // in step with what is heard: to the thousandth that the format has
        assert.ok(Math.abs(cue.start - Math.max(0, calls[i].seconds)) <= 0.00051, `${cue.words} at ${cue.start}, said at ${calls[i].seconds}`);
        assert.ok(cue.end > cue.start);
      });
    });
  }

  test('chapter marks', async () => {
    const chapters = told('tin-lantern.dance', 'chapters');
    const strict = new WebVTTParser().parse(chapters, 'chapters');
    assert.deepEqual(strict.errors, []);
    const seen = await shown(chapters, 'chapters');
    assert.equal(seen[0].words, 'Intro');
    assert.equal(seen[1].words, 'Wall 1, section 1: box with shuffles');
    seen.slice(1).forEach((chapter, i) => assert.equal(chapter.start, seen[i].end));
  });
});

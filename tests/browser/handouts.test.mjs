// What is taken out of the club, read by parsers that are not ours. The files are those that the fast tests hold the program to (tests/Tests/Golden).
// M3U8: npm m3u8-parser (that of a player of streams) and iptv-playlist-parser (that of players of lists). iCalendar: npm ical.js, RFC 5545.
import { describe, test } from 'node:test';
import assert from 'node:assert/strict';
import { createRequire } from 'node:module';
import { readFileSync } from 'node:fs';
import ICAL from 'ical.js';

const require = createRequire(import.meta.url);
const { Parser } = require('m3u8-parser');
const lists = require('iptv-playlist-parser');
const golden = (name) => readFileSync(new URL(`../Tests/Golden/${name}`, import.meta.url), 'utf8');

/** Length, words and location of each entry, by the plainest reading there is. */
function written(text) {
  const lines = text.split('\n');
  return lines.flatMap((line, i) => {
    const [, seconds, title] = /^#EXTINF:(-?\d+),(.*)$/.exec(line) ?? [];
    return seconds === undefined ? [] : [{ seconds: Number(seconds), title, location: lines[i + 1] }];
  });
}

describe('playlists', () => {
  for (const name of ['harbour-social.m3u8', 'hostile.m3u8']) {
    test(`${name} as a player of streams reads it`, () => {
      const text = golden(name);
      const parser = new Parser();
      parser.push(text);
      parser.end();

      assert.deepEqual(
        parser.manifest.segments.map((s) => ({ seconds: s.duration, title: s.title, location: s.uri })),
        written(text),
      );
    });

    test(`${name} as a player of lists reads it`, () => {
      const text = golden(name);

      assert.deepEqual(
        lists.parse(text).items.map((item) => item.url),
        written(text).map((entry) => entry.location),
      );
    });
  }

  test('an evening plays its songs with silence between', () => {
    const entries = written(golden('harbour-social.m3u8'));
    assert.equal(entries.filter((e) => !e.location.startsWith('silence')).length, 5);
    for (const entry of entries) {
      const [, silence] = /^silence (\d+) s\.wav$/.exec(entry.location) ?? [];
      if (silence) assert.equal(entry.seconds, Number(silence));
    }
  });
});

describe('the calendar of a club', () => {
  const calendar = new ICAL.Component(ICAL.parse(golden('harbour-club.ics').replaceAll('\n', '\r\n')));
  const events = calendar.getAllSubcomponents('vevent').map((e) => new ICAL.Event(e));
  const weekly = (title) => events.find((e) => e.isRecurring() && e.summary === title);

  test('is one of the standard', () => {
    assert.equal(calendar.getFirstPropertyValue('version'), '2.0');
    for (const event of calendar.getAllSubcomponents('vevent')) {
      for (const needed of ['uid', 'dtstamp', 'dtstart']) assert.ok(event.getFirstPropertyValue(needed), needed);
    }
  });

  test('a class comes every week, with the plan on the days that have one', () => {
    const beginners = weekly('Tuesday Beginners');
    for (const exception of events.filter((e) => e.isRecurrenceException() && e.uid === beginners.uid)) beginners.relateException(exception);
    const days = beginners.iterator();
    const shown = [1, 2, 3, 4].map(() => beginners.getOccurrenceDetails(days.next()));

    assert.deepEqual(
      shown.map((o) => o.startDate.toString()),
      ['2026-11-10T18:30:00', '2026-11-17T18:30:00', '2026-11-24T18:30:00', '2026-12-01T18:30:00'],
    );
    assert.deepEqual(
      shown.map((o) => o.item.description),
      [
        'Warmed up: First Tide\nTaught: Tin Lantern\nDanced: First Tide',
        'Level: beginner',
        "Revise: Tin Lantern\nTeach: A visitor's dance; new, and long",
        'Level: beginner',
      ],
    );
  });

  test('a class that ended comes no more', () => {
    const days = weekly('Net Loft Improvers').iterator();
    const shown = [];
    for (let day = days.next(); day; day = days.next()) shown.push(day.toString());
    assert.deepEqual(shown, ['2026-09-03', '2026-09-10', '2026-09-17', '2026-09-24', '2026-10-01'].map((d) => `${d}T20:00:00`));
  });

  test('times are those of the clock on the wall', () => {
    for (const event of events) assert.equal(event.startDate.zone.tzid, 'floating', event.summary);
    assert.equal(events.find((e) => e.summary === 'By appointment').startDate.isDate, true);
  });

  test('an evening has its programme', () => {
    const social = events.find((e) => e.summary === 'Harbour Social');
    assert.equal(social.location, 'Boathouse Hall');
    assert.equal(social.description.split('\n').length, 8);
    assert.ok(social.description.startsWith('19:30 First Tide\n'));
  });
});

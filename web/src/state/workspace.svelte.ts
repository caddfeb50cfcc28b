/** What she works on: one dance, what the program says of it, and where she is in it. Components only show. */
import type { View } from '../floor/views';
import { get, post, put, remove, Trouble } from '../lib/api';
import type {
  ClubAnswer,
  ClubNews,
  CompleteAnswer,
  DanceBody,
  DanceClash,
  DanceItem,
  DanceVersions,
  DoneAnswer,
  FloorAnswer,
  PlayedAnswer,
  ReadAnswer,
  TagsBody,
  TextBody,
} from '../lib/contract';
import { findAnswers, keepAnswers } from './answers';
import { findDraft, keepDraft } from './drafts';
import { handName } from './hand';
import { Keeper, type Standing } from './keeper';

/** The rooms, by what she does in them. */
export const ROOMS = ['write', 'listen', 'fit', 'teach', 'print', 'book', 'classes', 'evening'] as const;
export type Room = (typeof ROOMS)[number];
/** The rooms that lie beside the sheet: what is opened in them is no dance. */
export type Beside = 'book' | 'classes' | 'evening';
const BESIDE: readonly Room[] = ['book', 'classes', 'evening'] satisfies Beside[];

/** Whether a room lies beside the sheet. */
export function isBeside(room: Room): room is Beside {
  return BESIDE.includes(room);
}

/** Waits so long after a letter before the feet are danced anew: the words come first. */
const FLOOR_PAUSE = 160;

export class Workspace {
  club = $state.raw<ClubAnswer | null>(null);
  dance = $state.raw<DanceItem | null>(null);
  text = $state('');
  reading = $state.raw<ReadAnswer | null>(null);
  floor = $state.raw<FloorAnswer | null>(null);
  floorTrack = $state<string | null>(null);
  /** The track of the club that the floor dances to by the plan in the text; null for the click. */
  floorSound = $state<string | null>(null);
  /** That plan. */
  played = $state.raw<PlayedAnswer | null>(null);
  place = $state(0);
  /** From where the floor is seen, here and in the hall. */
  view = $state<View>('above');
  room = $state<Room>('write');
  /** The class and the evening that are open in their rooms; null for the list of all. */
  opened = $state<{ classes: string | null; evening: string | null }>({ classes: null, evening: null });
  standing = $state<Standing>('kept');
  standingWords = $state('');
  clash = $state.raw<DanceClash | null>(null);
  /** A sentence for her, and whether it is a trouble. */
  said = $state.raw<{ words: string; isTrouble: boolean } | null>(null);
  isOpening = $state(true);
  /** Counts what was heard to change in the club, so that lists know when to look again. */
  news = $state(0);
  /** What was heard last. */
  heard = $state.raw<ClubNews | null>(null);
  /** Tells the editor that the text was changed by the program, not by her typing. */
  replaced = $state.raw<{ text: string; isNew: boolean } | null>(null);
  /** How long the last answer took from the letter to the page, in milliseconds. */
  answerTime = $state(0);

  readonly #hand = handName();
  #keeper: Keeper | null = null;
  #reading: AbortController | null = null;
  #dancing: AbortController | null = null;
  #floorTimer: ReturnType<typeof setTimeout> | undefined;

  /** Says something to her. */
  say(words: string, isTrouble = false) {
    this.said = { words, isTrouble };
  }

  /** Does something that may fail; a trouble is said. */
  async try<T>(work: () => Promise<T>): Promise<T | null> {
    try {
      return await work();
    } catch (e) {
      if (e instanceof DOMException && e.name === 'AbortError') return null;
      this.say(
        e instanceof Error ? e.message : 'Something went wrong in the page. Load it anew; your text is kept.',
        true,
      );
      return null;
    }
  }

  /** Opens the club, and the dance that the address names or the one she worked on last. */
  async start() {
    await this.try(async () => {
      this.club = await get<ClubAnswer>('/club');
      const { room, dance, opened } = fromAddress(location.pathname);
      this.room = room;
      this.#opens(room, opened);
      const id = dance ?? this.club.firstDance;
      if (id) await this.#open(id);
    });
    this.isOpening = false;
  }

  async refreshClub() {
    await this.try(async () => {
      this.club = await get<ClubAnswer>('/club');
    });
  }

  go(room: Room) {
    this.room = room;
    this.#address();
  }

  /** Opens a class or an evening in its room; null goes to the list of all. */
  show(room: 'classes' | 'evening', id: string | null, isUnasked = false) {
    this.opened[room] = id;
    if (isUnasked) window.history.replaceState(null, '', this.#path());
    else this.#address();
  }

  #opens(room: Room, opened: string | null) {
    if (room === 'classes' || room === 'evening') this.opened[room] = opened;
  }

  /** Hears what others change in the club: another page, a text editor in the linked folder. */
  listen(): () => void {
    const news = new EventSource('/api/news');
    news.onmessage = (event) => void this.#heard(JSON.parse(event.data as string) as ClubNews);
    return () => news.close();
  }

  async #heard(news: ClubNews) {
    this.heard = news;
    if (news.everything || news.dances.length > 0 || news.tracks.length > 0) this.news++;
    const id = this.dance?.id;
    if (!id || !(news.everything || news.dances.includes(id)) || this.clash || !this.#keeper?.isKept) return;
    try {
      const body = await get<DanceBody>(`/dances/${encodeURIComponent(id)}`);
      if (this.dance?.id !== id) return;
      // what she types meanwhile is hers; the save will find out that both have changed
      if (!this.#keeper.isKept) return;
      // an answer that was overtaken by a save of this page speaks of an older text
      if (body.revision <= this.#keeper.revision) return;
      this.dance = body.item;
      this.#keeper.learned(body.text, body.revision);
      if (body.text === this.text) return;
      this.text = body.text;
      this.#keeper.changed(body.text);
      this.replaced = { text: body.text, isNew: false };
      this.say('This dance was changed elsewhere; here is its text as it is now. Undo shows what it was.');
    } catch {
      // it is heard of again
    }
  }

  /** Opens a dance. */
  async open(id: string) {
    await this.try(() => this.#open(id));
  }

  async #open(id: string) {
    const body = await get<DanceBody>(`/dances/${encodeURIComponent(id)}`);
    this.#keeper?.shut();
    this.clash = null;
    this.dance = body.item;
    this.#keep(body);
    const draft = findDraft(id);
    let text = body.text;
    if (draft && draft.text !== body.text) {
      if (draft.revision === body.revision) {
        text = draft.text;
        this.say('What you had typed last is back: it had not reached the program.');
      } else {
        // both were changed: she chooses
        text = draft.text;
        this.standing = 'clash';
        this.clash = {
          sentence:
            'This dance was changed elsewhere while this page had a text of its own. Nothing is lost: choose which text to go on with.',
          revision: body.revision,
          text: body.text,
        };
      }
    }
    this.text = text;
    this.replaced = { text, isNew: true };
    this.floorTrack = null;
    this.floorSound = null;
    this.played = null;
    this.reading = null;
    this.floor = null;
    this.#address();
    if (text !== body.text && !this.clash) this.#keeper?.changed(text);
    void this.#read();
    this.#danceSoon(0);
  }

  #keep(body: DanceBody) {
    this.standing = 'kept';
    this.standingWords = '';
    this.#keeper = new Keeper(body.item.id, body.text, body.revision, this.#hand, {
      standing: (now, words) => {
        this.standing = now;
        this.standingWords = words;
      },
      clash: (clash) => (this.clash = clash),
      revision: () => {},
    });
  }

  /** She has typed. */
  typed(text: string) {
    this.text = text;
    if (!this.clash) this.#keeper?.changed(text);
    else if (this.dance) keepDraft(this.dance.id, { text, revision: this.#keeper?.revision ?? 0 });
    void this.#read();
    this.#danceSoon(FLOOR_PAUSE);
  }

  /** The program has made a text (a mend, a plan written in): it goes into the editor as one step that can be undone. */
  replace(text: string) {
    this.replaced = { text, isNew: false };
  }

  async #read() {
    this.#reading?.abort();
    const stop = (this.#reading = new AbortController());
    const text = this.text;
    const began = performance.now();
    try {
      const answer = await post<ReadAnswer>('/read', { text, dance: this.dance?.id ?? null }, stop.signal);
      if (text !== this.text) return;
      this.reading = answer;
      this.answerTime = performance.now() - began;
    } catch (e) {
      if (!(e instanceof Trouble)) return;
      if (e.status !== 0) this.say(e.message, true);
      else await this.#remember(text);
    }
  }

  /** The program is away: what it said of this very text before still holds. */
  async #remember(text: string) {
    const kept = this.dance && (await findAnswers(this.dance.id, text));
    if (!kept || text !== this.text) return;
    this.reading = kept.reading;
    this.floor = kept.floor;
  }

  #danceSoon(pause: number) {
    clearTimeout(this.#floorTimer);
    this.#floorTimer = setTimeout(() => void this.danceAnew(), pause);
  }

  /** Has the text danced anew. */
  async danceAnew() {
    this.#dancing?.abort();
    const stop = (this.#dancing = new AbortController());
    try {
      if (this.floorSound) {
        const asked = { text: this.text, track: this.floorSound, easier: false };
        const played = await post<PlayedAnswer>('/played', asked, stop.signal);
        this.played = played;
        if (played.floor) {
          this.floor = played.floor;
          return;
        }
        this.floorSound = null;
        this.say(played.sentence, true);
      }
      this.played = null;
      this.floor = await post<FloorAnswer>(
        '/floor',
        { text: this.text, track: this.floorTrack, height: null, ending: false, easier: false, plays: null },
        stop.signal,
      );
    } catch (e) {
      if (e instanceof Trouble && e.status !== 0) this.say(e.message, true);
    }
  }

  /** Which track's tags and restarts the floor dances; null as the sheet has it. */
  danceTo(track: string | null) {
    this.floorTrack = track;
    void this.danceAnew();
  }

  /** Which track of the club the floor dances to; null for the click. */
  soundOf(track: string | null) {
    if (track === this.floorSound) return;
    this.floorSound = track;
    void this.danceAnew();
  }

  complete(text: string, place: number, signal: AbortSignal): Promise<CompleteAnswer | null> {
    return post<CompleteAnswer>('/complete', { text, at: place }, signal).catch(() => null);
  }

  /** Goes on with her text: the other one becomes a version. */
  async keepMine() {
    const clash = this.clash;
    if (!clash || !this.#keeper) return;
    this.clash = null;
    this.#keeper.learned(clash.text, clash.revision);
    this.#keeper.changed(this.text);
    await this.#keeper.flush();
  }

  /** Goes on with the text that is there: hers is kept as a version first. */
  async takeTheirs() {
    const clash = this.clash;
    const dance = this.dance;
    if (!clash || !dance || !this.#keeper) return;
    await this.try(async () => {
      // hers goes in and theirs comes back on top, so that both are among the versions
      const mine = await put<{ revision: number }>(`/dances/${dance.id}`, {
        text: this.text,
        revision: clash.revision,
        hand: `${this.#hand}-mine`,
      });
      const theirs = await put<{ revision: number }>(`/dances/${dance.id}`, {
        text: clash.text,
        revision: mine.revision,
        hand: this.#hand,
      });
      this.clash = null;
      this.#keeper?.learned(clash.text, theirs.revision);
      this.text = clash.text;
      this.replaced = { text: clash.text, isNew: true };
      this.#keeper?.changed(clash.text);
      void this.#read();
      this.#danceSoon(0);
    });
  }

  async tidy() {
    await this.try(async () => {
      const tidy = await post<TextBody>('/tidy', { text: this.text });
      if (tidy.text === this.text) this.say('The text is tidy already.');
      else this.replace(tidy.text);
    });
  }

  /** A new dance with a first text. */
  async create(text: string) {
    await this.try(async () => {
      const body = await post<DanceBody>('/dances', { text });
      await this.#open(body.item.id);
      this.go('write');
      await this.refreshClub();
    });
  }

  async removeDance(id: string) {
    await this.try(async () => {
      const done = await remove<DoneAnswer>(`/dances/${id}`);
      this.say(done.sentence);
      await this.refreshClub();
    });
  }

  async setTags(id: string, tags: string[]) {
    return this.try(() => put<TagsBody>(`/dances/${id}/tags`, { tags }));
  }

  versions() {
    return this.try(() => get<DanceVersions>(`/dances/${this.dance?.id}/versions`));
  }

  keepVersion(name: string) {
    return this.try(async () => {
      await this.#keeper?.flush();
      return post<DanceVersions>(`/dances/${this.dance?.id}/versions`, { name });
    });
  }

  versionText(number: number) {
    return this.try(() => get<TextBody>(`/dances/${this.dance?.id}/versions/${number}`));
  }

  #path(): string {
    const id = this.room === 'classes' || this.room === 'evening' ? this.opened[this.room] : (this.dance?.id ?? null);
    return id ? `/${this.room}/${encodeURIComponent(id)}` : `/${this.room}`;
  }

  #address() {
    const path = this.#path();
    if (location.pathname !== path) window.history.pushState(null, '', path);
  }

  /** She went back or forward in the browser. */
  async wentTo(path: string) {
    const { room, dance, opened } = fromAddress(path);
    this.room = room;
    this.#opens(room, opened);
    if (dance && dance !== this.dance?.id) await this.open(dance);
  }
}

/** The room and the dance that an address names; in the rooms beside the sheet, the class or the evening. */
export function fromAddress(path: string): { room: Room; dance: string | null; opened: string | null } {
  const [, named = '', rest = ''] = path.split('/');
  const room = (ROOMS as readonly string[]).includes(named) ? (named as Room) : 'write';
  const id = rest ? decodeURIComponent(rest) : null;
  const isDance = room !== 'classes' && room !== 'evening';
  return { room, dance: isDance ? id : null, opened: isDance ? null : id };
}

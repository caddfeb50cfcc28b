/** The tracks of the club as the page has them: the list, the one she has chosen, and what is being heard. */
import { get, post, put, remove, Trouble, upload } from '../lib/api';
import type {
  DoneAnswer,
  SongItem,
  SongList,
  TrackAnswer,
  TrackItem,
  TrackJobItem,
  TrackJobList,
  TrackList,
  TrackSay,
  TrackTaken,
} from '../lib/contract';
import { decode, RATE } from './decode';

/** Asks so often how work stands while there is any. */
const LOOK_MS = 350;

/** Texts about tracks, by the endings of their files. */
const TEXTS = ['.track', '.beats.txt', '.sections.txt', '.corrections.json'];

/** A file on its way to the program. */
export interface Coming {
  name: string;
  /** The part that has gone, 0 to 1. */
  part: number;
  /** What is done with it now. */
  doing: string;
  stop: () => void;
}

/** What she says of a track; what is not named is left out. */
export type Say = { kind: string } & Partial<Omit<TrackSay, 'kind'>>;

/** All fields of what is said: the program wants them named. */
export function whole(say: Say): TrackSay {
  return {
    seconds: null,
    from: null,
    to: null,
    is: null,
    beatsLater: null,
    at: null,
    label: null,
    name: null,
    ratio: null,
    ...say,
  };
}

/** The tracks of the club. One for the whole page: rooms share it. */
export class TrackShelf {
  rows = $state.raw<TrackItem[]>([]);
  total = $state(0);
  words = $state('');
  songs = $state.raw<SongItem[]>([]);
  /** The track she works with. */
  track = $state.raw<TrackAnswer | null>(null);
  jobs = $state.raw<TrackJobItem[]>([]);
  coming = $state.raw<Coming[]>([]);
  isLoaded = $state(false);
  /** What plays the chosen track; null where there is no sound. */
  sound = $state.raw<HTMLAudioElement | null>(null);

  #timer: ReturnType<typeof setTimeout> | undefined;
  #told = new Set<string>();
  #asked: AbortController | null = null;

  /** @param say Tells her something; `isTrouble` for what went wrong. */
  constructor(private readonly say: (words: string, isTrouble?: boolean) => void) {}

  /** Work that waits or is being done. */
  get open(): TrackJobItem[] {
    return this.jobs.filter((j) => j.state === 'waiting' || j.state === 'running');
  }

  /** Does something that may fail; a trouble is said. */
  async try<T>(work: () => Promise<T>): Promise<T | null> {
    try {
      return await work();
    } catch (e) {
      if (e instanceof DOMException && e.name === 'AbortError') return null;
      this.say(e instanceof Error ? e.message : 'Something went wrong in the page. Load it anew.', true);
      return null;
    }
  }

  /** Fetches the list, and looks whether something is being heard. */
  async load(): Promise<void> {
    await this.try(async () => {
      await this.#list();
      await this.#look();
    });
    this.isLoaded = true;
  }

  /** Looks for words in the list. */
  async search(words: string): Promise<void> {
    this.words = words;
    await this.try(() => this.#list());
  }

  async #list(): Promise<void> {
    this.#asked?.abort();
    const stop = (this.#asked = new AbortController());
    const order = this.words ? 'best' : 'added';
    const list = await get<TrackList>(
      `/tracks?order=${order}&take=100&words=${encodeURIComponent(this.words)}`,
      stop.signal,
    );
    this.rows = list.rows;
    this.total = list.total;
  }

  /** Fetches the songs of the demo club. */
  async loadSongs(): Promise<void> {
    await this.try(async () => {
      this.songs = (await get<SongList>('/tracks/songs')).rows;
    });
  }

  /** Chooses a track. */
  async choose(id: string): Promise<void> {
    await this.try(async () => {
      this.#show(await get<TrackAnswer>(`/tracks/${encodeURIComponent(id)}`));
    });
  }

  /** Puts the track away. */
  putAway(): void {
    this.track = null;
    this.#quiet();
  }

  #quiet(): void {
    this.sound?.pause();
    this.sound?.removeAttribute('src');
    this.sound = null;
  }

  #show(track: TrackAnswer): void {
    const isOther = this.track?.track.id !== track.track.id;
    this.track = track;
    if (!isOther) return;
    this.#quiet();
    if (track.track.mediaType) {
      const sound = new Audio(`/api/tracks/${encodeURIComponent(track.track.id)}/sound`);
      sound.preload = 'auto';
      this.sound = sound;
    }
  }

  /** Takes files in, one after the other: sound, and texts about tracks. */
  async take(files: readonly File[]): Promise<void> {
    for (const file of files) {
      const isText = TEXTS.some((t) => file.name.toLowerCase().endsWith(t));
      if (isText) await this.try(() => this.#takeText(file, files));
      else await this.try(() => this.#takeSound(file));
    }
    await this.try(() => this.#list());
  }

  async #takeSound(file: File): Promise<void> {
    const stop = new AbortController();
    const coming: Coming = { name: file.name, part: 0, doing: 'is taken in', stop: () => stop.abort() };
    const told = (part: number, doing: string) => {
      this.coming = this.coming.map((c) => (c.name === coming.name ? { ...c, part, doing } : c));
    };
    this.coming = [...this.coming, coming];
    try {
      const taken = await upload<TrackTaken>(
        `/tracks?name=${encodeURIComponent(file.name)}`,
        file,
        (part) => told(part, 'is taken in'),
        stop.signal,
      );
      if (taken.sentence) this.say(taken.sentence);
      if (taken.needsSamples) {
        told(0, 'is decoded by your browser');
        await this.#handOver(
          taken.track.id,
          () => file.arrayBuffer(),
          (part) => told(part, 'is handed over'),
          stop.signal,
        );
      }
      await this.choose(taken.track.id);
      await this.#look();
    } finally {
      this.coming = this.coming.filter((c) => c.name !== coming.name);
    }
  }

  // What neither the program nor the browser can decode, another program on the machine may: the program says so, or why not.
  async #handOver(
    id: string,
    bytes: () => Promise<ArrayBuffer>,
    progress: (part: number) => void,
    stop: AbortSignal,
  ): Promise<void> {
    let samples: Float32Array<ArrayBuffer> | null = null;
    try {
      samples = await decode(await bytes());
    } catch (e) {
      if (e instanceof DOMException && e.name === 'AbortError') throw e;
    }
    stop.throwIfAborted();
    if (samples)
      await upload(
        `/tracks/${encodeURIComponent(id)}/samples?rate=${RATE}`,
        new Blob([samples.buffer]),
        progress,
        stop,
      );
    else await post(`/tracks/${encodeURIComponent(id)}/hear`, {});
  }

  async #takeText(file: File, all: readonly File[]): Promise<void> {
    const name = file.name.toLowerCase();
    // the sections go with the beats of the same name
    if (name.endsWith('.sections.txt')) {
      const beats = name.replace(/\.sections\.txt$/, '.beats.txt');
      if (!all.some((f) => f.name.toLowerCase() === beats)) {
        throw new Trouble(`${file.name} holds sections only. Drop the beats that belong to it together with it.`, 0);
      }
      return;
    }
    const sections = all.find((f) => f.name.toLowerCase() === name.replace(/\.beats\.txt$/, '.sections.txt'));
    const isCorrections = name.endsWith('.corrections.json');
    this.#show(
      await post<TrackAnswer>('/tracks/text', {
        name: file.name,
        text: await file.text(),
        sections: name.endsWith('.beats.txt') && sections ? await sections.text() : null,
        track: isCorrections ? (this.track?.track.id ?? null) : null,
        revision: this.track?.revision ?? 0,
      }),
    );
  }

  /** Lets our own band play songs of the demo club into the club. */
  async play(titles: string[]): Promise<void> {
    await this.try(async () => {
      this.#got(await post<TrackJobList>('/tracks/songs', { titles }));
    });
  }

  /** Hears the chosen track, or hears it anew. */
  async hear(): Promise<void> {
    const track = this.track?.track;
    if (!track) return;
    await this.try(async () => {
      if (track.needsSamples) {
        const bytes = async () => (await fetch(`/api/tracks/${encodeURIComponent(track.id)}/sound`)).arrayBuffer();
        await this.#handOver(track.id, bytes, () => {}, new AbortController().signal);
      } else await post(`/tracks/${encodeURIComponent(track.id)}/hear`, {});
      await this.#look();
    });
  }

  /** Stops work. */
  async stop(job: string): Promise<void> {
    await this.try(async () => {
      await remove<DoneAnswer>(`/jobs/${encodeURIComponent(job)}`);
      await this.#look();
    });
  }

  /** Says something of the chosen track, or takes something back. */
  async tell(said: { say?: Say; again?: string; takeBack?: number }): Promise<boolean> {
    const track = this.track;
    if (!track) return false;
    const answer = await this.try(async () => {
      try {
        return await post<TrackAnswer>(`/tracks/${encodeURIComponent(track.track.id)}/said`, {
          revision: track.revision,
          say: said.say ? whole(said.say) : null,
          again: said.again ?? null,
          takeBack: said.takeBack ?? null,
        });
      } catch (e) {
        // somebody else said something: show it as it is now, hers is for her to say again
        if (e instanceof Trouble && e.status === 409) await this.choose(track.track.id);
        throw e;
      }
    });
    if (answer) this.#show(answer);
    return answer !== null;
  }

  /** Gives the chosen track a title and an artist. */
  async rename(title: string, artist: string): Promise<void> {
    const id = this.track?.track.id;
    if (!id) return;
    await this.try(async () => {
      this.#show(await put<TrackAnswer>(`/tracks/${encodeURIComponent(id)}`, { title, artist }));
      await this.#list();
    });
  }

  /** Puts a track into the bin. */
  async bin(id: string): Promise<void> {
    await this.try(async () => {
      this.say((await remove<DoneAnswer>(`/tracks/${encodeURIComponent(id)}`)).sentence);
      if (this.track?.track.id === id) this.putAway();
      await this.#list();
    });
  }

  /** Ends what it does by itself. */
  close(): void {
    clearTimeout(this.#timer);
    this.#quiet();
  }

  async #look(): Promise<void> {
    this.#got(await get<TrackJobList>('/jobs'));
  }

  #got(list: TrackJobList): void {
    const before = new Set(this.open.map((j) => j.id));
    this.jobs = list.rows;
    const over = list.rows.filter((j) => before.has(j.id) && j.state !== 'waiting' && j.state !== 'running');
    for (const job of over) void this.#over(job);
    clearTimeout(this.#timer);
    if (this.open.length > 0) this.#timer = setTimeout(() => void this.#look().catch(() => this.#later()), LOOK_MS);
  }

  // The program is away for a moment: what it was hearing may still be there when it is back.
  #later(): void {
    this.#timer = setTimeout(() => void this.#look().catch(() => this.#later()), 10 * LOOK_MS);
  }

  async #over(job: TrackJobItem): Promise<void> {
    if (this.#told.has(job.id)) return;
    this.#told.add(job.id);
    if (job.sentence) this.say(job.sentence, job.state === 'failed');
    await this.try(() => this.#list());
    if (this.songs.length > 0) await this.loadSongs();
    // however it ended, the track she looks at stands otherwise now; with none before her, what is done is shown
    const isHers = job.track !== null && this.track?.track.id === job.track;
    if (job.track && (isHers || (this.track === null && job.state === 'done'))) await this.choose(job.track);
  }
}

/** What she asks of a fit, and what the program answers; asked again at every change, the latest question only. */
import { post, Trouble } from '../lib/api';
import type { DanceFit, DanceFitPin, DanceFitQuestion, FloorAnswer, MatchAnswer } from '../lib/contract';

/** Waits so long after a letter in the text before it is fitted anew. */
const PAUSE_MS = 250;

/** How a dance fits a track, while she tries. */
export class Fitting {
  fit = $state.raw<DanceFit | null>(null);
  /** Why there is no answer, a sentence; null when there is one. */
  trouble = $state<string | null>(null);
  isAsking = $state(false);
  pins = $state.raw<DanceFitPin[]>([]);
  /** Prices that she has set, by name. */
  prices = $state.raw<Record<string, number>>({});
  /** The most interruptions she wants; null for the kindest plan. */
  interruptions = $state<number | null>(null);
  intro = $state<number | null>(null);

  #asked: AbortController | null = null;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #text = '';
  #track = '';

  /** Takes another text or track; what was decided about another track is forgotten. */
  take(text: string, track: string): void {
    if (track !== this.#track) {
      this.pins = [];
      this.interruptions = null;
      this.intro = null;
      this.fit = null;
    }
    const isTyping = track === this.#track && this.fit !== null;
    this.#text = text;
    this.#track = track;
    clearTimeout(this.#timer);
    if (isTyping) this.#timer = setTimeout(() => void this.ask(), PAUSE_MS);
    else void this.ask();
  }

  /** The question as it stands. */
  question(): DanceFitQuestion {
    return {
      text: this.#text,
      track: this.#track,
      interruptions: this.interruptions,
      intro: this.intro,
      pins: this.pins,
      prices: Object.entries(this.prices).map(([name, points]) => `${name}=${points}`),
    };
  }

  /** Asks; an earlier question that is still on its way is let go. */
  async ask(): Promise<void> {
    if (!this.#track) return;
    this.#asked?.abort();
    const stop = (this.#asked = new AbortController());
    this.isAsking = true;
    try {
      this.fit = await post<DanceFit>('/fit', this.question(), stop.signal);
      this.trouble = null;
    } catch (e) {
      if (stop.signal.aborted) return;
      this.trouble = e instanceof Trouble ? e.message : 'Something went wrong in the page. Load it anew.';
    }
    if (this.#asked === stop) this.isAsking = false;
  }

  /** Decides something, in place of what was decided of the same thing before. */
  pin(pin: DanceFitPin, instead: DanceFitPin | null = null): Promise<void> {
    const isSame = (a: DanceFitPin, b: DanceFitPin) => a.kind === b.kind && a.at === b.at;
    this.pins = [...this.pins.filter((p) => !(instead && isSame(p, instead)) && !isSame(p, pin)), pin];
    return this.ask();
  }

  /** Takes a decision back. */
  unpin(index: number): Promise<void> {
    this.pins = this.pins.filter((_, i) => i !== index);
    return this.ask();
  }

  /** The chosen plan danced. */
  floor(): Promise<FloorAnswer> {
    return post<FloorAnswer>('/fit/floor', this.question());
  }

  /** Which tracks suit the dance. */
  tracks(noTags: boolean): Promise<MatchAnswer> {
    return post<MatchAnswer>('/match/tracks', { text: this.#text, noTags, most: 20 });
  }

  /** Which dances suit the track. */
  dances(noTags: boolean): Promise<MatchAnswer> {
    return post<MatchAnswer>('/match/dances', { track: this.#track, noTags, most: 20 });
  }

  /** Lets go of what is on its way. */
  close(): void {
    clearTimeout(this.#timer);
    this.#asked?.abort();
  }
}

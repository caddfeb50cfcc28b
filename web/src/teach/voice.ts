/** The browser's own voice, begun so early that the words end before the move. */

/** What speaks; the browser's, or a test's. */
export interface Synth {
  speak(utterance: SpeechSynthesisUtterance): void;
  cancel(): void;
}

/** What the voice needs from the page around it. */
export interface VoiceSurroundings {
  synth: Synth;
  /** Seconds on a clock that never goes back. */
  now(): number;
  /** Makes something to be said. */
  utter(words: string): SpeechSynthesisUtterance;
}

// A voice takes some moments to begin and needs so long for a letter; both are measured while it speaks. These are where it starts from.
const START_SECONDS = 0.15;
const SECONDS_A_LETTER = 0.065;

/** So much is free between the last word and the move. */
const MARGIN_SECONDS = 0.08;

/** Faster than this a voice is hard to follow. */
const FASTEST = 1.5;

const LEARNING = 0.3;

/** A voice that speaks on this machine: others send the words away. Some browsers know their voices only a moment after they were asked. */
function ownVoice(): SpeechSynthesisVoice | null {
  if (typeof speechSynthesis === 'undefined') return null;
  const own = speechSynthesis.getVoices().filter((v) => v.localService);
  return own.find((v) => v.lang.toLowerCase().startsWith('en')) ?? own[0] ?? null;
}

/** Whether this browser has a voice of its own now. */
export function hasVoice(): boolean {
  return ownVoice() !== null;
}

/** Calls back when the browser has found its voices; returns how to end that. */
export function onVoices(found: () => void): () => void {
  if (typeof speechSynthesis === 'undefined' || !('addEventListener' in speechSynthesis)) return () => {};
  speechSynthesis.addEventListener('voiceschanged', found);
  return () => speechSynthesis.removeEventListener('voiceschanged', found);
}

/** The voice of this browser. */
export function browserVoice(): Voice {
  return new Voice({
    synth: speechSynthesis,
    now: () => performance.now() / 1000,
    utter: (words) => {
      const utterance = new SpeechSynthesisUtterance(words);
      utterance.voice = ownVoice();
      utterance.lang = utterance.voice?.lang ?? 'en';
      return utterance;
    },
  });
}

/** Says calls in time. */
export class Voice {
  private start = START_SECONDS;
  private letter = SECONDS_A_LETTER;
  private busyUntil = -Infinity;

  constructor(private readonly around: VoiceSurroundings) {}

  /** Seconds from asking to the end of the words. */
  secondsOf(words: string): number {
    return this.start + words.length * this.letter;
  }

  /**
   * Says words if it is time for them.
   * @param words What is said.
   * @param inSeconds Until begins what they name.
   * @param wished Until they should begin as the program wrote it; they begin earlier where the voice needs longer.
   * @returns Whether they were taken: said, or too late to be said at all.
   */
  offer(words: string, inSeconds: number, wished: number): boolean {
    const needs = this.secondsOf(words);
    const now = this.around.now();
    const room = inSeconds - MARGIN_SECONDS;
    if (wished > 0 && room > needs) return false;
    // while it speaks the next words wait, as long as there is room for them
    if (now < this.busyUntil && room > needs / FASTEST) return false;
    const rate = Math.min(FASTEST, Math.max(1, (needs - this.start) / Math.max(0.05, room - this.start)));
    const takes = this.start + (words.length * this.letter) / rate;
    // what cannot end in time is better not said: it would name a move that is danced already
    if (takes > inSeconds + 0.35) return true;
    this.say(words, rate, now + takes);
    return true;
  }

  /** Is silent at once. */
  hush(): void {
    this.busyUntil = -Infinity;
    this.around.synth.cancel();
  }

  private say(words: string, rate: number, until: number): void {
    const { around } = this;
    const utterance = around.utter(words);
    utterance.rate = rate;
    const asked = around.now();
    let began = NaN;
    utterance.onstart = () => {
      began = around.now();
      this.start += LEARNING * (Math.min(1, began - asked) - this.start);
    };
    utterance.onend = () => {
      const took = around.now() - began;
      if (took > 0.1) this.letter += LEARNING * ((took * rate) / words.length - this.letter);
      this.busyUntil = Math.min(this.busyUntil, around.now());
    };
    this.busyUntil = until;
    around.synth.cancel();
    around.synth.speak(utterance);
  }
}

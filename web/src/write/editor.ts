/**
 * The text she types, in CodeMirror. What is right and wrong in it comes from the program: this file only places marks, offers and gutters
 * where the answers say.
 */
import {
  acceptCompletion,
  autocompletion,
  completionKeymap,
  type Completion,
  type CompletionContext,
  type CompletionResult,
} from '@codemirror/autocomplete';
import { defaultKeymap, history, historyKeymap, redo, undo } from '@codemirror/commands';
import {
  forEachDiagnostic,
  linter,
  lintKeymap,
  nextDiagnostic,
  setDiagnostics,
  type Diagnostic,
} from '@codemirror/lint';
import {
  Compartment,
  EditorState,
  RangeSet,
  RangeSetBuilder,
  StateEffect,
  StateField,
  type Extension,
} from '@codemirror/state';
import {
  Decoration,
  drawSelection,
  EditorView,
  gutter,
  GutterMarker,
  highlightActiveLine,
  highlightSpecialChars,
  hoverTooltip,
  keymap,
  type DecorationSet,
  type Tooltip,
} from '@codemirror/view';
import type { CompleteAnswer, ReadAnswer, ReadComplaint, ReadLine, ReadMove } from '../lib/contract';
import { kindWord } from '../lib/complain';
import { margin, noted } from './margin';
import { soleMark } from './sole';

/** What the editor tells and asks. */
export interface EditorDoor {
  /** The text was changed by her (not by the program). */
  onText(text: string): void;
  /** The cursor stands elsewhere. */
  onPlace(place: number): void;
  /** What could be written at a place. */
  complete(text: string, place: number, signal: AbortSignal): Promise<CompleteAnswer | null>;
}

/** A new answer of the program for the text as it stands. */
const answered = StateEffect.define<ReadAnswer>();
/** The counts that are danced now: a range of the text, or null. */
const danced = StateEffect.define<{ from: number; to: number } | null>();

const answerField = StateField.define<ReadAnswer | null>({
  create: () => null,
  update(value, tr) {
    for (const e of tr.effects) if (e.is(answered)) value = e.value;
    return value;
  },
});

const marks = StateField.define<DecorationSet>({
  create: () => Decoration.none,
  update(value, tr) {
    value = value.map(tr.changes);
    for (const e of tr.effects) {
      if (!e.is(answered)) continue;
      const length = tr.state.doc.length;
      const builder = new RangeSetBuilder<Decoration>();
      for (const m of e.value.marks) {
        if (m.to <= length) builder.add(m.from, m.to, Decoration.mark({ class: `t-${m.kind}` }));
      }
      value = builder.finish();
    }
    return value;
  },
  provide: (f) => EditorView.decorations.from(f),
});

const lamp = StateField.define<DecorationSet>({
  create: () => Decoration.none,
  update(value, tr) {
    value = value.map(tr.changes);
    for (const e of tr.effects) {
      if (!e.is(danced)) continue;
      value =
        e.value && e.value.to <= tr.state.doc.length && e.value.to > e.value.from
          ? Decoration.set([Decoration.mark({ class: 't-now' }).range(e.value.from, e.value.to)])
          : Decoration.none;
    }
    return value;
  },
  provide: (f) => EditorView.decorations.from(f),
});

class LineEnd extends GutterMarker {
  constructor(readonly line: ReadLine) {
    super();
  }

  override eq(other: LineEnd) {
    return other.line.weight === this.line.weight && other.line.facing === this.line.facing;
  }

  override toDOM() {
    return soleMark(this.line.weight, this.line.facing);
  }
}

/** Weight and facing after each count line, beside it. */
const lineEnds = StateField.define<RangeSet<GutterMarker>>({
  create: () => RangeSet.empty,
  update(value, tr) {
    value = value.map(tr.changes);
    for (const e of tr.effects) {
      if (!e.is(answered)) continue;
      const doc = tr.state.doc;
      const ends = e.value.lines
        .filter((l) => l.weight !== '' && l.number <= doc.lines)
        .map((l) => new LineEnd(l).range(doc.line(l.number).from));
      value = RangeSet.of(ends, true);
    }
    return value;
  },
});

function moveAt(answer: ReadAnswer, place: number): ReadMove | undefined {
  return answer.moves.find((m) => m.from <= place && place <= m.to);
}

/** What a move does, count by count. */
function moveCard(move: ReadMove): HTMLElement {
  const card = document.createElement('div');
  card.className = 'move-card';
  const head = document.createElement('p');
  head.className = 'move-name';
  head.textContent = move.name || 'Words that could not be read';
  if (move.level) {
    const level = document.createElement('span');
    level.className = 'soft';
    level.textContent = `  first met at ${move.level}`;
    head.append(level);
  }
  card.append(head);
  const table = document.createElement('table');
  for (const row of move.rows) {
    const tr = table.insertRow();
    tr.insertCell().textContent = row.count;
    tr.insertCell().textContent = row.words;
    const weight = tr.insertCell();
    weight.textContent =
      row.weight === 'L' || row.weight === 'R' ? `weight on ${row.weight}` : row.weight ? `weight ${row.weight}` : '';
    tr.insertCell().textContent = row.facing ?? '';
  }
  card.append(table);
  if (move.note) {
    const note = document.createElement('p');
    note.className = 'soft';
    note.textContent = move.note;
    card.append(note);
  }
  if (move.call) {
    const call = document.createElement('p');
    call.className = 'soft';
    call.textContent = `Called “${move.call}”`;
    card.append(call);
  }
  return card;
}

const hover = hoverTooltip(
  (view, place): Tooltip | null => {
    const answer = view.state.field(answerField);
    const move = answer && moveAt(answer, place);
    if (!move || move.rows.length === 0) return null;
    return { pos: move.from, end: move.to, above: true, create: () => ({ dom: moveCard(move) }) };
  },
  { hoverTime: 350 },
);

/** Puts a mend into the text, where its place may have moved since it was offered. */
function mend(view: EditorView, complaint: ReadComplaint, index: number) {
  const fix = complaint.fixes[index];
  if (!fix) return;
  const length = view.state.doc.length;
  if (fix.edits.some((e) => e.to > length)) return;
  view.dispatch({
    changes: fix.edits.map((e) => ({ from: e.from, to: e.to, insert: e.text })),
    userEvent: 'input.mend',
    scrollIntoView: true,
  });
  view.focus();
}

function toDiagnostic(complaint: ReadComplaint, length: number): Diagnostic | null {
  if (complaint.to > length) return null;
  const severity =
    complaint.severity === 'error'
      ? 'error'
      : complaint.severity === 'hint'
        ? 'hint'
        : complaint.severity === 'question'
          ? 'info'
          : 'warning';
  return {
    from: complaint.from,
    to: Math.max(complaint.to, Math.min(complaint.from + 1, length)),
    severity,
    source: complaint.id,
    message: `${kindWord(complaint.severity)}. ${complaint.message}`,
    markClass: `c-${complaint.severity}`,
    actions: complaint.fixes
      .slice(0, 4)
      .map((fix, i) => ({ name: fix.title, apply: (view) => mend(view, complaint, i) })),
  };
}

async function offers(door: EditorDoor, context: CompletionContext): Promise<CompletionResult | null> {
  const place = context.pos;
  const line = context.state.doc.lineAt(place);
  const before = line.text.slice(0, place - line.from);
  // unasked only while a word is being typed, so that a list never stands between her and the next line
  if (!context.explicit && !/[A-Za-z]{2,}$/.test(before)) return null;
  const stop = new AbortController();
  context.addEventListener('abort', () => stop.abort());
  const answer = await door.complete(context.state.doc.toString(), place, stop.signal);
  if (!answer || answer.offers.length === 0 || context.aborted) return null;
  const options: Completion[] = answer.offers.map((offer, i) => ({
    label: offer.text,
    detail: offer.isPossible ? offer.detail : 'not free here',
    info: () => {
      const words = document.createElement('div');
      words.className = 'offer-about';
      words.textContent = offer.about;
      return words;
    },
    type: offer.isPossible ? offer.kind : 'closed',
    boost: 99 - i,
  }));
  return { from: answer.from, options, filter: false };
}

/** Whether the page has room for the margin; the same width stands in sheet.css. */
function hasMargin(): boolean {
  return (document.querySelector('.sheet')?.clientWidth ?? 0) >= 720;
}

const theme = EditorView.theme({
  '&': { height: '100%', backgroundColor: 'transparent', color: 'var(--ink)', fontSize: 'inherit' },
  '&.cm-focused': { outline: 'none' },
  '.cm-scroller': { fontFamily: 'var(--type)', lineHeight: '1.7', overflow: 'auto' },
  '.cm-content': { padding: '12px 8px 40vh', caretColor: 'var(--lamp)' },
  '.cm-line': { padding: '0 8px 0 4px' },
  '.cm-gutters': { backgroundColor: 'transparent', border: 'none', color: 'var(--soft)' },
  '.cm-activeLine': { backgroundColor: 'var(--wash)' },
  '.cm-cursor': { borderLeftColor: 'var(--lamp)', borderLeftWidth: '2.5px' },
  '&.cm-focused .cm-selectionBackground, .cm-selectionBackground': { backgroundColor: 'var(--glow) !important' },
  '.cm-tooltip': {
    backgroundColor: 'var(--paper)',
    color: 'var(--ink)',
    border: '1.5px solid var(--line)',
    borderRadius: '10px',
    overflow: 'hidden',
    boxShadow: '0 6px 24px #0003',
  },
  '.cm-tooltip-autocomplete ul': { fontFamily: 'var(--type) !important', maxHeight: '18em !important' },
  '.cm-tooltip-autocomplete ul li': { padding: '6px 12px !important', lineHeight: '1.4 !important' },
  '.cm-tooltip-autocomplete ul li[aria-selected]': {
    backgroundColor: 'var(--tide) !important',
    color: 'var(--paper) !important',
  },
  '.cm-completionIcon': { display: 'none' },
  '.cm-completionDetail': { fontStyle: 'normal', marginLeft: '1em', opacity: '1' },
  '.cm-completionInfo': { padding: '10px 14px', maxWidth: '34ch' },
  '.cm-diagnostic': { padding: '8px 12px', borderLeft: '4px solid var(--line)', maxWidth: '60ch' },
  '.cm-diagnostic-error': { borderLeftColor: 'var(--buoy)' },
  '.cm-diagnosticAction': {
    backgroundColor: 'var(--tide)',
    color: 'var(--paper)',
    borderRadius: '8px',
    minHeight: '32px',
    padding: '4px 12px',
    marginLeft: '8px',
    border: 'none',
  },
  '.cm-diagnosticSource': { display: 'none' },
  '.cm-lintRange': {
    backgroundImage: 'none !important',
    textDecorationLine: 'underline',
    textDecorationThickness: '2px',
    textUnderlineOffset: '4px',
  },
});

/** The editor on the page. */
export class Editor {
  readonly #view: EditorView;
  readonly #readOnly = new Compartment();
  #isPutting = false;

  constructor(
    parent: HTMLElement,
    text: string,
    private readonly door: EditorDoor,
  ) {
    this.#view = new EditorView({ parent, state: this.#stateOf(text) });
  }

  #stateOf(text: string): EditorState {
    return EditorState.create({ doc: text, extensions: this.#extensions() });
  }

  #extensions(): Extension {
    return [
      highlightSpecialChars(),
      history({ minDepth: 2000 }),
      drawSelection(),
      EditorView.lineWrapping,
      highlightActiveLine(),
      answerField,
      marks,
      lamp,
      lineEnds,
      gutter({ class: 'ends', markers: (view) => view.state.field(lineEnds) }),
      hover,
      autocompletion({
        override: [(c) => offers(this.door, c)],
        icons: false,
        activateOnTyping: true,
        maxRenderedOptions: 30,
      }),
      keymap.of([
        // Tab goes on in the page unless a list is open, so that nobody is caught in the text
        { key: 'Tab', run: acceptCompletion },
        { key: 'F8', run: nextDiagnostic },
        ...completionKeymap,
        ...lintKeymap,
        ...historyKeymap,
        ...defaultKeymap,
      ]),
      EditorView.contentAttributes.of({
        'aria-label': 'The text of the dance',
        tabindex: '0',
        spellcheck: 'false',
        autocapitalize: 'off',
      }),
      this.#readOnly.of([]),
      margin(mend),
      // where the margin tells it, no pop-up tells it again
      linter(null, {
        tooltipFilter: (found, state) => (hasMargin() ? [] : found.filter((d) => d.from <= state.doc.length)),
      }),
      theme,
      EditorView.updateListener.of((update) => {
        if (update.docChanged && !this.#isPutting) this.door.onText(update.state.doc.toString());
        if (update.selectionSet || update.docChanged) this.door.onPlace(update.state.selection.main.head);
      }),
    ];
  }

  /** The text as it stands. */
  get text(): string {
    return this.#view.state.doc.toString();
  }

  /** The place of the cursor. */
  get place(): number {
    return this.#view.state.selection.main.head;
  }

  /** What is selected; the cursor alone where nothing is. */
  get selection(): { from: number; to: number } {
    const { from, to } = this.#view.state.selection.main;
    return { from, to };
  }

  /** Another dance: what was undone in the last one cannot be undone in this. */
  open(text: string) {
    this.#isPutting = true;
    this.#view.setState(this.#stateOf(text));
    this.#isPutting = false;
  }

  /** The same dance with another text, as one step that can be undone; what stays the same keeps its place. */
  replace(text: string, isHers: boolean) {
    const old = this.text;
    if (old === text) return;
    let start = 0;
    while (start < old.length && start < text.length && old[start] === text[start]) start++;
    let end = 0;
    while (
      end < old.length - start &&
      end < text.length - start &&
      old[old.length - 1 - end] === text[text.length - 1 - end]
    )
      end++;
    this.#isPutting = !isHers;
    this.#view.dispatch({
      changes: { from: start, to: old.length - end, insert: text.slice(start, text.length - end) },
      userEvent: 'input.replace',
    });
    this.#isPutting = false;
  }

  /** Shows what the program says of the text; an answer to an older text is not shown. */
  show(answer: ReadAnswer) {
    const length = this.#view.state.doc.length;
    const found = answer.complaints.filter((c) => c.to <= length);
    // one change for all, so that the page is drawn once
    this.#view.dispatch(
      { effects: [answered.of(answer), noted.of(found)] },
      setDiagnostics(
        this.#view.state,
        found.map((c) => toDiagnostic(c, length)).filter((d): d is Diagnostic => d !== null),
      ),
    );
  }

  /** Lights the words that are danced now. */
  light(range: { from: number; to: number } | null) {
    this.#view.dispatch({ effects: danced.of(range) });
  }

  /** Puts a mend into the text. */
  mend(complaint: ReadComplaint, index: number) {
    mend(this.#view, complaint, index);
  }

  /** Goes to a place and shows it. */
  goTo(place: number, focus = true) {
    const at = Math.min(place, this.#view.state.doc.length);
    this.#view.dispatch({ selection: { anchor: at }, effects: EditorView.scrollIntoView(at, { y: 'center' }) });
    if (focus) this.#view.focus();
  }

  undo() {
    undo(this.#view);
  }

  redo() {
    redo(this.#view);
  }

  focus() {
    this.#view.focus();
  }

  /** How many complaints are marked; for tests. */
  get marked(): number {
    let n = 0;
    forEachDiagnostic(this.#view.state, () => n++);
    return n;
  }

  close() {
    this.#view.destroy();
  }
}

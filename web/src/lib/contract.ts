// Written by tests/Tests/Web/ContractTests.cs from the records in src/Scuff.App/Web/Contract (SCUFF_UPDATE=1); not by hand.

export interface CallAnswer {
  calls: CalledWords[];
  countIn: number;
}

export interface CallFileQuestion {
  calls: CallQuestion;
  kind: string;
  clicks: boolean;
}

export interface CallQuestion {
  text: string;
  track: string | null;
  ending: boolean;
  countsPerMinute: number | null;
  table: number[][] | null;
  speed: number;
  help: string[] | null;
  easier: boolean;
  plays: string | null;
  firstWall: number;
}

export interface CalledWords {
  kind: string;
  words: string;
  at: number;
  until: number;
  for: number;
  wall: number;
  seconds: number;
  due: number;
  from: number;
  to: number;
}

export interface ClassAnswer {
  item: ClassItem;
  next: SessionAnswer | null;
  offered: RevisionOffer | null;
  history: SessionAnswer[];
  held: number;
  dances: KnownDance[];
  known: number;
}

export interface ClassBody {
  title: string;
  level: string;
  weekday: number | null;
  starts: string | null;
  minutes: number;
  place: string;
  people: number | null;
  notes: string;
  endedOn: string | null;
}

export interface ClassChoice {
  id: string;
  title: string;
  level: string;
  people: number;
}

export interface ClassItem {
  id: string;
  title: string;
  level: string;
  weekday: number | null;
  starts: string | null;
  minutes: number;
  place: string;
  people: number | null;
  notes: string;
  endedOn: string | null;
  words: string;
  next: string;
}

export interface ClassList {
  today: string;
  classes: ClassItem[];
  ended: ClassItem[];
  levels: string[];
  files: FileOffer[];
}

export interface ClubAnswer {
  name: string;
  folder: string;
  linkedFolder: string | null;
  dances: number;
  tracks: number;
  inBin: number;
  tags: TagUse[];
  levels: string[];
  firstDance: string | null;
  version: string;
}

export interface ClubNews {
  dances: string[];
  tracks: string[];
  classes: string[];
  evenings: string[];
  everything: boolean;
}

export interface CompareAnswer {
  isSame: boolean;
  changes: string[];
}

export interface CompareQuestion {
  before: string;
  after: string;
}

export interface CompleteAnswer {
  from: number;
  weight: string;
  facing: string | null;
  offers: CompleteOffer[];
}

export interface CompleteOffer {
  text: string;
  detail: string;
  about: string;
  isPossible: boolean;
  kind: string;
}

export interface CompleteQuestion {
  text: string;
  at: number;
}

export interface CurveChoice {
  id: string;
  words: string;
  heights: number[];
}

export interface DanceBody {
  item: DanceItem;
  revision: number;
  text: string;
}

export interface DanceClash {
  sentence: string;
  revision: number;
  text: string;
}

export interface DanceFit {
  fit: FittedTrackRow;
  plans: DanceFitPlan[];
  chosen: number | null;
  asWritten: DanceFitPlan | null;
  seconds: number[];
  table: number[][];
  text: string | null;
  trouble: string | null;
  restartPlaces: number[];
  prices: DanceFitPrice[];
  accents: string[];
}

export interface DanceFitPin {
  kind: string;
  at: number;
  to: number | null;
}

export interface DanceFitPlan {
  title: string;
  begins: number;
  beginning: string;
  breaks: string[];
  ending: string;
  score: DanceFitSum[];
}

export interface DanceFitPrice {
  name: string;
  words: string;
  points: number;
  usual: number;
}

export interface DanceFitQuestion {
  text: string;
  track: string;
  interruptions: number | null;
  intro: number | null;
  pins: DanceFitPin[];
  prices: string[];
}

export interface DanceFitSum {
  words: string;
  points: number;
}

export interface DanceItem {
  id: string;
  title: string;
  by: string;
  facts: string;
  standing: string;
  isClean: boolean;
  songs: string[];
  tags: string[];
  savedAt: string;
  removedAt: string | null;
  fileName: string | null;
}

export interface DanceList {
  rows: DanceItem[];
  total: number;
}

export interface DanceSave {
  text: string;
  revision: number;
  hand: string;
}

export interface DanceSaved {
  revision: number;
  trouble: string | null;
}

export interface DanceVersions {
  rows: VersionItem[];
}

export interface DoneAnswer {
  sentence: string;
}

export interface DoneLine {
  title: string;
  at: string;
  isSkipped: boolean;
}

export interface DuplicateItem {
  reason: string;
  dances: DanceItem[];
}

export interface DuplicateList {
  groups: DuplicateItem[];
}

export interface EaseAnswer {
  sought: string;
  moves: EasedMove[];
}

export interface EaseQuestion {
  text: string;
  for: string;
  level: string;
  from: number | null;
  to: number | null;
}

export interface EasedMove {
  place: string;
  from: number;
  to: number;
  words: string;
  level: string;
  offers: EasedOffer[];
  none: string;
}

export interface EasedOffer {
  counts: string;
  words: string;
  reasons: string[];
  take: ReadFix;
}

export interface EffortDrawing {
  seconds: number;
  lines: EffortLine[];
  wished: EffortPoint[];
  words: string;
}

export interface EffortLine {
  from: number;
  to: number;
  effort: number;
  title: string;
}

export interface EffortPoint {
  at: number;
  effort: number;
}

export interface EveningAnswer {
  item: EveningHead;
  revision: number;
  wishes: EveningWishes;
  classes: ClassChoice[];
  levels: string[];
  curves: CurveChoice[];
  tags: string[];
  programme: ProgrammeAnswer | null;
  moved: string[];
  night: NightAnswer | null;
  files: FileOffer[];
}

export interface EveningBody {
  revision: number;
  title: string;
  date: string;
  starts: string;
  minutes: number;
  place: string;
  wishes: EveningWishes | null;
}

export interface EveningDecision {
  revision: number;
  what: string;
  danceId: string;
  stretch: number;
  place: number;
  songKey: string;
}

export interface EveningHead {
  id: string;
  title: string;
  date: string;
  starts: string;
  minutes: number;
  place: string;
  words: string;
  isPast: boolean;
}

export interface EveningList {
  today: string;
  rows: EveningHead[];
  total: number;
}

export interface EveningTurn {
  revision: number;
}

export interface EveningWishes {
  groups: GroupWish[];
  stops: StopWish[];
  warmUpMinutes: number;
  coolDownMinutes: number;
  curve: string;
  opening: NamedDance | null;
  closing: NamedDance | null;
  requests: RequestWish[];
  pins: PinWish[];
  maySplit: boolean;
  onlyTags: string[];
}

export interface FileOffer {
  name: string;
  words: string;
  extension: string;
}

export interface FilledSession {
  items: SessionLine[];
  sentences: string[];
}

export interface FitChartBand {
  kind: string;
  from: number;
  to: number;
  wall: number;
  part: string;
  name: string;
  facing: string | null;
  starts: boolean;
  isCut: boolean;
}

export interface FitChartLine {
  from: number;
  counts: number;
  seconds: number;
  section: number;
  beginsSection: boolean;
}

export interface FitChartRows {
  eight: number;
  ending: number | null;
  rows: FitChartLine[];
  spans: FitChartBand[];
}

export interface FittedAccentRow {
  wall: number;
  part: string;
  section: number;
  count: string;
  seconds: number;
  counts: number;
  danced: string;
  meets: boolean;
  suggested: string | null;
}

export interface FittedBreakRow {
  wall: number;
  part: string;
  after: number;
  begins: number;
  seconds: number;
  facing: string | null;
  length: number;
  done: string;
  line: string;
}

export interface FittedEndingRow {
  wall: number;
  after: number;
  begins: number;
  seconds: number;
  facing: string | null;
  line: string;
}

export interface FittedItemRow {
  reason: string;
  points: number;
  wall: number;
  count: number;
  at: number;
}

export interface FittedPlanRow {
  interruptions: number;
  points: number;
  isProven: boolean;
  intro: number;
  beginsSeconds: number;
  walls: FittedWallRow[];
  breaks: FittedBreakRow[];
  ending: FittedEndingRow | null;
  items: FittedItemRow[];
  sheet: string;
}

export interface FittedTrackRow {
  dance: string;
  track: string;
  title: string;
  beatsPerCount: string;
  countsPerMinute: number;
  remarks: string[];
  kindest: number | null;
  plans: FittedPlanRow[];
  asWritten: FittedPlanRow | null;
  accents: FittedAccentRow[];
  chart: FitChartRows | null;
}

export interface FittedWallRow {
  wall: number;
  part: string;
  begins: number;
  seconds: number;
  facing: string | null;
  counts: number;
  music: string;
}

export interface FloorAnswer {
  perCount: number;
  first: number;
  length: number;
  goesRound: boolean;
  height: number;
  heelToBall: number;
  leg: number;
  left: FloorFoot;
  right: FloorFoot;
  body: FloorBody;
  stretches: FloorStretch[];
  steps: FloorStep[];
  sections: FloorSection[];
  hasEasier: boolean;
}

export interface FloorBody {
  x: number[];
  y: number[];
  hips: number[];
  facing: number[];
  turned: number[];
  weight: string;
}

export interface FloorFoot {
  x: number[];
  y: number[];
  angle: number[];
  lift: number[];
  contact: string;
}

export interface FloorLine {
  at: number;
  counts: number;
  label: string;
  from: number;
  to: number;
  number: number;
}

export interface FloorQuestion {
  text: string;
  track: string | null;
  height: number | null;
  ending: boolean;
  easier: boolean;
  plays: string | null;
}

export interface FloorSection {
  at: number;
  counts: number;
  wall: number;
  kind: string;
  name: string;
  title: string;
  lines: FloorLine[];
}

export interface FloorStep {
  at: number;
  count: string;
  foot: string;
  words: string;
  weight: string;
  facing: string | null;
  from: number;
  to: number;
  line: number;
}

export interface FloorStretch {
  at: number;
  counts: number;
  wall: number;
  kind: string;
  name: string;
  facing: string | null;
  words: string;
  startsWall: boolean;
}

export interface FolderAnswer {
  sentences: string[];
}

export interface FolderBody {
  path: string;
}

export interface GroupWish {
  classId: string | null;
  name: string;
  level: string;
  people: number;
}

export interface HallAddressAnswer {
  address: string;
  network: string;
  sign: HallSign;
}

export interface HallAnswer {
  isOpen: boolean;
  guests: string;
  code: string | null;
  codeSeconds: number;
  why: string;
  addresses: HallAddressAnswer[];
  tablets: number;
  screens: number;
}

export interface HallAsk {
  kind: string;
  number: number | null;
  to: number | null;
  word: string | null;
}

export interface HallDance {
  number: number;
  title: string;
  eight: number;
  floor: FloorAnswer;
  calls: CalledWords[];
  help: string;
}

export interface HallDanceName {
  number: number;
  title: string;
}

export interface HallMe {
  circle: string;
  isOpen: boolean;
}

export interface HallNews {
  number: number;
  dance: HallDanceName | null;
  playhead: HallPlayhead | null;
}

export interface HallOpen {
  guests: string;
}

export interface HallPair {
  code: string;
}

export interface HallPlayhead {
  at: number;
  count: number;
  playing: boolean;
  pace: number;
  speed: number;
  countIn: number;
  waits: number;
  loopFrom: number | null;
  loopTo: number | null;
  view: string;
}

export interface HallSign {
  size: number;
  path: string;
}

export interface HallTell {
  hand: string;
  takes: boolean;
  playhead: HallPlayhead;
}

export interface HallTellDance {
  hand: string;
  takes: boolean;
  title: string;
  eight: number;
  floor: FloorQuestion;
  calls: CallQuestion | null;
}

export interface HallTime {
  now: number;
}

export interface HallTold {
  leads: boolean;
}

export interface HistoryPage {
  rows: SessionAnswer[];
  total: number;
}

export interface KnownDance {
  danceId: string;
  title: string;
  knowing: number | null;
  last: string;
  leftPercent: number | null;
  left: string;
  warning: string;
}

export interface KnownPage {
  rows: KnownDance[];
  total: number;
}

export interface LessonAnswer {
  title: string;
  facts: string[];
  notes: string[];
  cautions: string[];
  more: LessonTold[];
  class: string;
  seconds: number;
  usualSeconds: number;
  leastSeconds: number;
  isWhole: boolean;
  steps: LessonStepItem[];
}

export interface LessonQuestion {
  text: string;
  minutes: number | null;
  class: string | null;
  knows: string[] | null;
  track: string | null;
  practiceTempo: number | null;
  order: string | null;
  knees: boolean;
  beginners: boolean;
  warmUp: boolean;
}

export interface LessonSheetQuestion {
  lesson: LessonQuestion;
  format: string;
  paper: string;
  large: boolean;
}

export interface LessonStepItem {
  id: string;
  kind: string;
  phase: string;
  words: string;
  details: LessonTold[];
  start: number;
  seconds: number;
  times: number;
  leaveOut: number | null;
  fromCount: number | null;
  toCount: number | null;
  wall: number;
  percent: number;
  pace: number | null;
  help: string | null;
}

export interface LessonTold {
  lead: string;
  words: string;
}

export interface MarkBody {
  danceId: string;
  knowing: number | null;
}

export interface MatchAnswer {
  rows: MatchedItem[];
  sentence: string;
}

export interface MatchDancesQuestion {
  track: string;
  noTags: boolean;
  most: number;
}

export interface MatchRow {
  rank: number;
  dance: string;
  track: string;
  title: string;
  points: number | null;
  tempo: number;
  meter: number;
  feel: number;
  length: number;
  phrases: number | null;
  doubt: number;
  countsPerMinute: number;
  interruptions: number | null;
  why: string;
}

export interface MatchTracksQuestion {
  text: string;
  noTags: boolean;
  most: number;
}

export interface MatchedItem {
  match: MatchRow;
  track: string;
  dance: string | null;
}

export interface MissedItem {
  danceId: string;
  title: string;
  sentence: string;
  canInsist: boolean;
}

export interface NamedDance {
  danceId: string;
  title: string;
}

export interface NightAnswer {
  now: string;
  origin: string;
  since: number;
  endSecond: number;
  endsAt: string;
  done: DoneLine[];
  isOver: boolean;
  words: string;
}

export interface NightTurn {
  revision: number;
  what: string;
  danceId: string;
  line: number;
  endsAt: string;
}

export interface OfferedDance {
  danceId: string;
  title: string;
  reason: string;
  minutes: number;
}

export interface PickedDance {
  title: string;
  minutes: number;
  facts: string;
  known: string[];
}

export interface PinWish {
  kind: string;
  danceId: string;
  otherId: string;
  stretch: number;
  place: number;
  songKey: string;
  words: string;
}

export interface PlayedAnswer {
  tracks: PlayedTrack[];
  track: string | null;
  title: string;
  floor: FloorAnswer | null;
  table: number[][];
  sentence: string;
}

export interface PlayedQuestion {
  text: string;
  track: string | null;
  easier: boolean;
}

export interface PlayedTrack {
  id: string;
  title: string;
}

export interface ProgrammeAnswer {
  stretches: ProgrammeStretchItem[];
  effort: EffortDrawing;
  sure: string;
  common: string[];
  missed: MissedItem[];
  stale: string;
}

export interface ProgrammeLine {
  place: number;
  at: string;
  startSecond: number;
  seconds: number;
  danceId: string;
  title: string;
  level: string;
  otherId: string;
  otherTitle: string;
  otherLevel: string;
  songKey: string;
  song: string;
  trackId: string;
  floorShare: number;
  floor: string;
  effort: string;
  isPinned: boolean;
  isAsked: boolean;
  reasons: string[];
}

export interface ProgrammeStretchItem {
  index: number;
  name: string;
  kind: string;
  when: string;
  lines: ProgrammeLine[];
}

export interface ReadAnswer {
  title: string;
  standing: string;
  level: string;
  counts: number;
  beatsPerBar: number;
  beatsPerMinute: number;
  isClean: boolean;
  complaints: ReadComplaint[];
  lines: ReadLine[];
  sections: ReadSection[];
  moves: ReadMove[];
  marks: ReadMark[];
  tracks: ReadTrack[];
}

export interface ReadComplaint {
  id: string;
  severity: string;
  from: number;
  to: number;
  count: string | null;
  message: string;
  why: string;
  related: ReadRelated[];
  fixes: ReadFix[];
}

export interface ReadEdit {
  from: number;
  to: number;
  text: string;
}

export interface ReadFix {
  title: string;
  edits: ReadEdit[];
}

export interface ReadLine {
  from: number;
  to: number;
  number: number;
  label: string;
  at: number | null;
  length: number;
  weight: string;
  facing: string | null;
}

export interface ReadMark {
  from: number;
  to: number;
  kind: string;
}

export interface ReadMove {
  from: number;
  to: number;
  name: string;
  level: string;
  call: string;
  note: string;
  rows: ReadRow[];
}

export interface ReadQuestion {
  text: string;
  dance: string | null;
}

export interface ReadRelated {
  from: number;
  to: number;
  words: string;
}

export interface ReadRow {
  count: string;
  words: string;
  weight: string;
  facing: string | null;
}

export interface ReadSection {
  from: number;
  name: string;
  title: string;
  counts: number;
  at: number | null;
  facing: string | null;
}

export interface ReadTrack {
  title: string;
  artist: string;
}

export interface Refusal {
  sentence: string;
}

export interface RequestWish {
  danceId: string;
  title: string;
  people: number;
}

export interface RevisionOffer {
  words: string;
  dances: OfferedDance[];
}

export interface SessionAnswer {
  id: string;
  date: string;
  starts: string | null;
  minutes: number;
  isHeld: boolean;
  people: number | null;
  howItWent: string;
  items: SessionLine[];
  when: string;
  words: string;
  past: string;
}

export interface SessionBody {
  date: string;
  starts: string | null;
  minutes: number | null;
  isHeld: boolean;
  people: number | null;
  howItWent: string;
  items: SessionLine[];
}

export interface SessionLine {
  role: string;
  danceId: string | null;
  title: string;
  minutes: number | null;
  note: string;
  knowing: number | null;
}

export interface SessionSaved {
  session: SessionAnswer;
  class: ClassAnswer;
}

export interface SheetChange {
  sentence: string;
  changes: string[];
}

export interface SheetFormatOffer {
  name: string;
  extension: string;
}

export interface SheetLanguageOffer {
  code: string;
  name: string;
}

export interface SheetOffers {
  formats: SheetFormatOffer[];
  languages: SheetLanguageOffer[];
}

export interface SheetQuestion {
  text: string;
  format: string;
  language: string;
  paper: string;
  large: boolean;
  card: boolean;
  diagrams: boolean;
  since: string | null;
}

export interface SongChoice {
  key: string;
  title: string;
  length: string;
}

export interface SongChoices {
  songs: SongChoice[];
}

export interface SongItem {
  title: string;
  artist: string;
  dance: string;
  tempo: number;
  track: string | null;
}

export interface SongList {
  rows: SongItem[];
}

export interface SongQuestion {
  titles: string[];
}

export interface StopWish {
  at: string;
  minutes: number;
  isLesson: boolean;
  danceId: string | null;
  title: string;
}

export interface StudentCall {
  kind: string;
  words: string;
  at: number;
  for: number;
  wall: number;
}

export interface StudentCalls {
  help: string;
  calls: StudentCall[];
}

export interface StudentDance {
  floor: FloorAnswer;
  steps: StudentSteps;
  calls: StudentCalls[];
}

export interface StudentLine {
  number: number;
  counts: string;
  words: string;
  facing: string;
  notes: StudentWords[];
}

export interface StudentPage {
  title: string;
  by: string;
  edition: string;
  facts: string[];
  cautions: string[];
  address: string;
  eight: number;
  countsPerMinute: number;
  sections: StudentSection[];
  breaks: StudentWords[];
  tracks: string[];
  plain: StudentDance;
  easier: StudentDance | null;
}

export interface StudentSection {
  heading: string;
  lines: StudentLine[];
  notes: StudentWords[];
}

export interface StudentSteps {
  at: number[];
  count: string[];
  facing: string[];
}

export interface StudentWords {
  lead: string;
  words: string;
}

export interface TagUse {
  tag: string;
  count: number;
}

export interface TagsBody {
  tags: string[];
}

export interface TextBody {
  text: string;
}

export interface TrackAnswer {
  track: TrackItem;
  music: TrackMusic | null;
  said: TrackSaid[];
  revision: number;
  notes: string[];
}

export interface TrackEight {
  beat: number;
  beats: number;
  start: number;
  end: number;
  section: number;
  beginsSection: boolean;
  isOdd: boolean;
}

export interface TrackEstimate {
  words: string;
  sure: string;
  confidence: number;
  isSaid: boolean;
  others: TrackOther[];
}

export interface TrackFactsBody {
  title: string;
  artist: string;
}

export interface TrackGap {
  start: number;
  end: number;
  isStop: boolean;
  words: string;
}

export interface TrackItem {
  id: string;
  title: string;
  artist: string;
  facts: string;
  seconds: number | null;
  tempo: number | null;
  fileName: string;
  mediaType: string;
  needsSamples: boolean;
  isHeard: boolean;
  isOld: boolean;
  isByHand: boolean;
  tags: string[];
  removedAt: string | null;
  job: TrackJobItem | null;
}

export interface TrackJobItem {
  id: string;
  kind: string;
  title: string;
  track: string | null;
  state: string;
  part: number;
  sentence: string;
}

export interface TrackJobList {
  rows: TrackJobItem[];
}

export interface TrackList {
  rows: TrackItem[];
  total: number;
}

export interface TrackMusic {
  seconds: number;
  beats: number[];
  counts: number[];
  bars: number[];
  eight: number;
  eights: TrackEight[];
  sections: TrackPart[];
  breaks: TrackGap[];
  loudness: number[];
  loudnessPerSecond: number;
  tempo: TrackEstimate;
  meter: TrackEstimate;
  swing: TrackEstimate;
  start: TrackEstimate;
  startBeat: number;
  and: number;
}

export interface TrackOther {
  words: string;
  say: TrackSay;
}

export interface TrackPart {
  beat: number;
  beats: number;
  start: number;
  end: number;
  label: string;
  name: string;
  words: string;
  sure: string;
  confidence: number;
}

export interface TrackSaid {
  words: string;
  text: string;
}

export interface TrackSay {
  kind: string;
  seconds: number[] | null;
  from: number | null;
  to: number | null;
  is: string | null;
  beatsLater: number | null;
  at: number | null;
  label: string | null;
  name: string | null;
  ratio: number | null;
}

export interface TrackSayQuestion {
  revision: number;
  say: TrackSay | null;
  again: string | null;
  takeBack: number | null;
}

export interface TrackTaken {
  track: TrackItem;
  wasNew: boolean;
  sentence: string;
  needsSamples: boolean;
}

export interface TrackTextBody {
  name: string;
  text: string;
  sections: string | null;
  track: string | null;
  revision: number;
}

export interface VersionAnswer {
  text: string;
  remarks: string[];
}

export interface VersionItem {
  number: number;
  name: string;
  savedAt: string;
}

export interface VersionName {
  name: string;
}

export interface VersionReturn {
  revision: number;
}

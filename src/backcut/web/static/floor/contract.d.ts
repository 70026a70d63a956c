// Made by scripts/make_types.py from the models of the server's answers.

/** An answer a player could have. */
export interface AnswerData {
  id: string;
  words: string;
}

/** The book beside the floor. */
export interface BookData {
  title: string;
  subtitle: string;
  text: string;
  digest: string;
  court: string;
  sentences: Array<SentenceData>;
  choices: Array<ChoiceData>;
  problems: Array<ProblemData>;
  lines: Record<string, string>;
  roles: Array<string>;
  numbers: Array<number>;
  phrases: Array<PhraseData>;
  spots: Record<string, Array<number>>;
  spot_names: Record<string, string>;
  pairs: Array<PairData>;
}

/** A move that can be made: after the first `keep` steps, whatever came after them before is cut off. `player` is who it is about first: who has the ball, or whose defender acts. `to` catches, `spot` is where it ends; `early` moves come while players are still on the way; `key` makes it for the player in hand. */
export interface CanData {
  move: string;
  words: string;
  kind: string;
  player: number;
  keep: number;
  to: number | null;
  spot: string | null;
  early: boolean;
  key: string;
}

/** A place of the floor as the keyboard walks it; centimetres of the house frame. */
export interface CellData {
  id: string;
  x: number;
  y: number;
  label: string;
  player: number | null;
  ball: boolean;
}

/** A question on which coaches differ, and how this book answers it; `read` by a sentence of the book or by none. */
export interface ChoiceData {
  name: string;
  asks: string;
  value: string;
  values: Array<ValueData>;
  read: boolean;
}

/** A way a sentence can go on. */
export interface CompletionData {
  insert: string;
  whole: string;
  who: string;
}

/** The first moment in which the possession goes otherwise than before a change; `stop` is where that is now. */
export interface DifferenceData {
  said: string;
  stop: number;
  before: SideData;
  after: SideData;
}

/** One finding. `kind` names its sign, `word` says the same. It shows in the `beat` of the `step` of the possession `start` and `moves`; `plays` says whether there is one. `letters` are the sentences behind it, `still` the moment as markup. */
export interface FindingData {
  number: number;
  kind: string;
  word: string;
  property: string;
  title: string;
  when: string;
  letters: Array<string>;
  begins: string;
  lines: Array<string>;
  here: string;
  count: string;
  note: string;
  plays: boolean;
  start: string;
  moves: string;
  step: number;
  beat: number;
  still: string;
}

/** Everything the page shows of a floor. A change names the `revision` it was made on. `stands` is the digest of what stands on the shelf, as far as this floor knows; `stop` is where to look now, null to stay in time; `runs` where the possession should run from there. */
export interface FloorData {
  id: string;
  revision: number;
  undo: string;
  redo: string;
  name: string;
  kept: boolean;
  stands: string;
  address: string;
  stop: number | null;
  runs: boolean;
  play: PlayData;
  book: BookData;
  differs: DifferenceData | null;
  seen: SeenData;
}

/** A foot of the defender of `player`, and how far past the mark it is. */
export interface FootData {
  x_cm: number;
  y_cm: number;
  player: number;
  foot: "front" | "back";
  past_m: number;
  over: boolean;
}

/** What a player does because of a denial, and the letter of the sentence. */
export interface GoesData {
  player: number;
  words: string;
  letter: string | null;
}

/** One thing that has to hold, what became of it, and the findings that break it. */
export interface HoldsData {
  kind: string;
  name: string;
  sentence: string;
  verdict: string;
  findings: Array<number>;
}

/** A book that can be opened. */
export interface KeptData {
  name: string;
  title: string;
  shipped: boolean;
  digest: string;
}

/** The denial mark at a depth: `line` is what the book would say; `path` and `teeth` are path data in cm. */
export interface MarkData {
  mark_m: number;
  line: string;
  words: string;
  how: "foot" | "hand" | "either";
  limits_m: [number, number];
  path: string;
  teeth: string;
  handle: PlaceData;
  feet: Array<FootData>;
  denied: Array<number>;
  cuts: Array<GoesData>;
}

/** One step: the move as it is written, and in words; whether the book can play it. */
export interface MoveData {
  text: string;
  words: string;
}

/** Something that can be picked: its name in the book's text, and what a coach calls it. */
export interface OptionData {
  name: string;
  title: string;
}

/** Two neighbouring spots, how far apart they lie, and the band coaches use. */
export interface PairData {
  spots: string;
  distance: string;
  band: string;
  within: boolean;
}

/** A sentence the book could say. */
export interface PhraseData {
  name: string;
  cue: string;
  text: string;
  why: string;
  said: boolean;
}

/** A run of words of a sentence, and the choice it says, if it says one. */
export interface PieceData {
  text: string;
  choice: string | null;
}

/** A place in centimetres of the house frame. */
export interface PlaceData {
  x_cm: number;
  y_cm: number;
}

/** The possession: where it starts, its moves, its story (drawing and words of every moment), the floor's markup. */
export interface PlayData {
  start: string;
  moves: Array<MoveData>;
  stuck: string;
  story: Record<string, any>;
  stops: Array<StopData>;
  shape: Record<string, string>;
  floor: string;
  ground: string;
  below: string;
  notes: Array<string>;
}

/** Something wrong in the text that belongs to no sentence, or to one. */
export interface ProblemData {
  line: number;
  column: number;
  wrong: string;
  right: string;
}

/** How far a proof is, what it found, and what was changed in the book since (`changed`, empty for nothing). */
export interface ProofData {
  state: "none" | "looking" | "done" | "stopped" | "refused";
  said: string;
  version: number;
  digest: string;
  changed: string;
  title: string;
  depths: Array<"settled" | "denied" | "overlapped" | "disturbed">;
  findings: Array<FindingData>;
  covered: Array<string>;
  holds: Array<HoldsData>;
  not_looked_at: Array<UnseenData>;
  ways: Record<string, WaysData>;
}

/** A change of the book that would say it, and what else it changes. */
export interface SayingData {
  says: string;
  text: string;
  changes: string;
}

/** What has been walked through this evening. */
export interface SeenData {
  words: string;
  boxes: Array<boolean>;
}

/** A sentence of the book as written. `rank` and `letter` are null where it is off or cannot be read. */
export interface SentenceData {
  place: number;
  rank: number | null;
  letter: string | null;
  off: boolean;
  cue: string;
  text: string;
  pieces: Array<PieceData>;
  why: string;
  mistake: string;
  written: string;
  waves: Array<WaveData>;
}

/** One of two small floors: whose it is, the drawing, the picture in words, and what is said there. */
export interface SideData {
  head: string;
  still: string;
  said: string;
}

/** What the page knows of a moment besides its drawing; `right` is where each player may go, in words. */
export interface StopData {
  step: number;
  stands: boolean;
  cells: Array<CellData>;
  can: Array<CanData>;
  right: Record<string, Array<string>>;
}

/** What was not looked at, and the depth that would (empty where there is none). */
export interface UnseenData {
  depth: string;
  said: string;
}

/** One way to choose. */
export interface ValueData {
  name: string;
  words: string;
  who: string;
}

/** What is wrong with a sentence: from which letter to which, what, and what would be right. */
export interface WaveData {
  start: number;
  end: number;
  wrong: string;
  right: string;
}

/** A change that removes a finding: the book's text with it, and what else it changes. */
export interface WayData {
  says: string;
  text: string;
  differs: number;
  moments: number;
  changed: Array<string>;
  leaves: number;
  changes: string;
}

/** How far the search for ways out of one finding is. */
export interface WaysData {
  state: "none" | "looking" | "done" | "stopped" | "refused";
  said: string;
  ways: Array<WayData>;
}

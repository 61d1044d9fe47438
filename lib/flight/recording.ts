// A recorded flight or simulator session as a table of text (recording.md says how it is written), to be laid over a flight that
// was computed. Whatever can't be read gets a sentence with its line; the rest is kept. What is recorded is never corrected.

export type RecordedColumn = (typeof RECORDED_COLUMNS)[number]['name'];

/** Columns that are read, in the unit they are read in; `least` and `most` are what can be a figure of a flight at all. */
export const RECORDED_COLUMNS = [
  { name: 'time', unit: 's', says: 'seconds, or a time of day as 14:05:30', least: -86_400, most: 172_800 },
  { name: 'speed', unit: 'kt', says: 'indicated speed', least: 0, most: 600 },
  { name: 'height', unit: 'ft', says: 'height above the aerodrome', least: -2_000, most: 60_000 },
  { name: 'altitude', unit: 'ft', says: 'altitude above the sea', least: -2_000, most: 60_000 },
  { name: 'vertical speed', unit: 'ft/min', says: 'vertical speed', least: -20_000, most: 20_000 },
  { name: 'distance', unit: 'NM', says: 'distance flown over the ground', least: -1_000, most: 20_000 },
] as const;

export type RecordedRow = { readonly line: number } & Readonly<Record<RecordedColumn, number | null>>;
export type RecordingProblem = { readonly line: number; readonly says: string };
export type Recording = {
  readonly rows: readonly RecordedRow[];
  /** Columns that the header names and that were read. */
  readonly columns: readonly RecordedColumn[];
  readonly problems: readonly RecordingProblem[];
};

/** Longer ones are read up to here, and that is said. */
const MOST_LINES = 50_000;
/** So many sentences are listed; the count goes on. */
const MOST_PROBLEMS = 200;
const DAY = 86_400;

type Column = (typeof RECORDED_COLUMNS)[number];
type Place = { readonly at: number; readonly column: Column };

/** Never fails: a text without one readable line gives no rows and says why. */
export function readRecording(text: string): Recording {
  const problems: RecordingProblem[] = [];
  const say = (line: number, says: string): void => {
    if (problems.length < MOST_PROBLEMS) problems.push({ line, says });
    else if (problems.length === MOST_PROBLEMS) problems.push({ line, says: 'More lines could not be read.' });
  };
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  const first = lines.findIndex((line) => line.trim() !== '' && !line.startsWith('#'));
  if (first < 0) return { rows: [], columns: [], problems: [{ line: 1, says: 'The file is empty.' }] };
  const mark = markOf(lines[first]!);
  const places = headerOf(cellsOf(lines[first]!, mark), first + 1, say);
  if (places === null) return { rows: [], columns: [], problems };
  if (lines.length > MOST_LINES) say(MOST_LINES, `Only the first ${MOST_LINES} lines are read.`);
  const rows: RecordedRow[] = [];
  let [last, dayBreaks, began] = [Number.NEGATIVE_INFINITY, 0, null as number | null];
  for (const [index, line] of lines.slice(0, MOST_LINES).entries()) {
    if (index <= first || line.trim() === '' || line.startsWith('#')) continue;
    const row = rowOf(cellsOf(line, mark), places, index + 1, say);
    if (row === null) continue;
    const { clock, ...figures } = row;
    let time = figures.time! + (clock ? dayBreaks * DAY : 0);
    if (clock && time < last - DAY / 2) {
      dayBreaks += 1;
      time += DAY;
    }
    if (time <= last) {
      say(index + 1, `Line ${index + 1}: the time does not go on from the line before; the line is left out.`);
      continue;
    }
    last = time;
    // A time of day counts from the first line; seconds are kept as they are.
    began ??= clock ? time : 0;
    rows.push({ ...figures, time: time - began });
  }
  if (rows.length === 0) say(first + 1, 'No line could be read.');
  return { rows, columns: places.map(({ column }) => column.name), problems };
}

const markOf = (line: string): string => [',', ';', '\t'].find((mark) => line.includes(mark)) ?? ',';
const cellsOf = (line: string, mark: string): readonly string[] =>
  line.split(mark).map((cell) => cell.trim().replace(/^"(.*)"$/, '$1'));

type Say = (line: number, says: string) => void;

/** `speed`, `Speed (kt)`, `vertical_speed`, `verticalSpeed`: one name each, with its unit or none. */
function headerOf(cells: readonly string[], line: number, say: Say): readonly Place[] | null {
  const places: Place[] = [];
  for (const [at, cell] of cells.entries()) {
    const [, words = '', unit = ''] = /^(.*?)\s*(?:[([]([^)\]]*)[)\]])?$/.exec(cell) ?? [];
    const name = words
      .replace(/([a-z])([A-Z])/g, '$1 $2')
      .replaceAll(/[_\s]+/g, ' ')
      .trim()
      .toLowerCase();
    const column = RECORDED_COLUMNS.find((one) => one.name === name);
    if (column === undefined) continue;
    if (unit !== '' && unit.toLowerCase() !== column.unit.toLowerCase()) {
      say(line, `The column ${name} is in ${unit}; it is read in ${column.unit} only, so it is left out.`);
    } else if (places.some((place) => place.column === column)) {
      say(line, `The column ${name} stands twice; the first one is read.`);
    } else places.push({ at, column });
  }
  const has = (name: RecordedColumn): boolean => places.some(({ column }) => column.name === name);
  if (!has('time')) {
    say(line, `Line ${line} is read as the header, and it names no column "time".`);
    return null;
  }
  if (!has('speed') && !has('height') && !has('altitude')) {
    say(line, 'The header names neither speed nor height nor altitude: there is nothing to lay over.');
    return null;
  }
  return places;
}

function rowOf(cells: readonly string[], places: readonly Place[], line: number, say: Say) {
  const row = {
    line,
    clock: false,
    time: null as number | null,
    speed: null as number | null,
    height: null as number | null,
    altitude: null as number | null,
    'vertical speed': null as number | null,
    distance: null as number | null,
  };
  for (const { at, column } of places) {
    const cell = cells[at] ?? '';
    const clock = column.name === 'time' ? /^(\d{1,2}):(\d{2}):(\d{2}(?:\.\d+)?)Z?$/.exec(cell) : null;
    const value = clock
      ? Number(clock[1]) * 3_600 + Number(clock[2]) * 60 + Number(clock[3])
      : /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(cell)
        ? Number(cell)
        : null;
    if (value === null && cell === '' && column.name !== 'time') continue;
    if (value === null) {
      const what = cell === '' ? `${column.name} is missing` : `${column.name} "${cell.slice(0, 20)}" is no number`;
      say(line, `Line ${line}: ${what}; the line is left out.`);
      return null;
    }
    if (value < column.least || value > column.most) {
      const range = `${column.least} to ${column.most} ${column.unit}`;
      say(line, `Line ${line}: ${column.name} ${cell} is outside ${range}; the line is left out.`);
      return null;
    }
    row[column.name] = value;
    if (clock) row.clock = true;
  }
  return row;
}

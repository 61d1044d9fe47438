// The flight as a table: one row a second, as wide as the samples of the engine. Lines that begin with # are words.
import { SAMPLE_COLUMNS, type Trace } from '../flight/trace.ts';

const spaced = (name: string): string => name.replaceAll(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
/** `vertical speed (ft/min)`: as a recorded flight is written, so that this one can be laid over another. */
const HEADER = SAMPLE_COLUMNS.map(({ name, unit }) => spaced(name) + (unit === '' ? '' : ` (${unit})`));

/** More places than anybody may rely on are left off; detents by their names. */
const PLACES = 6;

export function csvOf({ samples, conditions, detents, version, end }: Trace): string {
  const rounded = (value: number): string => (Number.isFinite(value) ? String(Number(value.toFixed(PLACES))) : '');
  // Of rows at one moment, which an event leaves, the last stands: what is so from there on.
  const rows = Array.from(samples.time, (time, row) => ({ time: rounded(time), row }));
  const last = rows.filter(({ time }, index) => rows[index + 1]?.time !== time);
  const lines = last.map(({ row }) =>
    SAMPLE_COLUMNS.map(({ name }) => {
      const value = samples[name][row]!;
      return name === 'detent' || name === 'lever' ? (detents[value] ?? '') : rounded(value);
    }).join(','),
  );
  const words = [
    `# cuewright-fly/1, engine ${version}; not for dispatch`,
    `# conditions ${JSON.stringify(conditions)}`,
    `# end: ${end.says.replaceAll('\n', ' ')}`,
  ];
  return `${[...words, HEADER.join(','), ...lines].join('\n')}\n`;
}

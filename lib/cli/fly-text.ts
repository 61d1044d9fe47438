// The flight for a person at a terminal: what was taken for granted and what the model can't say stand first.
import { formatNumber } from '../units/format.ts';
import type { FlyReport, ReportedCrew, ReportedFlight } from './fly-report.ts';
import { unreadableText } from './text.ts';
import { witnessWords } from './witness-words.ts';

const IN = '  ';
/** What happens beside these is in the JSON form. */
const TOLD = new Set(['start', 'act', 'mode', 'flap', 'flap-there', 'gear', 'gear-there', 'limit', 'mark', 'end']);

/** Ends with a line break. */
export function flyText({ against, flight, unreadable }: FlyReport): string {
  if (flight === null || against === null) {
    return `${[...unreadable.map(unreadableText), 'Nothing was flown.'].join('\n')}\n`;
  }
  const { sheet, policy } = against;
  const parts = [
    `${flight.title}: flown with sheet ${sheet.type} revision ${sheet.revision}, policy ${policy.version} of ${policy.operator}, engine ${flight.engine} (${flight.settings})`,
    ['Taken for granted', ...flight.assumptions.map((one) => `${IN}${one}`)].join('\n'),
    `The model cannot say: ${flight.cannot.join('; ')}.`,
    eventsText(flight),
    crewText(flight.crew),
    ...(flight.problems.length === 0 ? [] : [problemsText(flight)]),
    `Worst case: ${flight.worst}`,
    findingsText(flight),
    `${flight.end.says} Not for dispatch.`,
  ];
  return `${parts.join('\n\n')}\n`;
}

const whole = (value: number, step = 1): string => formatNumber(Math.round(value / step) * step);
const cell = (text: string, width: number): string => text.padStart(width);

function eventsText({ events }: ReportedFlight): string {
  const rows = events
    .filter(({ kind }) => TOLD.has(kind))
    .map(({ time, height, speed, verticalSpeed, says }) => {
      const figures = [cell(whole(time), 5), cell(whole(height, 10), 7), cell(whole(speed), 5)];
      return [...figures, cell(whole(verticalSpeed, 10), 7), ` ${says}`].join(' ');
    });
  return ['    s  ft AAL    kt  ft/min  what', ...rows].join('\n');
}

const percent = (share: number): string => `${formatNumber(share * 100)} %`;

function crewText({ busy, collisions, searched }: ReportedCrew): string {
  const shares = busy.map(
    ({ who, ten, thirty, tenMost }) =>
      `${IN}${who} busy ${percent(ten)} of the busiest 10 s (${percent(tenMost)} with durations stretched), ${percent(thirty)} of 30 s`,
  );
  const waits = collisions.map(
    ({ first, second, seconds }) => `${IN}${second} waits ${formatNumber(seconds, 1)} s behind ${first}`,
  );
  return ['Crew', ...shares, ...waits, `${IN}${searched}`].join('\n');
}

const problemsText = ({ problems }: ReportedFlight): string =>
  ['Could not be flown as written', ...problems.map(({ says }) => `${IN}${says}`)].join('\n');

function findingsText({ findings, notChecked }: ReportedFlight): string {
  const found = findings.flatMap(({ severity, line, column, called, check, message, witness }) => [
    `${IN}${severity} · ${line}:${column} · ${called} · ${check}`,
    `${IN}${IN}${message}`,
    `${IN}${IN}${witnessWords(witness)}`,
  ]);
  const reasons = [...new Set(notChecked.map(({ because }) => because))].map((because) => {
    const checks = notChecked.filter((one) => one.because === because).map(({ check }) => check);
    return `${IN}not checked, because ${because}: ${[...new Set(checks)].join(', ')}`;
  });
  const none = found.length === 0 ? [`${IN}nothing was found`] : [];
  return ['Checks that need time, over the whole envelope', ...found, ...none, ...reasons].join('\n');
}

import { detentNames } from './limits.ts';
import { scheduleEntry } from './schedule.ts';
import type { Sheet, SheetProblem } from './sheet.ts';
import { sourceOf } from './source.ts';

/**
 * What looks wrong in a sheet that can be read, from its text alone: each with a sentence and its place. It may be right
 * all the same, so it keeps nobody from saving a draft. What is to be proven over all weights stands in folder envelope.
 */
export function selfCheck(sheet: Sheet): readonly SheetProblem[] {
  return [...weightOrder(sheet), ...tables(sheet), ...detentOrder(sheet), ...unseen(sheet)];
}

function weightOrder(sheet: Sheet): SheetProblem[] {
  const order = ['empty', 'minimumFlight', 'maximumZeroFuel', 'maximumLanding', 'maximumTakeOff'] as const;
  return order.slice(1).flatMap((name, i) => {
    const lighter = order[i]!;
    if (sheet.weights[lighter].value <= sheet.weights[name].value) return [];
    return [
      {
        at: `weights.${name}`,
        message: `${said(name)} ${tonnes(sheet.weights[name].value)} is below ${said(lighter)} ${tonnes(sheet.weights[lighter].value)}`,
      },
    ];
  });
}

const said = (name: string): string => name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
const tonnes = (kg: number): string => `${(kg / 1000).toFixed(1)} t`;

/** Tables by weight reach from end to end, and speeds rise with weight. */
function tables(sheet: Sheet): SheetProblem[] {
  const from = sheet.weights.minimumFlight.value;
  const to = sheet.weights.maximumTakeOff.value;
  return sheet.speeds.flatMap((entry, i) => {
    if (entry.rule.kind !== 'table' || entry.rule.by !== 'weight') return [];
    const { at, gives } = entry.rule;
    const where = `speeds.${i}.rule`;
    const problems: SheetProblem[] = [];
    const first = at[0]!;
    const last = at[at.length - 1]!;
    if (first > from || last < to) {
      const message = `the table of ${entry.name} ${entry.detents.join(', ')} spans ${tonnes(first)} to ${tonnes(last)}, the aircraft flies from ${tonnes(from)} to ${tonnes(to)}`;
      problems.push({ at: `${where}.at`, message });
    }
    const slip = gives.findIndex((value, k) => k > 0 && value < gives[k - 1]!);
    if (slip > 0) {
      const message = `${entry.name} ${entry.detents.join(', ')} falls from ${gives[slip - 1]} to ${gives[slip]} kt at ${tonnes(at[slip]!)}: a speed rises with weight`;
      problems.push({ at: `${where}.gives.${slip}`, message });
    }
    return problems;
  });
}

/** Limits and lowest speeds fall from detent to detent, and no two entries give one speed. */
function detentOrder(sheet: Sheet): SheetProblem[] {
  const problems: SheetProblem[] = [];
  let before: { name: string; vfe: number } | null = null;
  for (const [i, detent] of sheet.detents.entries()) {
    if (detent.vfe === null) continue;
    if (before && detent.vfe.value > before.vfe) {
      problems.push({
        at: `detents.${i}.vfe`,
        message: `VFE ${detent.name} ${detent.vfe.value} kt is above VFE ${before.name} ${before.vfe} kt`,
      });
    }
    before = { name: detent.name, vfe: detent.vfe.value };
  }
  for (const [i, entry] of sheet.speeds.entries()) {
    const twin = sheet.speeds.findIndex(
      (other) =>
        other.name === entry.name &&
        other.runway === entry.runway &&
        other.detents.some((name) => entry.detents.includes(name)),
    );
    if (twin < i)
      problems.push({ at: `speeds.${i}`, message: `${entry.name} is given twice for ${entry.detents.join(', ')}` });
  }
  for (const name of detentNames(sheet)) {
    if (scheduleEntry(sheet, 'VMM', name, false) === null) {
      problems.push({ at: 'speeds', message: `there is no VMM for ${name}: no band can be drawn with it` });
    }
  }
  return problems;
}

/** Documents that nobody had at hand, said once each with how much rests on them. */
function unseen(sheet: Sheet): SheetProblem[] {
  const count = new Map<string, number>();
  const visit = (value: unknown): void => {
    if (value === null || typeof value !== 'object') return;
    for (const [key, part] of Object.entries(value)) {
      if (key !== 'source' || typeof part !== 'string') visit(part);
      else if (sourceOf(sheet, part)?.seen === false)
        count.set(part.split(' ')[0]!, (count.get(part.split(' ')[0]!) ?? 0) + 1);
    }
  };
  visit(sheet);
  return [...count].map(([key, times]) => ({
    at: `documents.${key}`,
    message: `${times} figures rest on "${sheet.documents[key]!.title}", which was not at hand`,
  }));
}

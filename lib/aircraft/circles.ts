import { namesInFormula } from './formula.ts';
import { scheduleEntry } from './schedule.ts';
import type { Sheet, SheetProblem } from './sheet.ts';

/** Speeds that, followed from formula to formula, come back to themselves. One problem a circle and a detent. */
export function circles(sheet: Sheet): readonly SheetProblem[] {
  const problems: SheetProblem[] = [];
  for (const detent of sheet.detents) {
    const told = new Set<string>();
    for (const entry of sheet.speeds) {
      if (!entry.detents.includes(detent.name) || told.has(entry.name)) continue;
      const circle = follow(sheet, detent.name, entry.name, []);
      if (circle === null || circle.some((name) => told.has(name))) continue;
      for (const name of circle) told.add(name);
      const at = `speeds.${sheet.speeds.indexOf(entry)}.rule.text`;
      problems.push({ at, message: `circular formula for ${detent.name}: ${circle.join(' needs ')}` });
    }
  }
  return problems;
}

function follow(sheet: Sheet, detent: string, name: string, path: readonly string[]): readonly string[] | null {
  const met = path.indexOf(name);
  if (met >= 0) return [...path.slice(met), name];
  const entry = scheduleEntry(sheet, name, detent, false) ?? scheduleEntry(sheet, name, detent, true);
  if (entry?.rule.kind !== 'formula') return null;
  for (const next of namesInFormula(entry.rule.text)) {
    const circle = follow(sheet, detent, next, [...path, name]);
    if (circle) return circle;
  }
  return null;
}

// Notices have two marks and no more: `**strong**` and `_emphasis_`. As text they are written with their signs, in the
// editor and in the stored draft they are runs.

export type Run = { readonly text: string; readonly strong: boolean; readonly emphasis: boolean };

const SIGNS = [
  { sign: '**', mark: 'strong' },
  { sign: '_', mark: 'emphasis' },
] as const;

/** Runs of a text. A sign without its partner, or around nothing, is an ordinary character. */
export function noticeRuns(text: string, strong = false, emphasis = false): readonly Run[] {
  for (let at = 0; at < text.length; at++) {
    for (const { sign, mark } of SIGNS) {
      if (!text.startsWith(sign, at) || (mark === 'strong' ? strong : emphasis)) continue;
      const end = text.indexOf(sign, at + sign.length);
      if (end <= at + sign.length) continue;
      const inside = text.slice(at + sign.length, end);
      return joined([
        { text: text.slice(0, at), strong, emphasis },
        ...noticeRuns(inside, strong || mark === 'strong', emphasis || mark === 'emphasis'),
        ...noticeRuns(text.slice(end + sign.length), strong, emphasis),
      ]);
    }
  }
  return joined([{ text, strong, emphasis }]);
}

/** Neighbours of one kind become one run, empty ones go: the form in which the stored draft keeps them. */
function joined(runs: readonly Run[]): readonly Run[] {
  const out: Run[] = [];
  for (const run of runs) {
    const last = out.at(-1);
    if (run.text === '') continue;
    if (last && last.strong === run.strong && last.emphasis === run.emphasis) {
      out[out.length - 1] = { ...last, text: last.text + run.text };
    } else out.push(run);
  }
  return out;
}

/** The text of runs: `strong` outside, `emphasis` inside where one run has both. */
export function noticeText(runs: readonly Run[]): string {
  let text = '';
  let [strong, emphasis] = [false, false];
  for (const run of [...joined(runs), { text: '', strong: false, emphasis: false }]) {
    if (emphasis && (!run.emphasis || strong !== run.strong)) {
      text += '_';
      emphasis = false;
    }
    if (strong !== run.strong) text += '**';
    strong = run.strong;
    if (run.emphasis && !emphasis) text += '_';
    emphasis = run.emphasis;
    text += run.text;
  }
  return text;
}

/** The text as it reads after one way through the draft: equal for everything that people write. */
export const plainForm = (text: string): string => noticeText(noticeRuns(text));

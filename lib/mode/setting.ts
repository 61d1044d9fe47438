// What an exploration of a procedure allows: said on the screen and in the result, never taken for granted.

/** Ids of steps, all, or none. Only steps whose hand the guidance hears of can slip. */
export type Which = 'all' | 'none' | readonly string[];

export type Setting = {
  /** Steps that may be put off behind later ones, done a second time, or left out. */
  readonly late: Which;
  readonly twice: Which;
  readonly forgotten: Which;
  /** Slips in one flight. One step at a time can be owed; while it is, others can only be forgotten. */
  readonly atOnce: number;
  /** Names of the sheet's surprises that may come, each once and at any moment. */
  readonly environment: readonly string[];
  /** True: a hand does what the step's expected modes say, where one of its outcomes fits them. False: any outcome. */
  readonly believe: boolean;
};

/** As written: no slip, no surprise. */
export const AS_WRITTEN: Setting = {
  late: 'none',
  twice: 'none',
  forgotten: 'none',
  atOnce: 0,
  environment: [],
  believe: true,
};

/** One slip of any kind, no surprise. */
export const ONE_SLIP: Setting = { ...AS_WRITTEN, late: 'all', twice: 'all', forgotten: 'all', atOnce: 1 };

const stepsWords = (which: Which): string | null =>
  which === 'none' || which.length === 0 ? null : which === 'all' ? 'any step' : `steps ${which.join(', ')}`;

/** The setting in words, for the result. */
export function settingWords(setting: Setting): string {
  const kinds = [
    [stepsWords(setting.late), 'late'],
    [stepsWords(setting.twice), 'twice'],
    [stepsWords(setting.forgotten), 'forgotten'],
  ].flatMap(([steps, how]) => (steps === null ? [] : [`${steps} ${how}`]));
  const slips =
    setting.atOnce === 0 || kinds.length === 0
      ? 'every step done as written'
      : `${kinds.join('; ')}; ${setting.atOnce} ${setting.atOnce === 1 ? 'slip' : 'slips'} at most`;
  const events = setting.environment.length === 0 ? 'no surprise' : `surprises: ${setting.environment.join(', ')}`;
  return `${slips}; ${events}`;
}

// Apart from mode-answer.ts, so that the page says what the explorer found without loading the explorer itself.
export const AXES = ['thrust', 'lateral', 'vertical'] as const;

export const standardsWords = (standards: readonly string[]): string =>
  `standard${standards.length === 1 ? '' : 's'} ${standards.join(' and ')}`;

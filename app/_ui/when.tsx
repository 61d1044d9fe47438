const two = (n: number) => String(n).padStart(2, '0');
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** `25 Nov 2026, 14:05Z`: times are UTC, and say so. */
export function sayTime(at: Date | string): string {
  const date = new Date(at);
  return `${date.getUTCDate()} ${MONTHS[date.getUTCMonth()]} ${date.getUTCFullYear()}, ${two(date.getUTCHours())}:${two(date.getUTCMinutes())}Z`;
}

export function When({ at }: { at: Date | string }) {
  return <time dateTime={new Date(at).toISOString()}>{sayTime(at)}</time>;
}

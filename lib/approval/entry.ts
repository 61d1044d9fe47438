// What an entry of the record says. People and things are opaque ids; names live elsewhere and can be erased.
import { err, ok, type Result } from '../base/result.ts';

export type Entry = {
  /** Whose log it is: an entry cannot be carried over into another. */
  readonly log: string;
  /** ISO time, UTC, by the one clock. */
  readonly at: string;
  readonly by: string | null;
  readonly act: string;
  readonly subject: string;
  readonly body: Readonly<Record<string, unknown>>;
};

const KEYS = 'act,at,body,by,log,subject';
const isText = (value: unknown): value is string => typeof value === 'string';

/** Reads the text of an entry. Whatever is missing, added or of another kind makes it unreadable. */
export function readEntry(text: string): Result<Entry, string> {
  let entry: Record<string, unknown>;
  try {
    entry = JSON.parse(text);
  } catch {
    return err('it is no JSON');
  }
  if (entry === null || typeof entry !== 'object' || Object.keys(entry).sort().join() !== KEYS) {
    return err('its parts are not those of an entry');
  }
  const { log, at, by, act, subject, body } = entry;
  const time = isText(at) ? new Date(at) : null;
  if (!time || Number.isNaN(time.getTime()) || time.toISOString() !== at) return err('its time is not a time');
  if (!isText(log) || !isText(act) || !isText(subject)) return err('its words are not words');
  if (by !== null && !isText(by)) return err('its person is not an id');
  if (body === null || typeof body !== 'object' || Array.isArray(body)) return err('its body is not a set of fields');
  return ok(entry as Entry);
}

import type { z } from 'zod';

const EXPECTED: Readonly<Record<string, string>> = {
  object: 'a group of named values',
  array: 'a list',
  string: 'words',
  number: 'a number',
  boolean: 'true or false',
  record: 'a group of named values',
};

/** One clear sentence for what a schema found in a file of the kind `what`; sentences of our own pass as they are. */
export function sentence(issue: z.core.$ZodIssue, what: string): string {
  const whole = issue.path.length === 0;
  switch (issue.code) {
    case 'invalid_type': {
      if (!issue.message.startsWith('Invalid input')) return issue.message;
      if (issue.message.endsWith('received undefined')) return `${lastOf(issue.path)} is missing`;
      if (whole) return `this is no ${what}: a group of named values is expected`;
      return `${EXPECTED[issue.expected] ?? issue.expected} is expected here`;
    }
    case 'unrecognized_keys':
      return `${issue.keys.map((key) => `"${key}"`).join(', ')} has no place here`;
    case 'invalid_value':
      return issue.message.startsWith('Invalid')
        ? `one of ${issue.values.map(String).join(', ')} is expected here`
        : issue.message;
    case 'invalid_union':
      return issue.message === 'Invalid input' ? 'this has none of the shapes that are known here' : issue.message;
    case 'too_small':
      return issue.message.startsWith('Too small')
        ? `${lastOf(issue.path)} needs ${issue.minimum} or more`
        : issue.message;
    case 'too_big':
      return `${lastOf(issue.path)} may have ${issue.maximum} at most`;
    case 'invalid_format':
    case 'invalid_key':
      return issue.message.startsWith('Invalid')
        ? `${lastOf(issue.path)} is not written as it should be`
        : issue.message;
    default:
      return issue.message;
  }
}

const lastOf = (path: readonly PropertyKey[]): string =>
  path.length === 0 ? 'the file' : String(path[path.length - 1]);

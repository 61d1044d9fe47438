import { randomBytes } from 'node:crypto';

const ALPHABET = '0123456789abcdefghjkmnpqrstvwxyz';

/** An opaque id such as `dr_8kq3…`: 16 letters of 5 random bits. The mark in front is for people who read a log. */
export function newId(
  mark: 'cr' | 'dr' | 'ca' | 'rv' | 'so' | 'an' | 'pe' | 'rg' | 'fl' | 'sh' | 'pr' | 'op' | 'ru',
): string {
  return `${mark}_${[...randomBytes(16)].map((byte) => ALPHABET[byte & 31]).join('')}`;
}

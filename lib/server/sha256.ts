import { createHash } from 'node:crypto';

/** SHA-256 of the bytes as lower-case hex, by the platform; the pure folders are given it as a value. */
export const sha256Hex = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

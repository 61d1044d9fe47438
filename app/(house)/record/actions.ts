'use server';
import { z } from 'zod';
import { action } from '../../../lib/server/action.ts';
import { exportRecord, verifyRecord } from '../../../lib/server/record.ts';

const nothing = z.object({});
export const verify = action(nothing, (viewer) => verifyRecord(viewer));
export const takeOut = action(nothing, (viewer) => exportRecord(viewer));

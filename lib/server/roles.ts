export const ROLES = [
  'technical pilot',
  'training captain',
  'standards captain',
  'approver',
  'line pilot',
  'auditor',
  'administrator',
] as const;
export type Role = (typeof ROLES)[number];

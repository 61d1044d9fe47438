import { Choice, Field, LongField } from '../../_ui/field.tsx';
import { asTyped, type PolicyField } from './policy-fields.ts';

export function PolicyInput({ field, start }: { field: PolicyField; start: unknown }) {
  const unit = field.unit === '' ? '' : `, ${field.unit}`;
  const label = `${field.label}${unit}`;
  const named = { label, name: field.path, defaultValue: asTyped(start) };
  switch (field.kind) {
    case 'choice':
      return (
        <Choice {...named}>
          {field.choices.map((one) => (
            <option key={one}>{one}</option>
          ))}
        </Choice>
      );
    case 'words':
      return <LongField {...named} spellCheck={false} />;
    case 'text':
      return <Field {...named} required />;
    case 'number':
      return (
        <Field
          {...named}
          type="number"
          required
          step={field.whole ? 1 : 'any'}
          min={field.least ?? undefined}
          max={field.most ?? undefined}
        />
      );
  }
}

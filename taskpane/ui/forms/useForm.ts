import { useState } from "react";
import type { FieldsOf } from "../../actions/caseload/typed";

/** What a field's control needs of its form. */
export interface At {
  readonly name: string;
  readonly label: string;
  readonly value: string;
  readonly isRequired: boolean;
  readonly onChange: (value: string) => void;
}

/** A form whose fields are texts: what stands in them, what each control needs, and which of them apply. */
export function useForm<Form extends Readonly<Record<string, string>>>(
  fields: FieldsOf<Form>,
  start: Form,
  after: (before: Form, change: Partial<Form>) => Form = (before, change) => ({ ...before, ...change }),
) {
  const [form, setForm] = useState(start);
  const at = (field: keyof Form & string): At => ({
    name: field,
    label: fields.labels[field],
    value: form[field]!,
    isRequired: fields.required[field] !== undefined,
    onChange: (value) => setForm((before) => after(before, { [field]: value } as Partial<Form>)),
  });
  const applies = (field: keyof Form & string): boolean => fields.applies?.(field, form) ?? true;
  return { form, at, applies };
}

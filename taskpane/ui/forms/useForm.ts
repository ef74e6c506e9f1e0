import { useState } from "react";

/** A form whose fields are texts, and what a field's control needs of it. */
export function useForm<Form extends Readonly<Record<string, string>>>(
  start: Form,
  after: (before: Form, change: Partial<Form>) => Form = (before, change) => ({ ...before, ...change }),
) {
  const [form, setForm] = useState(start);
  const at = (field: keyof Form & string, faultOf: (field: string) => string | undefined) => ({
    value: form[field]!,
    fault: faultOf(field),
    onChange: (value: string) => setForm((before) => after(before, { [field]: value } as Partial<Form>)),
  });
  return { form, at };
}

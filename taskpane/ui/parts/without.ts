/** The same record with one key left out. */
export const without = <K extends string, V>(record: { readonly [P in K]?: V }, key: K): { readonly [P in K]?: V } =>
  Object.fromEntries(Object.entries(record).filter(([each]) => each !== key)) as { readonly [P in K]?: V };

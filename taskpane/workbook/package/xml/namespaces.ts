/** Prefixes and what they stand for (Namespaces in XML 1.0). */
export interface ElementName {
  /** As written, "x:row". */
  readonly raw: string;
  readonly prefix: string;
  readonly local: string;
  /** The URI; empty for none. */
  readonly namespace: string;
}

export class Scope {
  private readonly names = new Map<string, ElementName>();

  constructor(private readonly uris: ReadonlyMap<string, string>) {}

  uriOf(prefix: string): string | undefined {
    return this.uris.get(prefix);
  }

  with(declarations: ReadonlyMap<string, string>): Scope {
    return new Scope(new Map([...this.uris, ...declarations]));
  }

  /** Undefined when the prefix stands for nothing. A part uses few names, so each is taken apart once. */
  resolve(raw: string): ElementName | undefined {
    const known = this.names.get(raw);
    if (known) return known;
    const colon = raw.indexOf(":");
    const prefix = colon < 0 ? "" : raw.slice(0, colon);
    const namespace = this.uris.get(prefix);
    if (namespace === undefined || (colon >= 0 && raw.indexOf(":", colon + 1) >= 0)) return undefined;
    const name = { raw, prefix, local: raw.slice(colon + 1), namespace };
    this.names.set(raw, name);
    return name;
  }
}

export function rootScope(): Scope {
  return new Scope(
    new Map([
      ["", ""],
      ["xml", "http://www.w3.org/XML/1998/namespace"],
    ]),
  );
}

/** Prefixes and what they stand for (Namespaces in XML 1.0). */
export interface ElementName {
  /** As written, "x:row". */
  readonly raw: string;
  readonly prefix: string;
  readonly local: string;
  /** The URI; empty for none. */
  readonly namespace: string;
}

const known = new Map<string, string>();

/** Makes a URI known: a part that declares it gets this very string, and comparing the two is a look at one address. */
export function knownNamespace(uri: string): string {
  known.set(uri, uri);
  return uri;
}

export class Scope {
  private readonly names = new Map<string, ElementName>();

  constructor(private readonly uris: ReadonlyMap<string, string>) {}

  uriOf(prefix: string): string | undefined {
    return this.uris.get(prefix);
  }

  with(declarations: ReadonlyMap<string, string>): Scope {
    const uris = new Map(this.uris);
    for (const [prefix, uri] of declarations) uris.set(prefix, known.get(uri) ?? uri);
    return new Scope(uris);
  }

  /** Undefined when the prefix stands for nothing. A part uses few names, so each is taken apart once. */
  resolve(raw: string): ElementName | undefined {
    const resolved = this.names.get(raw);
    if (resolved) return resolved;
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

/** Reads a request of Microsoft's library (object paths, then actions on them) and answers it as Excel would. */
import { ApiError, call, isObject, item, part, property, type Argument, type ExcelObject, type Json } from "./objects";

interface ArgumentInfo {
  readonly Arguments?: readonly Json[];
  /** Beside each argument, the object path it stands for; 0 or null for a plain value. */
  readonly ReferencedObjectPathIds?: readonly (number | null)[];
}

interface ObjectPath {
  readonly Id: number;
  readonly ObjectPathType: number;
  readonly Name: string;
  readonly ParentObjectPathId?: number;
  readonly ArgumentInfo?: ArgumentInfo;
}

interface Action {
  readonly Id: number;
  readonly ActionType: number;
  readonly Name: string;
  readonly ObjectPathId: number;
  readonly ArgumentInfo?: ArgumentInfo;
  readonly QueryInfo?: { readonly Select?: readonly string[]; readonly Expand?: readonly string[] };
}

export interface Request {
  readonly Actions: readonly Action[];
  readonly ObjectPaths: Readonly<Record<string, ObjectPath>>;
}

export interface Answer {
  readonly Results: readonly { readonly ActionId: number; readonly Value: Json }[];
  readonly Error?: { readonly Code: string; readonly Message: string; readonly ActionIndex: number };
}

const PATH = { global: 1, newObject: 2, method: 3, property: 4, indexer: 5, reference: 6, nullObject: 7 } as const;
const ACTION = { instantiate: 1, query: 2, method: 3, setProperty: 4, trace: 5 } as const;

/** Excel on the web takes and gives 5 MB at once; that is the least of all. */
const PAYLOAD = 5 * 1024 * 1024;

const capital = (name: string): string => name.charAt(0).toUpperCase() + name.slice(1);
const small = (name: string): string => name.charAt(0).toLowerCase() + name.slice(1);

export class Protocol {
  private readonly references = new Map<string, ExcelObject>();
  private nextReference = 1;
  /** What was asked, by type and member: shows a test that the adapter really came this way. */
  readonly used = new Set<string>();
  requests = 0;
  /** Characters of the largest request. */
  largest = 0;
  /** Lets a test have Excel break off: called with the number of each request. */
  fault: (request: number) => ApiError | null = () => null;

  constructor(private readonly root: () => ExcelObject) {}

  answer(body: string): Answer {
    this.requests++;
    this.largest = Math.max(this.largest, body.length);
    const request = JSON.parse(body) as Request;
    const results: { ActionId: number; Value: Json }[] = [];
    let index = 0;
    try {
      const fault = this.fault(this.requests);
      if (fault) throw fault;
      if (body.length > PAYLOAD) throw new ApiError("RequestPayloadSizeLimitExceeded", "The request is too large.");
      const objects = new Map<number, ExcelObject | null>();
      const kept = new Map<ExcelObject, string>();
      for (const action of request.Actions) {
        results.push({ ActionId: action.Id, Value: this.act(action, request, objects, kept) });
        index++;
      }
      const answer = { Results: results };
      if (JSON.stringify(answer).length > PAYLOAD)
        throw new ApiError("ResponsePayloadSizeLimitExceeded", "The response is too large.");
      return answer;
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      return { Results: results, Error: { Code: error.code, Message: error.message, ActionIndex: index } };
    }
  }

  private act(
    action: Action,
    request: Request,
    objects: Map<number, ExcelObject | null>,
    kept: Map<ExcelObject, string>,
  ): Json {
    if (action.ActionType === ACTION.trace) return null;
    const object = this.resolve(action.ObjectPathId, request, objects);
    const args = () => this.args(action.ArgumentInfo, request, objects);
    switch (action.ActionType) {
      case ACTION.instantiate: {
        if (!object) return null;
        const reference = kept.get(object);
        return { ...(reference && { _ReferenceId: reference }), ...(object.id !== undefined && { _Id: object.id }) };
      }
      case ACTION.query:
        return object ? this.query(object, action.QueryInfo?.Select ?? []) : null;
      case ACTION.setProperty: {
        if (!object) throw new ApiError("InvalidObjectPath", "The object does not exist.");
        const name = small(action.Name);
        this.used.add(`${object.type}.${name}=`);
        const { set } = property(object, name);
        if (!set) throw new ApiError("InvalidArgument", `${object.type}.${name} cannot be set.`);
        set(args()[0] as Json);
        return null;
      }
      case ACTION.method: {
        if (action.Name === "_KeepReference") {
          if (object) {
            const reference = `r${this.nextReference++}`;
            this.references.set(reference, object);
            kept.set(object, reference);
          }
          return null;
        }
        if (action.Name === "_RemoveReference") {
          this.references.delete(String(args()[0]));
          return null;
        }
        if (!object) throw new ApiError("InvalidObjectPath", "The object does not exist.");
        this.used.add(`${object.type}.${small(action.Name)}`);
        return (call(object, action.Name, args()) ?? null) as Json;
      }
      default:
        throw new ApiError("InvalidRequest", `unknown action ${action.ActionType}`);
    }
  }

  private resolve(id: number, request: Request, objects: Map<number, ExcelObject | null>): ExcelObject | null {
    const known = objects.get(id);
    if (known !== undefined) return known;
    const path = request.ObjectPaths[id];
    if (!path) throw new ApiError("InvalidObjectPath", `no object path ${id}`);
    const object = this.follow(path, request, objects);
    objects.set(id, object);
    return object;
  }

  private follow(path: ObjectPath, request: Request, objects: Map<number, ExcelObject | null>): ExcelObject | null {
    if (path.ObjectPathType === PATH.global) return this.root();
    if (path.ObjectPathType === PATH.nullObject) return null;
    if (path.ObjectPathType === PATH.reference) {
      const object = this.references.get(path.Name);
      if (!object) throw new ApiError("InvalidObjectPath", `no reference ${path.Name}`);
      return object;
    }
    const parent = this.resolve(path.ParentObjectPathId!, request, objects);
    /* What hangs on a null object is null too. */
    if (!parent) return null;
    const args = this.args(path.ArgumentInfo, request, objects);
    switch (path.ObjectPathType) {
      case PATH.property:
        return part(parent, small(path.Name));
      case PATH.indexer:
        return item(parent, String(args[0]));
      case PATH.method: {
        this.used.add(`${parent.type}.${small(path.Name)}`);
        const object = call(parent, path.Name, args);
        return isObject(object) ? object : null;
      }
      default:
        throw new ApiError("InvalidObjectPath", `unknown path ${path.ObjectPathType}`);
    }
  }

  private args(
    info: ArgumentInfo | undefined,
    request: Request,
    objects: Map<number, ExcelObject | null>,
  ): readonly Argument[] {
    return (info?.Arguments ?? []).map((value, i) => {
      const id = info?.ReferencedObjectPathIds?.[i];
      if (!id) return value;
      const object = this.resolve(id, request, objects);
      if (!object) throw new ApiError("InvalidArgument", "An argument does not exist.");
      return object;
    });
  }

  /** Only what is named: "load everything" would be slow in Excel and is not answered. */
  private query(object: ExcelObject, select: readonly string[]): Json {
    if (select.length === 0) throw new ApiError("InvalidRequest", `everything of ${object.type} was asked for`);
    if (object.items)
      return { _Items: object.items().map((one) => ({ _Id: one.id ?? null, ...this.fields(one, select) })) };
    return this.fields(object, select);
  }

  private fields(object: ExcelObject, select: readonly string[]): { readonly [key: string]: Json } {
    const fields: Record<string, Json> = {};
    const nested = new Map<string, string[]>();
    for (const path of select) {
      const [name, ...rest] = path.split("/");
      if (rest.length > 0) nested.set(name!, [...(nested.get(name!) ?? []), rest.join("/")]);
      else {
        this.used.add(`${object.type}.${name}`);
        fields[capital(name!)] = property(object, name!).get();
      }
    }
    for (const [name, rest] of nested) fields[capital(name)] = this.query(part(object, name), rest);
    return fields;
  }
}

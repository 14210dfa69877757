/**
 * Reading a value of a deck by a schema of the schema library, whose issues
 * become faults of our own. What would be right is read off the schema, so
 * that limits stand in one place.
 */
import * as v from "valibot";
import { err, ok, type Result } from "../result";
import {
  type DeckFault,
  type DeckFaultCode,
  type Expected,
  isWord,
  shortText,
  type ValuePath,
} from "./deck-fault";
import {
  DAY,
  DECK_ID,
  LINES,
  NOT_BLANK,
  ONE_LINE,
  unwantedCharacter,
} from "./deck-values";

/** As much of the schema library's objects as tells what is expected. */
interface SchemaNode {
  readonly type: string;
  readonly entries?: Readonly<Record<string, SchemaNode>>;
  readonly item?: SchemaNode;
  readonly wrapped?: SchemaNode;
  /** Words of a list of words; of a choice between schemas, the schemas. */
  readonly options?: readonly unknown[];
  readonly literal?: string | number;
  readonly pipe?: readonly PipeItem[];
}

interface PipeItem {
  readonly type: string;
  readonly requirement?: unknown;
  readonly pipe?: readonly PipeItem[];
}

/** The actions of a schema, those of a schema within it first. */
function actionsOf({ pipe = [] }: SchemaNode): readonly PipeItem[] {
  return pipe.flatMap((item) =>
    item.pipe === undefined ? [item] : actionsOf(item),
  );
}

function nodeAt(schema: SchemaNode, path: ValuePath): SchemaNode | undefined {
  const node = schema.wrapped ?? schema;
  const [step, ...rest] = path;
  if (step === undefined) return node;
  const next =
    typeof step === "number" ? node.item : (node.entries ?? {})[step];
  return next === undefined ? undefined : nodeAt(next, rest);
}

function requirement(node: SchemaNode, type: string): number | undefined {
  const wanted = actionsOf(node).find((a) => a.type === type)?.requirement;
  return typeof wanted === "number" ? wanted : undefined;
}

function limits(least: number | undefined, most: number | undefined) {
  return {
    ...(least === undefined ? {} : { least }),
    ...(most === undefined ? {} : { most }),
  };
}

function expectedAt(schema: SchemaNode, path: ValuePath): Expected | undefined {
  const node = nodeAt(schema, path);
  if (node === undefined) return undefined;
  if (node.options !== undefined) {
    const options = node.options.filter(isWord);
    return options.length === 0 ? undefined : { kind: "one-of", options };
  }
  if (node.literal !== undefined)
    return { kind: "one-of", options: [node.literal] };
  if (node.entries !== undefined)
    return { kind: "fields", known: Object.keys(node.entries) };
  // Something that is looked up: too much to be listed.
  if (node.type === "custom") return undefined;
  const most = requirement(node, "max_length");
  if (node.type === "array")
    return { kind: "list", ...limits(requirement(node, "min_length"), most) };
  if (node.type === "boolean") return { kind: "yes-or-no" };
  if (node.type === "string")
    return { kind: "text", ...limits(undefined, most) };
  return {
    kind: "number",
    ...limits(requirement(node, "min_value"), requirement(node, "max_value")),
    whole: actionsOf(node).some(({ type }) => type === "integer"),
  };
}

type Issue = Pick<
  v.BaseIssue<unknown>,
  "kind" | "type" | "input" | "received" | "requirement" | "path"
>;

const CODE_OF_PATTERN: ReadonlyMap<unknown, DeckFaultCode> = new Map<
  unknown,
  DeckFaultCode
>([
  [NOT_BLANK, "blank-text"],
  [ONE_LINE, "unwanted-character"],
  [LINES, "unwanted-character"],
  [DECK_ID, "malformed-id"],
  [DAY, "impossible-day"],
]);

function codeOf(issue: Issue): DeckFaultCode {
  const isList = Array.isArray(issue.input);
  switch (issue.type) {
    case "picklist":
    case "literal":
    case "custom":
      return "unknown-value";
    case "regex":
      return CODE_OF_PATTERN.get(issue.requirement) ?? "unknown-value";
    case "check":
      return "duplicate-value";
    case "max_length":
      return isList ? "list-too-long" : "text-too-long";
    case "min_length":
      return isList ? "empty-list" : "blank-text";
    default:
      return issue.kind === "schema" ? "wrong-type" : "out-of-range";
  }
}

function foundIn(issue: Issue): string | undefined {
  const { input, requirement } = issue;
  if (typeof input === "string" && CODE_OF_PATTERN.has(requirement)) {
    const unwanted = unwantedCharacter(input, requirement === ONE_LINE);
    if (unwanted !== undefined) return unwanted;
  }
  return shortText(input);
}

function faultOf(schema: SchemaNode, issue: Issue): DeckFault {
  const items = issue.path ?? [];
  const path = items.map(({ key }) => key) as ValuePath;
  const last = items.at(-1);
  const parent = path.slice(0, -1);
  if (last?.origin === "key" && Array.isArray(last.input)) {
    // The library takes a list for fields of which none is there.
    const expected = expectedAt(schema, parent);
    const found = shortText(last.input);
    return { code: "wrong-type", path: parent, ...given({ expected, found }) };
  }
  if (last?.origin === "key") {
    const isMissing = issue.received === "undefined";
    const expected = expectedAt(schema, isMissing ? path : parent);
    return {
      code: isMissing ? "missing-field" : "unknown-field",
      path,
      ...given({ expected }),
    };
  }
  const expected = expectedAt(schema, path);
  const found = foundIn(issue);
  return { code: codeOf(issue), path, ...given({ expected, found }) };
}

function given(details: {
  readonly expected: Expected | undefined;
  readonly found?: string | undefined;
}): Pick<DeckFault, "expected" | "found"> {
  const { expected, found } = details;
  return {
    ...(expected === undefined ? {} : { expected }),
    ...(found === undefined ? {} : { found }),
  };
}

/** Reads a value by a schema. Errors: the first fault. */
export function readDeckValue<Output>(
  schema: v.GenericSchema<unknown, Output>,
  value: unknown,
): Result<Output, DeckFault> {
  const parsed = v.safeParse(schema, value, { abortEarly: true });
  return parsed.success
    ? ok(parsed.output)
    : err(faultOf(schema, parsed.issues[0]));
}

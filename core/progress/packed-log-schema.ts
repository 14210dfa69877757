/** Reading a packed log that comes as a message. */
import * as v from "valibot";
import type { CaseId } from "../cases/case-ids";
import type { PackedLog } from "./packed-log";

/** Ids are handed back as they came, and whoever gets them back parses them: the whole case table would have to be brought to the worker. */
const PASSED_ON = v.pipe(
  v.string(),
  v.transform((id) => id as CaseId),
);

const COLUMNS = v.pipe(
  v.object({
    cases: v.instance(Uint16Array<ArrayBuffer>),
    answeredAs: v.instance(Uint16Array<ArrayBuffer>),
    mistook: v.instance(Uint16Array<ArrayBuffer>),
    choices: v.instance(Uint16Array<ArrayBuffer>),
    corrections: v.instance(Uint16Array<ArrayBuffer>),
    committedTurns: v.instance(Uint16Array<ArrayBuffer>),
    days: v.instance(Int32Array<ArrayBuffer>),
    thinking: v.instance(Float64Array<ArrayBuffer>),
    turning: v.instance(Float64Array<ArrayBuffer>),
    total: v.instance(Float64Array<ArrayBuffer>),
    target: v.instance(Float64Array<ArrayBuffer>),
  }),
  v.check((columns) => {
    const { length } = columns.choices;
    return Object.values(columns).every((column) => column.length === length);
  }),
);

/** A packed log whose columns are equally long. */
export const PACKED_LOG: v.GenericSchema<unknown, PackedLog> = v.object({
  cases: v.pipe(v.array(PASSED_ON), v.readonly()),
  columns: COLUMNS,
});

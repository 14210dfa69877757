import * as v from "valibot";
import type { CaseId } from "./case-ids";
import { parseCaseId } from "./case-table";

/** An id of a case that there is: what stored rows, files and messages hold. */
export const CASE_ID = v.custom<CaseId>(
  (value) => typeof value === "string" && parseCaseId(value) !== undefined,
);

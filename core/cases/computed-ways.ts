import type { CaseId } from "./case-ids";

/** Shortest and easiest ways by case; filled by its generator. */
export const COMPUTED_WAYS: Readonly<
  Partial<Record<CaseId, readonly [shortest: string, easiest: string]>>
> = {};

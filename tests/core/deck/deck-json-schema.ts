import { toJsonSchema } from "@valibot/to-json-schema";
import { format } from "prettier";
import {
  DECK_FILE,
  DECK_FILE_VERSION,
} from "../../../core/deck/deck-file-schema";

/**
 * The JSON Schema of deck files, from the reader's own schema, as it lies
 * beside it. What a JSON Schema cannot say is not in it: whether a typed way
 * can be read, whether the calendar has a day, that no case comes twice.
 */
export async function deckJsonSchema(): Promise<string> {
  const schema = toJsonSchema(DECK_FILE, {
    overrideAction: ({ valibotAction, jsonSchema }) => {
      // The one check of ours: nothing twice in a list of words.
      if (valibotAction.type === "check")
        return { ...jsonSchema, uniqueItems: true };
      // A second pattern: a JSON Schema holds one, and any number of further ones in `allOf`.
      if (
        valibotAction.type === "regex" &&
        "requirement" in valibotAction &&
        valibotAction.requirement instanceof RegExp &&
        jsonSchema.pattern !== valibotAction.requirement.source
      )
        return {
          ...jsonSchema,
          allOf: [
            ...(jsonSchema.allOf ?? []),
            { pattern: valibotAction.requirement.source },
          ],
        };
      return undefined;
    },
  });
  const { properties = {} } = schema;
  const written = {
    ...schema,
    title: "A Turnwise deck",
    // The reader takes newer forms too; of those nobody can write the schema.
    properties: {
      ...properties,
      version: { const: DECK_FILE_VERSION },
      readableFrom: { const: DECK_FILE_VERSION },
    },
  };
  return format(JSON.stringify(written), { parser: "json" });
}

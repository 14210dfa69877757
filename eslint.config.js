import js from "@eslint/js";
import svelte from "eslint-plugin-svelte";
import globals from "globals";
import tseslint from "typescript-eslint";
import svelteConfig from "./svelte.config.js";

const restrictedSyntax = [
  {
    selector: "CatchClause > BlockStatement[body.length=0]",
    message: "An empty catch is a defect: handle the error or let it pass.",
  },
  {
    selector: "ExportAllDeclaration",
    message: "No barrel files: import from the file that owns the thing.",
  },
  {
    selector: "TSEnumDeclaration",
    message: "Derive a union from one `as const` table.",
  },
];

export default tseslint.config(
  {
    ignores: ["dist/", "coverage/", "test-results/", "playwright-report/"],
  },
  { linterOptions: { noInlineConfig: true } },
  js.configs.recommended,
  {
    files: ["**/*.ts"],
    extends: [tseslint.configs.strictTypeChecked],
    languageOptions: {
      parserOptions: {
        // Table generators are outside core's pure build.
        projectService: {
          allowDefaultProject: ["core/cases/*.generate.ts"],
          defaultProject: "tests/tsconfig.json",
        },
        tsconfigRootDir: import.meta.dirname,
      },
    },
    rules: {
      "@typescript-eslint/restrict-template-expressions": [
        "error",
        { allowNumber: true, allowBoolean: true },
      ],
      "@typescript-eslint/no-confusing-void-expression": [
        "error",
        { ignoreArrowShorthand: true },
      ],
      "@typescript-eslint/switch-exhaustiveness-check": "error",
      // Notation is plain ASCII; a string is spread into its letters.
      "@typescript-eslint/no-misused-spread": ["error", { allow: ["string"] }],
      // A type parameter that is spelt out says what is meant.
      "@typescript-eslint/no-unnecessary-type-arguments": "off",
    },
  },
  { files: ["**/*.svelte"], extends: [tseslint.configs.strict] },
  // After the line above, which would otherwise set the TypeScript parser.
  ...svelte.configs.recommended,
  {
    files: ["**/*.svelte", "**/*.svelte.ts"],
    languageOptions: {
      globals: globals.browser,
      parserOptions: { parser: tseslint.parser, svelteConfig },
    },
    rules: {
      "prefer-const": "off",
      "svelte/prefer-const": "error",
    },
  },
  {
    rules: {
      "no-restricted-syntax": ["error", ...restrictedSyntax],
      eqeqeq: "error",
      // Playwright insists on a pattern where a fixture needs no other.
      "no-empty-pattern": ["error", { allowObjectPatternsAsParameters: true }],
    },
  },
  {
    files: ["**/*.svelte"],
    rules: {
      "no-restricted-syntax": [
        "error",
        ...restrictedSyntax,
        {
          selector: "SvelteAttribute[key.name='style'] > SvelteLiteral",
          message:
            "The content policy refuses style attributes: use a class or a style: directive.",
        },
      ],
    },
  },
  {
    files: ["**/*.ts", "**/*.svelte"],
    rules: {
      // The compiler does it, with the types at hand.
      "no-undef": "off",
      "no-unused-vars": "off",
      "@typescript-eslint/no-unused-vars": "error",
      "@typescript-eslint/consistent-type-imports": "error",
    },
  },
  {
    // Typed-array reads in the kernels: an index in range is never undefined.
    files: ["core/cube/**/*.ts", "core/solver/**/*.ts"],
    rules: { "@typescript-eslint/no-non-null-assertion": "off" },
  },
);
